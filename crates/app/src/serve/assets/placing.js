// What is put on the drawing: a thing at a place, or a way from point to point with its conduit and its cable.

import { places } from "./card.js";
import { ask, made, tell } from "./house.js";
import { lengthText } from "./lengths.js";
import { pressing } from "./removal.js";
import { drawn } from "./sheet.js";
import { Way } from "./way.js";

/** @typedef {import("./sheet.js").Spot} Spot @typedef {import("./plan.js").Plan} Plan @typedef {import("./card.js").Edit} Edit */

/** Arrow keys and where they move the mark. */
const STEPS = /** @type {Record<string, [number, number]>} */ ({ ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] });

export class Placing {
  /** @param {Plan} plan */
  constructor(plan) {
    this.plan = plan;
    /** @type {"" | "add" | "route"} */
    this.mode = "";
    /** Points that were put, the last one last. @type {Spot[]} */
    this.points = [];
    /** Where the next one would be. @type {Spot | null} */
    this.mark = null;
    /** @type {Way | null} */
    this.way = null;
  }

  get box() {
    return /** @type {HTMLElement} */ (document.getElementById("card"));
  }

  /** Begins, or ends where it has begun. @param {"add" | "route"} mode */
  async begin(mode) {
    const same = this.mode === mode;
    this.end();
    if (same) return;
    this.plan.choose("");
    this.mode = mode;
    this.press();
    this.plan.sheet?.stage.classList.add("placing");
    const box = this.box;
    box.hidden = false;
    try {
      if (mode === "add") box.replaceChildren(...this.adding());
      else {
        this.way = new Way(await ask(`/api/jobs/${this.plan.job}/ways`), this.plan.units);
        box.replaceChildren(...this.way.fields(), pressing(["put", "Put a point"], ["back", "Last point back"], ["keep-route", "Keep the route", "first"], ["let-go", "Drop it"]));
      }
    } catch (refused) {
      tell(box, refused);
    }
    this.plan.read("Point at the place, or move the mark with the arrow keys and put it with Enter.");
    this.plan.sheet?.stage.focus();
    this.draw();
  }

  end() {
    if (!this.mode) return;
    this.mode = "";
    this.points = [];
    this.mark = null;
    this.way = null;
    this.press();
    const { sheet } = this.plan;
    sheet?.stage.classList.remove("placing");
    sheet?.over("placing").replaceChildren();
    this.box.hidden = true;
    this.box.replaceChildren();
    this.plan.read("");
  }

  /** The buttons show what is being done. */
  press() {
    for (const button of /** @type {NodeListOf<HTMLElement>} */ (document.querySelectorAll('[data-do="add"], [data-do="route"]'))) {
      button.setAttribute("aria-pressed", String(button.dataset.do === this.mode));
    }
  }

  /** Fields of a thing that is added. */
  adding() {
    const template = /** @type {HTMLTemplateElement} */ (document.getElementById("kinds"));
    const select = /** @type {HTMLSelectElement} */ (document.importNode(template.content, true).querySelector("select"));
    const name = made("input", { id: "add-name", autocomplete: "off", autocapitalize: "off", spellcheck: "false" });
    const fresh = () => /** @type {HTMLInputElement} */ (name).value = this.free(select.value.split(":").pop() ?? "thing");
    select.addEventListener("change", fresh);
    fresh();
    return [
      made("p", {}, made("strong", {}, "Add a thing")),
      made("div", { class: "places" }, made("div", { class: "field" }, made("label", { for: "add-kind" }, "What it is"), select), made("div", { class: "field" }, made("label", { for: "add-name" }, "Its name"), name)),
      places("at", ["", "", this.plan.units === "si" ? "0 m, assumed" : "0 in, assumed"]),
      pressing(["put", "Add it", "first"], ["let-go", "Leave it"]),
    ];
  }

  /** A name that nothing on the drawing has. @param {string} kind */
  free(kind) {
    const stem = kind.toLowerCase().replace(/[^a-z0-9]+/g, "-").replace(/^-+|-+$/g, "");
    const taken = new Set([...(this.plan.things?.values() ?? [])].map((thing) => thing.name));
    let number = 1;
    while (taken.has(`${stem}-${number}`)) number += 1;
    return `${stem}-${number}`;
  }

  /** Somebody points at a place. @param {Spot} at a place of the stage */
  tap(at) {
    if (!this.plan.snap) return;
    this.mark = this.plan.snap.spot(at);
    if (this.mode === "add") this.fill();
    else this.put();
    this.draw();
  }

  /** The mark follows the hand. @param {Spot} at */
  over(at) {
    if (!this.plan.snap || this.mode !== "route") return;
    this.mark = this.plan.snap.spot(at);
    this.draw();
  }

  /** The place of the mark, as it is written. */
  fill() {
    if (!this.mark) return;
    const [along, into] = [lengthText(this.mark.x, this.plan.units), lengthText(-this.mark.y, this.plan.units)];
    const up = this.plan.card.typed("at")[2] ?? "";
    this.plan.card.fill("at", [along, into, up]);
    this.plan.read(`${along} along, ${into} into the property`);
  }

  /** @param {KeyboardEvent} event @returns {boolean} it was meant for the mark */
  key(event) {
    const { sheet, snap } = this.plan;
    if (!this.mode || !sheet || !snap) return false;
    const step = STEPS[event.key];
    if (event.key === "Escape") this.plan.act("let-go");
    else if (event.key === "Enter" || event.key === " ") {
      this.mark ??= { ...sheet.middle };
      if (this.mode === "add") this.fill();
      else this.put();
    } else if (event.key === "Backspace" && this.mode === "route") this.back();
    else if (step) {
      const far = snap.step / (event.shiftKey ? 1 : 4);
      const from = this.mark ?? snap.onGrid(sheet.middle);
      this.mark = { x: from.x + step[0] * far, y: from.y + step[1] * far };
      const at = sheet.place(this.mark);
      const out = { x: Math.min(0, at.x - 30) + Math.max(0, at.x - sheet.size.wide + 30), y: Math.min(0, at.y - 30) + Math.max(0, at.y - sheet.size.tall + 30) };
      if (out.x || out.y) sheet.pan(-out.x, -out.y);
      const on = snap.spot(sheet.place(this.mark));
      const thing = this.thingAt(on);
      if (this.mode === "add") this.fill();
      else this.plan.read(`${lengthText(this.mark.x, this.plan.units)} along, ${lengthText(-this.mark.y, this.plan.units)} into the property${thing ? `, at ${thing.name}` : ""}`);
    } else return false;
    this.draw();
    return true;
  }

  /** The thing that stands at a point; of several, one that a cable can be joined to. @param {Spot} spot */
  thingAt(spot) {
    const there = [...(this.plan.things?.values() ?? [])].filter((thing) => Math.hypot(thing.now().x - spot.x, thing.now().y - spot.y) < 1e-6);
    return there.find((thing) => this.way?.known.ends.includes(thing.name)) ?? there[0];
  }

  /** Puts a point of a way where the mark is; the next to a thing is at the thing. */
  put() {
    const { sheet, snap } = this.plan;
    if (!this.mark || !sheet || !snap || !this.way) return;
    const spot = snap.spot(sheet.place(this.mark));
    const last = this.points[this.points.length - 1];
    if (last && Math.hypot(last.x - spot.x, last.y - spot.y) < 0.01) return;
    this.points.push(spot);
    this.said();
  }

  back() {
    this.points.pop();
    this.said();
    this.draw();
  }

  said() {
    this.way?.said(this.points, this.points.map((spot) => this.thingAt(spot)));
  }

  /** What was put, and the mark. */
  draw() {
    const over = this.plan.sheet?.over("placing");
    if (!over || !this.mode) return;
    const line = this.mode === "route" && this.mark ? [...this.points, this.mark] : this.points;
    const path = line.map((spot, index) => `${index ? "L" : "M"}${spot.x} ${spot.y}`).join("");
    const dots = [...this.points, ...(this.mark ? [this.mark] : [])].map((spot, index) => {
      const group = drawn("g", { transform: `translate(${spot.x} ${spot.y})` });
      const fixed = drawn("g", { class: "fixed" });
      fixed.append(index < this.points.length ? drawn("circle", { class: "put", r: 6 }) : drawn("path", { class: "mark-here", d: "M-14 0H14M0-14V14" }));
      group.append(fixed);
      return group;
    });
    over.replaceChildren(drawn("path", { class: "rule", d: path }), ...dots);
  }

  /** The changes that add what was filled in, and the path of what is new. @returns {{edits: Edit[], path: string} | null} */
  made() {
    if (this.mode === "route") return this.way?.edits(this.points) ?? null;
    const kind = /** @type {HTMLSelectElement} */ (document.getElementById("add-kind")).value;
    const name = /** @type {HTMLInputElement} */ (document.getElementById("add-name")).value.trim();
    const place = this.plan.card.typed("at");
    const [table, word] = kind.split(":");
    const lines = [`id = ${JSON.stringify(name)}`, ...(word ? [`kind = ${JSON.stringify(word)}`] : []), `at = ${JSON.stringify(place)}`];
    return { edits: [{ do: "add", path: table, value: lines.join("\n") }], path: `${table}.${name}` };
  }
}
