// Lengths as the trade writes them, for what is measured and moved on the drawing.

const INCH = 0.0254;

/** @param {number} meters @param {string} units "us" or "si" */
export function lengthText(meters, units) {
  if (units === "si") return `${(Math.round(meters * 1000) / 1000).toFixed(3).replace(/\.?0+$/, "") || "0"} m`;
  const sign = meters < 0 ? "-" : "";
  let eighths = Math.round((Math.abs(meters) / INCH) * 8);
  const feet = Math.floor(eighths / 96);
  eighths -= feet * 96;
  const whole = Math.floor(eighths / 8);
  let [above, below] = [eighths % 8, 8];
  while (above && above % 2 === 0) [above, below] = [above / 2, below / 2];
  const part = above ? `${above}/${below}` : "";
  const inches = [whole || (!feet && !part) ? String(whole) : "", part].filter(Boolean).join(" ");
  return sign + [feet ? `${feet} ft` : "", inches && !(feet && inches === "0") ? `${inches} in` : ""].filter(Boolean).join(" ");
}

/**
 * A coordinate that was moved, with the tolerance that it had.
 * @param {string} before @param {number} meters @param {string} units
 */
export function moved(before, meters, units) {
  const tolerance = /(±[^,]*?)\s*(,|$)/.exec(before);
  return lengthText(meters, units) + (tolerance ? ` ${tolerance[1]}` : "");
}

/** Lengths that are easy to count in, in meters. @param {string} units */
function rounds(units) {
  if (units === "si") return [0.01, 0.02, 0.05, 0.1, 0.25, 0.5, 1, 2, 5, 10, 20, 50];
  return [1, 2, 3, 6, 12, 24, 60, 120, 240, 600, 1200].map((inches) => inches * INCH);
}

/** Steps of a grid that stand at least `least` meters apart. @param {number} least @param {string} units */
export function gridStep(least, units) {
  const steps = rounds(units);
  return steps.find((step) => step >= least) ?? steps[steps.length - 1];
}

/** The longest bar for the scale that takes at most `greatest` meters. @param {number} greatest @param {string} units */
export function barLength(greatest, units) {
  const lengths = rounds(units);
  return lengths.findLast((length) => length <= greatest) ?? lengths[0];
}
