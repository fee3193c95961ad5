// A picture stays until the one that takes its place has come, so that nothing flickers while she moves a slider.
const waitingFor = new WeakMap(); // by the picture that stays: the one that comes
let drawn = new Map();

const isDrawn = (picture) => picture.complete && picture.naturalWidth > 0;

const take = async (stays, comes) => {
  waitingFor.set(stays, comes);
  comes.loading = "eager";
  stays.alt = comes.alt;
  comes.replaceWith(stays);
  try {
    await comes.decode();
  } catch {
    // It cannot be drawn: the browser shows that it is missing.
  }
  if (waitingFor.get(stays) === comes) stays.replaceWith(comes);
};

document.addEventListener("htmx:beforeSwap", () => {
  drawn = new Map();
  for (const picture of document.querySelectorAll("#look figure img")) {
    if (isDrawn(picture)) drawn.set(picture.closest("figure").dataset.view, picture);
  }
});

document.addEventListener("htmx:afterSwap", () => {
  for (const comes of document.querySelectorAll("#look figure img")) {
    const stays = drawn.get(comes.closest("figure").dataset.view);
    if (!stays || stays === comes) continue;
    if (stays.src === comes.src) {
      waitingFor.delete(stays);
      comes.replaceWith(stays);
    } else take(stays, comes);
  }
  drawn = new Map();
});
