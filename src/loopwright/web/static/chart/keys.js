// The keyboard on the canvas.
import { boxOf } from "./shapes.js";
import { TOOLS } from "./tools.js";

const ARROWS = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] };

export function useKeys(bench) {
  const { canvas, state, tools, view } = bench;

  function step([right, up], event) {
    const { grid } = bench.sketch;
    const far = event.altKey ? 10 : 1;
    const before = { ...state.cursor };
    state.cursor.column = Math.min(grid.columns - 1, Math.max(0, before.column + right * far));
    state.cursor.row = Math.min(grid.rows - 1, Math.max(0, before.row + up * far));
    if (event.shiftKey && tools.chosen === "select") {
      state.corner ??= before;
      state.selection = boxOf(state.corner, state.cursor);
    } else if (event.shiftKey && tools.chosen === "paint") {
      tools.line(before, state.cursor);
    }
    if (!event.shiftKey) state.corner = null;
    if (tools.from) tools.show(state.cursor);
    view.reveal(state.cursor);
    bench.showCursor(true);
  }

  // Works the cell: tools that go from here to there begin with the first press and end with the second.
  function press() {
    const cell = { ...state.cursor };
    if (tools.chosen === "line" || tools.chosen === "select") {
      if (!tools.from) {
        tools.down(cell);
        return;
      }
      tools.move(cell);
      tools.up();
    } else if (tools.chosen !== "move") {
      tools.down(cell);
      tools.up();
    }
    bench.showCursor(true);
  }

  canvas.addEventListener("focus", () => bench.showCursor(canvas.matches(":focus-visible")));
  canvas.addEventListener("blur", () => bench.showCursor(false));
  canvas.addEventListener("keydown", (event) => {
    if (event.ctrlKey || event.metaKey) return;
    const letter = event.key.toLowerCase();
    const tool = TOOLS.find((one) => one.letter === letter);
    if (ARROWS[event.key]) step(ARROWS[event.key], event);
    else if (event.key === " " || event.key === "Enter") press();
    else if (event.key === "Escape") {
      tools.cancel();
      state.selection = null;
      state.corner = null;
      view.everything();
    } else if (event.key === "+" || event.key === "=") view.zoom(1.25);
    else if (event.key === "-") view.zoom(0.8);
    else if (event.key === "0") view.showWhole();
    else if (/^[1-9]$/.test(event.key)) bench.choose({ role: Number(event.key) - 1, stitch: null });
    else if (event.key === "Delete" || event.key === "Backspace") bench.parts.clear();
    else if (tool) bench.useTool(tool.key);
    else return;
    event.preventDefault();
  });

  document.addEventListener("keydown", (event) => {
    if (!(event.ctrlKey || event.metaKey) || event.target.matches?.("input, textarea, select")) return;
    const letter = event.key.toLowerCase();
    if (letter === "z" && !event.shiftKey) bench.undo();
    else if (letter === "y" || letter === "z") bench.redo();
    else return;
    event.preventDefault();
  });
}
