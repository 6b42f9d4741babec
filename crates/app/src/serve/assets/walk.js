// The walk test: begun with a word on how far it is, stopped, shown again when it is through or the site changes.

import { ask, markup, settled, tell, word } from "./house.js";
import { replay } from "./replay.js";

const place = () => /** @type {HTMLElement} */ (document.getElementById("walks"));
const job = place().dataset.job ?? "";
const part = (/** @type {string} */ id) => /** @type {any} */ (document.getElementById(id));
let task = 0;

/** @param {any} told */
function progress(told) {
  task = told.task;
  const running = told.state === "running";
  part("making").hidden = !running;
  part("stop").hidden = !running;
  part("make").disabled = running;
  part("progress").max = told.of || 1;
  part("progress").value = told.done;
  part("says").textContent = told.says || "Walking";
  if (running) return;
  part("stop").disabled = false;
  if (told.state === "failed") tell(part("trouble"), told.says);
  if (told.state === "stopped") word("It was stopped; nothing was kept of it.");
  if (told.state === "done") void show("Walked.");
}

/** The page again, with what is known now. @param {string} why */
async function show(why) {
  const page = await markup(location.pathname + location.search);
  const fresh = page.getElementById("walks");
  if (!fresh) return;
  const open = new Set([...document.querySelectorAll("details[open] > summary")].map((one) => one.textContent));
  place().replaceWith(document.adoptNode(fresh));
  for (const summary of document.querySelectorAll("details > summary")) {
    if (open.has(summary.textContent)) /** @type {HTMLDetailsElement} */ (summary.parentElement).open = true;
  }
  bind();
  word(why);
}

function bind() {
  part("begin").addEventListener("submit", async (/** @type {SubmitEvent} */ event) => {
    event.preventDefault();
    tell(part("trouble"), null);
    try {
      const told = await ask(`/api/jobs/${job}/walks`, { walks: Number(part("count").value), keep: part("keep").checked });
      progress({ task: told.task, state: "running", done: 0, of: 1, says: "Walking" });
    } catch (refused) {
      tell(part("trouble"), refused);
    }
  });
  part("stop").addEventListener("click", () => {
    part("stop").disabled = true;
    part("says").textContent = "It stops.";
    void ask(`/api/tasks/${task}`, undefined, "DELETE").catch((refused) => tell(part("trouble"), refused));
  });
  if (place().dataset.task) {
    void ask(`/api/tasks/${place().dataset.task}`).then(progress).catch(() => {});
  }
  const player = document.getElementById("replay");
  if (player) void replay(player, job).catch((refused) => tell(part("trouble"), refused));
}

bind();
const again = settled(400, () => void show("The site has changed: looked at again."));
const events = new EventSource(`/api/jobs/${job}/events`);
events.addEventListener("progress", (event) => {
  const told = JSON.parse(event.data).progress;
  if (told.what === "walk") progress(told);
});
events.addEventListener("changed", (event) => {
  if (JSON.parse(event.data).revision !== place().dataset.revision) again();
});
