// When the answers are swapped, what she had unfolded stays unfolded.
const unfolded = new Set();

const nameOf = (details) => {
  const answer = details.closest(".answer");
  const place = [...(answer?.querySelectorAll("details") ?? [])].indexOf(details);
  return `${answer?.id ?? ""}/${place}`;
};

document.addEventListener("htmx:beforeSwap", (event) => {
  unfolded.clear();
  for (const details of event.detail.target.querySelectorAll("details[open]")) unfolded.add(nameOf(details));
});

document.addEventListener("htmx:afterSettle", (event) => {
  for (const details of event.detail.target.querySelectorAll("details")) {
    if (unfolded.has(nameOf(details))) details.open = true;
  }
});
