// Where a hand on the sheet comes to rest: on a thing, in line with one, or on the grid.

import { gridStep } from "./lengths.js";
import { drawn } from "./sheet.js";

/** @typedef {import("./sheet.js").Spot} Spot @typedef {import("./sheet.js").Sheet} Sheet @typedef {import("./thing.js").Thing} Thing */

const NEAR = 14;
const IN_LINE = 8;

export class Snap {
  /** @param {Sheet} sheet @param {Map<string, Thing>} things @param {string} units @param {() => boolean} grid */
  constructor(sheet, things, units, grid) {
    this.sheet = sheet;
    this.things = things;
    this.units = units;
    this.grid = grid;
  }

  /** Between the lines of the grid (m). */
  get step() {
    return gridStep(40 * this.sheet.unit, this.units);
  }

  /** Ends of things, as they stand now. @param {Thing} [without] */
  ends(without) {
    return [...this.things.values()].filter((thing) => thing !== without).flatMap((thing) => [thing.now(), ...(thing.to ? [thing.to] : [])]);
  }

  /** A place of the stage as a point of the drawing, on a thing or on the grid where one is near. @param {Spot} at @returns {Spot} */
  spot(at) {
    const spot = this.sheet.spot(at);
    // Things at one place are drawn side by side.
    const ends = [...this.things.values()].flatMap((thing) => [{ spot: thing.now(), aside: thing.aside }, ...(thing.to ? [{ spot: thing.to, aside: 0 }] : [])]);
    const far = ends.map((end) => {
      const place = this.sheet.place(end.spot);
      return { spot: end.spot, far: Math.hypot(place.x + end.aside - at.x, place.y - at.y) };
    });
    const near = far.reduce((best, end) => (end.far < best.far ? end : best), { spot, far: NEAR });
    if (near.far < NEAR) return near.spot;
    return this.grid() ? this.onGrid(spot) : spot;
  }

  /** @param {Spot} spot @returns {Spot} */
  onGrid(spot) {
    const step = this.step / 4;
    return { x: Math.round(spot.x / step) * step, y: Math.round(spot.y / step) * step };
  }

  /** A thing that is dragged comes in line with others, or onto the grid; lines show with what. @param {Spot} to @param {Thing} thing @returns {Spot} */
  dragged(to, thing) {
    const reach = IN_LINE * this.sheet.unit;
    const spot = this.grid() ? this.onGrid(to) : { ...to };
    // What a leaf carries is dragged where it is while the gate is closed.
    if (thing.leaf >= 0) return spot;
    let lines = "";
    for (const axis of /** @type {const} */ (["x", "y"])) {
      const near = this.ends(thing).filter((end) => Math.abs(end[axis] - to[axis]) < reach)
        .sort((one, other) => Math.abs(one[axis] - to[axis]) - Math.abs(other[axis] - to[axis]))[0];
      if (!near) continue;
      spot[axis] = near[axis];
      lines += axis === "x" ? `M${near.x} ${near.y}V${to.y}` : `M${near.x} ${near.y}H${to.x}`;
    }
    this.sheet.over("guides").replaceChildren(...(lines ? [drawn("path", { class: "guide", d: lines })] : []));
    return spot;
  }

  /** Nothing is dragged any more. */
  rest() {
    this.sheet.over("guides").replaceChildren();
  }

  /** The lines of the grid over what is seen. */
  drawGrid() {
    const over = this.sheet.over("grid");
    if (!this.grid()) return over.replaceChildren();
    const { wide, tall } = this.sheet.size;
    const [low, high] = [this.sheet.spot({ x: 0, y: 0 }), this.sheet.spot({ x: wide, y: tall })];
    const step = this.step;
    let lines = "";
    for (let x = Math.ceil(low.x / step) * step; x < high.x; x += step) lines += `M${x} ${low.y}V${high.y}`;
    for (let y = Math.ceil(low.y / step) * step; y < high.y; y += step) lines += `M${low.x} ${y}H${high.x}`;
    over.replaceChildren(drawn("path", { class: "grid", d: lines }));
  }
}
