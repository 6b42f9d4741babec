// A thing on the drawing, as the list beside it tells.

/** @typedef {import("./sheet.js").Sheet} Sheet @typedef {import("./sheet.js").Spot} Spot */

/** A thing on the drawing. */
export class Thing {
  /** @param {HTMLElement} button @param {Sheet} sheet */
  constructor(button, sheet) {
    const spot = (/** @type {string | undefined} */ text) => {
      const [x, y] = (text ?? "").split(" ").map(Number);
      return { x, y };
    };
    const data = button.dataset;
    this.button = button;
    this.sheet = sheet;
    this.path = data.thing ?? "";
    this.name = data.name ?? "";
    this.kind = data.kind ?? "";
    this.at = spot(data.at);
    this.to = data.to ? spot(data.to) : null;
    /** @type {Record<string, string[]>} */
    this.places = { at: JSON.parse(data.place ?? "[]"), ...(data.toPlace ? { to: JSON.parse(data.toPlace) } : {}) };
    this.leaf = data.carried === undefined ? -1 : Number(data.carried);
    this.movable = data.movable === "true";
    this.aside = Number(data.beside) * 22;
  }

  /** Where it is now. @returns {Spot} */
  now() {
    return this.leaf < 0 ? this.at : this.sheet.carried(this.leaf, this.at);
  }
}
