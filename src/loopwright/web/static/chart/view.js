// The chart on its canvas: only what has changed is drawn again, at the next frame of the screen.
import { drawLines, drawNumbers } from "./lines.js";
import { drawOverlay } from "./overlay.js";
import { drawSymbols, SymbolPaths } from "./symbols.js";

const LEAST_CELL = 1;
const MOST_CELL = 64;
const SYMBOLS_FROM = 8;
const UNDER = 20;
const SIDE = [34, 42, 50, 58]; // room for numbers of one to four digits
const EDGE = 4;
const PAPER = "#fbfbfa";

export class View {
  // `sketch` is what is drawn; `state` what stands on top of it: cursor, selection, ghost, floats.
  constructor(canvas, sketch, state, { ratio, symbols, noStitch, inTheRound, firstRowRightSide }) {
    Object.assign(this, { canvas, sketch, state, ratio, symbols, noStitch, inTheRound, firstRowRightSide });
    this.context = canvas.getContext("2d", { alpha: false });
    this.paths = new SymbolPaths(symbols);
    this.spent = []; // what the last frames took, in ms
    this.pan = { x: 0, y: 0 };
    this.refresh();
    new ResizeObserver(() => this.fitCanvas()).observe(canvas.parentElement);
  }

  get high() {
    return this.wide * this.ratio;
  }

  get side() {
    return SIDE[String(this.sketch.grid.rows).length - 1];
  }

  get left() {
    return this.inTheRound ? EDGE : this.side;
  }

  // Colours and cells as a small picture of one point a cell, which the canvas enlarges.
  refresh() {
    const { grid, roles } = this.sketch;
    this.tiny = new OffscreenCanvas(grid.columns, grid.rows);
    this.points = this.tiny.getContext("2d");
    this.image = this.points.createImageData(grid.columns, grid.rows);
    this.words = new Uint32Array(this.image.data.buffer);
    this.colours = roles.map(({ shade }) => {
      const value = parseInt(shade.slice(1), 16);
      return (255 << 24) | ((value & 255) << 16) | (value & 0xff00) | (value >> 16);
    });
    for (let index = 0; index < grid.roles.length; index += 1) this.setPoint(index);
    this.points.putImageData(this.image, 0, 0);
    this.marked = grid.stitches.some((stitch) => stitch !== 0);
    this.everything();
  }

  setPoint(index) {
    const { grid } = this.sketch;
    const row = Math.floor(index / grid.columns);
    const at = (grid.rows - 1 - row) * grid.columns + (index % grid.columns);
    this.words[at] = grid.stitches[index] === this.noStitch ? 0xffa2a3a3 : this.colours[grid.roles[index]];
    if (grid.stitches[index]) this.marked = true;
  }

  // Cells that were changed, as indices: their rows are drawn anew, since floats and crossings reach along them.
  touched(indices) {
    const { grid } = this.sketch;
    let [low, high] = [grid.rows, -1];
    for (const index of indices) {
      this.setPoint(index);
      const row = Math.floor(index / grid.columns);
      low = Math.min(low, row);
      high = Math.max(high, row);
    }
    if (high < 0) return;
    this.points.putImageData(this.image, 0, 0, 0, grid.rows - 1 - high, grid.columns, high - low + 1);
    this.soon({ low, high });
  }

  everything() {
    this.soon(null);
  }

  // Draws at the next frame: some rows, or everything for null.
  soon(cells) {
    if (!this.waiting) {
      this.waiting = true;
      this.dirty = cells;
      requestAnimationFrame(() => this.frame());
    } else if (cells === null || this.dirty === null) {
      this.dirty = null;
    } else {
      this.dirty = { low: Math.min(this.dirty.low, cells.low), high: Math.max(this.dirty.high, cells.high) };
    }
  }

  fitCanvas() {
    const box = this.canvas.parentElement.getBoundingClientRect();
    if (!box.width) return;
    const most = Math.max(240, Math.round(innerHeight * 0.66));
    const { grid } = this.sketch;
    const whole = this.wide === undefined || this.isWhole;
    this.width = Math.floor(box.width);
    const fit = Math.min((this.width - this.left - this.side) / grid.columns, (most - UNDER - EDGE) / (grid.rows * this.ratio), 44);
    this.height = Math.round(Math.min(most, Math.max(200, grid.rows * fit * this.ratio + UNDER + EDGE + 1)));
    const dots = devicePixelRatio || 1;
    this.canvas.style.height = `${this.height}px`;
    this.canvas.width = Math.round(this.width * dots);
    this.canvas.height = Math.round(this.height * dots);
    this.dots = dots;
    this.fit = Math.max(LEAST_CELL, fit);
    if (whole) this.showWhole();
    else this.keepInside();
    this.everything();
  }

  showWhole() {
    this.wide = this.fit;
    this.isWhole = true;
    this.keepInside();
    this.everything();
  }

  // Enlarges or lessens about a point of the canvas.
  zoom(times, x = this.width / 2, y = this.height / 2) {
    const before = this.wide;
    this.wide = Math.min(MOST_CELL, Math.max(Math.min(this.fit, 4), this.wide * times));
    const by = this.wide / before;
    this.pan.x = (x - this.left + this.pan.x) * by - (x - this.left);
    this.pan.y = (y - EDGE + this.pan.y) * by - (y - EDGE);
    this.isWhole = false;
    this.keepInside();
    this.everything();
  }

  move(x, y) {
    this.pan.x -= x;
    this.pan.y -= y;
    this.keepInside();
    this.everything();
  }

  get room() {
    return { width: this.width - this.left - this.side, height: this.height - EDGE - UNDER };
  }

  keepInside() {
    const { grid } = this.sketch;
    const over = { x: grid.columns * this.wide - this.room.width, y: grid.rows * this.high - this.room.height };
    for (const way of ["x", "y"]) {
      // A chart that is smaller than its place stands in the middle of it across, and at its foot.
      this.pan[way] = over[way] <= 0 ? (way === "x" ? over.x / 2 : 0) : Math.min(Math.max(this.pan[way], 0), over[way]);
    }
  }

  x(column) {
    return this.left + column * this.wide - this.pan.x;
  }

  y(row) {
    return EDGE + (this.sketch.grid.rows - 1 - row) * this.high - this.pan.y;
  }

  cellAt(x, y) {
    const column = Math.floor((x - this.left + this.pan.x) / this.wide);
    const row = this.sketch.grid.rows - 1 - Math.floor((y - EDGE + this.pan.y) / this.high);
    return { column, row };
  }

  // Brings a cell into sight.
  reveal({ column, row }) {
    const margin = Math.min(this.wide, 24);
    const right = this.x(column + 1) - (this.left + this.room.width) + margin;
    const down = this.y(row) + this.high - (EDGE + this.room.height) + margin;
    const x = right > 0 ? right : Math.min(0, this.x(column) - this.left - margin);
    const y = down > 0 ? down : Math.min(0, this.y(row) - EDGE - margin);
    if (x || y) this.move(-x, -y);
  }

  frame() {
    const begun = performance.now();
    this.waiting = false;
    if (!this.width) return;
    const { context, dirty } = this;
    context.setTransform(this.dots, 0, 0, this.dots, 0, 0);
    context.save();
    if (dirty) {
      context.beginPath();
      const y = this.y(dirty.high) - 3;
      context.rect(this.left - 1, y, this.room.width + 2, this.y(dirty.low - 1) + 3 - y);
      context.clip();
    }
    context.fillStyle = PAPER;
    context.fillRect(0, 0, this.width, this.height);
    if (!dirty) drawNumbers(this);
    context.beginPath();
    context.rect(this.left - 1, EDGE - 1, this.room.width + 2, this.room.height + 2);
    context.clip();
    this.drawCells();
    const seen = this.seen(dirty);
    if (this.marked && this.wide >= SYMBOLS_FROM) drawSymbols(this, seen);
    drawLines(this, seen);
    drawOverlay(this, seen);
    context.restore();
    this.spent.push(performance.now() - begun);
    if (this.spent.length > 600) this.spent.shift();
  }

  // Columns and rows that are to be drawn: in sight, and among the rows that have changed.
  seen(dirty) {
    const { grid } = this.sketch;
    const one = this.cellAt(this.left, EDGE + this.room.height);
    const other = this.cellAt(this.left + this.room.width, EDGE);
    return {
      first: Math.max(0, one.column),
      last: Math.min(grid.columns - 1, other.column),
      low: Math.max(0, one.row, dirty ? dirty.low - 1 : 0),
      high: Math.min(grid.rows - 1, other.row, dirty ? dirty.high + 1 : grid.rows),
    };
  }

  drawCells() {
    const { grid } = this.sketch;
    this.context.imageSmoothingEnabled = this.wide < 2;
    this.context.drawImage(this.tiny, this.x(0), this.y(grid.rows - 1), grid.columns * this.wide, grid.rows * this.high);
  }
}
