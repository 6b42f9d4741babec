// The card of what is chosen on the drawing: its place to type, and what goes with it when it is taken out.

import { ask, made, tell } from "./house.js";
import { lengthText } from "./lengths.js";
import { pressing, removal } from "./removal.js";

/** @typedef {import("./thing.js").Thing} Thing @typedef {import("./sheet.js").Sheet} Sheet @typedef {{do: string, path: string, value?: string}} Edit */

export const AXES = ["Along the gate", "Into the property", "Up"];

export class Card {
  /** @param {string} job */
  constructor(job) {
    this.job = job;
  }

  get box() {
    return /** @type {HTMLElement} */ (document.getElementById("card"));
  }

  /** Shows a thing, with how far it is from the one before. @param {Thing | undefined} thing @param {Thing | undefined} before @param {string} units */
  show(thing, before, units) {
    const box = this.box;
    if (!box) return;
    box.hidden = !thing;
    box.replaceChildren();
    if (!thing) return;
    box.append(made("p", {}, made("strong", {}, thing.name), ` ${thing.kind}`));
    if (before) {
      const apart = Math.hypot(thing.now().x - before.now().x, thing.now().y - before.now().y);
      box.append(made("p", { class: "soft" }, `${lengthText(apart, units)} from ${before.name}, as drawn.`));
    }
    for (const [key, place] of Object.entries(thing.places)) box.append(places(key, place));
    box.append(pressing(["keep", "Keep its place", "first"], ["edit", "All about it"], ["take-out", "Take it out"], ["let-go", "Let go"]));
  }

  /** Moves the sheet where the card covers what is chosen. @param {Thing} thing @param {Sheet} sheet */
  uncover(thing, sheet) {
    const { wide, tall } = sheet.size;
    const shown = this.box.checkVisibility() && getComputedStyle(this.box).position === "absolute";
    const low = shown ? this.box.getBoundingClientRect().top - sheet.stage.getBoundingClientRect().top - 30 : tall - 30;
    const at = sheet.place(thing.now());
    const down = low > 60 ? Math.min(0, low - at.y) + Math.max(0, 30 - at.y) : 0;
    const right = Math.min(0, wide - 40 - at.x) + Math.max(0, 40 - at.x);
    if (wide && (down || right)) sheet.pan(right, down);
  }

  /** @param {string} key @param {string[]} place */
  fill(key, place) {
    place.forEach((text, axis) => {
      const field = /** @type {HTMLInputElement | null} */ (document.querySelector(`[data-axis="${key} ${axis}"]`));
      if (field) field.value = text;
    });
  }

  /** What was typed as the place of a key. @param {string} key */
  typed(key) {
    const fields = /** @type {HTMLInputElement[]} */ ([...document.querySelectorAll(`[data-axis^="${key} "]`)]);
    return fields.map((field) => field.value.trim());
  }

  /** Changes that keep the places that were typed. @param {Thing | undefined} thing */
  edits(thing) {
    const keys = Object.entries(thing?.places ?? {});
    const changed = keys.map(([key, before]) => ({ key, before, place: this.typed(key) })).filter(({ before, place }) => place.some((text, axis) => text !== before[axis]));
    return changed.map(({ key, place }) => ({ do: "set", path: `${thing?.path}.${key}`, value: JSON.stringify(place) }));
  }

  /** Says what goes with a thing, and lets somebody say so. @param {Thing} thing @returns {Promise<Edit[] | null>} the changes, once they are wanted */
  async taking(thing) {
    try {
      const { edits, told } = await removal(this.job, thing.path, thing.name);
      this.box.replaceChildren(...told.children);
      this.box.querySelector("button")?.focus();
      return edits;
    } catch (refused) {
      const place = made("div");
      this.box.prepend(place);
      tell(place, refused);
      return null;
    }
  }
}

/** Fields for a place. @param {string} key @param {string[]} place */
export function places(key, place) {
  const group = made("div", { class: "places", role: "group", "aria-label": key === "to" ? "Its other end" : "Its place" });
  AXES.forEach((name, axis) => {
    const id = `place-${key}-${axis}`;
    const label = made("label", { for: id }, key === "to" ? `${name}, other end` : name);
    group.append(made("div", { class: "field" }, label, made("input", { id, value: place[axis] ?? "", "data-axis": `${key} ${axis}`, autocomplete: "off" })));
  });
  return group;
}
