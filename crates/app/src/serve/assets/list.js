// The list of answers on the page, brought from one state to the next: what reads the same keeps its place and its elements.

import { elements } from "./house.js";

/**
 * What is different: counts; every topic in its order, with what is new of it; rows that read otherwise, by name; findings
 * whose working is another.
 * @typedef {{topic: string, open: boolean, summary?: string, left?: string, findings?: string[]}} Topic
 * @typedef {{revision: string, head: string, topics: Topic[], rows: Record<string, string>, stale: string[]}} Changes
 */

export class List {
  /** @param {HTMLElement} list */
  constructor(list) {
    this.list = list;
    /** @type {Map<string, HTMLDetailsElement>} */
    this.rows = new Map();
    /** @type {Map<string, HTMLDetailsElement>} */
    this.topics = new Map();
    for (const row of /** @type {NodeListOf<HTMLDetailsElement>} */ (list.querySelectorAll("[data-finding]"))) this.rows.set(row.dataset.finding ?? "", row);
    for (const topic of /** @type {NodeListOf<HTMLDetailsElement>} */ (list.querySelectorAll("[data-topic]"))) this.topics.set(topic.dataset.topic ?? "", topic);
  }

  /** Takes over what is different; gives the rows that are new, and those that are open and whose working is another. @param {Changes} told */
  change(told) {
    const at = this.focused();
    const counted = this.list.querySelector(".counted");
    if (counted && counted.innerHTML !== told.head) counted.innerHTML = told.head;
    const fresh = /** @type {HTMLDetailsElement[]} */ (elements(Object.values(told.rows).join("")));
    for (const row of fresh) this.put(row);
    const all = /** @type {HTMLElement} */ (this.list.querySelector(".topics"));
    let next = all.firstElementChild;
    for (const topic of told.topics) {
      const details = this.topic(topic);
      if (details === next) next = next.nextElementSibling;
      else all.insertBefore(details, next);
    }
    while (next) {
      const gone = /** @type {HTMLElement} */ (next);
      next = next.nextElementSibling;
      this.topics.delete(gone.dataset.topic ?? "");
      gone.remove();
    }
    for (const [name, row] of this.rows) if (!row.isConnected) this.rows.delete(name);
    this.list.dataset.revision = told.revision;
    this.focus(at);
    const stale = told.stale.map((name) => this.rows.get(name)).filter((row) => row?.open);
    return { fresh, stale: /** @type {HTMLDetailsElement[]} */ (stale) };
  }

  /** Puts a row in the place of the one of its name; what was open stays so. @param {HTMLDetailsElement} row */
  put(row) {
    const name = row.dataset.finding ?? "";
    const old = this.rows.get(name);
    this.rows.set(name, row);
    if (!old) return;
    const opened = old.querySelector(".opened");
    if (old.open && opened) {
      row.querySelector(".opened")?.replaceWith(opened);
      row.open = true;
    }
    old.replaceWith(row);
  }

  /** A topic with what is new of it. @param {Topic} told */
  topic(told) {
    const known = this.topics.get(told.topic);
    const details = known ?? document.createElement("details");
    if (!known) {
      details.className = "topic";
      details.dataset.topic = told.topic;
      details.open = told.open;
      this.topics.set(told.topic, details);
    }
    if (told.summary !== undefined) {
      const [summary] = elements(told.summary);
      const old = details.querySelector(":scope > summary");
      if (old) old.replaceChildren(...summary.childNodes);
      else details.prepend(summary);
    }
    if (told.left !== undefined) {
      details.querySelector(":scope > .open-questions")?.remove();
      details.append(...elements(told.left));
    }
    if (told.findings) this.order(details, told.findings);
    return details;
  }

  /** Puts the rows of a topic in their order. @param {HTMLElement} details @param {string[]} names */
  order(details, names) {
    let next = details.querySelector(":scope > summary")?.nextElementSibling ?? null;
    for (const name of names) {
      const row = this.rows.get(name);
      if (!row) continue;
      if (row === next) next = next.nextElementSibling;
      else details.insertBefore(row, next);
    }
    while (next?.matches(".finding")) {
      const gone = next;
      next = next.nextElementSibling;
      gone.remove();
    }
  }

  /** What has the focus in the list, to give it back. */
  focused() {
    const at = document.activeElement;
    if (!at || !this.list.contains(at)) return null;
    for (const [key, holds] of [["verdict", "button"], ["finding", "details"], ["topic", "details"]]) {
      const holder = /** @type {HTMLElement | null} */ (at.closest(`${holds}[data-${key}]`));
      if (holder) return { at, find: `${holds}[data-${key}="${CSS.escape(holder.dataset[key] ?? "")}"]` };
    }
    return null;
  }

  /** @param {ReturnType<List["focused"]>} was */
  focus(was) {
    if (!was || (was.at.isConnected && document.activeElement === was.at)) return;
    const holder = /** @type {HTMLElement | null} */ (this.list.querySelector(was.find));
    const again = was.at.isConnected ? was.at : holder?.querySelector(":scope > summary") ?? holder;
    /** @type {HTMLElement | null} */ (again)?.focus({ preventScroll: true });
  }
}
