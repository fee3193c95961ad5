// What was left in the browser when a page was closed, and what to do when somebody else was faster.
import { button } from "./palettes.js";
import { fieldsOf, sketchOf } from "./text.js";

function ask(bench, words, answers) {
  const box = bench.place.querySelector("#chart-found");
  const said = document.createElement("p");
  said.textContent = words;
  const buttons = answers.map(([label, act]) =>
    button(label, () => {
      box.hidden = true;
      act();
    }),
  );
  box.replaceChildren(said, ...buttons);
  box.hidden = false;
}

export function takeUp(bench) {
  const { keeping, data, symbols } = bench;
  const found = keeping.found();
  if (!found) return;
  if (JSON.stringify(found.fields) === JSON.stringify(fieldsOf(bench.sketch, symbols))) {
    keeping.forget();
    return;
  }
  const put = () => bench.whole((now) => Object.assign(now, sketchOf(found.fields, data.roles, symbols)));
  if (found.known === data.known) {
    put();
    bench.tell("What was drawn before the page was closed is back.");
    return;
  }
  const when = new Date(found.at).toLocaleString();
  ask(bench, `A drawing of ${when} was not kept, and the chart was changed elsewhere since.`, [
    ["Take that drawing", put],
    ["Drop it", () => keeping.forget()],
  ]);
}

export function clash(bench, told) {
  const { keeping } = bench;
  ask(bench, `${told.faults.join("; ")}.`, [
    ["Keep mine", () => keeping.insist(told.known)],
    [
      "Take the other",
      () => {
        keeping.sent = keeping.turn;
        keeping.forget();
        location.reload();
      },
    ],
  ]);
}
