// The lines between the cells, and the numbers beside and below them.
const LINES_FROM = 5;
const EDGE = 4;
const THIN = "rgba(31, 32, 33, 0.26)";
const THICK = "rgba(31, 32, 33, 0.8)";
const INK = "#1f2021";

// At which stitch and row the heavier lines stand.
const stepOf = ({ columns, rows }) => (Math.max(columns, rows) <= 30 ? 5 : 10);

export function drawLines(view, { first, last, low, high }) {
  const { context } = view;
  const { grid } = view.sketch;
  const step = stepOf(grid);
  const [x, right] = [view.x(first), view.x(last + 1)];
  const [y, bottom] = [view.y(high), view.y(low - 1)];
  const lines = (isThick) => {
    context.beginPath();
    for (let column = first; column <= last + 1; column += 1) {
      const counted = grid.columns - column;
      if ((counted % step === 0 || column === 0) !== isThick) continue;
      const at = Math.round(view.x(column) * view.dots) / view.dots;
      context.moveTo(at, y);
      context.lineTo(at, bottom);
    }
    for (let row = low; row <= high + 1; row += 1) {
      if ((row % step === 0 || row === grid.rows) !== isThick) continue;
      const at = Math.round(view.y(row - 1) * view.dots) / view.dots;
      context.moveTo(x, at);
      context.lineTo(right, at);
    }
    context.stroke();
  };
  context.lineWidth = 1;
  if (view.wide >= LINES_FROM) {
    context.strokeStyle = THIN;
    lines(false);
  }
  if (view.wide * step >= 2 * LINES_FROM) {
    context.strokeStyle = view.wide >= LINES_FROM ? THICK : THIN;
    lines(true);
  }
}

export function drawNumbers(view) {
  const { context } = view;
  const { grid } = view.sketch;
  const { first, last, low, high } = view.seen(null);
  const step = view.high >= 15 ? 1 : view.high * 5 >= 15 ? 5 : view.high * 10 >= 15 ? 10 : 50;
  context.fillStyle = INK;
  context.font = "12px Inter, system-ui, sans-serif";
  context.textBaseline = "middle";
  for (let row = low; row <= high; row += 1) {
    if ((row + 1) % step && row) continue;
    const y = view.y(row) + view.high / 2;
    if (y < EDGE + 4 || y > EDGE + view.room.height - 2) continue;
    const leftwards = view.inTheRound || (row % 2 === 0) === view.firstRowRightSide;
    const edge = leftwards ? Math.min(view.x(grid.columns), view.left + view.room.width) : Math.max(view.x(0), view.left);
    context.textAlign = leftwards ? "left" : "right";
    context.fillText(leftwards ? `← ${row + 1}` : `${row + 1} →`, leftwards ? edge + 5 : edge - 5, y);
  }
  const across = view.wide >= 22 ? 1 : view.wide * 5 >= 22 ? 5 : view.wide * 10 >= 22 ? 10 : 50;
  const foot = Math.min(view.y(-1), EDGE + view.room.height) + 11;
  context.textAlign = "center";
  for (let column = first; column <= last; column += 1) {
    const number = grid.columns - column;
    if (number % across && number !== 1) continue;
    const x = view.x(column) + view.wide / 2;
    if (x > view.left && x < view.left + view.room.width) context.fillText(`${number}`, x, foot);
  }
}
