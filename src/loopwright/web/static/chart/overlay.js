// What stands on top of the cells: the repeat, long floats with their catches, what a tool shows, selection and cursor.
const INK = "#1f2021";
const PAPER = "#fbfbfa";

function twice(context, draw, width) {
  context.strokeStyle = PAPER;
  context.lineWidth = width + 2.5;
  draw();
  context.strokeStyle = INK;
  context.lineWidth = width;
  draw();
}

function box(view, { column, row, columns, rows }, width, dash = []) {
  const { context } = view;
  const [x, y] = [view.x(column), view.y(row + rows - 1)];
  context.setLineDash(dash);
  twice(context, () => context.strokeRect(x, y, columns * view.wide, rows * view.high), width);
  context.setLineDash([]);
}

// A long float lies behind the cells: a line through them, with a stroke across where it is caught.
function floats(view, { low, high }) {
  if (view.wide < 4) return;
  const { context, state } = view;
  const tick = Math.min(view.high * 0.36, 9);
  context.lineCap = "butt";
  for (let row = low; row <= high; row += 1) {
    const y = view.y(row) + view.high / 2;
    for (const one of state.watch.rows[row]?.long ?? []) {
      const sorted = [...one.columns].sort((a, b) => a - b);
      const lines = () => {
        context.beginPath();
        let start = sorted[0];
        sorted.forEach((column, at) => {
          if (sorted[at + 1] !== column + 1) {
            context.moveTo(view.x(start) + 1, y);
            context.lineTo(view.x(column + 1) - 1, y);
            start = sorted[at + 1];
          }
        });
        for (const column of one.catches) {
          const x = view.x(column) + view.wide / 2;
          context.moveTo(x, y - tick);
          context.lineTo(x, y + tick);
        }
        context.stroke();
      };
      twice(context, lines, 1.2);
    }
  }
}

export function drawOverlay(view, seen) {
  const { state, sketch, context } = view;
  if (state.showFloats) floats(view, seen);
  if (sketch.repeat) box(view, sketch.repeat, 2.2);
  if (state.ghost) {
    context.fillStyle = "rgba(31, 32, 33, 0.45)";
    for (const { column, row } of state.ghost) context.fillRect(view.x(column), view.y(row), view.wide, view.high);
  }
  if (state.selection) box(view, state.selection, 1.6, [5, 4]);
  if (state.cursorShown) box(view, { ...state.cursor, columns: 1, rows: 1 }, 2);
}
