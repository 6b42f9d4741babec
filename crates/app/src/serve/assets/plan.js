// The drawing on the page: things that can be chosen, moved and measured between.

import { Card } from "./card.js";
import { part, selectorOf } from "./house.js";
import { moved } from "./lengths.js";
import { names } from "./names.js";
import { pass } from "./passing.js";
import { Placing } from "./placing.js";
import { pointing } from "./pointing.js";
import { bar, ruled } from "./ruled.js";
import { Sheet, drawn } from "./sheet.js";
import { Snap } from "./snap.js";
import { Thing } from "./thing.js";
import { Written } from "./written.js";

/** @typedef {import("./sheet.js").Spot} Spot @typedef {import("./card.js").Edit} Edit */

export class Plan {
  /**
   * @param {string} job
   * @param {{chosen: (path: string) => void, over: (path: string) => void, send: (edits: Edit[]) => Promise<boolean>, edit: (path: string) => void}} told
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
    this.units = "si";
    this.card = new Card(job);
    this.placing = new Placing(this);
    /** @type {Snap | null} */
    this.snap = null;
    /** Which way the gate was moved last. @type {"opening" | "closing" | ""} */
    this.direction = "";
    /** What takes the chosen thing out. @type {Edit[] | null} */
    this.taking = null;
    this.resized = new ResizeObserver(() => this.fit());
    this.written = new Written(this.drawing);
    this.begin(null);
    this.panel.addEventListener("keydown", (event) => {
      if (event.target === this.sheet?.stage && !event.ctrlKey && !event.metaKey && !event.altKey && this.placing.key(event)) {
        event.preventDefault();
        event.stopImmediatePropagation();
      }
    }, true);
    this.panel.addEventListener("click", (event) => this.pressed(event));
    this.panel.addEventListener("input", (event) => this.changed(event));
  }

  get panel() {
    return /** @type {HTMLElement} */ (document.getElementById("plan"));
  }

  get drawing() {
    return document.getElementById("drawing");
  }

  /** Takes over the drawing that the server has written. @param {Sheet | null} before */
  begin(before) {
    const stage = document.getElementById("stage");
    if (!stage) return;
    const sheet = before?.stage === stage ? before : this.spread(stage);
    sheet.watchers = [];
    this.units = stage.dataset.units === "us" ? "us" : "si";
    /** @type {Map<string, Thing>} */
    this.things = new Map();
    for (const button of /** @type {NodeListOf<HTMLElement>} */ (this.panel.querySelectorAll("[data-thing]"))) {
      const thing = new Thing(button, sheet);
      this.things.set(thing.path, thing);
    }
    const snap = new Snap(sheet, this.things, this.units, () => this.grid);
    this.snap = snap;
    sheet.watchers.push(() => snap.drawGrid(), bar(sheet, this.units), names(sheet, this.things, () => this.chosen), () => this.drawHandles());
    this.layers();
    sheet.open = Number(this.slider?.value ?? 0) / 100;
    sheet.like(before);
    if (this.placing.mode) {
      sheet.stage.classList.add("placing");
      sheet.show();
      this.placing.press();
    } else this.choose(this.things.has(this.chosen) ? this.chosen : "", false);
    if (this.direction) this.pass();
  }

  /** A new sheet on the stage. @param {HTMLElement} stage */
  spread(stage) {
    this.resized.disconnect();
    this.resized.observe(stage);
    const sheet = new Sheet(stage);
    pointing(sheet, { tap: (at, target) => this.tap(at, target), over: (at, target) => this.over(at, target), grab: (target) => this.grab(target) });
    this.sheet = sheet;
    return sheet;
  }

  /** The stage has another size: what is chosen stays in sight. */
  fit() {
    if (!this.sheet?.measure()) return;
    this.sheet.show();
    this.uncover();
  }

  /** Brings what is chosen in sight, once the page knows where its card is: to ask before costs a layout. */
  uncover() {
    requestAnimationFrame(() => {
      const thing = this.things?.get(this.chosen);
      if (thing && this.sheet) this.card.uncover(thing, this.sheet);
    });
  }

  /** Marks the zones that the leaf is at. */
  pass() {
    if (!this.sheet) return;
    const said = pass(this.sheet, this.panel, this.direction);
    if (said) this.read(said);
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
    try {
      const drawing = await part(`/jobs/${this.job}/plan?${this.address(change)}`, this.drawing, this.asked.signal);
      if (drawing) this.draw(drawing, !change.view && !change.gate);
    } catch (trouble) {
      if (!(trouble instanceof DOMException)) throw trouble;
    }
  }

  /** Shows what the server has drawn. @param {HTMLElement} drawing @param {boolean} same it is of the same gate, seen from the same side */
  draw(drawing, same) {
    const old = this.drawing;
    if (!old) return;
    const opened = [...old.querySelectorAll("details")].map((details) => details.open);
    const focus = selectorOf(old);
    const card = this.placing.mode ? document.getElementById("card") : null;
    if (same) this.written.renew(old, drawing);
    else this.written.replace(old, drawing);
    this.sheet?.reaches(drawing.querySelector("svg.live"));
    if (card && !card.isConnected) document.getElementById("card")?.replaceWith(card);
    [...(this.drawing?.querySelectorAll("details") ?? [])].forEach((details, at) => (details.open = opened[at] ?? false));
    this.begin(same ? this.sheet : null);
    if (focus) /** @type {HTMLElement | null} */ (this.drawing?.querySelector(focus))?.focus({ preventScroll: true });
    performance.mark("drawn");
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

  /** @param {string} act @param {HTMLElement} [button] */
  act(act, button) {
    if (act === "nearer") this.sheet?.zoom(1.4);
    else if (act === "farther") this.sheet?.zoom(1 / 1.4);
    else if (act === "whole") this.sheet?.whole();
    else if (act === "edit") this.told.edit(this.chosen);
    else if (act === "let-go") {
      if (this.placing.mode) this.placing.end();
      else this.choose("");
    } else if (act === "keep") void this.sent(this.card.edits(this.things?.get(this.chosen)));
    else if (act === "add" || act === "route") void this.placing.begin(act);
    else if (act === "put" || act === "keep-route") this.put(act);
    else if (act === "back") this.placing.back();
    else if (act === "take-out") void this.take();
    else if (act === "take-out-now") void this.sent(this.taking ?? []);
    else if (act === "leave") this.choose(this.chosen, false);
    else if (act === "grid") {
      this.grid = !this.grid;
      button?.setAttribute("aria-pressed", String(this.grid));
      this.snap?.drawGrid();
    } else if (act === "measure") {
      this.placing.end();
      this.measuring = !this.measuring;
      this.from = null;
      button?.setAttribute("aria-pressed", String(this.measuring));
      this.sheet?.stage.classList.toggle("measuring", this.measuring);
      this.sheet?.over("rule").replaceChildren();
      this.read(this.measuring ? "Point at one place, then at another." : "");
    }
  }

  /** @param {Event} event */
  changed(event) {
    const field = /** @type {HTMLInputElement} */ (event.target);
    if (field.id === "travel") {
      const open = Number(field.value) / 100;
      const before = this.sheet?.open ?? 0;
      if (open !== before) this.direction = open > before ? "opening" : "closing";
      this.sheet?.setOpen(open);
      this.pass();
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
    if (this.placing.mode && target) this.placing.over(at);
    else if (this.measuring && this.from && this.snap && target) this.rule(this.from, this.snap.spot(at));
    else if (path && this.things?.has(path)) {
      const thing = /** @type {Thing} */ (this.things.get(path));
      this.read(`${thing.name}, ${thing.kind}`);
    }
  }

  /** @param {Spot} at @param {Element} target */
  tap(at, target) {
    if (this.placing.mode) return this.placing.tap(at);
    if (this.measuring && this.snap) {
      const spot = this.snap.spot(at);
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

  /** Draws what is measured, and says it. @param {Spot} from @param {Spot} to */
  rule(from, to) {
    if (this.sheet) this.read(ruled(this.sheet, from, to, this.units));
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
    const snap = this.snap;
    if (!handle || !thing || !sheet || !snap) return null;
    const key = handle.dataset.handle ?? "at";
    const start = key === "at" ? thing.at : thing.to ?? thing.at;
    /** @type {Spot | null} */
    let begun = null;
    return (/** @type {Spot} */ at, /** @type {boolean} */ done) => {
      const spot = sheet.spot(at);
      begun ??= spot;
      const to = snap.dragged({ x: start.x + spot.x - begun.x, y: start.y + spot.y - begun.y }, thing);
      const shown = thing.leaf < 0 ? to : sheet.carried(thing.leaf, to);
      handle.setAttribute("transform", `translate(${shown.x} ${shown.y})`);
      const place = this.placeOf(thing, key, to);
      this.card.fill(key, place);
      this.read(`${thing.name}: ${place.join("; ")}`);
      if (done) snap.rest();
      const still = Math.hypot(to.x - start.x, to.y - start.y) < 3 * sheet.unit;
      if (done && !still) void this.told.send([{ do: "set", path: `${thing.path}.${key}`, value: JSON.stringify(place) }]);
      else if (done) this.drawHandles();
    };
  }

  /** The place of a thing whose end is put to a point of the drawing. @param {Thing} thing @param {string} key @param {Spot} to */
  placeOf(thing, key, to) {
    const place = [...thing.places[key]];
    const start = key === "at" ? thing.at : thing.to ?? thing.at;
    const up = this.sheet?.stage.dataset.view === "elevation" ? 2 : 1;
    const units = this.units;
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
    this.placing.end();
    this.card.show(thing, before === thing ? undefined : before, this.units);
    this.sheet?.show();
    if (thing) this.uncover();
    if (tell) this.told.chosen(path);
  }

  /** Adds what was filled in, or puts a point of a route. @param {string} act */
  put(act) {
    if (act === "put" && this.placing.mode === "route") {
      this.placing.mark ??= this.sheet ? { ...this.sheet.middle } : null;
      this.placing.put();
      return this.placing.draw();
    }
    const made = this.placing.made();
    if (!made) return this.read("A route has two points or more.");
    void this.told.send(made.edits).then((kept) => {
      if (!kept) return;
      this.placing.end();
      void this.again().then(() => this.choose(made.path));
    });
  }

  /** Says what goes with the chosen thing when it is taken out. */
  async take() {
    const thing = this.things?.get(this.chosen);
    if (thing) this.taking = await this.card.taking(thing);
  }

  /** @param {Edit[]} edits */
  async sent(edits) {
    if (edits.length) await this.told.send(edits);
  }
}
