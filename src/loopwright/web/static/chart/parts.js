// What is done to the selection, or to the whole chart where nothing is selected.
import { Stroke } from "./history.js";
import { cleared, mirrored, partOf, putDown, quarterTurned, upsideDown } from "./moves.js";

const MOST_SIDE = 1000;

export class Parts {
  constructor(bench) {
    this.bench = bench;
  }

  get part() {
    const { grid } = this.bench.sketch;
    return this.bench.state.selection ?? { column: 0, row: 0, columns: grid.columns, rows: grid.rows };
  }

  turn(how) {
    const { sketch, symbols } = this.bench;
    const box = this.part;
    const part = partOf(sketch.grid, box);
    const turned = { mirror: () => mirrored(part, symbols), upsideDown: () => upsideDown(part), quarter: () => quarterTurned(part) }[how]();
    if (how === "quarter" && !this.bench.state.selection) {
      this.bench.whole((now) => {
        now.grid = now.grid.resized(turned.columns, turned.rows);
        now.grid.roles.set(turned.roles);
        now.grid.stitches.set(turned.stitches);
        now.repeat = null;
      });
      return;
    }
    const stroke = new Stroke(sketch);
    if (how === "quarter") {
      cleared(sketch.grid, box, symbols, stroke.set);
      this.bench.state.selection = this.bench.tools.inside({ ...box, columns: turned.columns, rows: turned.rows });
    }
    putDown(sketch.grid, turned, box.column, box.row, symbols, stroke.set);
    this.bench.finish(stroke);
  }

  copy() {
    this.carried = partOf(this.bench.sketch.grid, this.part);
    this.bench.tell(`${this.carried.columns} stitches by ${this.carried.rows} rows are taken; Put down lays them at the selection or the cell.`);
  }

  paste() {
    if (!this.carried) {
      this.bench.tell("Nothing is taken yet: select a part and press Copy.");
      return;
    }
    const at = this.bench.state.selection ?? this.bench.state.cursor;
    const stroke = new Stroke(this.bench.sketch);
    putDown(this.bench.sketch.grid, this.carried, at.column, at.row, this.bench.symbols, stroke.set);
    this.bench.finish(stroke);
  }

  clear() {
    const stroke = new Stroke(this.bench.sketch);
    cleared(this.bench.sketch.grid, this.part, this.bench.symbols, stroke.set);
    this.bench.finish(stroke);
  }

  makeRepeat() {
    const part = { ...this.part };
    this.bench.whole((now) => (now.repeat = this.bench.state.selection ? part : null));
    this.bench.tell(this.bench.state.selection ? `The repeat is ${part.columns} stitches by ${part.rows} rows.` : "The whole chart is the repeat.");
  }

  selectAll() {
    const { grid } = this.bench.sketch;
    this.bench.state.selection = { column: 0, row: 0, columns: grid.columns, rows: grid.rows };
    this.bench.view.everything();
  }

  resize(columns, rows) {
    if (![columns, rows].every((side) => Number.isInteger(side) && side >= 1 && side <= MOST_SIDE)) {
      this.bench.tell(`Stitches and rows are whole numbers from 1 to ${MOST_SIDE}.`);
      return;
    }
    this.bench.whole((now) => {
      const shift = columns - now.grid.columns;
      const box = now.repeat && { ...now.repeat, column: now.repeat.column + shift };
      now.grid = now.grid.resized(columns, rows);
      now.repeat = box && box.column >= 0 && box.row + box.rows <= rows ? box : null;
    });
  }
}
