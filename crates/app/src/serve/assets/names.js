// Names beside things, each where there is room; those without room are hidden until one goes nearer.

/** @typedef {import("./sheet.js").Sheet} Sheet */

const HEIGHT = 15;
const SIDES = [[1, -0.4], [-1, -0.4], [0, -1.25], [0, 1.35], [1, -1.1], [-1, -1.1], [1, 0.9], [-1, 0.9]];

/** @param {Sheet} sheet @param {Map<string, import("./thing.js").Thing>} things @param {() => string} chosen */
export function names(sheet, things, chosen) {
  const groups = /** @type {HTMLElement[]} */ ([...sheet.svg.querySelectorAll(".name")]);
  const labels = groups.map((group) => {
    const text = /** @type {SVGTextElement} */ (group.querySelector("text"));
    text.setAttribute("text-anchor", "middle");
    return { group, text, path: group.dataset.item ?? "", holder: group.firstElementChild, wide: (text.textContent ?? "").length * 7.2 + 6 };
  });
  const place = () => {
    /** @type {number[][]} */
    const taken = [];
    const { wide, tall } = sheet.size;
    for (const thing of things.values()) {
      const at = sheet.place(thing.now());
      taken.push([at.x + thing.aside - 8, at.y - 8, at.x + thing.aside + 8, at.y + 8]);
    }
    const own = things.size;
    const first = chosen();
    const order = [...labels].sort((one, other) => Number(other.path === first) - Number(one.path === first));
    for (const label of order) {
      const thing = things.get(label.path);
      if (!thing) continue;
      const spot = thing.now();
      const at = sheet.place(spot);
      at.x += thing.aside;
      label.holder?.setAttribute("transform", `translate(${spot.x} ${spot.y})`);
      const inside = at.x > 0 && at.y > 0 && at.x < wide && at.y < tall;
      const room = inside && SIDES.find(([right, down]) => {
        const x = at.x + right * (label.wide / 2 + 12);
        const y = at.y + down * 13;
        const box = [x - label.wide / 2, y - HEIGHT / 2, x + label.wide / 2, y + HEIGHT / 2];
        const within = box[0] > 2 && box[1] > 2 && box[2] < wide - 2 && box[3] < tall - 2;
        const free = within && taken.every((other) => box[0] > other[2] || box[2] < other[0] || box[1] > other[3] || box[3] < other[1]);
        if (free) {
          taken.push(box);
          label.text.setAttribute("x", String(x - at.x + thing.aside));
          label.text.setAttribute("y", String(y - at.y + 4.5));
        }
        return free;
      });
      label.group.classList.toggle("crowded", !room);
    }
    return taken.length - own;
  };
  return place;
}
