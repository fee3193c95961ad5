// Every step since the page was opened can be taken back, and made again; there is no limit.
export class History {
  constructor() {
    this.done = [];
    this.undone = [];
  }

  add(step) {
    this.done.push(step);
    this.undone.length = 0;
  }

  undo() {
    const step = this.done.pop();
    if (!step) return false;
    this.undone.push(step);
    step.back();
    return true;
  }

  redo() {
    const step = this.undone.pop();
    if (!step) return false;
    this.done.push(step);
    step.forth();
    return true;
  }
}

// The cells that one stroke changes, with what they were: changed at once, and one step in the end.
export class Stroke {
  constructor(sketch) {
    this.sketch = sketch;
    this.before = new Map();
    this.set = this.set.bind(this);
  }

  set(index, role, stitch) {
    const { roles, stitches } = this.sketch.grid;
    if (roles[index] === role && stitches[index] === stitch) return;
    if (!this.before.has(index)) this.before.set(index, roles[index] | (stitches[index] << 8));
    roles[index] = role;
    stitches[index] = stitch;
  }

  takeBack() {
    const { grid } = this.sketch;
    for (const [index, was] of this.before) {
      grid.roles[index] = was & 255;
      grid.stitches[index] = was >> 8;
    }
    this.before.clear();
  }

  // The step, or nothing where all is as it was.
  step() {
    const { sketch } = this;
    const places = Uint32Array.from(this.before.keys());
    const was = Uint16Array.from(this.before.values());
    const is = Uint16Array.from(places, (index) => sketch.grid.roles[index] | (sketch.grid.stitches[index] << 8));
    if (was.every((value, at) => value === is[at])) return null;
    const put = (values) => () =>
      places.forEach((index, at) => {
        sketch.grid.roles[index] = values[at] & 255;
        sketch.grid.stitches[index] = values[at] >> 8;
      });
    return { back: put(was), forth: put(is) };
  }
}
