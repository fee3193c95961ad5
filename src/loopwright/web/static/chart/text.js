// Rows as text, as the season file has them: the last row first, one mark a cell.
import { Grid, KNIT } from "./grid.js";

export function gridOf(rows, stitches, roles, symbols) {
  const grid = new Grid(rows[0].length, rows.length);
  const roleOf = new Map(roles.map((role, at) => [role.mark, at]));
  const stitchOf = new Map(symbols.map((symbol, at) => [symbol.mark, at]));
  rows.forEach((line, down) => {
    const first = grid.at(0, rows.length - 1 - down);
    for (let column = 0; column < grid.columns; column += 1) {
      grid.roles[first + column] = roleOf.get(line[column]);
      grid.stitches[first + column] = stitches ? stitchOf.get(stitches[down][column]) : KNIT;
    }
  });
  return grid;
}

const lines = (grid, cells, marks) =>
  Array.from({ length: grid.rows }, (_, down) => {
    const first = grid.at(0, grid.rows - 1 - down);
    let line = "";
    for (let column = 0; column < grid.columns; column += 1) line += marks[cells[first + column]];
    return line;
  });

// What is sent and put aside: the fields of the chart that drawing changes.
export function fieldsOf({ grid, roles, repeat }, symbols) {
  const plain = grid.stitches.every((stitch) => stitch === KNIT);
  const shades = roles.filter((role) => role.own).map((role) => [role.role, role.shade]);
  return {
    rows: lines(grid, grid.roles, roles.map((role) => role.mark)),
    stitches: plain ? null : lines(grid, grid.stitches, symbols.map((symbol) => symbol.mark)),
    roles: Object.fromEntries(roles.map((role) => [role.mark, role.role])),
    shades: shades.length ? Object.fromEntries(shades) : null,
    repeat: repeat && {
      from_stitch: grid.columns - repeat.column - repeat.columns + 1,
      to_stitch: grid.columns - repeat.column,
      from_row: repeat.row + 1,
      to_row: repeat.row + repeat.rows,
    },
  };
}

// The sketch that such fields hold; shades that the chart does not have itself stay as they were known.
export function sketchOf(fields, known, symbols) {
  const usual = new Map(known.map((role) => [role.role, role]));
  const roles = Object.entries(fields.roles).map(([mark, role]) => {
    const before = usual.get(role);
    const own = fields.shades?.[role];
    return { mark, role, name: before?.name ?? role, shade: own ?? before?.shade ?? "#b4b6b6", own: own !== undefined };
  });
  const grid = gridOf(fields.rows, fields.stitches, roles, symbols);
  const box = fields.repeat;
  const repeat = box && {
    column: grid.columns - box.to_stitch,
    row: box.from_row - 1,
    columns: box.to_stitch - box.from_stitch + 1,
    rows: box.to_row - box.from_row + 1,
  };
  return { grid, roles, repeat };
}
