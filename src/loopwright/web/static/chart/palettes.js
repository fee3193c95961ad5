// The tools, colours and stitches to choose from.
import { TOOLS } from "./tools.js";

export function button(label, press, { plain = true, ...attributes } = {}) {
  const made = document.createElement("button");
  made.type = "button";
  made.className = plain ? "plain" : "";
  made.textContent = label;
  for (const [name, value] of Object.entries(attributes)) made.setAttribute(name, value);
  made.addEventListener("click", press);
  return made;
}

export function showTools(bench, place) {
  const group = (label, ...buttons) => {
    const made = document.createElement("div");
    made.className = "group";
    made.setAttribute("role", "group");
    made.setAttribute("aria-label", label);
    made.append(...buttons);
    return made;
  };
  const tools = TOOLS.map((tool) =>
    button(tool.label, () => bench.useTool(tool.key), { "data-tool": tool.key, "aria-pressed": "false" }),
  );
  bench.undoButton = button("Undo", () => bench.undo());
  bench.redoButton = button("Do again", () => bench.redo());
  const floats = button("Floats", () => bench.toggleFloats(), { "aria-pressed": "true", "data-floats": "" });
  place.append(
    group("Tool", ...tools),
    group("Steps", bench.undoButton, bench.redoButton),
    group(
      "View",
      button("−", () => bench.view.zoom(0.7), { "aria-label": "Smaller" }),
      button("+", () => bench.view.zoom(1.4), { "aria-label": "Larger" }),
      button("Whole", () => bench.view.showWhole()),
      floats,
    ),
  );
}

export function showMoves(bench, place) {
  place.append(
    button("Mirror", () => bench.parts.turn("mirror")),
    button("Upside down", () => bench.parts.turn("upsideDown")),
    button("Quarter turn", () => bench.parts.turn("quarter")),
    button("Copy", () => bench.parts.copy()),
    button("Put down", () => bench.parts.paste()),
    button("Clear", () => bench.parts.clear()),
    button("Make it the repeat", () => bench.parts.makeRepeat()),
    button("Select all", () => bench.parts.selectAll()),
  );
}

// One line a colour: choose it, see its name, change its likeness.
export function showRoles(bench, place) {
  const rows = bench.sketch.roles.map((role, at) => {
    const row = document.createElement("div");
    row.className = "role-row";
    const choose = button("", () => bench.choose({ role: at, stitch: null }), { "aria-pressed": "false", "data-role": at });
    const name = document.createElement("span");
    name.textContent = role.name === role.role ? role.role : `${role.role}, ${role.name}`;
    choose.append(chip(role.shade), name);
    const colour = document.createElement("input");
    colour.type = "color";
    colour.value = role.shade;
    colour.setAttribute("aria-label", `Screen colour of ${role.role}`);
    colour.addEventListener("change", () => bench.colours.recolour(at, colour.value));
    row.append(choose, colour);
    return row;
  });
  const more = document.createElement("form");
  more.className = "role-add";
  const name = document.createElement("input");
  name.setAttribute("aria-label", "Name of another colour");
  name.placeholder = `contrast-${bench.sketch.roles.length}`;
  name.autocomplete = "off";
  more.dataset.size = "";
  more.append(name, button("Add a colour", () => bench.colours.addRole(name.value)));
  const away = button("Take the chosen colour away", () => bench.colours.dropRole());
  more.addEventListener("submit", (event) => {
    event.preventDefault();
    bench.colours.addRole(name.value);
  });
  place.replaceChildren(...rows, more, away);
}

function chip(shade) {
  const made = document.createElementNS("http://www.w3.org/2000/svg", "svg");
  made.setAttribute("viewBox", "0 0 30 22");
  made.setAttribute("aria-hidden", "true");
  made.innerHTML = `<rect x="0.5" y="0.5" width="29" height="21" fill="${shade}" stroke="#1f2021"/>`;
  return made;
}

// The stitches, each with its symbol; those that the chart has come first.
export function showStitches(bench, place, used) {
  const order = [...bench.symbols.keys()].sort((a, b) => rank(a) - rank(b) || a - b);
  function rank(at) {
    return used.includes(bench.symbols[at].key) ? 0 : 1;
  }
  place.replaceChildren(
    ...order.map((at) => {
      const symbol = bench.symbols[at];
      const made = button("", () => bench.choose({ role: bench.tools.brush.role, stitch: at }), {
        "aria-pressed": "false",
        "data-stitch": at,
        title: symbol.name,
      });
      made.innerHTML = picture(symbol);
      const name = document.createElement("span");
      name.textContent = symbol.name;
      made.append(name);
      return made;
    }),
  );
}

function picture({ key, lines, dots, spans, boxes }) {
  const width = spans ? boxes : 1.25;
  const inside = spans ? "" : ` transform="translate(0.125 0)"`;
  const fill = key === "no-stitch" ? "#a3a3a2" : "#fbfbfa";
  const oval = key === "wrap" ? `<ellipse cx="0.5" cy="0.5" rx="0.44" ry="0.3"/>` : "";
  return (
    `<svg viewBox="-0.06 -0.06 ${width + 0.12} 1.12" aria-hidden="true">` +
    `<rect width="${width}" height="1" fill="${fill}" stroke="#1f2021" stroke-width="0.06"/>` +
    `<g${inside} fill="none" stroke="#1f2021" stroke-width="0.09" stroke-linecap="round"><path d="${lines}"/>${oval}</g>` +
    (dots && key !== "no-stitch" ? `<path${inside} d="${dots}" fill="#1f2021"/>` : "") +
    "</svg>"
  );
}
