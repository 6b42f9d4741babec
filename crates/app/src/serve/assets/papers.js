// The papers: made with a word on how far they are, stopped, listed.

import { ask, made, markup, tell } from "./house.js";

const place = /** @type {HTMLElement} */ (document.getElementById("papers"));
const job = place.dataset.job ?? "";
const part = (/** @type {string} */ id) => /** @type {any} */ (document.getElementById(id));
let task = 0;

/** @param {number} bytes */
function size(bytes) {
  return bytes > 1e6 ? `${(bytes / 1e6).toFixed(1)} MB` : `${Math.max(1, Math.round(bytes / 1e3))} kB`;
}

async function list() {
  const told = await ask(`/api/jobs/${job}/papers`);
  const lines = told.papers.map((/** @type {{name: string, what: string, bytes: number}} */ paper) =>
    made("li", {}, made("a", { href: `/api/jobs/${job}/papers/${encodeURIComponent(paper.name)}`, target: "_blank" }, paper.name), made("span", { class: "what" }, paper.what), made("span", { class: "soft" }, size(paper.bytes))));
  part("list").replaceChildren(...lines);
  part("state").textContent = !told.papers.length
    ? "No papers have been made yet."
    : told.is_of_now
      ? "These papers are of what the site file says now."
      : "The site file has changed since these papers were made: make them again before anybody builds from them.";
  if (told.task) progress({ task: told.task, state: "running", done: 0, of: 1, says: "Making" });
}

/** Shows what the site file and the walks beside it say now. */
function again() {
  const unread = markup(location.pathname).then((page) => part("unread").replaceWith(page.getElementById("unread") ?? ""));
  Promise.all([list(), unread]).catch((refused) => tell(part("trouble"), refused));
}

/** @param {any} told */
function progress(told) {
  task = told.task;
  const running = told.state === "running";
  part("making").hidden = !running;
  part("stop").hidden = !running;
  part("make").disabled = running;
  part("progress").max = told.of || 1;
  part("progress").value = told.done;
  part("says").textContent = told.says;
  if (running) return;
  if (told.state === "failed") tell(part("trouble"), told.says);
  void list();
}

part("make").addEventListener("click", async () => {
  tell(part("trouble"), null);
  try {
    const told = await ask(`/api/jobs/${job}/papers`, {});
    progress({ task: told.task, state: "running", done: 0, of: 1, says: "Making" });
  } catch (refused) {
    tell(part("trouble"), refused);
  }
});
part("stop").addEventListener("click", () => void ask(`/api/tasks/${task}`, undefined, "DELETE").catch((refused) => tell(part("trouble"), refused)));

const events = new EventSource(`/api/jobs/${job}/events`);
events.addEventListener("progress", (event) => {
  const told = JSON.parse(event.data).progress;
  if (told.what === "papers") progress(told);
});
events.addEventListener("changed", again);
// What happened before the page was heard, it asks for once it is.
events.addEventListener("open", again);
void list().catch((refused) => tell(part("trouble"), refused));
