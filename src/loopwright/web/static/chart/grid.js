// A grid of cells: role and stitch of each, row 0 at the bottom, column 0 at the left. Stitch 0 is knit.
export const KNIT = 0;

export class Grid {
  constructor(columns, rows) {
    this.columns = columns;
    this.rows = rows;
    this.roles = new Uint8Array(columns * rows);
    this.stitches = new Uint8Array(columns * rows);
  }

  holds(column, row) {
    return column >= 0 && row >= 0 && column < this.columns && row < this.rows;
  }

  at(column, row) {
    return row * this.columns + column;
  }

  copy() {
    const same = new Grid(this.columns, this.rows);
    same.roles.set(this.roles);
    same.stitches.set(this.stitches);
    return same;
  }

  // The same chart with more or fewer stitches and rows: it grows, and is cut, at the left and above.
  resized(columns, rows) {
    const other = new Grid(columns, rows);
    const shift = columns - this.columns;
    for (let row = 0; row < Math.min(rows, this.rows); row += 1) {
      for (let column = Math.max(0, shift); column < columns; column += 1) {
        other.roles[other.at(column, row)] = this.roles[this.at(column - shift, row)];
        other.stitches[other.at(column, row)] = this.stitches[this.at(column - shift, row)];
      }
    }
    return other;
  }
}

// A crossing fills several boxes: what is left of one that was cut becomes knit. Gives the cells that it changed.
export function healed(grid, row, symbols, change) {
  const first = row * grid.columns;
  let start = 0;
  while (start < grid.columns) {
    const stitch = grid.stitches[first + start];
    let end = start + 1;
    while (end < grid.columns && grid.stitches[first + end] === stitch) end += 1;
    const { boxes } = symbols[stitch];
    if (boxes > 1 && (end - start) % boxes) {
      for (let column = start; column < end; column += 1) change(first + column, grid.roles[first + column], KNIT);
    }
    start = end;
  }
}
