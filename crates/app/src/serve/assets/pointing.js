// Hands on the sheet: one finger pans or drags a handle, two go nearer, the wheel goes nearer, a tap chooses.

/** @typedef {import("./sheet.js").Sheet} Sheet @typedef {import("./sheet.js").Spot} Spot */

/**
 * @param {Sheet} sheet
 * @param {{tap: (at: Spot, target: Element) => void, over: (at: Spot, target: Element | null) => void,
 *   grab: (target: Element) => ((at: Spot, done: boolean) => void) | null}} hands
 */
export function pointing(sheet, hands) {
  const { stage } = sheet;
  /** @type {Map<number, Spot>} */
  const down = new Map();
  /** @type {((at: Spot, done: boolean) => void) | null} */
  let drag = null;
  let far = 0;
  /** @type {Element | null} */
  let target = null;
  const at = (/** @type {MouseEvent} */ event) => {
    const box = stage.getBoundingClientRect();
    return { x: event.clientX - box.left - stage.clientLeft, y: event.clientY - box.top - stage.clientTop };
  };
  stage.addEventListener("pointerdown", (event) => {
    if (event.button !== 0) return;
    stage.setPointerCapture(event.pointerId);
    down.set(event.pointerId, at(event));
    if (down.size > 1) return;
    far = 0;
    target = /** @type {Element} */ (event.target);
    drag = hands.grab(target);
    stage.classList.toggle("moving", true);
  });
  stage.addEventListener("pointermove", (event) => {
    const now = at(event);
    const before = down.get(event.pointerId);
    if (!before) {
      hands.over(now, /** @type {Element} */ (event.target));
      return;
    }
    far += Math.hypot(now.x - before.x, now.y - before.y);
    if (down.size === 2) {
      const other = [...down].find(([id]) => id !== event.pointerId)?.[1] ?? before;
      const [was, is] = [before, now].map((spot) => Math.hypot(spot.x - other.x, spot.y - other.y));
      const middle = { x: (now.x + other.x) / 2, y: (now.y + other.y) / 2 };
      if (was > 10) sheet.zoom(is / was, middle);
      sheet.pan((now.x - before.x) / 2, (now.y - before.y) / 2);
    } else if (drag) {
      drag(now, false);
    } else if (far > 4) {
      sheet.pan(now.x - before.x, now.y - before.y);
    }
    down.set(event.pointerId, now);
  });
  const up = (/** @type {PointerEvent} */ event) => {
    if (!down.delete(event.pointerId)) return;
    if (down.size) return;
    stage.classList.toggle("moving", false);
    if (drag) drag(at(event), true);
    else if (far <= 4 && target && event.type === "pointerup") hands.tap(at(event), target);
    drag = null;
  };
  stage.addEventListener("pointerup", up);
  stage.addEventListener("pointercancel", up);
  stage.addEventListener("pointerleave", () => hands.over({ x: -1, y: -1 }, null));
  stage.addEventListener("wheel", (event) => {
    event.preventDefault();
    sheet.zoom(Math.exp(-event.deltaY * (event.deltaMode ? 0.05 : 0.0015)), at(event));
  }, { passive: false });
  stage.addEventListener("keydown", (event) => {
    const steps = /** @type {Record<string, [number, number]>} */ ({ ArrowLeft: [60, 0], ArrowRight: [-60, 0], ArrowUp: [0, 60], ArrowDown: [0, -60] });
    if (event.target !== stage || event.ctrlKey || event.metaKey || event.altKey) return;
    if (steps[event.key]) sheet.pan(...steps[event.key]);
    else if (event.key === "+" || event.key === "=") sheet.zoom(1.3);
    else if (event.key === "-") sheet.zoom(1 / 1.3);
    else if (event.key === "0") sheet.whole();
    else return;
    event.preventDefault();
  });
}
