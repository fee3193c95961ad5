// Floats over the limit, row by row, and rows with more than two colours: the same law as in loopwright.chart.floats.

// Where to catch a run of so many stitches, counted from 1 in working order.
export function catchCells(stitches, limit) {
  const catches = Math.max(0, Math.ceil((stitches - limit) / (limit + 1)));
  return Array.from({ length: catches }, (_, at) => Math.floor(((at + 1) * (stitches + 1)) / (catches + 1)));
}

// The catches of one float, moved aside by a stitch or two so that none stands above one of the row below, where the
// limit leaves room. `columns` are those that it passes, in working order.
export function catchesAside(columns, limit, below) {
  const usual = catchCells(columns.length, limit);
  for (const shift of [0, 1, -1, 2, -2]) {
    const moved = usual.map((cell) => cell + shift);
    const after = columns.length - moved.at(-1);
    if (moved[0] < 1 || moved[0] - 1 > limit || after < 0 || after > limit) continue;
    const chosen = moved.map((cell) => columns[cell - 1]);
    if (!chosen.some((column) => below.has(column))) return chosen;
  }
  return usual.map((cell) => columns[cell - 1]);
}

// The columns of a row that are worked: a box without a stitch is not.
function workedColumns(grid, row, noStitch, first, end) {
  const worked = [];
  for (let column = first; column < end; column += 1) {
    if (grid.stitches[grid.at(column, row)] !== noStitch) worked.push(column);
  }
  return worked;
}

// Every float along some worked columns; around, from the last use to the first one too.
function floatsAlong(grid, row, worked, { between, around }) {
  const uses = new Map();
  worked.forEach((column, place) => {
    const role = grid.roles[grid.at(column, row)];
    if (!uses.has(role)) uses.set(role, []);
    uses.get(role).push(place);
  });
  const found = [];
  for (const [role, places] of uses) {
    const steps = between ? places.slice(1).map((place, at) => [places[at], place - places[at] - 1]) : [];
    if (around) steps.push([places.at(-1), worked.length - 1 - places.at(-1) + places[0]]);
    for (const [after, stitches] of steps) {
      if (stitches <= 0) continue;
      const columns = Array.from({ length: stitches }, (_, step) => worked[(after + 1 + step) % worked.length]);
      found.push({ role, after: worked[after], stitches, columns });
    }
  }
  return found;
}

export function rowFloats(grid, row, { inTheRound, repeat, noStitch }) {
  const whole = inTheRound || (repeat && repeat.columns === grid.columns);
  const worked = workedColumns(grid, row, noStitch, 0, grid.columns);
  const found = floatsAlong(grid, row, worked, { between: true, around: whole });
  if (repeat && !whole && row >= repeat.row && row < repeat.row + repeat.rows) {
    const inside = workedColumns(grid, row, noStitch, repeat.column, repeat.column + repeat.columns);
    found.push(...floatsAlong(grid, row, inside, { between: false, around: true }));
  }
  return found.sort((one, other) => one.role - other.role || one.after - other.after);
}

// What is known of every row; only rows that were touched are looked at again.
export class Watch {
  constructor(rules) {
    this.rules = rules;
    this.rows = [];
  }

  all(grid, repeat) {
    this.repeat = repeat;
    this.rows = Array.from({ length: grid.rows }, (_, row) => this.look(grid, row));
    for (let row = 0; row < grid.rows; row += 1) this.place(row);
  }

  some(grid, rows) {
    let last = -1;
    for (const row of rows) {
      this.rows[row] = this.look(grid, row);
      last = Math.max(last, row);
    }
    // What a row catches may move what the next one does.
    for (let row = Math.min(...rows); row < grid.rows && (this.place(row) || row <= last); row += 1);
  }

  // Puts the catches of a row where none stands below; says whether any has moved.
  place(row) {
    const below = new Set(this.rows[row - 1]?.long.flatMap((one) => one.catches));
    const before = this.rows[row].long.flatMap((one) => one.catches).join();
    for (const one of this.rows[row].long) one.catches = catchesAside(one.working, this.rules.limit, below);
    return this.rows[row].long.flatMap((one) => one.catches).join() !== before;
  }

  look(grid, row) {
    const { limit, inTheRound, firstRowRightSide, noStitch } = this.rules;
    const leftwards = inTheRound || (row % 2 === 0) === firstRowRightSide;
    const floats = rowFloats(grid, row, { inTheRound, repeat: this.repeat, noStitch });
    const long = floats
      .filter((one) => one.stitches > limit)
      .map((one) => ({ ...one, working: leftwards ? [...one.columns].reverse() : one.columns, catches: [] }));
    const used = new Set();
    for (let column = 0; column < grid.columns; column += 1) {
      if (grid.stitches[grid.at(column, row)] !== noStitch) used.add(grid.roles[grid.at(column, row)]);
    }
    return { long, colours: used.size, longest: Math.max(0, ...floats.map((one) => one.stitches)) };
  }
}

const list = (numbers) => (numbers.length > 6 ? `${numbers.slice(0, 6).join(", ")} and ${numbers.length - 6} more` : numbers.join(", "));

// In words, for the page.
export function inWords(watch, { limit, stitchMm, imperial }) {
  const length = (stitches) =>
    imperial ? `${((stitches * stitchMm) / 25.4).toFixed(1)} in` : `${((stitches * stitchMm) / 10).toFixed(1)} cm`;
  const long = watch.rows.map((row, at) => ({ number: at + 1, count: row.long.length, longest: row.longest }));
  const over = long.filter((row) => row.count);
  const many = watch.rows.flatMap((row, at) => (row.colours > 2 ? [at + 1] : []));
  const worst = long.reduce((one, other) => (other.longest > one.longest ? other : one), { longest: 0 });
  const parts = [];
  if (over.length) {
    const count = over.reduce((sum, row) => sum + row.count, 0);
    parts.push(
      `${count} over ${limit} stitches, in ${over.length === 1 ? "row" : "rows"} ${list(over.map((row) => row.number))}; ` +
        `the longest passes ${worst.longest}, ${length(worst.longest)}, in row ${worst.number}.`,
    );
  } else {
    parts.push(worst.longest ? `None over ${limit} stitches; the longest passes ${worst.longest}, ${length(worst.longest)}.` : "None.");
  }
  if (many.length) parts.push(`More than two colours in ${many.length === 1 ? "row" : "rows"} ${list(many)}.`);
  return parts.join(" ");
}
