// Mouse, pen and fingers on the canvas: one draws, two fingers move and enlarge.
export function usePointers(bench) {
  const { canvas, view, tools } = bench;
  const fingers = new Map();
  let dragged = null;
  let pinch = null;

  const place = (event) => {
    const box = canvas.getBoundingClientRect();
    return { x: event.clientX - box.left, y: event.clientY - box.top };
  };

  const spread = () => {
    const [one, other] = [...fingers.values()];
    return { x: (one.x + other.x) / 2, y: (one.y + other.y) / 2, apart: Math.hypot(one.x - other.x, one.y - other.y) };
  };

  canvas.addEventListener("pointerdown", (event) => {
    if (event.button > 1) return;
    canvas.setPointerCapture?.(event.pointerId);
    canvas.focus({ preventScroll: true });
    event.preventDefault();
    const at = place(event);
    if (event.pointerType === "touch") fingers.set(event.pointerId, at);
    bench.showCursor(false);
    if (fingers.size === 2) {
      tools.cancel();
      dragged = null;
      pinch = spread();
    } else if (fingers.size < 2) {
      if (tools.chosen === "move" || event.button === 1) dragged = at;
      else tools.down(view.cellAt(at.x, at.y));
    }
  });

  canvas.addEventListener("pointermove", (event) => {
    if (fingers.has(event.pointerId)) fingers.set(event.pointerId, place(event));
    if (pinch && fingers.size === 2) {
      const now = spread();
      view.zoom(now.apart / Math.max(pinch.apart, 1), now.x, now.y);
      view.move(now.x - pinch.x, now.y - pinch.y);
      pinch = now;
    } else if (dragged) {
      const at = place(event);
      view.move(at.x - dragged.x, at.y - dragged.y);
      dragged = at;
    } else if (tools.from) {
      // Between two frames a quick hand passes several places.
      const passed = event.getCoalescedEvents?.() ?? [];
      for (const one of passed.length ? passed : [event]) {
        const at = place(one);
        tools.move(view.cellAt(at.x, at.y));
      }
      bench.pointedAt(tools.last);
    } else {
      const at = place(event);
      bench.pointedAt(view.cellAt(at.x, at.y));
    }
  });

  const end = (event) => {
    fingers.delete(event.pointerId);
    if (pinch) {
      if (fingers.size === 0) pinch = null;
      return;
    }
    dragged = null;
    if (event.type === "pointercancel") tools.cancel();
    else if (tools.from) tools.up();
  };
  canvas.addEventListener("pointerup", end);
  canvas.addEventListener("pointercancel", end);

  canvas.addEventListener(
    "wheel",
    (event) => {
      const at = place(event);
      if (event.ctrlKey) view.zoom(2 ** (-event.deltaY / 300), at.x, at.y);
      else if (event.shiftKey) view.move(-(event.deltaX || event.deltaY), 0);
      else return; // the page scrolls
      event.preventDefault();
    },
    { passive: false },
  );
}
