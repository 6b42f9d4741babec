// What every module needs: asking the server, markup that is asked for again, words to the person, finding in lists.

/** What the server says when it does not do what was asked. */
export class Refused extends Error {
  /** @param {number} status @param {{what?: string, where?: string, expected?: string, do?: string, now?: unknown}} told */
  constructor(status, told) {
    super(told.what ?? "The program does not answer.");
    this.status = status;
    this.told = told;
  }
}

/**
 * Sends and gets JSON.
 * @param {string} at @param {unknown} [body] @param {string} [method]
 * @returns {Promise<any>}
 */
export async function ask(at, body, method = body === undefined ? "GET" : "POST") {
  const sent = body === undefined ? {} : { headers: { "Content-Type": "application/json" }, body: JSON.stringify(body) };
  let answer;
  try {
    answer = await fetch(at, { method, ...sent });
  } catch {
    throw new Refused(0, { what: "The program does not answer.", do: "See whether gatewright is still running." });
  }
  const told = await answer.json().catch(() => ({}));
  if (!answer.ok) throw new Refused(answer.status, told);
  return told;
}

/**
 * Markup that the server writes, as a document to take parts from.
 * @param {string} at @param {AbortSignal} [signal]
 */
export async function markup(at, signal) {
  const answer = await fetch(at, { signal });
  const page = new DOMParser().parseFromString(await answer.text(), "text/html");
  if (!answer.ok) throw new Refused(answer.status, { what: page.querySelector("main p")?.textContent ?? undefined });
  return page;
}

/**
 * A part of a page that the server writes; nothing where what is on the page is the same.
 * @param {string} at @param {HTMLElement | null} old @param {AbortSignal} [signal]
 */
export async function part(at, old, signal) {
  const answer = await fetch(`${at}${at.includes("?") ? "&" : "?"}have=${old?.dataset.digits ?? ""}`, { signal });
  if (answer.status === 204) return null;
  const text = await answer.text();
  if (!answer.ok) throw new Refused(answer.status, { what: new DOMParser().parseFromString(text, "text/html").querySelector("main p")?.textContent ?? undefined });
  return /** @type {HTMLElement} */ (elements(text)[0]);
}

/** Elements that the server has written. @param {string} text @returns {HTMLElement[]} */
export function elements(text) {
  const template = document.createElement("template");
  template.innerHTML = text;
  return /** @type {HTMLElement[]} */ ([...template.content.children]);
}

/**
 * An element with its text or children.
 * @param {string} name @param {Record<string, string>} [attributes] @param {...(Node | string)} inside
 */
export function made(name, attributes = {}, ...inside) {
  const element = document.createElement(name);
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, value);
  element.append(...inside);
  return element;
}

/** @param {Element} place @param {unknown} trouble */
export function tell(place, trouble) {
  place.replaceChildren();
  if (!trouble) return;
  const told = trouble instanceof Refused ? trouble.told : {};
  const what = trouble instanceof Error ? trouble.message : String(trouble);
  const box = made("div", { class: "trouble" }, made("p", { class: "strong" }, what));
  for (const [name, text] of [["Where: ", told.where], ["Expected: ", told.expected], ["", told.do]]) {
    if (text) box.append(made("p", {}, name + text));
  }
  place.append(box);
}

let hush = 0;

/** A word that goes away by itself. @param {string} text */
export function word(text) {
  const place = document.getElementById("word");
  if (!place) return;
  clearTimeout(hush);
  place.textContent = text;
  hush = window.setTimeout(() => (place.textContent = ""), 5000);
}

/** Lets a search field leave out the entries of a list that do not have its words. @param {ParentNode} [within] */
export function finding(within = document) {
  for (const field of /** @type {NodeListOf<HTMLInputElement>} */ (within.querySelectorAll("[data-finds]"))) {
    if (field.dataset.bound) continue;
    field.dataset.bound = "yes";
    field.addEventListener("input", () => {
      const list = document.querySelector(field.dataset.finds ?? "");
      if (!list) return;
      const words = field.value.toLowerCase().split(/\s+/).filter(Boolean);
      let left = 0;
      for (const entry of /** @type {NodeListOf<HTMLElement>} */ (list.querySelectorAll("[data-entry]"))) {
        const text = (entry.textContent ?? "").toLowerCase();
        entry.hidden = !words.every((word) => text.includes(word));
        left += entry.hidden ? 0 : 1;
      }
      for (const group of /** @type {NodeListOf<HTMLElement>} */ (list.querySelectorAll("[data-group]"))) {
        group.hidden = !group.querySelector("[data-entry]:not([hidden])");
      }
      const found = document.getElementById("found");
      if (found) found.textContent = words.length ? `${left} found.` : "";
    });
  }
}

/** How what has the focus in a part of the page is found again once that is written anew; nothing where it is elsewhere. @param {HTMLElement} within */
export function selectorOf(within) {
  const at = document.activeElement;
  if (!(at instanceof HTMLElement) || !within.contains(at)) return "";
  if (at.id) return `#${CSS.escape(at.id)}`;
  const key = ["thing", "do", "axis", "layer", "view", "gate"].find((key) => at.dataset[key] !== undefined);
  return key ? `${at.tagName}[data-${key}="${CSS.escape(at.dataset[key] ?? "")}"]` : "";
}

/** Runs work when nobody has asked for it again for a while. @param {number} wait @param {() => void} work */
export function settled(wait, work) {
  let timer = 0;
  return () => {
    clearTimeout(timer);
    timer = window.setTimeout(work, wait);
  };
}

document.documentElement.classList.add("scripted");
