// Chart symbols on the canvas: the same shapes as in the drawing, which the page brings along as paths in a unit square.
const LIGHT = "#fbfbfa";
const DARK = "#1f2021";

export class SymbolPaths {
  constructor(symbols) {
    this.symbols = symbols;
    this.made = new Map();
    this.size = "";
  }

  // The lines and dots of a symbol at this size of a cell; kept until the size changes.
  of(stitch, wide, high) {
    const size = `${wide} ${high}`;
    if (size !== this.size) {
      this.size = size;
      this.made.clear();
    }
    if (!this.made.has(stitch)) {
      const { lines, dots, spans } = this.symbols[stitch];
      const side = Math.min(wide, high);
      const place = spans
        ? new DOMMatrix([wide, 0, 0, high, 0, 0])
        : new DOMMatrix([side, 0, 0, side, (wide - side) / 2, (high - side) / 2]);
      const path = (text) => {
        const whole = new Path2D();
        if (text) whole.addPath(new Path2D(text), place);
        return whole;
      };
      this.made.set(stitch, { lines: path(lines), dots: dots ? path(dots) : null });
    }
    return this.made.get(stitch);
  }
}

// Dark on light, light on dark, by relative luminance. Source: IEC 61966-2-1 for the curve; the limit is L* 55, ours.
export function inkOn(shade) {
  const linear = [1, 3, 5].map((at) => {
    const value = parseInt(shade.slice(at, at + 2), 16) / 255;
    return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2] < 0.2293 ? LIGHT : DARK;
}

export function drawSymbols(view, { first, last, low, high }) {
  const { context, symbols, wide } = view;
  const { grid, roles } = view.sketch;
  const inks = roles.map((role) => inkOn(role.shade));
  context.lineWidth = Math.max(1.1, Math.min(wide, view.high) / 14);
  context.lineCap = "round";
  context.lineJoin = "round";
  for (let row = low; row <= high; row += 1) {
    let column = 0;
    while (column <= last) {
      const index = grid.at(column, row);
      const stitch = grid.stitches[index];
      const symbol = symbols[stitch];
      let boxes = symbol.boxes;
      if (symbol.key === "wrap") {
        while (column + boxes < grid.columns && grid.stitches[index + boxes] === stitch) boxes += 1;
      }
      if (stitch && stitch !== view.noStitch && column + boxes > first) {
        context.save();
        context.translate(view.x(column), view.y(row));
        context.strokeStyle = inks[grid.roles[index]];
        context.fillStyle = context.strokeStyle;
        if (symbol.key === "wrap") drawWrap(context, boxes * wide, view.high);
        else {
          const { lines, dots } = view.paths.of(stitch, wide, view.high);
          context.stroke(lines);
          if (dots) context.fill(dots);
        }
        context.restore();
      }
      column += boxes;
    }
  }
}

function drawWrap(context, width, height) {
  context.beginPath();
  context.ellipse(width / 2, height / 2, width / 2 - 0.12 * height, 0.3 * height, 0, 0, 2 * Math.PI);
  context.stroke();
}
