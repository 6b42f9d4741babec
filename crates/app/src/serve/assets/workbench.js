// The workbench: drawing, answers and form speak of the same things.

import { Answers } from "./answers.js";
import { Editor } from "./edit.js";
import { elements, settled } from "./house.js";
import { Plan } from "./plan.js";

const bench = /** @type {HTMLElement} */ (document.getElementById("bench"));
const job = bench.dataset.job ?? "";

/** @param {string} panel */
function turnTo(panel) {
  bench.dataset.panel = panel;
  for (const link of /** @type {NodeListOf<HTMLElement>} */ (document.querySelectorAll(".bar [data-panel-to]"))) {
    if (link.dataset.panelTo === panel) link.setAttribute("aria-current", "true");
    else link.removeAttribute("aria-current");
  }
}

/** @param {string} path */
function edit(path) {
  turnTo("edit");
  plan.panel.scrollTop = 0;
  void editor.showValue(path);
}

let redraws = 0;
/**
 * Brings everything up to what the file says now: drawing and answers first, then the form.
 * @param {import("./edit.js").Kept} [told] what came with the word that a change is kept @param {URLSearchParams} [of] what the page showed before that
 */
async function redraw(told, of) {
  const revision = bench.dataset.revision ?? "";
  redraws += 1;
  const own = redraws;
  const isDrawn = told?.drawing !== undefined && of !== undefined && of.toString().startsWith(`${plan.address()}&have=`);
  if (isDrawn && told.drawing) plan.draw(elements(told.drawing)[0], true);
  if (told?.changes) await answers.take(told.changes, of?.get("since") ?? "");
  await Promise.all([isDrawn || plan.again(), answers.reach(revision)]);
  if (own !== redraws) return;
  bench.dataset.redrawn = revision;
  await editor.again();
}

/** What the page shows: drawing and answers, each with which state of it. */
function shows() {
  const shown = plan.address();
  shown.set("have", plan.drawing?.dataset.digits ?? "");
  shown.set("since", answers.list?.dataset.revision ?? "");
  return shown;
}
const redrawSoon = settled(10, () => void redraw());

const plan = new Plan(job, {
  chosen: (path) => answers.light(path, true),
  over: (path) => answers.light(path || plan.chosen),
  send: (edits) => editor.send(edits),
  edit,
});
const answers = new Answers(job, {
  light: (paths) => plan.light(paths.length ? paths : plan.chosen ? [plan.chosen] : []),
  edit,
});
const editor = new Editor(job, bench, { kept: (told, of) => void redraw(told, of), shows });

for (const link of /** @type {NodeListOf<HTMLElement>} */ (document.querySelectorAll("[data-panel-to]"))) {
  link.addEventListener("click", (event) => {
    event.preventDefault();
    const to = link.dataset.panelTo ?? "plan";
    turnTo(to === bench.dataset.panel && to === "edit" ? "answers" : to);
    if (to === "edit" && bench.dataset.panel === "edit") document.getElementById("find-record")?.focus();
  });
}
document.addEventListener("keydown", (event) => {
  if (event.key === "Escape" && bench.dataset.panel === "edit" && !(event.target instanceof HTMLInputElement)) turnTo("answers");
  const typing = event.target instanceof HTMLInputElement && event.target.type !== "range";
  if ((event.ctrlKey || event.metaKey) && event.key.toLowerCase() === "z" && !typing) {
    event.preventDefault();
    void editor.step(event.shiftKey ? "redo" : "undo");
  }
});

const events = new EventSource(`/api/jobs/${job}/events`);
events.addEventListener("changed", (event) => {
  const told = JSON.parse(event.data);
  // What is being kept here is drawn once it is.
  if (editor.sending) editor.heard = told;
  if (editor.sending || told.revision === bench.dataset.revision) return;
  editor.known(told);
  redrawSoon();
});
events.addEventListener("answered", (event) => {
  const told = JSON.parse(event.data);
  if (!editor.sending && answers.list?.dataset.revision !== told.revision) void answers.reach(told.revision);
});

turnTo(bench.dataset.panel ?? "plan");
