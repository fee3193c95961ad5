// Cells on a line, and cells that belong together.

// Every cell between two, the ends included. Source: Bresenham, IBM Systems Journal 4 (1965), from memory.
export function lineCells(from, to, each) {
  let { column, row } = from;
  const across = Math.abs(to.column - column);
  const up = -Math.abs(to.row - row);
  const right = column < to.column ? 1 : -1;
  const above = row < to.row ? 1 : -1;
  let error = across + up;
  for (;;) {
    each(column, row);
    if (column === to.column && row === to.row) return;
    const twice = 2 * error;
    if (twice >= up) {
      error += up;
      column += right;
    }
    if (twice <= across) {
      error += across;
      row += above;
    }
  }
}

// Every cell that hangs together with one and is like it, side by side or above each other.
export function fillCells(grid, start, cells, each) {
  const value = cells[grid.at(start.column, start.row)];
  const seen = new Uint8Array(cells.length);
  const waiting = [grid.at(start.column, start.row)];
  seen[waiting[0]] = 1;
  while (waiting.length) {
    const index = waiting.pop();
    each(index);
    const column = index % grid.columns;
    const next = [index - grid.columns, index + grid.columns];
    if (column > 0) next.push(index - 1);
    if (column < grid.columns - 1) next.push(index + 1);
    for (const other of next) {
      if (other >= 0 && other < cells.length && !seen[other] && cells[other] === value) {
        seen[other] = 1;
        waiting.push(other);
      }
    }
  }
}

export function boxOf(one, other) {
  const column = Math.min(one.column, other.column);
  const row = Math.min(one.row, other.row);
  return {
    column,
    row,
    columns: Math.abs(one.column - other.column) + 1,
    rows: Math.abs(one.row - other.row) + 1,
  };
}
