// The bench of one chart: what is drawn, what is chosen, and what follows from a step.
import { Colours } from "./colours.js";
import { Watch, inWords } from "./floats.js";
import { History } from "./history.js";
import { Keeping } from "./keeping.js";
import { useKeys } from "./keys.js";
import { clash, takeUp } from "./left.js";
import { showMoves, showRoles, showStitches, showTools } from "./palettes.js";
import { Parts } from "./parts.js";
import { usePointers } from "./pointer.js";
import { fieldsOf, gridOf } from "./text.js";
import { drawTiles } from "./tiles.js";
import { Tools } from "./tools.js";
import { View } from "./view.js";

const MOST_SHOWN = 300; // beyond, lines for floats would hide the chart; she can still ask for them

class Bench {
  constructor(place, data) {
    this.place = place;
    this.data = data;
    this.symbols = data.symbols.map((symbol) => ({
      ...symbol,
      mirrorAt: data.symbols.findIndex((other) => other.key === symbol.mirror),
    }));
    const noStitch = data.symbols.findIndex((symbol) => symbol.key === "no-stitch");
    this.sketch = { grid: gridOf(data.rows, data.stitches, data.roles, data.symbols), roles: data.roles, repeat: data.repeat };
    this.history = new History();
    this.rules = { ...data, noStitch };
    this.state = {
      cursor: { column: this.sketch.grid.columns - 1, row: 0 },
      cursorShown: false,
      selection: null,
      ghost: null,
      showFloats: true,
      watch: new Watch(this.rules),
    };
    this.canvas = place.querySelector("#chart-canvas");
    this.says = place.querySelector("#chart-cursor");
    place.hidden = false;
    this.view = new View(this.canvas, this.sketch, this.state, { ...this.rules, symbols: this.symbols });
    this.tools = new Tools(this);
    this.parts = new Parts(this);
    this.colours = new Colours(this);
    this.view.fitCanvas();
    this.keeping = this.makeKeeping();
    this.showAll();
    usePointers(this);
    useKeys(this);
    takeUp(this);
    const many = this.state.watch.rows.reduce((sum, row) => sum + row.long.length, 0);
    if (many > MOST_SHOWN) this.toggleFloats();
  }

  makeKeeping() {
    const said = this.place.querySelector("#chart-kept");
    return new Keeping({
      address: this.place.dataset.draw,
      place: this.place.dataset.place,
      token: document.querySelector("[name=csrfmiddlewaretoken]").value,
      known: this.data.known,
      fields: () => fieldsOf(this.sketch, this.symbols),
      says: (words) => (said.textContent = words),
      kept: () => document.body.dispatchEvent(new CustomEvent("chart-kept")),
      clash: (told) => clash(this, told),
    });
  }

  showAll() {
    const find = (name) => this.place.querySelector(`[data-${name}]`);
    showTools(this, find("tools"));
    showMoves(this, find("moves"));
    showStitches(this, find("stitches"), this.data.used);
    this.size = find("size");
    this.size.addEventListener("submit", (event) => {
      event.preventDefault();
      this.parts.resize(Number(this.size.elements.columns.value), Number(this.size.elements.rows.value));
    });
    addEventListener("resize", () => this.after());
    this.useTool("paint");
    this.refresh();
    this.choose({ role: Math.min(1, this.sketch.roles.length - 1), stitch: null });
  }

  // ------------------------------------------------------------------------------------------ steps
  // Ends a stroke: it becomes one step.
  finish(stroke) {
    const step = stroke.step();
    if (!step) return;
    this.history.add(this.withView(step));
    this.touched(stroke.before.keys());
    this.after();
  }

  // A step that changes more than cells: what there was before, and after.
  whole(change) {
    const { view, sketch } = this;
    const snapshot = () => ({ grid: sketch.grid.copy(), roles: sketch.roles, repeat: sketch.repeat });
    const before = snapshot();
    change(sketch);
    const after = snapshot();
    const put = (kept) => () => Object.assign(sketch, { ...kept, grid: kept.grid.copy() });
    this.history.add(this.withView({ back: put(before), forth: put(after) }));
    view.isWhole = view.isWhole || view.wide === view.fit;
    this.refresh();
  }

  withView({ back, forth }) {
    const then = (act) => () => {
      act();
      this.refresh();
    };
    return { back: then(back), forth: then(forth) };
  }

  undo() {
    this.tools.cancel();
    if (!this.history.undo()) this.tell("Nothing to undo.");
  }

  redo() {
    if (!this.history.redo()) this.tell("Nothing to do again.");
  }

  // Cells that were changed while a tool is at work.
  touched(indices) {
    const { grid } = this.sketch;
    const cells = [...indices];
    const rows = new Set(cells.map((index) => Math.floor(index / grid.columns)));
    this.state.watch.some(grid, rows);
    this.view.touched(cells);
    this.sayFloats();
  }

  // Everything anew: the chart has another size, other colours, or was put back.
  refresh() {
    const { grid, repeat } = this.sketch;
    this.state.watch.all(grid, repeat);
    const { cursor } = this.state;
    cursor.column = Math.min(cursor.column, grid.columns - 1);
    cursor.row = Math.min(cursor.row, grid.rows - 1);
    if (this.state.selection) this.state.selection = this.tools.inside(this.state.selection);
    this.view.refresh();
    this.view.fitCanvas();
    showRoles(this, this.place.querySelector("[data-roles]"));
    this.size.elements.columns.value = grid.columns;
    this.size.elements.rows.value = grid.rows;
    this.choose(this.tools.brush);
    this.after();
  }

  after() {
    this.undoButton.setAttribute("aria-disabled", String(!this.history.done.length));
    this.redoButton.setAttribute("aria-disabled", String(!this.history.undone.length));
    this.sayFloats();
    clearTimeout(this.tilesLater);
    this.tilesLater = setTimeout(() => drawTiles(document.getElementById("chart-tiles"), this.view), 60);
    const now = this.history.done.at(-1);
    if (now !== this.lastStep) this.keeping.changed();
    this.lastStep = now;
  }

  // ----------------------------------------------------------------------------------------- choices
  useTool(key) {
    this.tools.cancel();
    this.tools.chosen = key;
    this.canvas.dataset.tool = key;
    for (const one of this.place.querySelectorAll("[data-tool]")) {
      if (one !== this.canvas) one.setAttribute("aria-pressed", String(one.dataset.tool === key));
    }
  }

  choose({ role, stitch }) {
    this.tools.brush = { role: Math.min(role, this.sketch.roles.length - 1), stitch };
    for (const one of this.place.querySelectorAll("[data-role], [data-stitch]")) {
      const isIt = stitch === null ? Number(one.dataset.role) === this.tools.brush.role : Number(one.dataset.stitch) === stitch;
      one.setAttribute("aria-pressed", String(isIt));
    }
  }

  take({ column, row }) {
    const { grid } = this.sketch;
    if (!grid.holds(column, row)) return;
    const index = grid.at(column, row);
    const stitch = this.tools.brush.stitch === null ? null : grid.stitches[index];
    this.choose({ role: grid.roles[index], stitch });
    this.useTool("paint");
  }

  toggleFloats() {
    this.state.showFloats = !this.state.showFloats;
    this.place.querySelector("[data-floats]").setAttribute("aria-pressed", String(this.state.showFloats));
    this.view.everything();
  }

  // -------------------------------------------------------------------------------------------- words
  tell(words) {
    this.says.textContent = words;
  }

  wordsOf({ column, row }) {
    const { grid, roles } = this.sketch;
    if (!grid.holds(column, row)) return "";
    const index = grid.at(column, row);
    const role = roles[grid.roles[index]];
    const named = role.name === role.role ? role.role : `${role.role}, ${role.name}`;
    const stitch = grid.stitches[index] ? `, ${this.symbols[grid.stitches[index]].name}` : "";
    return `Row ${row + 1}, stitch ${grid.columns - column}: ${named}${stitch}`;
  }

  pointedAt(cell) {
    this.says.setAttribute("aria-live", "off"); // a mouse that wanders is not read aloud
    const words = this.wordsOf(cell);
    if (words !== this.says.textContent && words) this.says.textContent = words;
  }

  showCursor(shown) {
    this.state.cursorShown = shown;
    if (shown) {
      this.says.setAttribute("aria-live", "polite");
      this.tell(this.wordsOf(this.state.cursor));
    }
    this.view.everything();
  }

  sayFloats() {
    clearTimeout(this.floatsLater);
    this.floatsLater = setTimeout(() => {
      document.getElementById("chart-floats").textContent = inWords(this.state.watch, this.rules);
    }, 120);
  }
}

const place = document.getElementById("drawing");
if (place) place.bench = new Bench(place, JSON.parse(document.getElementById("chart-data").textContent));
