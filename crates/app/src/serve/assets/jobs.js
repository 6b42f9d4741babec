// The list of jobs: a first site from a survey, a file brought in, a copy of another.

import { ask, finding, made, tell } from "./house.js";

finding();

/** @typedef {{key: string, ask: string, kind: string, words?: (string | string[])[], example?: string | number}} Question */

const survey = /** @type {HTMLFormElement} */ (document.getElementById("survey"));
const imported = /** @type {HTMLFormElement} */ (document.getElementById("import"));

/** A name for a folder from the title of a site. @param {string} title */
function folder(title) {
  return title.toLowerCase().normalize("NFD").replace(/[^a-z0-9]+/g, "-").replace(/^-+|-+$/g, "").slice(0, 60) || "site";
}

/** @param {Question} question */
function field(question) {
  const id = `q-${question.key}`;
  const label = made("label", { for: id }, question.ask);
  if (question.words) {
    const select = made("select", { id, name: question.key });
    for (const one of question.words) {
      const word = Array.isArray(one) ? one[0] : one;
      select.append(made("option", { value: word }, word === "us" ? "us: United States" : word === "eu" ? "eu: Europe" : word));
    }
    return made("div", { class: "field" }, label, select);
  }
  const input = made("input", { id, name: question.key, required: "", autocomplete: "off", placeholder: String(question.example ?? "") });
  if (question.kind === "count") input.setAttribute("inputmode", "numeric");
  return made("div", { class: "field" }, label, input);
}

async function questions() {
  const place = /** @type {HTMLElement} */ (document.getElementById("questions"));
  if (place.childElementCount) return;
  const asked = await ask("/api/survey");
  place.replaceChildren(...asked.map(field));
  /** @type {HTMLElement | null} */ (place.querySelector("input"))?.focus();
}

/** @param {HTMLFormElement} form @param {string} name @param {unknown} from @param {Record<string, string>} [files] beside the site file */
async function make(form, name, from, files = {}) {
  const trouble = /** @type {HTMLElement} */ (form.querySelector("[data-trouble]"));
  try {
    const told = await ask("/api/jobs", { name, from, files });
    location.assign(`/jobs/${told.name ?? name}`);
  } catch (refused) {
    tell(trouble, refused);
  }
}

/** The first name that no job has. @param {string} name */
async function free(name) {
  const jobs = await ask("/api/jobs");
  const taken = new Set((Array.isArray(jobs) ? jobs : jobs.jobs).map((/** @type {{name: string}} */ job) => job.name));
  let next = name;
  for (let number = 2; taken.has(next); number += 1) next = `${name}-${number}`;
  return next;
}

document.addEventListener("click", (event) => {
  const target = /** @type {HTMLElement} */ (event.target);
  const open = /** @type {HTMLElement | null} */ (target.closest("[data-open]"))?.dataset.open;
  if (open) {
    survey.hidden = open !== "survey";
    imported.hidden = open !== "import";
    if (open === "survey") void questions();
    else document.getElementById("import-name")?.focus();
  }
  if (target.closest("[data-close]")) survey.hidden = imported.hidden = true;
  const copied = /** @type {HTMLElement | null} */ (target.closest("[data-copy]"))?.dataset.copy;
  if (copied) void free(`${copied}-copy`).then((name) => make(imported, name, { job: copied }));
});

survey.addEventListener("submit", async (event) => {
  event.preventDefault();
  /** @type {Record<string, unknown>} */
  const given = Object.fromEntries(new FormData(survey));
  given.cycles = Number(given.cycles) || 0;
  void make(survey, await free(folder(String(given.title))), { survey: given });
});

/** The files that were chosen, with their texts. @returns {Promise<{name: string, text: string}[]>} */
async function chosen() {
  const field = /** @type {HTMLInputElement} */ (document.getElementById("import-file"));
  return Promise.all([...(field.files ?? [])].map(async (file) => ({ name: file.name, text: await file.text() })));
}

/** The site file among others: the one of that name, or the one that describes a site. @param {{name: string, text: string}[]} files */
const siteAmong = (files) => files.find((file) => file.name === "site.toml") ?? files.find((file) => /^\s*\[site\]/m.test(file.text));

/** Says which files the site asks for, and which of them are there. */
async function asked() {
  const place = /** @type {HTMLElement} */ (document.getElementById("import-asked"));
  const files = await chosen();
  const main = siteAmong(files);
  if (!main) return place.replaceChildren(...(files.length ? [made("p", { class: "strong" }, "None of these is a site file: it begins with [site].")] : []));
  const wanted = /** @type {{name: string, for: string}[]} */ (await ask("/api/files", { text: main.text }));
  const lines = wanted.map((one) => {
    const there = files.some((file) => file.name === one.name);
    return made("li", { "data-missing": String(!there) }, made("strong", {}, `${there ? "Here" : "Missing"}: `), made("span", { class: "typed" }, one.name), `, ${one.for}`);
  });
  const missing = lines.filter((line) => line.dataset.missing === "true").length;
  place.replaceChildren(made("p", {}, wanted.length ? `${main.name} asks for:` : `${main.name} asks for no other file.`), made("ul", { class: "rows" }, ...lines),
    ...(missing ? [made("p", {}, "Choose all files at once. Without the missing ones, what rests on them stays unknown.")] : []));
}
document.getElementById("import-file")?.addEventListener("change", () => void asked().catch((refused) => tell(/** @type {HTMLElement} */ (imported.querySelector("[data-trouble]")), refused)));

imported.addEventListener("submit", async (event) => {
  event.preventDefault();
  const files = await chosen();
  const main = siteAmong(files);
  if (!main) return;
  const beside = Object.fromEntries(files.filter((file) => file !== main).map((file) => [file.name, file.text]));
  void make(imported, folder(String(new FormData(imported).get("name"))), { text: main.text }, beside);
});

// A job whose answers are being worked is shown again once they are there.
const events = new EventSource("/api/events");
events.addEventListener("answered", async () => {
  const page = new DOMParser().parseFromString(await (await fetch("/")).text(), "text/html");
  const list = page.getElementById("jobs");
  const old = document.getElementById("jobs");
  if (list && old && !old.contains(document.activeElement)) old.replaceWith(document.adoptNode(list));
});
