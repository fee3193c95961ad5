// The photo is shown as soon as it is chosen, made smaller where it is too large to send, and a tap fills in its place.
const MOST_BYTES = 4_500_000;
const LONGEST = 2400;

const form = document.querySelector("[data-photo]");
const area = form.querySelector(".tapped");
const picture = form.querySelector(".tap-picture");
const choice = form.querySelector("fieldset.tap-choice");
const numbers = form.querySelector("details");
const field = (name) => form.elements.namedItem(name);

const mark = (place) => {
  const group = picture.querySelector(`[data-mark="${place}"]`);
  const [across, down] = ["across", "down"].map((way) => Number.parseFloat(field(`${place}_${way}`).value));
  const known = across >= 0 && across <= 100 && down >= 0 && down <= 100;
  group.setAttribute("visibility", known ? "visible" : "hidden");
  if (!known) return;
  for (const circle of group.children) {
    circle.setAttribute("cx", `${across}%`);
    circle.setAttribute("cy", `${down}%`);
  }
};

const shownAs = (bitmap) => {
  const scale = Math.min(1, LONGEST / Math.max(bitmap.width, bitmap.height));
  const canvas = document.createElement("canvas");
  canvas.width = Math.round(bitmap.width * scale);
  canvas.height = Math.round(bitmap.height * scale);
  canvas.getContext("2d").drawImage(bitmap, 0, 0, canvas.width, canvas.height);
  canvas.setAttribute("role", "img");
  canvas.setAttribute("aria-label", "The photo that is measured");
  return canvas;
};

const smaller = async (canvas, input) => {
  const blob = await new Promise((done) => canvas.toBlob(done, "image/jpeg", 0.92));
  const files = new DataTransfer();
  files.items.add(new File([blob], "photo.jpg", { type: "image/jpeg" }));
  input.files = files.files;
};

const chosen = async (input) => {
  const file = input.files[0];
  if (!file) return;
  for (const other of form.querySelectorAll("input[type=file]")) if (other !== input) other.value = "";
  for (const place of ["white", "yarn"]) {
    for (const way of ["across", "down"]) field(`${place}_${way}`).value = "";
    mark(place);
  }
  let bitmap;
  try {
    bitmap = await createImageBitmap(file);
  } catch {
    area.hidden = true; // the browser cannot read it: the answer will say so
    return;
  }
  const canvas = shownAs(bitmap);
  picture.querySelector("img, canvas").replaceWith(canvas);
  area.hidden = false;
  if (file.size > MOST_BYTES || !/^image\/(jpeg|png|webp)$/.test(file.type)) await smaller(canvas, input);
};

form.addEventListener("change", (event) => {
  if (event.target.type === "file") chosen(event.target);
});

form.addEventListener("input", (event) => {
  const place = event.target.name?.split("_")[0];
  if (picture.querySelector(`[data-mark="${place}"]`)) mark(place);
});

picture.addEventListener("click", (event) => {
  const box = picture.getBoundingClientRect();
  const place = choice.querySelector("input:checked").value;
  field(`${place}_across`).value = (((event.clientX - box.left) / box.width) * 100).toFixed(1);
  field(`${place}_down`).value = (((event.clientY - box.top) / box.height) * 100).toFixed(1);
  mark(place);
});

for (const part of form.querySelectorAll(".tap-choice")) part.hidden = false;
numbers.open = "faulty" in numbers.dataset; // a tap says the same

// A colour that is corrected is the one that is meant.
document.querySelector(".found-colours")?.addEventListener("input", (event) => {
  if (event.target.type === "color") event.target.closest("li").querySelector("input[type=radio]").checked = true;
});
