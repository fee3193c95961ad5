// A slider says where it stands while it is moved.
document.addEventListener("input", (event) => {
  const slider = event.target;
  if (slider.type !== "range") return;
  const said = slider.parentElement.querySelector("output");
  const unit = said.textContent.trim().split(" ").at(-1);
  said.textContent = `${slider.value.replace("-", "−")} ${unit}`;
});
