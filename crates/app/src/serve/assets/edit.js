// Changing the site: one value at a time, each kept at once, taken back as often as one likes.

import { Refused, ask, finding, made, part, settled, tell, word } from "./house.js";
import { removal } from "./removal.js";
import { Written } from "./written.js";

/** @typedef {import("./removal.js").Edit} Edit */
/** @typedef {{revision: string, drawing?: string | null, changes?: any}} Kept What the server says of a state, and what is new on the page with it. */

export class Editor {
  /**
   * @param {string} job @param {HTMLElement} bench
   * @param {{kept: (told?: Kept, of?: URLSearchParams) => void, shows: () => URLSearchParams}} told what is kept is told with what the page shows, and shown
   */
  constructor(job, bench, told) {
    this.job = job;
    this.bench = bench;
    this.told = told;
    /** What is being sent: one change after the other. */
    this.queue = Promise.resolve(true);
    this.sending = false;
    /** What was heard of the state meanwhile. @type {{revision: string} | null} */
    this.heard = null;
    const panel = this.panel;
    panel.addEventListener("click", (event) => this.pressed(event));
    panel.addEventListener("change", (event) => this.changed(event));
    panel.addEventListener("keydown", (event) => this.key(event));
    panel.addEventListener("input", (event) => this.typed(event));
    panel.addEventListener("toggle", (event) => void this.parts(/** @type {Element} */ (event.target)), true);
    this.read = settled(140, () => void this.understand());
    /** @type {HTMLInputElement | null} */
    this.field = null;
    /** The record that is shown; nothing for the list of all. @type {string | null} */
    this.shownPath = new URLSearchParams(location.search).get("of");
    this.written = new Written(this.form);
    finding(panel);
    /** What takes the record out that is shown. @type {Edit[]} */
    this.taking = [];
    this.showTry();
  }

  get panel() {
    return /** @type {HTMLElement} */ (document.getElementById("edit"));
  }

  get form() {
    return document.getElementById("form");
  }

  /** The address of the form of a record, or of the list of them. @param {string | null} path */
  address(path) {
    return `/jobs/${this.job}/form${path === null ? "" : `?of=${encodeURIComponent(path)}`}`;
  }

  get revision() {
    return this.bench.dataset.revision ?? "";
  }

  /** Sends changes; all of them are kept, or none. @param {Edit[]} edits @returns {Promise<boolean>} whether they are kept */
  send(edits) {
    this.queue = this.queue.then(() => this.sent("edits", { expects: this.revision, edits }));
    return this.queue;
  }

  /** @param {"undo" | "redo"} step */
  step(step) {
    this.queue = this.queue.then(() => this.sent(step, {}));
    return this.queue;
  }

  /** @param {string} what @param {unknown} body */
  async sent(what, body) {
    const trouble = /** @type {HTMLElement} */ (document.getElementById("trouble"));
    this.sending = true;
    this.heard = null;
    try {
      const shows = this.told.shows();
      const told = await ask(`/jobs/${this.job}/${what}?${shows}`, body);
      performance.mark("kept");
      this.known(told);
      this.sending = false;
      tell(trouble, null);
      word(what === "undo" ? "Taken back." : what === "redo" ? "Made again." : "Kept.");
      this.told.kept(told, shows);
      return true;
    } catch (refused) {
      tell(trouble, refused);
      if (!(refused instanceof Refused)) throw refused;
      const place = /** @type {HTMLElement | null} */ (this.panel.querySelector(`[data-field="${CSS.escape(refused.told.where ?? "")}"] [data-says]`));
      if (place) place.replaceChildren(made("p", { class: "wrong" }, `${refused.message} ${refused.told.do ?? ""}`));
      if (refused.status === 409) this.told.kept();
      word("Not kept. " + refused.message);
      return false;
    } finally {
      this.sending = false;
      const heard = /** @type {{revision: string} | null} */ (this.heard);
      if (heard && heard.revision !== this.revision) {
        this.known(heard);
        this.told.kept();
      }
    }
  }

  /** Takes over what the server says of the state. @param {{revision?: string, undo?: number, redo?: number}} state */
  known(state) {
    if (state.revision) this.bench.dataset.revision = state.revision;
    for (const name of /** @type {const} */ (["undo", "redo"])) {
      const button = /** @type {HTMLButtonElement | null} */ (document.getElementById(name));
      if (button && state[name] !== undefined) button.disabled = state[name] === 0;
    }
  }

  /** Shows a record, or the list of them; a value of it where one is named. @param {string | null} path @param {string} [value] */
  async show(path, value = "") {
    const form = await part(this.address(path), null);
    if (form) this.written.replace(this.form, form);
    this.shownPath = path;
    finding(this.panel);
    this.showTry();
    const field = /** @type {HTMLElement | null} */ (value ? this.panel.querySelector(`[data-path="${CSS.escape(value)}"]`) : null);
    const details = /** @type {HTMLDetailsElement | null} */ (field?.closest("details"));
    if (details) details.open = true;
    (field ?? document.getElementById("record-name") ?? document.getElementById("find-record"))?.focus();
  }

  /** The record that holds a value, or the nearest one above it that there is. @param {string} path */
  async showValue(path) {
    const steps = path.split(".");
    for (let many = steps.length; many > 0; many -= 1) {
      await this.show(steps.slice(0, many).join("."), path);
      if (document.getElementById("record-name")) return;
    }
  }

  /** Brings the form up to what the file says now. */
  async again() {
    const focus = /** @type {HTMLElement | null} */ (document.activeElement);
    const inside = focus && this.panel.contains(focus) ? focus.id : "";
    const open = [...this.panel.querySelectorAll("#record details")].map((details) => /** @type {HTMLDetailsElement} */ (details).open);
    const top = this.panel.scrollTop;
    const form = await part(this.address(this.shownPath), this.form);
    if (!form) return;
    if (this.typing) {
      const problems = form.querySelector("#problems");
      if (problems) document.getElementById("problems")?.replaceWith(problems);
      return;
    }
    this.written.renew(this.form, form);
    [...this.panel.querySelectorAll("#record details")].forEach((one, at) => {
      const details = /** @type {HTMLDetailsElement} */ (one);
      if (open[at]) details.dataset.again = "yes";
      details.open = open[at] ?? false;
    });
    finding(this.panel);
    this.showTry();
    this.panel.scrollTop = top;
    if (inside) document.getElementById(inside)?.focus({ preventScroll: true });
  }

  /** Somebody is in the middle of a value that is not kept. */
  get typing() {
    const field = document.activeElement;
    return field instanceof HTMLInputElement && field.dataset.path !== undefined && field.value !== field.defaultValue;
  }

  showTry() {
    for (const button of /** @type {NodeListOf<HTMLElement>} */ (this.panel.querySelectorAll("[data-try]"))) button.hidden = false;
  }

  /** @param {Event} event */
  pressed(event) {
    const target = /** @type {HTMLElement} */ (event.target);
    const record = /** @type {HTMLElement | null} */ (target.closest("[data-record]"));
    if (record) {
      event.preventDefault();
      const path = record.dataset.record ?? "";
      void this.show(path === "*" ? null : path);
    }
    if (target.id === "undo" || target.id === "redo") void this.step(target.id);
    const tried = target.dataset.try;
    if (tried) void this.trial(tried);
    const chosen = /** @type {HTMLElement | null} */ (target.closest("[data-part]"));
    if (chosen) void this.send([{ do: "set", path: chosen.dataset.path ?? "", value: chosen.dataset.part }]);
    const removed = target.dataset.remove;
    if (removed) void this.take(removed, target);
    const act = target.dataset.do;
    if (act === "take-out-now") void this.takeOut(this.taking);
    else if (act === "leave") void this.show(this.shownPath);
  }

  /** Takes a record out: at once where nothing names it, else once somebody has read what goes with it. @param {string} path @param {HTMLElement} button */
  async take(path, button) {
    try {
      const { edits, alone, told } = await removal(this.job, path, document.getElementById("record-name")?.textContent ?? path);
      if (alone) return await this.takeOut(edits);
      this.taking = edits;
      button.parentElement?.replaceWith(told);
      told.querySelector("button")?.focus();
    } catch (refused) {
      tell(/** @type {HTMLElement} */ (document.getElementById("trouble")), refused);
    }
  }

  /** @param {Edit[]} edits */
  async takeOut(edits) {
    if (await this.send(edits)) await this.show(null);
  }

  /** @param {Event} event */
  changed(event) {
    const field = /** @type {HTMLInputElement} */ (event.target);
    const path = field.dataset.path;
    if (path === undefined || field.matches("[data-holds]")) return;
    const value = field.value.trim();
    if (field instanceof HTMLInputElement && value === field.defaultValue) return;
    void this.send([value === "" ? { do: "remove", path } : { do: "set", path, value }]);
    if (field instanceof HTMLInputElement) field.defaultValue = field.value;
  }

  /** @param {KeyboardEvent} event */
  key(event) {
    const field = /** @type {HTMLInputElement} */ (event.target);
    if (event.key === "Escape" && field.dataset.path !== undefined) field.value = field.defaultValue;
  }

  /** @param {Event} event */
  typed(event) {
    const field = /** @type {HTMLInputElement} */ (event.target);
    if (field.tagName !== "INPUT" || field.dataset.path === undefined) return;
    this.field = field;
    this.read();
  }

  /** Says how a value would be understood. */
  async understand() {
    const field = this.field;
    const says = field?.closest(".field")?.querySelector("[data-says]");
    if (!field || !says || field.value.trim() === "") return;
    try {
      const told = await ask(`/api/jobs/${this.job}/read`, { path: field.dataset.path, value: field.value });
      const text = told.text ?? told.understood ?? "";
      says.replaceChildren(made("p", { class: "understood" }, text ? `Read as ${text}${told.known && told.known !== "stated" ? `, ${told.known}` : ""}.` : "It reads."));
      field.removeAttribute("aria-invalid");
    } catch (refused) {
      if (!(refused instanceof Refused)) throw refused;
      const { expected, do: act } = refused.told;
      says.replaceChildren(made("p", { class: "wrong" }, [refused.message, expected ? `Expected: ${expected}.` : "", act ?? ""].filter(Boolean).join(" ")));
      field.setAttribute("aria-invalid", "true");
    }
  }

  /** Fetches the parts that a thing could be bought as. @param {Element} details */
  async parts(details) {
    if (!(details instanceof HTMLDetailsElement) || !details.open || !details.dataset.parts) return;
    const list = await part(`/jobs/${this.job}/parts?of=${encodeURIComponent(details.dataset.parts)}`, null);
    if (!list) return;
    details.querySelector(".choices")?.remove();
    details.append(list);
    finding(details);
    if (!details.dataset.again) /** @type {HTMLElement | null} */ (list.querySelector("input"))?.focus();
    delete details.dataset.again;
  }

  /** Which findings would turn with a value; nothing is kept until somebody says so. @param {string} path */
  async trial(path) {
    const place = /** @type {HTMLElement} */ (document.getElementById("trial"));
    const field = /** @type {HTMLInputElement | null} */ (this.panel.querySelector(`[data-path="${CSS.escape(path)}"]`));
    if (!field) return;
    const box = made("div", { class: "trial" }, made("h3", {}, "What if"));
    const input = /** @type {HTMLInputElement} */ (made("input", { "aria-label": "Value to try", value: field.value, "data-holds": "" }));
    const says = made("div", { role: "status" });
    const act = (/** @type {string} */ words, /** @type {() => void} */ work) => {
      const button = made("button", { type: "button" }, words);
      button.addEventListener("click", work);
      return button;
    };
    const edits = () => [{ do: "set", path, value: input.value.trim() }];
    const attempt = async () => {
      says.textContent = "Working …";
      try {
        const told = await ask(`/api/jobs/${this.job}/trial`, { expects: this.revision, edits: edits() });
        const lines = told.turned.map((/** @type {any} */ one) => made("li", {}, made("strong", {}, saidVerdict(one.verdict)), one.was ? ` (was ${saidVerdict(one.was).toLowerCase()}): ` : " (new): ", one.sentence));
        says.replaceChildren(made("p", {}, told.turned.length ? `${told.turned.length} would turn:` : "No answer would turn."), made("ul", { class: "rows" }, ...lines));
      } catch (refused) {
        tell(says, refused);
      }
    };
    box.append(made("p", { class: "typed" }, path), input, made("p", { class: "pressing" },
      act("Try it", () => void attempt()),
      act("Keep it", () => void this.send(edits()).then(() => place.replaceChildren())),
      act("Drop it", () => place.replaceChildren())), says);
    place.replaceChildren(box);
    place.scrollIntoView({ block: "nearest" });
    input.focus();
    input.select();
  }
}

/** @param {string} verdict */
function saidVerdict(verdict) {
  const words = /** @type {Record<string, string>} */ ({ fails: "Fails", "turns-within-tolerance": "Not sure", unknown: "Unknown", outside: "Outside", holds: "Holds", figure: "Figure" });
  return words[verdict] ?? verdict;
}
