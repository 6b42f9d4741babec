// The calculators: worked while one writes; the address carries what was written.

import { finding, markup, settled } from "./house.js";

finding();

const form = /** @type {HTMLFormElement | null} */ (document.querySelector("[data-live-form]"));
/** @type {AbortController | null} */
let asked = null;

async function work() {
  if (!form) return;
  const pairs = new URLSearchParams();
  for (const [name, text] of new FormData(form)) if (String(text).trim()) pairs.append(name, String(text));
  const at = `${location.pathname}?${pairs}`;
  asked?.abort();
  asked = new AbortController();
  try {
    const page = await markup(at, asked.signal);
    history.replaceState(null, "", at);
    const answer = page.getElementById("answer");
    if (answer) document.getElementById("answer")?.replaceChildren(...answer.childNodes);
    for (const says of /** @type {NodeListOf<HTMLElement>} */ (form.querySelectorAll("[data-says]"))) {
      says.replaceChildren(...(page.querySelector(`[data-says="${says.dataset.says}"]`)?.childNodes ?? []));
    }
    for (const field of form.elements) {
      if (!(field instanceof HTMLInputElement)) continue;
      const wrong = page.getElementById(field.id)?.hasAttribute("aria-invalid");
      if (wrong) field.setAttribute("aria-invalid", "true");
      else field.removeAttribute("aria-invalid");
    }
    const line = page.querySelector("[data-line]");
    if (line) document.querySelector("[data-line]")?.replaceChildren(...line.childNodes);
  } catch (trouble) {
    if (!(trouble instanceof DOMException)) throw trouble;
  }
}

if (form) {
  form.addEventListener("input", settled(80, () => void work()));
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    void work();
  });
  for (const button of /** @type {NodeListOf<HTMLElement>} */ (form.querySelectorAll("[data-look]"))) {
    button.hidden = false;
    button.addEventListener("click", () => {
      for (const other of /** @type {NodeListOf<HTMLInputElement>} */ (form.querySelectorAll("input"))) {
        if (other.value === "?") other.value = other.defaultValue === "?" ? "" : other.defaultValue;
      }
      const field = /** @type {HTMLInputElement} */ (document.getElementById(button.dataset.look ?? ""));
      field.value = "?";
      const backward = /** @type {HTMLDetailsElement | null} */ (document.getElementById("backward"));
      if (backward) {
        backward.open = true;
        /** @type {HTMLInputElement | null} */ (backward.querySelector("input"))?.focus();
      }
      void work();
    });
  }
}
