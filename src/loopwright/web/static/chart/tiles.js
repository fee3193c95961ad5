// The repeat laid side by side, small, in the proportion of the stitch.
const HEIGHT = 150;

export function drawTiles(canvas, view) {
  const { grid, repeat } = view.sketch;
  const part = repeat ?? { column: 0, row: 0, columns: grid.columns, rows: grid.rows };
  const dots = devicePixelRatio || 1;
  const width = canvas.parentElement.clientWidth;
  if (!width) return;
  canvas.style.height = `${HEIGHT}px`;
  canvas.width = Math.round(width * dots);
  canvas.height = Math.round(HEIGHT * dots);
  const context = canvas.getContext("2d");
  const wide = Math.max(1, Math.min(6, width / (3 * part.columns), HEIGHT / (1.5 * part.rows * view.ratio))) * dots;
  const high = wide * view.ratio;
  context.imageSmoothingEnabled = false;
  const top = grid.rows - part.row - part.rows;
  for (let y = canvas.height - part.rows * high; y > -part.rows * high; y -= part.rows * high) {
    for (let x = 0; x < canvas.width; x += part.columns * wide) {
      context.drawImage(view.tiny, part.column, top, part.columns, part.rows, x, y, part.columns * wide + 0.5, part.rows * high + 0.5);
    }
  }
}
