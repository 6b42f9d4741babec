// The sheet under the hand: where one looks and how near, layers, how far the gate is open.

/** @typedef {{x: number, y: number}} Spot A point of the drawing in meters, y downward. */

export class Sheet {
  /** @param {HTMLElement} stage */
  constructor(stage) {
    this.stage = stage;
    this.svg = /** @type {SVGSVGElement} */ (stage.querySelector("svg.live"));
    this.first = { x: 0, y: 0, width: 1, height: 1 };
    this.reaches(this.svg);
    this.unit = 0.01;
    /** The stage as it was measured last: to ask the page between two changes costs a layout each time. */
    this.size = { wide: 0, tall: 0 };
    this.middle = { x: 0, y: 0 };
    /** @type {(() => void)[]} */
    this.watchers = [];
    this.open = 0;
    /** It was to be shown whole while the stage was hidden. */
    this.unseen = false;
    this.svg.classList.add("ready");
    this.svg.setAttribute("preserveAspectRatio", "none");
  }

  /** Takes over how far a drawing reaches. @param {Element | null} drawing */
  reaches(drawing) {
    const [x, y, width, height] = (drawing?.getAttribute("viewBox") ?? "0 0 1 1").split(" ").map(Number);
    this.first = { x, y, width, height };
  }

  /** Measures the stage; whether it has another size than before. */
  measure() {
    const { clientWidth: wide, clientHeight: tall } = this.stage;
    const is = wide !== this.size.wide || tall !== this.size.tall;
    this.size = { wide, tall };
    return is;
  }

  /** Everything that is shown at first. */
  whole() {
    this.aim();
    this.show();
  }

  /** Looks at everything. */
  aim() {
    const { wide, tall } = this.size;
    const { x, y, width, height } = this.first;
    this.unseen = wide === 0;
    this.unit = Math.max(width / Math.max(wide, 1), height / Math.max(tall, 1)) * 1.04;
    this.middle = { x: x + width / 2, y: y + height / 2 };
  }

  /** Looks where somebody looked on another sheet of the same gate; nothing is shown yet. @param {Sheet | null} other */
  like(other) {
    if (other) this.size = other.size;
    else this.measure();
    if (!other || other.unseen) return this.aim();
    this.unit = other.unit;
    this.middle = { ...other.middle };
  }

  show() {
    const { wide, tall } = this.size;
    if (!wide) return;
    if (this.unseen) this.aim();
    const [width, height] = [wide * this.unit, tall * this.unit];
    this.svg.setAttribute("viewBox", `${this.middle.x - width / 2} ${this.middle.y - height / 2} ${width} ${height}`);
    this.svg.style.setProperty("--unit", String(this.unit));
    for (const pattern of this.svg.querySelectorAll("pattern.hatch")) {
      pattern.setAttribute("patternTransform", `rotate(${pattern.getAttribute("data-turn")}) scale(${this.unit})`);
    }
    for (const watcher of this.watchers) watcher();
  }

  /** @param {number} right @param {number} down in screen units */
  pan(right, down) {
    this.middle.x -= right * this.unit;
    this.middle.y -= down * this.unit;
    this.show();
  }

  /** Goes nearer by a factor about a place of the stage. @param {number} factor @param {Spot} [about] */
  zoom(factor, about) {
    const { wide, tall } = this.size;
    const at = about ?? { x: wide / 2, y: tall / 2 };
    const before = this.spot(at);
    this.unit = Math.min(0.5, Math.max(0.0004, this.unit / factor));
    const after = this.spot(at);
    this.middle.x += before.x - after.x;
    this.middle.y += before.y - after.y;
    this.show();
  }

  /** The point of the drawing under a place of the stage. @param {Spot} at @returns {Spot} */
  spot(at) {
    const { wide, tall } = this.size;
    return { x: this.middle.x + (at.x - wide / 2) * this.unit, y: this.middle.y + (at.y - tall / 2) * this.unit };
  }

  /** The place of the stage over a point of the drawing. @param {Spot} at @returns {Spot} */
  place(at) {
    const { wide, tall } = this.size;
    return { x: (at.x - this.middle.x) / this.unit + wide / 2, y: (at.y - this.middle.y) / this.unit + tall / 2 };
  }

  /** Opens the gate so far, 0 to 1. @param {number} share */
  setOpen(share) {
    this.open = share;
    for (const group of this.svg.querySelectorAll("[data-motion]")) {
      group.setAttribute("transform", transformAt(group, share));
    }
    for (const watcher of this.watchers) watcher();
  }

  /** How a leaf moves a point. @param {number} leaf @param {Spot} at @returns {Spot} */
  carried(leaf, at) {
    const group = this.svg.querySelectorAll(".moving")[leaf];
    const motion = group?.getAttribute("data-motion");
    const number = (/** @type {string} */ name) => Number(group.getAttribute(`data-${name}`));
    if (motion === "straight") return { x: at.x + number("x") * this.open, y: at.y + number("y") * this.open };
    if (motion === "turn") {
      const angle = (number("by") * this.open * Math.PI) / 180;
      const [x, y] = [at.x - number("x"), at.y - number("y")];
      return { x: number("x") + x * Math.cos(angle) - y * Math.sin(angle), y: number("y") + x * Math.sin(angle) + y * Math.cos(angle) };
    }
    if (motion === "fold") return { x: number("x") + (at.x - number("x")) * Math.cos(number("by") * this.open), y: at.y };
    return at;
  }

  /** A layer over all others that the page draws on itself. @param {string} name */
  over(name) {
    const known = /** @type {SVGGElement | null} */ (this.svg.querySelector(`.over-${name}`));
    /** @type {SVGGElement} */
    const group = known ?? drawn("g", { class: `over-${name}` });
    if (!known) {
      if (name === "grid") this.svg.querySelector("defs")?.after(group);
      else this.svg.append(group);
    }
    return group;
  }
}

/** @param {Element} group @param {number} share */
function transformAt(group, share) {
  const number = (/** @type {string} */ name) => Number(group.getAttribute(`data-${name}`));
  switch (group.getAttribute("data-motion")) {
    case "straight":
      return `translate(${number("x") * share} ${number("y") * share})`;
    case "turn":
      return `rotate(${number("by") * share} ${number("x")} ${number("y")})`;
    default: {
      const shorter = Math.cos(number("by") * share);
      return `matrix(${shorter} 0 0 1 ${number("x") * (1 - shorter)} 0)`;
    }
  }
}

/**
 * An SVG element.
 * @param {string} name @param {Record<string, string | number>} attributes @param {string} [text]
 * @returns {any}
 */
export function drawn(name, attributes, text) {
  const element = document.createElementNS("http://www.w3.org/2000/svg", name);
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, String(value));
  if (text !== undefined) element.textContent = text;
  return element;
}
