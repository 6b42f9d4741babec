// Pictures: a value is read where one points, or with the slider; the page is drawn again when the site changes.

import { ask, markup, settled, word } from "./house.js";

/** @typedef {{what: string, unit: string, from: number, to: number, digits: number, year: boolean}} Axis */
/** @typedef {{axes: {across: Axis, up: Axis}, series: {name: string, points: [number, number][]}[]}} Told */

const SVG = "http://www.w3.org/2000/svg";
const MONTHS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
const NAMES = ["January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November", "December"];
const place = () => /** @type {HTMLElement} */ (document.getElementById("pictures"));
const job = place().dataset.job ?? "";

/** @param {number} value @param {Axis} axis */
function written(value, axis) {
  if (axis.year) return day(value);
  const number = value.toFixed(axis.digits).replace(/^-(0(\.0*)?)$/, "$1").replace("-", "−");
  return axis.unit ? `${number} ${axis.unit}` : number;
}

/** A day of the year by its name. @param {number} since */
function day(since) {
  let left = Math.min(364, Math.max(0, Math.floor(since)));
  const month = MONTHS.findIndex((days) => {
    if (left < days) return true;
    left -= days;
    return false;
  });
  return `${left + 1} ${NAMES[month]}`;
}

/** The height of a curve at a place, as it is drawn. @param {[number, number][]} points @param {number} at */
function height(points, at) {
  for (let index = 1; index < points.length; index += 1) {
    const [x, y] = points[index - 1];
    const [toX, toY] = points[index];
    if (at >= x - 1e-9 && at <= toX + 1e-9) return toX > x ? y + (Math.min(1, Math.max(0, (at - x) / (toX - x)))) * (toY - y) : y;
  }
  return null;
}

/** @param {HTMLElement} figure */
function reads(figure) {
  const slider = /** @type {HTMLInputElement | null} */ (figure.querySelector("[data-read]"));
  const chart = /** @type {SVGSVGElement | null} */ (figure.querySelector(".chart"));
  if (!slider || !chart) return;
  /** @type {Promise<Told> | null} */
  let told = null;
  const line = document.createElementNS(SVG, "line");
  line.setAttribute("class", "cursor");
  line.setAttribute("y1", "0");
  line.setAttribute("y2", "100%");
  const dots = /** @type {SVGCircleElement[]} */ ([]);
  const values = /** @type {HTMLElement[]} */ ([...figure.querySelectorAll("[data-value]")]);
  const reading = /** @type {HTMLElement} */ (figure.querySelector(".reading"));

  async function show() {
    told ??= ask(`/api/jobs/${job}/pictures/${figure.dataset.picture}`);
    const { axes, series } = await told;
    const share = Number(slider?.value) / Number(slider?.max);
    const at = axes.across.from + share * (axes.across.to - axes.across.from);
    const x = `${share * 100}%`;
    line.setAttribute("x1", x);
    line.setAttribute("x2", x);
    if (!line.isConnected) chart?.append(line);
    const said = series.map((one, index) => {
      const value = height(one.points, at);
      const dot = (dots[index] ??= document.createElementNS(SVG, "circle"));
      dot.setAttribute("class", "on-cursor");
      dot.setAttribute("r", "4.5");
      if (value === null) dot.remove();
      else {
        dot.setAttribute("cx", x);
        dot.setAttribute("cy", `${(1 - (value - axes.up.from) / (axes.up.to - axes.up.from)) * 100}%`);
        chart?.append(dot);
      }
      if (values[index]) values[index].textContent = value === null ? "–" : written(value, axes.up);
      return value === null ? "" : series.length > 1 ? `${one.name} ${written(value, axes.up)}` : written(value, axes.up);
    });
    const where = written(at, axes.across);
    const full = `At ${where}: ${said.filter(Boolean).join("; ") || "nothing is drawn here"}.`;
    slider?.setAttribute("aria-valuetext", where);
    reading.textContent = full;
  }
  const look = () => void show().catch((trouble) => (reading.textContent = String(trouble.message ?? trouble)));

  slider.addEventListener("input", look);
  slider.addEventListener("focus", look);
  const point = (/** @type {PointerEvent} */ event) => {
    const frame = /** @type {Element} */ (chart.querySelector(".frame")).getBoundingClientRect();
    const share = Math.min(1, Math.max(0, (event.clientX - frame.left) / frame.width));
    slider.value = String(Math.round(share * Number(slider.max)));
    look();
  };
  chart.addEventListener("pointermove", point);
  chart.addEventListener("pointerdown", point);
}

const all = () => /** @type {HTMLElement[]} */ ([...document.querySelectorAll("[data-picture]")]);
const again = settled(60, async () => {
  const page = await markup(`/jobs/${job}/pictures`);
  const fresh = page.getElementById("pictures");
  const before = place();
  if (!fresh || fresh.dataset.revision === before.dataset.revision) return;
  const held = document.activeElement?.id;
  const open = new Set([...document.querySelectorAll("details[open]")].map((one) => one.id || one.closest("[data-picture]")?.id));
  before.replaceWith(document.adoptNode(fresh));
  all().forEach(reads);
  for (const one of document.querySelectorAll("details")) one.open = open.has(one.id || one.closest("[data-picture]")?.id);
  if (held) document.getElementById(held)?.focus({ preventScroll: true });
  word("The site has changed: drawn again.");
});

all().forEach(reads);
const events = new EventSource(`/api/jobs/${job}/events`);
events.addEventListener("changed", (event) => {
  if (JSON.parse(event.data).revision !== place().dataset.revision) again();
});
