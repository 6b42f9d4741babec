// What goes with a thing that is taken out, to be read before it goes.

import { ask, made } from "./house.js";

/** @typedef {{do: string, path: string, value?: string}} Edit */

/**
 * The changes that take a thing out, what goes with it in words, and the buttons to say so.
 * @param {string} job @param {string} path @param {string} name
 * @returns {Promise<{edits: Edit[], alone: boolean, told: HTMLElement}>}
 */
export async function removal(job, path, name) {
  const { goes, words, edits } = await ask(`/api/jobs/${job}/removal?path=${encodeURIComponent(path)}`);
  const alone = words.length === 0;
  const lines = words.map((/** @type {string} */ one) => made("li", {}, one));
  const what = alone ? made("p", {}, "Nothing else names it.") : made("ul", { class: "rows" }, ...lines);
  const act = pressing(["take-out-now", `Take out ${goes.length > 1 ? `${goes.length} things` : name}`, "first"], ["leave", "Leave it"]);
  return { edits, alone, told: made("div", {}, made("p", {}, made("strong", {}, `Take out ${name}?`)), what, act) };
}

/** Buttons, each with what it does and its words. @param {...[string, string, string?]} buttons */
export function pressing(...buttons) {
  return made("p", { class: "pressing" }, ...buttons.map(([act, words, kind]) => made("button", { type: "button", "data-do": act, ...(kind ? { class: kind } : {}) }, words)));
}
