// The answers on the page: which are shown, what one speaks of, its working when it is opened.

import { markup, settled, tell } from "./house.js";

export class Answers {
  /** @param {string} job @param {{light: (paths: string[]) => void, edit: (path: string) => void}} told */
  constructor(job, told) {
    this.job = job;
    this.told = told;
    /** @type {Set<string>} */
    this.left = new Set();
    /** @type {AbortController | null} */
    this.asked = null;
    const panel = this.panel;
    panel.addEventListener("click", (event) => this.pressed(event));
    panel.addEventListener("toggle", (event) => void this.opened(/** @type {Element} */ (event.target)), true);
    for (const kind of ["pointerover", "focusin"]) {
      panel.addEventListener(kind, (event) => this.told.light(itemsOf(/** @type {Element} */ (event.target))));
    }
    panel.addEventListener("pointerleave", () => this.told.light([]));
    document.getElementById("find-answer")?.addEventListener("input", settled(60, () => this.filter()));
    if (!document.querySelector("#answers-list .topics")) void this.again();
  }

  get panel() {
    return /** @type {HTMLElement} */ (document.getElementById("answers"));
  }

  /** Asks for the answers to what the file says now. */
  async again() {
    this.asked?.abort();
    this.asked = new AbortController();
    const old = document.getElementById("answers-list");
    try {
      const page = await markup(`/jobs/${this.job}/answers`, this.asked.signal);
      const list = page.getElementById("answers-list");
      if (!list || !old) return;
      this.keepOpen(old, list);
      const top = this.panel.scrollTop;
      const focus = /** @type {HTMLElement | null} */ (document.activeElement?.closest("[data-finding], [data-topic], [data-verdict]"));
      const key = focus && ["finding", "topic", "verdict"].find((name) => focus.dataset[name]);
      old.replaceWith(document.adoptNode(list));
      this.filter();
      this.panel.scrollTop = top;
      const again = key && /** @type {HTMLElement | null} */ (list.querySelector(`[data-${key}="${CSS.escape(focus.dataset[key] ?? "")}"]`));
      if (again) /** @type {HTMLElement} */ (again.querySelector("summary") ?? again).focus({ preventScroll: true });
    } catch (trouble) {
      if (!(trouble instanceof DOMException) && old && !old.querySelector(".topics")) tell(old, trouble);
    }
  }

  /** What was open stays open. @param {Element} old @param {Element} list */
  keepOpen(old, list) {
    for (const name of ["topic", "finding"]) {
      for (const was of /** @type {NodeListOf<HTMLDetailsElement>} */ (old.querySelectorAll(`details[data-${name}]`))) {
        const is = /** @type {HTMLDetailsElement | null} */ (list.querySelector(`details[data-${name}="${CSS.escape(was.dataset[name] ?? "")}"]`));
        if (is && (name === "topic" || was.open)) is.open = was.open;
      }
    }
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

  /** Shows what was asked for. */
  filter() {
    const field = /** @type {HTMLInputElement | null} */ (document.getElementById("find-answer"));
    const words = (field?.value ?? "").toLowerCase().split(/\s+/).filter(Boolean);
    let shown = 0;
    for (const chip of /** @type {NodeListOf<HTMLElement>} */ (this.panel.querySelectorAll("button[data-verdict]"))) {
      chip.setAttribute("aria-pressed", String(!this.left.has(chip.dataset.verdict ?? "")));
    }
    for (const topic of /** @type {NodeListOf<HTMLDetailsElement>} */ (this.panel.querySelectorAll(".topic"))) {
      let some = 0;
      const title = topic.querySelector("h3")?.textContent?.toLowerCase() ?? "";
      for (const finding of /** @type {NodeListOf<HTMLElement>} */ (topic.querySelectorAll(".finding"))) {
        const text = words.length ? `${title} ${finding.querySelector("summary")?.textContent?.toLowerCase()} ${finding.dataset.items}` : "";
        finding.hidden = this.left.has(finding.dataset.verdict ?? "") || !words.every((word) => text.includes(word));
        some += finding.hidden ? 0 : 1;
      }
      const open = /** @type {HTMLElement | null} */ (topic.querySelector(".open-questions"));
      if (open) open.hidden = words.length > 0;
      topic.hidden = some === 0 && (words.length > 0 || !open);
      if (words.length && some) topic.open = true;
      shown += some;
    }
    const none = document.getElementById("none-left");
    if (none) none.hidden = shown > 0;
  }

  /** Fetches the working of a finding that was opened. @param {Element} details */
  async opened(details) {
    if (!(details instanceof HTMLDetailsElement) || !details.open || !details.dataset.at) return;
    const place = /** @type {HTMLElement | null} */ (details.querySelector(".opened"));
    if (!place || place.querySelector(".in-full")) return;
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
    let first = true;
    for (const finding of /** @type {NodeListOf<HTMLElement>} */ (this.panel.querySelectorAll(".finding"))) {
      const lit = path !== "" && (finding.dataset.items ?? "").split(" ").includes(path);
      finding.classList.toggle("lit", lit);
      if (lit && first && show && !finding.hidden) {
        first = false;
        const topic = /** @type {HTMLDetailsElement | null} */ (finding.closest(".topic"));
        if (topic) topic.open = true;
        finding.scrollIntoView({ block: "nearest" });
      }
    }
  }
}

/** @param {Element} target */
function itemsOf(target) {
  const finding = /** @type {HTMLElement | null} */ (target.closest?.(".finding"));
  return (finding?.dataset.items ?? "").split(" ").filter(Boolean);
}
