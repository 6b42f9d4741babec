// The drawing on the page: things that can be chosen, moved and measured between.

import { made, markup } from "./house.js";
import { barLength, gridStep, lengthText, moved } from "./lengths.js";
import { names } from "./names.js";
import { pointing } from "./pointing.js";
import { Sheet, drawn } from "./sheet.js";
import { Thing } from "./thing.js";

/** @typedef {import("./sheet.js").Spot} Spot */

const NEAR = 14;

export class Plan {
  /**
   * @param {string} job
   * @param {{chosen: (path: string) => void, over: (path: string) => void, move: (edits: {path: string, value: string}[]) => void, edit: (path: string) => void}} told
   */
  constructor(job, told) {
    this.job = job;
    this.told = told;
    this.chosen = "";
    this.measuring = false;
    this.grid = false;
    /** @type {Spot | null} */
    this.from = null;
    /** @type {Sheet | null} */
    this.sheet = null;
    /** @type {AbortController | null} */
    this.asked = null;
    /** @type {Set<string>} */
    this.hidden = new Set();
    this.layersKnown = false;
    this.begin(null);
    new ResizeObserver(() => this.sheet?.show()).observe(this.panel);
    this.panel.addEventListener("click", (event) => this.pressed(event));
    this.panel.addEventListener("input", (event) => this.changed(event));
  }

  get panel() {
    return /** @type {HTMLElement} */ (document.getElementById("plan"));
  }

  /** Takes over the drawing that the server has written. @param {Sheet | null} before */
  begin(before) {
    const stage = document.getElementById("stage");
    if (!stage) return;
    const sheet = new Sheet(stage);
    this.sheet = sheet;
    this.units = stage.dataset.units ?? "si";
    /** @type {Map<string, Thing>} */
    this.things = new Map();
    for (const button of /** @type {NodeListOf<HTMLElement>} */ (this.panel.querySelectorAll("[data-thing]"))) {
      const thing = new Thing(button, sheet);
      this.things.set(thing.path, thing);
    }
    sheet.watchers.push(() => this.drawGrid(), () => this.drawBar(), names(sheet, this.things, () => this.chosen), () => this.drawHandles());
    pointing(sheet, { tap: (at, target) => this.tap(at, target), over: (at, target) => this.over(at, target), grab: (target) => this.grab(target) });
    this.layers();
    sheet.open = Number(this.slider?.value ?? 0) / 100;
    sheet.like(before);
    this.choose(this.chosen, false);
  }

  get slider() {
    return /** @type {HTMLInputElement | null} */ (document.getElementById("travel"));
  }

  /** The address of the drawing. @param {Record<string, string>} [change] */
  address(change = {}) {
    const { gate = "", view = "plan" } = this.sheet?.stage.dataset ?? {};
    return new URLSearchParams({ gate, view, open: String(this.sheet?.open ?? 0), ...change });
  }

  /** Has the server draw again. @param {Record<string, string>} [change] */
  async again(change = {}) {
    this.asked?.abort();
    this.asked = new AbortController();
    const same = !change.view && !change.gate;
    try {
      const page = await markup(`/jobs/${this.job}/plan?${this.address(change)}`, this.asked.signal);
      const drawing = page.getElementById("drawing");
      const old = document.getElementById("drawing");
      if (!drawing || !old) return;
      const opened = [...old.querySelectorAll("details")].map((details) => details.open);
      const focus = document.activeElement?.closest("[data-view], [data-gate], [data-thing]");
      old.replaceWith(document.adoptNode(drawing));
      [...drawing.querySelectorAll("details")].forEach((details, at) => (details.open = opened[at] ?? false));
      this.begin(same ? this.sheet : null);
      if (focus instanceof HTMLElement) {
        const { view, thing } = focus.dataset;
        const again = drawing.querySelector(thing ? `[data-thing="${CSS.escape(thing)}"]` : `.views [data-view="${view}"]`);
        if (again instanceof HTMLElement) again.focus();
      }
    } catch (trouble) {
      if (!(trouble instanceof DOMException)) throw trouble;
    }
  }

  /** @param {Event} event */
  pressed(event) {
    const target = /** @type {Element} */ (event.target);
    const view = /** @type {HTMLElement | null} */ (target.closest(".views a"));
    if (view) {
      event.preventDefault();
      const { view: kind, gate } = view.dataset;
      void this.again(kind ? { view: kind } : { gate: gate ?? "" });
      return;
    }
    const thing = /** @type {HTMLElement | null} */ (target.closest("[data-thing]"));
    if (thing) return this.choose(this.chosen === thing.dataset.thing ? "" : thing.dataset.thing ?? "");
    const act = /** @type {HTMLElement | null} */ (target.closest("[data-do]"))?.dataset.do;
    if (act) this.act(act, /** @type {HTMLElement} */ (target.closest("[data-do]")));
  }

  /** @param {string} act @param {HTMLElement} button */
  act(act, button) {
    if (act === "nearer") this.sheet?.zoom(1.4);
    else if (act === "farther") this.sheet?.zoom(1 / 1.4);
    else if (act === "whole") this.sheet?.whole();
    else if (act === "edit") this.told.edit(this.chosen);
    else if (act === "let-go") this.choose("");
    else if (act === "keep") this.keep();
    else if (act === "grid") {
      this.grid = !this.grid;
      button.setAttribute("aria-pressed", String(this.grid));
      this.drawGrid();
    } else if (act === "measure") {
      this.measuring = !this.measuring;
      this.from = null;
      button.setAttribute("aria-pressed", String(this.measuring));
      this.sheet?.stage.classList.toggle("measuring", this.measuring);
      this.sheet?.over("rule").replaceChildren();
      this.read(this.measuring ? "Point at one place, then at another." : "");
    }
  }

  /** @param {Event} event */
  changed(event) {
    const field = /** @type {HTMLInputElement} */ (event.target);
    if (field.id === "travel") {
      this.sheet?.setOpen(Number(field.value) / 100);
      const opened = document.getElementById("opened");
      if (opened) opened.textContent = `${field.value} %`;
    }
    const layer = field.dataset.layer;
    if (layer) {
      if (field.checked) this.hidden.delete(layer);
      else this.hidden.add(layer);
      this.layers();
    }
  }

  /** Shows and hides layers as was chosen. */
  layers() {
    for (const box of /** @type {NodeListOf<HTMLInputElement>} */ (this.panel.querySelectorAll("[data-layer]"))) {
      const name = box.dataset.layer ?? "";
      if (!this.layersKnown && !box.checked) this.hidden.add(name);
      box.checked = !this.hidden.has(name);
      this.sheet?.svg.querySelector(`.${CSS.escape(name)}`)?.classList.toggle("off", !box.checked);
    }
    this.layersKnown = true;
  }

  /** @param {string} text */
  read(text) {
    const reading = document.getElementById("reading");
    if (reading) reading.textContent = text;
  }

  /** Lights the things that are spoken of. @param {string[]} paths */
  light(paths) {
    const svg = this.sheet?.svg;
    if (!svg) return;
    for (const lit of svg.querySelectorAll(".lit")) lit.classList.remove("lit");
    const wanted = (/** @type {string} */ path) => paths.some((one) => path === one || (one.split(".").length === 2 && one.startsWith("gate.") && path.startsWith(`${one}.leaf`)));
    for (const group of /** @type {NodeListOf<SVGElement>} */ (svg.querySelectorAll("[data-item]"))) {
      if (wanted(group.dataset.item ?? "")) group.classList.add("lit");
    }
  }

  /** @param {Element | null} target */
  pathOf(target) {
    const item = /** @type {SVGElement | null} */ (target?.closest?.("[data-item]"));
    return item?.dataset.item ?? "";
  }

  /** @param {Spot} at @param {Element | null} target */
  over(at, target) {
    const path = this.pathOf(target);
    this.told.over(path);
    if (this.measuring && this.from && this.sheet && target) this.rule(this.from, this.snapped(at));
    else if (path && this.things?.has(path)) {
      const thing = /** @type {Thing} */ (this.things.get(path));
      this.read(`${thing.name}, ${thing.kind}`);
    }
  }

  /** @param {Spot} at @param {Element} target */
  tap(at, target) {
    if (this.measuring) {
      const spot = this.snapped(at);
      if (this.from) {
        this.rule(this.from, spot);
        this.from = null;
      } else {
        this.from = spot;
        this.rule(spot, spot);
      }
      return;
    }
    const zone = /** @type {SVGElement | null} */ (target.closest("[data-zone]"));
    const path = this.pathOf(target);
    if (!path && zone) this.read(zone.querySelector("title")?.textContent ?? "");
    this.choose(path);
  }

  /** A point of the drawing, on a thing or on the grid where one is near. @param {Spot} at @returns {Spot} */
  snapped(at) {
    const sheet = /** @type {Sheet} */ (this.sheet);
    const spot = sheet.spot(at);
    const ends = [...(this.things?.values() ?? [])].flatMap((thing) => [thing.now(), ...(thing.to ? [thing.to] : [])]);
    const near = ends.find((end) => Math.hypot(end.x - spot.x, end.y - spot.y) < NEAR * sheet.unit);
    if (near) return near;
    return this.grid ? this.onGrid(spot) : spot;
  }

  /** @param {Spot} spot @returns {Spot} */
  onGrid(spot) {
    const step = this.step / 4;
    return { x: Math.round(spot.x / step) * step, y: Math.round(spot.y / step) * step };
  }

  get step() {
    return gridStep(40 * (this.sheet?.unit ?? 0.01), this.units ?? "si");
  }

  /** Draws what is measured. @param {Spot} from @param {Spot} to */
  rule(from, to) {
    const over = this.sheet?.over("rule");
    const long = lengthText(Math.hypot(to.x - from.x, to.y - from.y), this.units ?? "si");
    const sides = `${lengthText(Math.abs(to.x - from.x), this.units ?? "si")} along, ${lengthText(Math.abs(to.y - from.y), this.units ?? "si")} across`;
    const words = drawn("g", { transform: `translate(${(from.x + to.x) / 2} ${(from.y + to.y) / 2})` });
    const fixed = drawn("g", { class: "fixed" });
    fixed.append(drawn("text", { class: "rule-words", y: -10, "text-anchor": "middle" }, long));
    words.append(fixed);
    over?.replaceChildren(drawn("path", { class: "rule", d: `M${from.x} ${from.y}L${to.x} ${to.y}` }), words);
    this.read(`${long} (${sides})`);
  }

  drawGrid() {
    const sheet = this.sheet;
    const over = sheet?.over("grid");
    if (!sheet || !over) return;
    if (!this.grid) return over.replaceChildren();
    const { clientWidth, clientHeight } = sheet.stage;
    const [low, high] = [sheet.spot({ x: 0, y: 0 }), sheet.spot({ x: clientWidth, y: clientHeight })];
    const step = this.step;
    let lines = "";
    for (let x = Math.ceil(low.x / step) * step; x < high.x; x += step) lines += `M${x} ${low.y}V${high.y}`;
    for (let y = Math.ceil(low.y / step) * step; y < high.y; y += step) lines += `M${low.x} ${y}H${high.x}`;
    over.replaceChildren(drawn("path", { class: "grid", d: lines }));
  }

  /** How long a length is on the screen. */
  drawBar() {
    const [bar, words] = ["scale-bar", "scale-length"].map((id) => document.getElementById(id));
    const unit = this.sheet?.unit;
    if (!bar || !words || !unit) return;
    const long = barLength(150 * unit, this.units ?? "si");
    bar.hidden = false;
    bar.style.width = `${long / unit}px`;
    words.textContent = lengthText(long, this.units ?? "si");
  }

  /** Handles on the ends of the chosen thing. */
  drawHandles() {
    const thing = this.things?.get(this.chosen);
    const over = this.sheet?.over("handles");
    if (!over) return;
    over.replaceChildren();
    if (!thing?.movable || this.measuring) return;
    for (const [key, at] of /** @type {[string, Spot][]} */ ([["at", thing.now()], ...(thing.to ? [["to", thing.leaf < 0 ? thing.to : this.sheet?.carried(thing.leaf, thing.to)]] : [])])) {
      const group = drawn("g", { class: "handle", "data-handle": key, transform: `translate(${at.x} ${at.y})` });
      const fixed = drawn("g", { class: "fixed" });
      fixed.append(drawn("circle", { r: 22 }));
      group.append(fixed);
      over.append(group);
    }
  }

  /** Begins to drag a handle, or nothing. @param {Element} target */
  grab(target) {
    const handle = /** @type {SVGElement | null} */ (target.closest("[data-handle]"));
    const thing = this.things?.get(this.chosen);
    const sheet = this.sheet;
    if (!handle || !thing || !sheet) return null;
    const key = handle.dataset.handle ?? "at";
    const start = key === "at" ? thing.at : thing.to ?? thing.at;
    /** @type {Spot | null} */
    let begun = null;
    return (/** @type {Spot} */ at, /** @type {boolean} */ done) => {
      const spot = sheet.spot(at);
      begun ??= spot;
      let to = { x: start.x + spot.x - begun.x, y: start.y + spot.y - begun.y };
      if (this.grid) to = this.onGrid(to);
      const shown = thing.leaf < 0 ? to : sheet.carried(thing.leaf, to);
      handle.setAttribute("transform", `translate(${shown.x} ${shown.y})`);
      const place = this.placeOf(thing, key, to);
      this.fill(key, place);
      this.read(`${thing.name}: ${place.join("; ")}`);
      const still = Math.hypot(to.x - start.x, to.y - start.y) < 3 * sheet.unit;
      if (done && !still) this.told.move([{ path: `${thing.path}.${key}`, value: JSON.stringify(place) }]);
      else if (done) this.drawHandles();
    };
  }

  /** The place of a thing whose end is put to a point of the drawing. @param {Thing} thing @param {string} key @param {Spot} to */
  placeOf(thing, key, to) {
    const place = [...thing.places[key]];
    const start = key === "at" ? thing.at : thing.to ?? thing.at;
    const up = this.sheet?.stage.dataset.view === "elevation" ? 2 : 1;
    const units = this.units ?? "si";
    if (Math.abs(to.x - start.x) > 1e-4) place[0] = moved(place[0], to.x, units);
    if (Math.abs(to.y - start.y) > 1e-4) place[up] = moved(place[up], -to.y, units);
    return place;
  }

  /** Chooses a thing, or lets go. @param {string} path @param {boolean} [tell] */
  choose(path, tell = true) {
    const before = this.things?.get(this.chosen);
    this.chosen = path;
    const thing = this.things?.get(path);
    for (const one of this.things?.values() ?? []) one.button.setAttribute("aria-pressed", String(one === thing));
    this.light(path ? [path] : []);
    this.card(thing, before === thing ? undefined : before);
    this.sheet?.show();
    if (tell) this.told.chosen(path);
  }

  /** What is chosen, with its place to type. @param {Thing | undefined} thing @param {Thing} [before] */
  card(thing, before) {
    const card = document.getElementById("card");
    if (!card) return;
    card.hidden = !thing;
    card.replaceChildren();
    if (!thing) return;
    card.append(made("p", {}, made("strong", {}, thing.name), ` ${thing.kind}`));
    if (before) {
      const apart = Math.hypot(thing.now().x - before.now().x, thing.now().y - before.now().y);
      card.append(made("p", { class: "soft" }, `${lengthText(apart, this.units ?? "si")} from ${before.name}, as drawn.`));
    }
    for (const [key, place] of Object.entries(thing.places)) {
      const group = made("div", { class: "places", role: "group", "aria-label": key === "at" ? "Its place" : "Its other end" });
      ["Along the gate", "Into the property", "Up"].forEach((name, axis) => {
        const id = `place-${key}-${axis}`;
        const label = made("label", { for: id }, key === "at" ? name : `${name}, other end`);
        group.append(made("div", { class: "field" }, label, made("input", { id, value: place[axis], "data-axis": `${key} ${axis}`, autocomplete: "off" })));
      });
      card.append(group);
    }
    const buttons = made("p", { class: "pressing" });
    buttons.append(made("button", { type: "button", "data-do": "keep", class: "first" }, "Keep its place"), made("button", { type: "button", "data-do": "edit" }, "All about it"), made("button", { type: "button", "data-do": "let-go" }, "Let go"));
    card.append(buttons);
    this.uncover(thing, card);
  }

  /** Moves the sheet where the card covers what is chosen. @param {Thing} thing @param {HTMLElement} card */
  uncover(thing, card) {
    const sheet = this.sheet;
    if (!sheet) return;
    const low = card.getBoundingClientRect().top - sheet.stage.getBoundingClientRect().top - 30;
    const over = sheet.place(thing.now()).y - low;
    if (over > 0 && low > 60 && low < sheet.stage.clientHeight) sheet.pan(0, -over);
  }

  /** @param {string} key @param {string[]} place */
  fill(key, place) {
    place.forEach((text, axis) => {
      const field = /** @type {HTMLInputElement | null} */ (document.querySelector(`[data-axis="${key} ${axis}"]`));
      if (field) field.value = text;
    });
  }

  /** Keeps the places that were typed. */
  keep() {
    const thing = this.things?.get(this.chosen);
    const edits = [];
    for (const [key, before] of Object.entries(thing?.places ?? {})) {
      const fields = /** @type {HTMLInputElement[]} */ ([...document.querySelectorAll(`[data-axis^="${key} "]`)]);
      const place = fields.map((field) => field.value.trim());
      if (place.some((text, axis) => text !== before[axis])) edits.push({ path: `${thing?.path}.${key}`, value: JSON.stringify(place) });
    }
    if (edits.length) this.told.move(edits);
  }
}
