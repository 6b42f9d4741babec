// The answers on the page: which are shown, what one speaks of, its working when it is opened.

import { ask, markup, settled, tell } from "./house.js";
import { List } from "./list.js";

export class Answers {
  /** @param {string} job @param {{light: (paths: string[]) => void, edit: (path: string) => void}} told */
  constructor(job, told) {
    this.job = job;
    this.told = told;
    /** @type {Set<string>} */
    this.left = new Set();
    /** The thing whose findings are lit. */
    this.lit = "";
    /** The state whose answers are to be shown. */
    this.wanted = "";
    /** @type {Promise<void> | null} */
    this.reaching = null;
    const panel = this.panel;
    panel.addEventListener("click", (event) => this.pressed(event));
    panel.addEventListener("toggle", (event) => void this.opened(/** @type {Element} */ (event.target)), true);
    for (const kind of ["pointerover", "focusin"]) {
      panel.addEventListener(kind, (event) => this.told.light(itemsOf(/** @type {Element} */ (event.target))));
    }
    panel.addEventListener("pointerleave", () => this.told.light([]));
    document.getElementById("find-answer")?.addEventListener("input", settled(60, () => this.filter()));
    if (!document.querySelector("#answers-list .topics")) void this.reach("newest");
  }

  get panel() {
    return /** @type {HTMLElement} */ (document.getElementById("answers"));
  }

  get list() {
    return /** @type {HTMLElement | null} */ (document.getElementById("answers-list"));
  }

  /** Shows the answers of a state, once they are there. @param {string} revision */
  reach(revision) {
    this.wanted = revision;
    this.reaching ??= this.follow().finally(() => (this.reaching = null));
    return this.reaching;
  }

  /** Asks until the state that is wanted now is shown, or once for nothing. */
  async follow() {
    for (let asked = "", late = false; (late || asked !== this.wanted) && this.list?.dataset.revision !== this.wanted;) {
      asked = this.wanted;
      late = await this.again();
    }
  }

  /** Asks what is different in the list since the answers that it shows, or for all of it; whether it showed others meanwhile. */
  async again() {
    const list = this.list;
    if (!list) return false;
    try {
      const since = list.querySelector(".topics") ? list.dataset.revision ?? "" : "";
      const told = since ? await ask(`/jobs/${this.job}/changes?since=${since}`) : { whole: true };
      return !(await this.take(told, since));
    } catch (trouble) {
      if (!list.querySelector(".topics")) tell(list, trouble);
      return false;
    }
  }

  /** Shows what is different in the list since a state; not where it shows another. @param {any} told @param {string} since */
  async take(told, since) {
    const list = this.list;
    if (!list || told.same) return true;
    if (told.whole) {
      await this.whole(list);
      return true;
    }
    if (list.dataset.revision !== since) return false;
    this.listed ??= new List(list);
    const { fresh, stale } = this.listed.change(told);
    performance.mark("listed");
    this.filter(fresh);
    this.lightAmong(fresh);
    for (const finding of stale) void this.opened(finding, true);
    return true;
  }

  /** Puts a new list in the place of the one that is there. @param {HTMLElement} old */
  async whole(old) {
    const list = (await markup(`/jobs/${this.job}/answers`)).getElementById("answers-list");
    if (!list) return;
    old.replaceWith(document.adoptNode(list));
    this.listed = new List(list);
    this.filter();
    this.lightAmong(this.rows);
  }

  get rows() {
    return /** @type {NodeListOf<HTMLDetailsElement>} */ (this.panel.querySelectorAll(".finding"));
  }

  /** @param {Event} event */
  pressed(event) {
    const target = /** @type {Element} */ (event.target);
    const chip = /** @type {HTMLElement | null} */ (target.closest("button[data-verdict]"));
    if (chip) {
      const verdict = chip.dataset.verdict ?? "";
      if (!this.left.delete(verdict)) this.left.add(verdict);
      this.filter();
    }
    const edit = /** @type {HTMLElement | null} */ (target.closest("[data-edit]"));
    if (edit) {
      event.preventDefault();
      this.told.edit(edit.dataset.edit ?? "");
    }
  }

  /** Shows what was asked for. @param {Iterable<HTMLElement>} [fresh] rows that are new, where no others have to be looked at */
  filter(fresh) {
    const field = /** @type {HTMLInputElement | null} */ (document.getElementById("find-answer"));
    const words = (field?.value ?? "").toLowerCase().split(/\s+/).filter(Boolean);
    for (const chip of /** @type {NodeListOf<HTMLElement>} */ (this.panel.querySelectorAll("button[data-verdict]"))) {
      chip.setAttribute("aria-pressed", String(!this.left.has(chip.dataset.verdict ?? "")));
    }
    if (fresh && !words.length && !this.left.size) return;
    for (const finding of fresh ?? this.rows) {
      const title = finding.closest(".topic")?.querySelector("h3")?.textContent ?? "";
      const text = words.length ? `${title} ${finding.querySelector("summary")?.textContent} ${finding.dataset.items}`.toLowerCase() : "";
      finding.hidden = this.left.has(finding.dataset.verdict ?? "") || !words.every((word) => text.includes(word));
    }
    let shown = 0;
    for (const topic of /** @type {NodeListOf<HTMLDetailsElement>} */ (this.panel.querySelectorAll(".topic"))) {
      const some = topic.querySelectorAll(".finding:not([hidden])").length;
      const open = /** @type {HTMLElement | null} */ (topic.querySelector(".open-questions"));
      if (open) open.hidden = words.length > 0;
      topic.hidden = some === 0 && (words.length > 0 || !open);
      if (words.length && some && !fresh) topic.open = true;
      shown += some;
    }
    const none = document.getElementById("none-left");
    if (none) none.hidden = shown > 0;
  }

  /** Fetches the working of a finding that was opened. @param {Element} details @param {boolean} [again] another than it has */
  async opened(details, again = false) {
    if (!(details instanceof HTMLDetailsElement) || !details.open || !details.dataset.at) return;
    const place = /** @type {HTMLElement | null} */ (details.querySelector(".opened"));
    if (!place || (place.querySelector(".in-full") && !again)) return;
    try {
      const page = await markup(details.dataset.at);
      const full = page.getElementById("in-full");
      if (full) {
        full.removeAttribute("id");
        place.replaceChildren(document.adoptNode(full));
      }
    } catch (trouble) {
      tell(place, trouble);
    }
  }

  /** Lights the findings that speak of a thing. @param {string} path @param {boolean} [show] */
  light(path, show = false) {
    if (path === this.lit && !show) return;
    this.lit = path;
    const lit = this.lightAmong(this.rows);
    const first = show && lit.find((finding) => !finding.hidden);
    const topic = /** @type {HTMLDetailsElement | null} */ (first && first.closest(".topic"));
    if (!first || !topic) return;
    topic.open = true;
    first.scrollIntoView({ block: "nearest" });
  }

  /** @template {HTMLElement} T @param {Iterable<T>} rows @returns {T[]} those that are lit */
  lightAmong(rows) {
    return [...rows].filter((finding) => {
      const lit = this.lit !== "" && (finding.dataset.items ?? "").split(" ").includes(this.lit);
      finding.classList.toggle("lit", lit);
      return lit;
    });
  }
}

/** @param {Element} target */
function itemsOf(target) {
  const finding = /** @type {HTMLElement | null} */ (target.closest?.(".finding"));
  return (finding?.dataset.items ?? "").split(" ").filter(Boolean);
}
