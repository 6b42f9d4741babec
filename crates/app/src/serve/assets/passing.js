// The leaf as it passes: which hazard zones it is at, and in which direction of travel they catch somebody.

/** @typedef {import("./sheet.js").Sheet} Sheet @typedef {import("./sheet.js").Spot} Spot */

/** How near to a zone the leaf counts as being there (m): what it slides past lies beside it. */
const BESIDE = 0.05;

/**
 * Marks the zones that the leaf is at and that are live in a direction, on the drawing and in the list beside it.
 * @param {Sheet} sheet @param {HTMLElement} panel @param {"opening" | "closing" | ""} direction nothing before anybody has moved it
 * @returns {string} what is live now, in words
 */
export function pass(sheet, panel, direction) {
  const leaves = /** @type {SVGGElement[]} */ ([...sheet.svg.querySelectorAll(".moving .leaf")]);
  const outlines = leaves.map((leaf, index) => corners(leaf.getBBox()).map((corner) => sheet.carried(index, corner)));
  /** @type {string[]} */
  const live = [];
  for (const zone of /** @type {NodeListOf<SVGGElement>} */ (sheet.svg.querySelectorAll(".zone"))) {
    const area = /** @type {SVGGraphicsElement | null} */ (zone.querySelector("rect, path"));
    const catches = (zone.dataset.live ?? "").split(" ").includes(direction);
    const now = Boolean(direction && catches && area && outlines.some((outline) => meet(outline, corners(area.getBBox(), BESIDE))));
    zone.classList.toggle("live-now", now);
    const number = zone.dataset.zone ?? "";
    const text = zone.querySelector("text");
    if (text) text.textContent = now ? `${number} live` : number;
    const entry = panel.querySelector(`[data-zone-words="${number}"]`);
    entry?.classList.toggle("live-now", now);
    const word = entry?.querySelector(".now");
    if (word) word.textContent = now ? ` Live now, ${direction}. ` : "";
    if (now) live.push(number);
  }
  if (!direction) return "";
  if (!sheet.svg.querySelector(".zone")) return "";
  return live.length ? `${capital(direction)}: the leaf is at ${live.length === 1 ? "zone" : "zones"} ${live.join(", ")}, live.` : `${capital(direction)}: the leaf is at no zone.`;
}

/** @param {string} word */
const capital = (word) => word[0].toUpperCase() + word.slice(1);

/** @param {DOMRect} box @param {number} [more] @returns {Spot[]} */
function corners({ x, y, width, height }, more = 0) {
  const [left, right, top, bottom] = [x - more, x + width + more, y - more, y + height + more];
  return [{ x: left, y: top }, { x: right, y: top }, { x: right, y: bottom }, { x: left, y: bottom }];
}

/** Two outlines without dents have a point in common: no side of either has all of the other before it. @param {Spot[]} one @param {Spot[]} other */
function meet(one, other) {
  const apart = (/** @type {Spot[]} */ from, /** @type {Spot[]} */ to) => from.some((corner, index) => {
    const next = from[(index + 1) % from.length];
    const normal = { x: next.y - corner.y, y: corner.x - next.x };
    const along = (/** @type {Spot} */ spot) => normal.x * spot.x + normal.y * spot.y;
    const [low, high] = [Math.min(...from.map(along)), Math.max(...from.map(along))];
    return to.every((spot) => along(spot) > high) || to.every((spot) => along(spot) < low);
  });
  return !apart(one, other) && !apart(other, one);
}
