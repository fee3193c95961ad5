// What the tools do with the cells that are gone over.
import { healed } from "./grid.js";
import { Stroke } from "./history.js";
import { boxOf, fillCells, lineCells } from "./shapes.js";

export const TOOLS = [
  { key: "paint", label: "Paint", letter: "p" },
  { key: "line", label: "Line", letter: "l" },
  { key: "fill", label: "Fill", letter: "f" },
  { key: "take", label: "Take colour", letter: "c" },
  { key: "select", label: "Select", letter: "s" },
  { key: "move", label: "Move view", letter: "m" },
];

export class Tools {
  constructor(bench) {
    this.bench = bench;
    this.chosen = "paint";
    this.brush = { role: 1, stitch: null };
  }

  // Works one cell with the brush: its colour, or its stitch with all the boxes that it takes.
  put(stroke, column, row) {
    const { sketch, symbols } = this.bench;
    const { grid } = sketch;
    if (!grid.holds(column, row)) return;
    const { role, stitch } = this.brush;
    const index = grid.at(column, row);
    if (stitch === null) {
      stroke.set(index, Math.min(role, sketch.roles.length - 1), grid.stitches[index]);
      return;
    }
    const { boxes } = symbols[stitch];
    const first = Math.min(column, grid.columns - boxes);
    if (first < 0) return;
    for (let box = 0; box < boxes; box += 1) {
      const at = grid.at(first + box, row);
      stroke.set(at, grid.roles[at], stitch);
    }
    healed(grid, row, symbols, stroke.set);
  }

  down(cell) {
    const { bench } = this;
    this.from = this.last = cell;
    if (this.chosen === "paint") {
      this.stroke = new Stroke(bench.sketch);
      this.paint(cell);
    } else if (this.chosen === "fill") this.fill(cell);
    else if (this.chosen === "take") bench.take(cell);
    else this.show(cell);
  }

  move(cell) {
    if (!this.from || (cell.column === this.last.column && cell.row === this.last.row)) return;
    if (this.stroke) this.paint(cell);
    this.last = cell;
    if (this.chosen === "line" || this.chosen === "select") this.show(cell);
  }

  up() {
    const { bench } = this;
    if (this.stroke) bench.finish(this.stroke);
    else if (this.from && this.chosen === "line") this.line(this.from, this.last);
    this.letGo();
  }

  // A second finger, or Escape: as if it had not begun.
  cancel() {
    if (this.stroke) {
      const cells = [...this.stroke.before.keys()];
      this.stroke.takeBack();
      this.bench.touched(cells);
    }
    this.letGo();
  }

  letGo() {
    this.stroke = this.from = null;
    this.bench.state.ghost = null;
    this.bench.view.everything();
  }

  paint(cell) {
    const { stroke } = this;
    const cells = new Set();
    const before = new Set(stroke.before.keys());
    lineCells(this.last, cell, (column, row) => {
      this.put(stroke, column, row);
      if (this.bench.sketch.grid.holds(column, row)) cells.add(this.bench.sketch.grid.at(column, row));
    });
    for (const index of stroke.before.keys()) if (!before.has(index)) cells.add(index);
    this.bench.touched(cells);
  }

  // Shows where a line or a selection would be.
  show(cell) {
    const { state, view, sketch } = this.bench;
    if (this.chosen === "line") {
      state.ghost = [];
      lineCells(this.from, cell, (column, row) => sketch.grid.holds(column, row) && state.ghost.push({ column, row }));
    } else if (this.chosen === "select") {
      state.selection = this.inside(boxOf(this.from, cell));
    }
    view.everything();
  }

  inside({ column, row, columns, rows }) {
    const { grid } = this.bench.sketch;
    const first = Math.max(0, column);
    const low = Math.max(0, row);
    const last = Math.min(grid.columns - 1, column + columns - 1);
    const high = Math.min(grid.rows - 1, row + rows - 1);
    if (last < first || high < low) return null;
    return { column: first, row: low, columns: last - first + 1, rows: high - low + 1 };
  }

  line(from, to) {
    const stroke = new Stroke(this.bench.sketch);
    lineCells(from, to, (column, row) => this.put(stroke, column, row));
    this.bench.finish(stroke);
  }

  fill(cell) {
    const { sketch, symbols } = this.bench;
    const { grid } = sketch;
    if (!grid.holds(cell.column, cell.row)) return;
    const stroke = new Stroke(sketch);
    const { role, stitch } = this.brush;
    if (stitch !== null && symbols[stitch].boxes > 1) this.put(stroke, cell.column, cell.row);
    else {
      const rows = new Set();
      const cells = stitch === null ? grid.roles : grid.stitches;
      fillCells(grid, cell, Uint8Array.from(cells), (index) => {
        if (stitch === null) stroke.set(index, Math.min(role, sketch.roles.length - 1), grid.stitches[index]);
        else stroke.set(index, grid.roles[index], stitch);
        rows.add(Math.floor(index / grid.columns));
      });
      if (stitch !== null) for (const row of rows) healed(grid, row, symbols, stroke.set);
    }
    this.bench.finish(stroke);
  }
}
