// Lengths on the sheet: one that is measured, and the bar that tells the scale.

import { barLength, lengthText } from "./lengths.js";
import { drawn } from "./sheet.js";

/** @typedef {import("./sheet.js").Spot} Spot */

/** Draws a rule between two points; gives what it reads. @param {import("./sheet.js").Sheet} sheet @param {Spot} from @param {Spot} to @param {string} units */
export function ruled(sheet, from, to, units) {
  const long = lengthText(Math.hypot(to.x - from.x, to.y - from.y), units);
  const sides = `${lengthText(Math.abs(to.x - from.x), units)} along, ${lengthText(Math.abs(to.y - from.y), units)} across`;
  const words = drawn("g", { transform: `translate(${(from.x + to.x) / 2} ${(from.y + to.y) / 2})` });
  const fixed = drawn("g", { class: "fixed" });
  fixed.append(drawn("text", { class: "rule-words", y: -10, "text-anchor": "middle" }, long));
  words.append(fixed);
  sheet.over("rule").replaceChildren(drawn("path", { class: "rule", d: `M${from.x} ${from.y}L${to.x} ${to.y}` }), words);
  return `${long} (${sides})`;
}

/** Draws how long a length is on the screen. @param {import("./sheet.js").Sheet} sheet @param {string} units */
export function bar(sheet, units) {
  return () => {
    const [bar, words] = ["scale-bar", "scale-length"].map((id) => document.getElementById(id));
    if (!bar || !words || !sheet.unit) return;
    const long = barLength(150 * sheet.unit, units);
    bar.hidden = false;
    bar.style.width = `${long / sheet.unit}px`;
    words.textContent = lengthText(long, units);
  };
}
