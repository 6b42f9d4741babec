// A part of the page as the server has written it, brought to what it writes now: what reads the same keeps its elements, and with
// them what the page has made of them.

export class Written {
  /** @param {HTMLElement | null} part on the page, as it came */
  constructor(part) {
    this.last = copied(part);
  }

  /** Shows a part in the place of the one that is there. @param {HTMLElement | null} live @param {HTMLElement} part */
  replace(live, part) {
    const fresh = copied(part);
    this.last = part;
    if (fresh) live?.replaceWith(fresh);
  }

  /** Brings the part that is there up to another. @param {HTMLElement | null} live @param {HTMLElement} part */
  renew(live, part) {
    const was = this.last;
    if (!live || !was) return this.replace(live, part);
    this.last = part;
    renew(live, was, part);
    live.dataset.digits = part.dataset.digits;
  }
}

/** @param {HTMLElement | null} part */
const copied = (part) => /** @type {HTMLElement | null} */ (part?.cloneNode(true) ?? null);

/** What is inside of an element; what the page draws over a sheet is left alone. @param {Element} one */
const inside = (one) => [...one.childNodes].filter((node) => !(node instanceof Element && node.classList[0]?.startsWith("over-")));

/** @param {Element} live @param {Element} was @param {Element} is */
function renew(live, was, is) {
  const [shown, before, after] = [live, was, is].map(inside);
  if (shown.length !== before.length || before.length !== after.length) return live.replaceChildren(...is.cloneNode(true).childNodes);
  after.forEach((now, at) => {
    const [one, other] = [shown[at], before[at]];
    if (now.isEqualNode(other)) return;
    if (one instanceof Element && other instanceof Element && now instanceof Element && keeps(one, other, now)) renew(one, other, now);
    else one.replaceWith(now.cloneNode(true));
  });
}

/** An element stays, with other attributes where it is drawn: elsewhere they may say what somebody has typed over. @param {Element} one @param {Element} was @param {Element} is */
function keeps(one, was, is) {
  if (was.tagName !== is.tagName || one.tagName !== is.tagName) return false;
  const names = [...is.attributes, ...was.attributes].map(({ name }) => name).filter((name) => is.getAttribute(name) !== was.getAttribute(name));
  if (names.length && !(one instanceof SVGElement)) return false;
  for (const name of names) {
    const value = is.getAttribute(name);
    if (value === null) one.removeAttribute(name);
    else one.setAttribute(name, value);
  }
  return true;
}
