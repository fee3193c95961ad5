// Parts of a chart mirrored, turned upside down, turned by a quarter, copied and put down.
import { KNIT, healed } from "./grid.js";

// A part by itself: its size, and its cells row by row from the bottom.
export function partOf(grid, box) {
  const part = { columns: box.columns, rows: box.rows, roles: [], stitches: [] };
  for (let row = 0; row < box.rows; row += 1) {
    for (let column = 0; column < box.columns; column += 1) {
      const index = grid.at(box.column + column, box.row + row);
      part.roles.push(grid.roles[index]);
      part.stitches.push(grid.stitches[index]);
    }
  }
  return part;
}

// Gives the part with each cell taken from where `from` says: column and row of it in the old part.
function taken(part, columns, rows, from, stitchOf) {
  const other = { columns, rows, roles: [], stitches: [] };
  for (let row = 0; row < rows; row += 1) {
    for (let column = 0; column < columns; column += 1) {
      const [x, y] = from(column, row);
      other.roles.push(part.roles[y * part.columns + x]);
      other.stitches.push(stitchOf(part.stitches[y * part.columns + x]));
    }
  }
  return other;
}

const same = (stitch) => stitch;

export const mirrored = (part, symbols) =>
  taken(part, part.columns, part.rows, (x, y) => [part.columns - 1 - x, y], (stitch) => symbols[stitch].mirrorAt);

export const upsideDown = (part) => taken(part, part.columns, part.rows, (x, y) => [x, part.rows - 1 - y], same);

// Clockwise as it is drawn; stitches cannot be turned and become knit.
export const quarterTurned = (part) =>
  taken(part, part.rows, part.columns, (x, y) => [part.columns - 1 - y, x], () => KNIT);

// Puts a part down with its lower left corner at a cell; what sticks out is left off.
export function putDown(grid, part, column, row, symbols, change) {
  const rows = new Set();
  for (let up = 0; up < part.rows; up += 1) {
    for (let right = 0; right < part.columns; right += 1) {
      if (!grid.holds(column + right, row + up)) continue;
      const from = up * part.columns + right;
      change(grid.at(column + right, row + up), part.roles[from], part.stitches[from]);
      rows.add(row + up);
    }
  }
  for (const touched of rows) healed(grid, touched, symbols, change);
}

export function cleared(grid, box, symbols, change) {
  const size = box.columns * box.rows;
  const nothing = { columns: box.columns, rows: box.rows, roles: new Uint8Array(size), stitches: new Uint8Array(size) };
  putDown(grid, nothing, box.column, box.row, symbols, change);
}
