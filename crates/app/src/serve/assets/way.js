// A way that is drawn: the points that it joins, the conduit that lies in it, the cable that it takes.

import { made } from "./house.js";
import { lengthText } from "./lengths.js";

/** @typedef {import("./sheet.js").Spot} Spot @typedef {import("./thing.js").Thing} Thing @typedef {import("./card.js").Edit} Edit */
/** @typedef {{points: {id: string, at: [number, number] | null, serves: string[]}[], ways: string[], conduits: string[], made_by: string[], ends: string[],
 *   cables: {id: string, from: string, to: string, route: string[]}[]}} Known What the site has of ways already. */

/** Points nearer than this are the same (m). */
const SAME = 0.05;

export class Way {
  /** @param {Known} known @param {string} units */
  constructor(known, units) {
    this.known = known;
    this.units = units;
    /** @type {(Thing | undefined)[]} */
    this.things = [];
  }

  /** Fields of a way. */
  fields() {
    const name = input("route-name", free("way", this.known.ways));
    const conduit = input("route-conduit", free("conduit", this.known.conduits));
    const by = made("select", { id: "route-by" }, ...this.known.made_by.map((word) => made("option", { value: word }, word)));
    const cable = made("select", { id: "route-cable" });
    this.cable = /** @type {HTMLSelectElement} */ (cable);
    this.says = made("p", { role: "status" }, "Begin at a thing or a point of the ground.");
    this.offer();
    return [
      made("p", {}, made("strong", {}, "Draw a route")),
      this.says,
      made("div", { class: "places" }, field("route-name", "Name of the way", name), field("route-by", "How it is made", by), field("route-conduit", "New conduit in it", conduit), field("route-cable", "Cable through it", cable)),
    ];
  }

  /** Cables that may go this way; those between its two ends first. */
  offer() {
    const select = this.cable;
    if (!select) return;
    const before = select.value;
    const [from, to] = this.ends();
    const joins = (/** @type {Known["cables"][0]} */ cable) => from && to && [cable.from, cable.to].includes(from) && [cable.from, cable.to].includes(to);
    const cables = [...this.known.cables].sort((one, other) => Number(joins(other) ?? false) - Number(joins(one) ?? false));
    const fresh = from && to ? [made("option", { value: "*" }, `A new one from ${from} to ${to}`)] : [];
    select.replaceChildren(made("option", { value: "" }, "None yet"), ...fresh, ...cables.map((cable) => made("option", { value: cable.id }, `${cable.id}: ${cable.from} to ${cable.to}`)));
    if ([...select.options].some((option) => option.value === before)) select.value = before;
  }

  /** Names of the things at both ends that a cable can be joined to. */
  ends() {
    const name = (/** @type {Thing | undefined} */ thing) => (thing && this.known.ends.includes(thing.name) ? thing.name : "");
    return this.things.length > 1 ? [name(this.things[0]), name(this.things[this.things.length - 1])] : ["", ""];
  }

  /** @param {Spot[]} points @param {(Thing | undefined)[]} things */
  said(points, things) {
    this.things = things;
    const what = (/** @type {number} */ at) => things[at]?.name ?? this.pointAt(points[at])?.id ?? "a new point";
    if (this.says) {
      this.says.textContent = points.length < 2 ? (points.length ? `From ${what(0)}. Now the next point.` : "Begin at a thing or a point of the ground.")
        : `From ${what(0)} to ${what(points.length - 1)}: ${lengthText(long(points), this.units)}, ${points.length === 3 ? "1 corner" : `${points.length - 2} corners`}.`;
    }
    this.offer();
  }

  /** @param {Spot} spot */
  pointAt(spot) {
    return this.known.points.find(({ at }) => at && Math.hypot(at[0] - spot.x, at[1] + spot.y) < SAME);
  }

  /** The changes that make it. @param {Spot[]} points @returns {{edits: Edit[], path: string} | null} */
  edits(points) {
    if (points.length < 2) return null;
    const value = (/** @type {string} */ id) => /** @type {HTMLInputElement} */ (document.getElementById(id)).value.trim();
    const [name, conduit, cable] = [value("route-name"), value("route-conduit"), value("route-cable")];
    const taken = this.known.points.map((point) => point.id);
    /** @type {Edit[]} */
    const edits = [];
    const ends = [0, points.length - 1].map((at) => {
      const there = this.pointAt(points[at]);
      if (there) return there.id;
      const id = free("point", taken);
      taken.push(id);
      const thing = this.things[at]?.name ?? "";
      const serves = this.known.ends.includes(thing) ? [`serves = ${JSON.stringify([thing])}`] : [];
      edits.push({ do: "add", path: "way_point", value: [`id = "${id}"`, `at = ${this.position(points[at])}`, ...serves].join("\n") });
      return id;
    });
    if (conduit) edits.push({ do: "add", path: "conduit", value: [`id = ${JSON.stringify(conduit)}`, `from = ${JSON.stringify(ends[0])}`, `to = ${JSON.stringify(ends[1])}`, `segment = [${this.segments(points)}]`].join("\n") });
    const via = points.slice(1, -1).map((spot) => this.position(spot));
    edits.push({ do: "add", path: "way", value: [`id = ${JSON.stringify(name)}`, `from = "${ends[0]}"`, `to = "${ends[1]}"`, `by = ${JSON.stringify(value("route-by"))}`,
      ...(via.length ? [`via = [${via.join(", ")}]`] : []), ...(conduit ? [`conduits = [${JSON.stringify(conduit)}]`] : [])].join("\n") });
    const known = this.known.cables.find(({ id }) => id === cable);
    if (known && conduit) edits.push({ do: "set", path: `cable.${known.id}.route`, value: JSON.stringify([...known.route, conduit]) });
    const [from, to] = this.ends();
    if (cable === "*") {
      const id = free("cable", this.known.cables.map((one) => one.id));
      edits.push({ do: "add", path: "cable", value: [`id = "${id}"`, `from = ${JSON.stringify(from)}`, `to = ${JSON.stringify(to)}`, ...(conduit ? [`route = [${JSON.stringify(conduit)}]`] : [])].join("\n") });
    }
    return { edits, path: `way.${name}` };
  }

  /** @param {Spot} spot */
  position(spot) {
    return JSON.stringify([lengthText(spot.x, this.units), lengthText(-spot.y, this.units), this.units === "si" ? "0 m, assumed" : "0 in, assumed"]);
  }

  /** Straight pieces as drawn, each with the bend after it. @param {Spot[]} points */
  segments(points) {
    return points.slice(1).map((spot, index) => {
      const before = points[index];
      const straight = `straight = "${lengthText(Math.hypot(spot.x - before.x, spot.y - before.y), this.units)}"`;
      const next = points[index + 2];
      if (!next) return `{ ${straight} }`;
      const turn = Math.atan2(next.y - spot.y, next.x - spot.x) - Math.atan2(spot.y - before.y, spot.x - before.x);
      const bend = Math.round(Math.abs(Math.atan2(Math.sin(turn), Math.cos(turn))) * (180 / Math.PI));
      return bend ? `{ ${straight}, bend = "${bend}°" }` : `{ ${straight} }`;
    }).join(", ");
  }
}

/** @param {Spot[]} points */
const long = (points) => points.slice(1).reduce((sum, spot, index) => sum + Math.hypot(spot.x - points[index].x, spot.y - points[index].y), 0);

/** @param {string} id @param {string} value */
const input = (id, value) => made("input", { id, value, autocomplete: "off", autocapitalize: "off", spellcheck: "false" });

/** @param {string} id @param {string} words @param {HTMLElement} inside */
const field = (id, words, inside) => made("div", { class: "field" }, made("label", { for: id }, words), inside);

/** The first name of its sort that is free. @param {string} stem @param {string[]} taken */
function free(stem, taken) {
  let number = 1;
  while (taken.includes(`${stem}-${number}`)) number += 1;
  return `${stem}-${number}`;
}
