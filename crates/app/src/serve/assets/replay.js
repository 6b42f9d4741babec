// One walk played: the leaf, the body, what each device sees, and what the controller does, from the trace that the
// program writes. Nobody who asked for less motion gets any: they step.

import { ask, made } from "./house.js";

/**
 * @typedef {{time: number, edge?: number, from_above?: [number, number][][], from_the_road?: [number, number][], turned_up?: number, body: [number, number]}} Frame
 * @typedef {{name: string, kind: string, corners: [number, number][], heights: [number, number], blind: boolean, keeps_shut: boolean, entered: number | null, reports: number | null}} Device
 */

const SVG = "http://www.w3.org/2000/svg";
const FAR = 50;
const STEP = 10;

/** @param {string} name @param {string} look @param {Record<string, string | number>} [attributes] @returns {SVGElement} */
function figure(name, look, attributes = {}) {
  const element = document.createElementNS(SVG, name);
  element.setAttribute("class", look);
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, String(value));
  return element;
}

/** Corners with y upward as the screen has them. @param {[number, number][]} corners */
const corners = (corners) => corners.map(([x, y]) => `${x.toFixed(4)},${(-y).toFixed(4)}`).join(" ");

/** An outline that is seen from the road, seen from above. @param {[number, number][]} outline @param {number} half @returns {[number, number][]} */
function laidFlat(outline, half) {
  const xs = outline.map((corner) => corner[0]);
  const [left, right] = [Math.min(...xs), Math.max(...xs)];
  return [[left, -half], [right, -half], [right, half], [left, half]];
}

/** A view on the board: its own drawing, moved to its place. @typedef {{road: boolean, left: number, low: number, wide: number, tall: number, aside: number, down: number}} View */

/** @param {Device} device @param {number} time */
function sight(device, time) {
  if (device.keeps_shut) return ["reports", "sees them, and keeps the leaf from starting"];
  if (device.reports !== null && time >= device.reports) return ["reports", "reports"];
  if (device.entered !== null && time >= device.entered) return ["within", "they are in it; its output has not changed yet"];
  return ["", device.blind ? "is not at their height" : "does not see them"];
}

/** @param {HTMLElement} section @param {string} job */
export async function replay(section, job) {
  const { trace, stage } = await ask(`/api/jobs/${job}/walks/${encodeURIComponent(section.dataset.gate ?? "")}/${section.dataset.walk}`);
  const part = (/** @type {string} */ id) => /** @type {any} */ (section.querySelector(`#${id}`));
  const board = /** @type {SVGSVGElement} */ (part("board"));
  const frames = /** @type {Frame[]} */ (trace.frames);
  if (!frames.length) return;
  const road = Boolean(frames[0].from_the_road);
  const touch = stage.touch;
  const first = frames[0].time;

  part("replay-words").textContent = `${trace.body[0].toUpperCase()}${trace.body.slice(1)}, leaf ${trace.leaf_moves}: ${trace.told.ends}`;
  part("seen-from").textContent = road
    ? "Seen from the road, and from above with the road below; dotted: beams and fields; thin: parts of the body that the leaf passes by."
    : "Seen from above, the road below; dotted: beams and fields.";
  part("happens").replaceChildren(...trace.events.map((/** @type {{seconds: number, what: string}} */ one) => made("li", {}, made("span", { class: "strong" }, `${one.seconds.toFixed(2)} s`), made("span", {}, one.what))));

  // What is seen: around the touch, or around where the body ends, with the gate line where it is near; of a leaf that
  // rises all of it, from the road and from above.
  const last = frames[frames.length - 1].body;
  const [x, y] = touch ? touch.at : last;
  const shape = board.getBoundingClientRect();
  /** @type {View[]} */
  const views = [];
  if (road) {
    const outlines = frames.flatMap((frame) => frame.from_the_road ?? []);
    const xs = [...outlines.map((corner) => corner[0]), ...(trace.housing ?? []), x];
    const left = Math.min(...xs) - 0.4;
    const wide = Math.max(...xs) + 0.4 - left;
    const tall = Math.max(2.2, ...outlines.map((corner) => corner[1])) + 0.3;
    const beside = shape.width > 1.4 * shape.height;
    views.push({ road: true, left, low: -0.15, wide, tall, aside: 0, down: 0 });
    views.push({ road: false, left, low: -1.3, wide, tall: 2.6, aside: beside ? wide + 0.3 : 0, down: beside ? tall - 2.6 : tall + 0.3 });
  } else {
    const line = Math.abs(y) < 2.5 ? 0 : y;
    const low = Math.min(y, line) - 1.5;
    views.push({ road: false, left: x - 1.9, low, wide: 3.8, tall: Math.max(y, line) + 1.5 - low, aside: 0, down: 0 });
  }
  const whole = [Math.max(...views.map((view) => view.aside + view.wide)), Math.max(...views.map((view) => view.down + view.tall))];
  board.setAttribute("viewBox", `0 0 ${whole[0]} ${whole[1]}`);
  board.setAttribute("aria-label", `${trace.body}, leaf ${trace.leaf_moves}, ${road ? "seen from the road and from above" : "seen from above"}`);
  board.replaceChildren();
  const devices = /** @type {Device[]} */ (stage.devices);
  const unit = Math.max(whole[0] / (shape.width || 400), whole[1] / (shape.height || 300));
  const drawn = views.map((view) => scene(view));

  /** Draws what stands still in a view, and what will move. @param {View} view */
  function scene(view) {
    const place = figure("svg", "view", { x: view.aside, y: view.down, width: view.wide, height: view.tall, viewBox: `${view.left} ${-view.low - view.tall} ${view.wide} ${view.tall}` });
    if (!road) place.setAttribute("overflow", "visible");
    board.append(place);
    if (road) place.append(figure("rect", "edge", { x: view.left, y: -view.low - view.tall, width: view.wide, height: view.tall }));
    place.append(figure("line", "line", { x1: x - FAR, x2: x + FAR, y1: 0, y2: 0 }));
    if (!view.road) for (const [[x1, y1], [x2, y2]] of stage.fixed) place.append(figure("line", "stands-there", { x1, x2, y1: -y1, y2: -y2 }));
    if (trace.housing) {
      const [from, to] = trace.housing;
      const half = (to - from) / 2;
      const high = view.road ? trace.leaf_heights[1] : half;
      place.append(figure("rect", "stands-there", { x: from, y: -high, width: to - from, height: view.road ? high : 2 * half }));
    }
    const shapes = devices.map((device) => {
      const xs = device.corners.map((corner) => corner[0]);
      const [left, right] = [Math.min(...xs), Math.max(...xs)];
      const [bottom, top] = device.heights;
      const flat = device.kind === "beam" || top - bottom < 0.01;
      const made = !view.road
        ? figure("polygon", "device", { points: corners(device.corners) })
        : flat
          ? figure("line", "device", { x1: left, x2: right, y1: -(bottom + top) / 2, y2: -(bottom + top) / 2 })
          : figure("rect", "device", { x: left, y: -top, width: right - left, height: top - bottom });
      place.append(made);
      return made;
    });
    // Names beside the devices, by turns on the left and on the right, in letters of the size of the page.
    const wide = road ? view.wide : Math.max(view.wide, shape.width * unit);
    const middle = view.left + view.wide / 2;
    // From the road they stand at one height: on lines of their own where they would run into each other.
    const letters = devices.reduce((sum, device) => sum + device.name.length + 2, 0);
    const line = view.road && letters * 8 * unit > wide ? 15 * unit : 0;
    devices.forEach((device, index) => {
      const spots = device.corners.map(([cx, cy]) => [cx, view.road ? (device.heights[0] + device.heights[1]) / 2 : cy]);
      const ends = index % 2 && !line ? "end" : "start";
      const edge = ends === "end" ? middle + wide / 2 - 6 * unit : middle - wide / 2 + 6 * unit;
      const xs = spots.map((spot) => spot[0]);
      const at = Math.min(Math.max(edge, Math.min(...xs)), Math.max(...xs));
      const mean = spots.reduce((sum, spot) => sum + spot[1], 0) / spots.length;
      const level = road ? Math.min(Math.max(mean, view.low + 20 * unit), view.low + view.tall - 20 * unit) : mean;
      const name = figure("text", "name", { x: at, y: -level + (level < 0 ? 16 : -6) * unit - index * line, "font-size": 13 * unit, "text-anchor": ends });
      name.textContent = device.name;
      place.append(name);
    });
    const count = view.road ? 1 : frames[0].from_above?.length || 1;
    const leaf = Array.from({ length: count }, () => figure("polygon", "moving-leaf"));
    const body = trace.cylinders.map(() => figure(view.road ? "rect" : "circle", "part"));
    place.append(...leaf, ...body);
    const cross = figure("path", touch?.bad ? "cross bad" : "cross");
    if (touch) {
      const [cx, up] = view.road ? touch.meets ?? touch.at : touch.at;
      const [cy, arm] = [-up, 0.09];
      cross.setAttribute("d", `M${cx - arm} ${cy - arm}L${cx + arm} ${cy + arm}M${cx - arm} ${cy + arm}L${cx + arm} ${cy - arm}`);
      place.append(cross);
    }
    return { view, shapes, leaf, body, cross };
  }

  const list = devices.map((device) => {
    const says = made("span", {});
    part("devices").append(made("li", {}, made("span", { class: "strong" }, device.name), says));
    return says;
  });
  if (!devices.length) part("devices").replaceChildren(made("li", {}, "No beam or field acts in this direction."));

  /** @param {View} view @param {Frame} frame @param {number} index @returns {[number, number][]} */
  function outline(view, frame, index) {
    const half = trace.leaf_half_thickness;
    if (frame.from_the_road) return view.road ? frame.from_the_road : laidFlat(frame.from_the_road, half);
    if (frame.from_above?.length) return frame.from_above[index];
    const edge = frame.edge ?? 0;
    const behind = edge + (trace.leaf_moves === "closing" ? FAR : -FAR);
    return [[edge, -half], [behind, -half], [behind, half], [edge, half]];
  }

  let said = "";
  /** @param {number} at */
  function show(at) {
    const frame = frames[at];
    const time = frame.time;
    const [fx, fy] = trace.faces;
    const touched = touch && time >= touch.time - 0.005;
    for (const { view, shapes, leaf, body, cross } of drawn) {
      leaf.forEach((one, index) => one.setAttribute("points", corners(outline(view, frame, index))));
      trace.cylinders.forEach((/** @type {number[]} */ [ahead, aside, radius, bottom, top], /** @type {number} */ index) => {
        const cx = frame.body[0] + ahead * fx + aside * fy;
        const cy = frame.body[1] + ahead * fy - aside * fx;
        const place = view.road ? { x: cx - radius, y: -top, width: 2 * radius, height: top - bottom } : { cx, cy: -cy, r: radius };
        for (const [key, value] of Object.entries(place)) body[index].setAttribute(key, value.toFixed(4));
        const passed = view.road && Math.abs(cy) > radius + trace.leaf_half_thickness + 1e-6;
        body[index].setAttribute("class", passed ? "part passed" : "part");
      });
      cross.setAttribute("visibility", touched ? "visible" : "hidden");
      devices.forEach((device, index) => shapes[index].setAttribute("class", `device ${sight(device, time)[0]}`));
    }
    devices.forEach((device, index) => (list[index].textContent = sight(device, time)[1]));
    const state = stage.states.findLast((/** @type {{from_ms: number}} */ one) => one.from_ms <= time * 1000 + 0.5) ?? stage.states[0];
    const rows = [["Leaf", `${state?.leaf ?? "–"}${frame.turned_up === undefined ? "" : `, ${frame.turned_up.toFixed(0)}° up`}`], ["Controller", state?.controller ?? "–"], ["Body", touched ? `touched: ${touch.force}` : "not touched"]];
    part("doing").replaceChildren(...rows.flatMap(([name, words]) => [made("dt", {}, name), made("dd", {}, words)]));
    part("clock").textContent = `${time.toFixed(2)} s`;
    part("time").setAttribute("aria-valuetext", `${time.toFixed(2)} seconds`);
    const now = rows.map(([name, words]) => `${name} ${words}`).join("; ");
    if (now !== said && !playing) part("now").textContent = now;
    said = now;
  }

  const slider = /** @type {HTMLInputElement} */ (part("time"));
  slider.max = String(frames.length - 1);
  let playing = 0;
  /** @param {number} at */
  function turnTo(at) {
    const to = Math.min(frames.length - 1, Math.max(0, at));
    slider.value = String(to);
    show(to);
  }
  function pause() {
    cancelAnimationFrame(playing);
    playing = 0;
    part("play").textContent = "Play";
  }
  function play() {
    if (Number(slider.value) >= frames.length - 1) turnTo(0);
    const from = frames[Number(slider.value)].time;
    const begun = performance.now();
    const pace = (frames[frames.length - 1].time - first) / Math.max(1, frames.length - 1);
    const next = (/** @type {number} */ now) => {
      if (!section.isConnected) return;
      const time = from + (now - begun) / 1000;
      turnTo(Math.floor((time - first) / pace + 1e-6));
      if (Number(slider.value) >= frames.length - 1) pause();
      else playing = requestAnimationFrame(next);
    };
    part("play").textContent = "Pause";
    playing = requestAnimationFrame(next);
  }
  const calm = matchMedia("(prefers-reduced-motion: reduce)");
  const may = () => {
    part("play").hidden = calm.matches;
    if (calm.matches) pause();
  };
  calm.addEventListener("change", may);
  may();
  part("play").addEventListener("click", () => (playing ? pause() : play()));
  for (const [id, by] of [["back", -STEP], ["on", STEP]]) {
    part(/** @type {string} */ (id)).addEventListener("click", () => {
      pause();
      turnTo(Number(slider.value) + Number(by));
    });
  }
  part("touch").hidden = !touch;
  part("touch").addEventListener("click", () => {
    pause();
    turnTo(frames.findIndex((frame) => frame.time >= touch.time - 0.005));
  });
  slider.addEventListener("input", () => {
    pause();
    show(Number(slider.value));
  });
  turnTo(touch ? Math.max(0, frames.findIndex((frame) => frame.time >= touch.time - 1.5)) : 0);
  section.classList.add("ready");
}
