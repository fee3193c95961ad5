// The colours of a chart: another likeness, one more, one fewer.
const MARKS = "abcdefghijklmnopqrstuvwxyz0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ";
const GREYS = ["#9a9c9c", "#626668", "#d3d4d3", "#2f3234"];

export class Colours {
  constructor(bench) {
    this.bench = bench;
  }

  recolour(at, shade) {
    this.bench.whole((now) => (now.roles = now.roles.map((role, place) => (place === at ? { ...role, shade, own: true } : role))));
  }

  addRole(typed) {
    const role = typed.trim().toLowerCase().replace(/[^a-z0-9]+/g, "-").replace(/^-|-$/g, "") || `contrast-${this.bench.sketch.roles.length}`;
    const { roles } = this.bench.sketch;
    const mark = [...role, ...MARKS].find((one) => MARKS.includes(one) && roles.every((other) => other.mark !== one));
    if (!mark || roles.some((other) => other.role === role)) {
      this.bench.tell(`The colour ${role} is there already, or there are too many.`);
      return;
    }
    this.bench.whole((now) => (now.roles = [...roles, { mark, role, name: role, shade: GREYS[roles.length % GREYS.length], own: false }]));
    this.bench.choose({ role: roles.length, stitch: null });
  }

  dropRole() {
    const { role } = this.bench.tools.brush;
    const { grid, roles } = this.bench.sketch;
    if (roles.length === 1 || grid.roles.includes(role)) {
      this.bench.tell(`${roles[role].role} is in use: paint its cells in another colour first.`);
      return;
    }
    this.bench.whole((now) => {
      now.roles = roles.filter((_, at) => at !== role);
      now.grid.roles.forEach((other, at) => {
        if (other > role) now.grid.roles[at] = other - 1;
      });
    });
  }
}
