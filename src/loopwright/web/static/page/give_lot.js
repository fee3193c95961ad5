// A lot is dragged onto a part of the garment: in the picture, on its bar, or on its field. The field is set, and it asks.
import { regionsOf } from "./regions.js";

const STIR_PX = 4; // from here on, a press of the mouse, the pen or on the grip is a drag
const PRESS_MS = 250; // a finger that rests so long on a lot takes it
const SLIP_PX = 8; // a finger that has moved further before is scrolling
const NEAR_PX = 72; // so near to the upper or lower edge of the window the page scrolls
const FASTEST_PX = 14; // in one frame

let pressed = null; // a lot that may be about to be dragged
let carried = null; // the lot that is being dragged
let missed = false; // an answer came while she was dragging

const form = () => document.querySelector("form.giving");
const fieldOf = (section) => form().elements.namedItem(section);
const offers = (section, lot) => [...(fieldOf(section)?.options ?? [])].some((option) => option.value === lot);
const nameOf = (section) => fieldOf(section).closest("label").querySelector("span").textContent;

// Of the sections that are knitted in one place, the one whose role is planned in this lot, else any that it may knit.
const chosen = (sections) => {
  const may = sections.filter((section) => offers(section, carried.lot));
  return may.find((section) => carried.roles.some((role) => section.startsWith(role))) ?? may[0] ?? null;
};

const mark = () => {
  for (const one of document.querySelectorAll("[data-section]")) {
    one.classList.toggle("may", offers(one.dataset.section, carried.lot));
    one.classList.toggle("over", one.dataset.section === carried.over);
  }
  for (const picture of carried.pictures) {
    picture.light(
      (sections) => chosen(sections) !== null,
      (sections) => sections.includes(carried.over),
    );
  }
};

const sectionAt = (x, y) => {
  const under = document.elementFromPoint(x, y);
  const row = under?.closest("[data-section]");
  if (row) return chosen([row.dataset.section]);
  const picture = carried.pictures.find((one) => one.figure.contains(under));
  return picture ? chosen(picture.at(x, y)) : null;
};

const follow = () => {
  if (!carried) return;
  const over = sectionAt(carried.x, carried.y);
  if (over !== carried.over) {
    carried.over = over;
    carried.shown.querySelector("span").textContent = over ? `${carried.name} → ${nameOf(over)}` : carried.name;
    mark();
  }
  place();
};

// Beside the pointer, above a finger, and within the window.
const place = () => {
  const { x, y, shown, isTouch } = carried;
  const most = document.documentElement.clientWidth - shown.offsetWidth - 4;
  const left = Math.max(4, Math.min(isTouch ? x - shown.offsetWidth / 2 : x + 14, most));
  const top = isTouch ? Math.max(4, y - shown.offsetHeight - 28) : y + 14;
  shown.style.transform = `translate(${left}px, ${top}px)`;
};

const scroll = () => {
  if (!carried) return;
  const below = carried.y - (window.innerHeight - NEAR_PX);
  const above = NEAR_PX - carried.y;
  const by = below > 0 ? below : above > 0 ? -above : 0;
  if (by && carried.hasMoved) {
    window.scrollBy({ top: Math.max(-1, Math.min(by / NEAR_PX, 1)) * FASTEST_PX, behavior: "instant" });
    follow();
  }
  requestAnimationFrame(scroll);
};

const take = () => {
  const { chip, id, x, y, isTouch } = pressed;
  drop();
  if (!chip.isConnected) return;
  const shown = document.createElement("div");
  shown.className = "carried";
  shown.setAttribute("aria-hidden", "true");
  const name = chip.querySelector("strong").textContent.split(",")[0];
  const words = document.createElement("span");
  words.textContent = name;
  shown.append(chip.querySelector(".chip").cloneNode(true), words);
  document.body.append(shown);
  document.documentElement.classList.add("giving-now");
  chip.classList.add("taken");
  carried = {
    id, x, y, isTouch, shown, name, chip,
    lot: chip.dataset.lot,
    roles: JSON.parse(chip.dataset.roles),
    over: null,
    hasMoved: false,
    pictures: [...document.querySelectorAll("figure[data-map]")].map(regionsOf),
  };
  mark();
  follow();
  for (const picture of carried.pictures) {
    picture.ready.then(() => {
      if (!carried) return;
      mark();
      follow();
    });
  }
  requestAnimationFrame(scroll);
};

const drop = () => {
  clearTimeout(pressed?.timer);
  pressed = null;
};

const end = (isGiven) => {
  drop();
  if (!carried) return;
  const { over, lot, shown, chip, pictures } = carried;
  carried = null;
  shown.remove();
  chip.classList.remove("taken");
  document.documentElement.classList.remove("giving-now");
  for (const one of document.querySelectorAll(".may, .over")) one.classList.remove("may", "over");
  for (const picture of pictures) picture.clear();
  const field = isGiven && over ? fieldOf(over) : null;
  if (field && field.value !== lot) {
    field.value = lot;
    field.dispatchEvent(new Event("change", { bubbles: true }));
  } else if (missed) form().requestSubmit();
  missed = false;
};

document.addEventListener("pointerdown", (event) => {
  if (carried || !event.isPrimary || event.button !== 0) return;
  const chip = event.target.closest(".lot-chip");
  if (!chip || !form()) return;
  const isTouch = event.pointerType === "touch";
  pressed = { chip, id: event.pointerId, x: event.clientX, y: event.clientY, isTouch };
  pressed.isFree = !isTouch || event.target.closest(".grip") !== null;
  if (!pressed.isFree) pressed.timer = setTimeout(take, PRESS_MS);
});

document.addEventListener("pointermove", (event) => {
  if (carried && event.pointerId === carried.id) {
    carried.hasMoved = true;
    [carried.x, carried.y] = [event.clientX, event.clientY];
    follow();
  } else if (pressed && event.pointerId === pressed.id) {
    const moved = Math.hypot(event.clientX - pressed.x, event.clientY - pressed.y);
    if (pressed.isFree && moved > STIR_PX) {
      [pressed.x, pressed.y] = [event.clientX, event.clientY];
      take();
    } else if (!pressed.isFree && moved > SLIP_PX) drop();
  }
});

document.addEventListener("pointerup", (event) => {
  if (event.pointerId === (carried ?? pressed)?.id) end(true);
});
document.addEventListener("pointercancel", (event) => {
  if (event.pointerId === (carried ?? pressed)?.id) end(false);
});
document.addEventListener("keydown", (event) => {
  if (event.key === "Escape" && carried) {
    event.preventDefault();
    end(false);
  }
});
window.addEventListener("blur", () => end(false));
// The page does not scroll under a lot that is being dragged, and a long press on one opens no menu.
document.addEventListener("touchmove", (event) => carried && event.cancelable && event.preventDefault(), { passive: false });
document.addEventListener("contextmenu", (event) => {
  if (carried || event.target.closest(".lot-chip")) event.preventDefault();
});
document.addEventListener("dragstart", (event) => {
  if (event.target.closest?.(".lot-chip")) event.preventDefault();
});
// An answer that comes while she drags would take the lot from under her hand: it is asked for again afterwards.
document.addEventListener("htmx:beforeSwap", (event) => {
  if (!carried) return;
  event.detail.shouldSwap = false;
  missed = true;
});
