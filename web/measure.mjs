// How long it takes from a changed value and from a moved thing to redrawn answers and drawing, and from a cold start of the
// program to the first paint. Run it on a quiet computer: npm run measure

import { spawn } from "node:child_process";
import { loadavg } from "node:os";
import test from "node:test";
import { PROGRAM, SIZES, answered, house, opened, said, until } from "./tests/house.mjs";

const own = house(["boatyard"]);
const TIMES = 40;
const STARTS = 9;

/** @param {number[]} all @param {number} share */
const part = (all, share) => [...all].sort((one, other) => one - other)[Math.min(all.length - 1, Math.floor(all.length * share))].toFixed(0);

/** @param {number[]} all */
const said95 = (all) => `median ${part(all, 0.5)} ms, 95 of 100 within ${part(all, 0.95)} ms`;

/**
 * Makes changes one after the other, each from a page at rest, and tells how long each took to be kept, drawn, listed and all.
 * @param {import("playwright-core").Page} page @param {(time: number) => Promise<void>} ready @param {string} field @param {string} pressed
 * @param {(time: number) => string} value
 */
async function changes(page, ready, field, pressed, value) {
  /** @type {Record<string, number[]>} */
  const took = { kept: [], drawn: [], listed: [], all: [] };
  for (let time = 0; time < TIMES; time += 1) {
    await ready(time);
    const told = await page.evaluate(([field, pressed, value]) => new Promise((done) => {
      const bench = /** @type {HTMLElement} */ (document.querySelector("#bench"));
      const input = /** @type {HTMLInputElement} */ (document.querySelector(field));
      const was = bench.dataset.revision;
      performance.clearMarks();
      const begun = performance.now();
      const look = () => {
        if (bench.dataset.revision === was || bench.dataset.redrawn !== bench.dataset.revision) return requestAnimationFrame(look);
        requestAnimationFrame(() => {
          const at = (/** @type {string} */ name) => (performance.getEntriesByName(name).pop()?.startTime ?? begun) - begun;
          done({ kept: at("kept"), drawn: at("drawn"), listed: at("listed"), all: performance.now() - begun });
        });
      };
      input.value = value;
      if (pressed) /** @type {HTMLElement} */ (document.querySelector(pressed)).click();
      else input.dispatchEvent(new Event("change", { bubbles: true }));
      look();
    }), [field, pressed, value(time)]);
    for (const [name, all] of Object.entries(took)) all.push(told[name]);
  }
  return took;
}

test("from a change to everything redrawn", { timeout: 300000 }, async () => {
  const page = await opened(own, "/jobs/boatyard/edit?of=device.reader-entry", SIZES[2]);
  await answered(page);
  const rest = () => until(page, () => document.querySelector("#answers-list")?.getAttribute("data-revision") === document.querySelector("#bench")?.getAttribute("data-revision"));
  const values = await changes(page, rest, '[data-path="device.reader-entry.least_voltage"]', "", (time) => `${(10 + time * 0.01).toFixed(2)} V`);
  await page.locator(".close").click();
  await page.evaluate(() => /** @type {HTMLElement} */ (document.querySelector('[data-thing="device.button-yard"]')).click());
  const moves = await changes(page, rest, '[data-axis="at 0"]', '[data-do="keep"]', (time) => `${20 + time} in`);
  for (const [name, took] of Object.entries({ "a changed value": values, "a moved thing": moves })) {
    console.log(`${name}, ${TIMES} times: ${said95(took.all)} (kept ${said95(took.kept)}; drawing ${said95(took.drawn)}; answers ${said95(took.listed)})`);
  }
  console.log(`both: ${said95([...values.all, ...moves.all])}; other work on the computer: load ${loadavg()[0].toFixed(1)}`);
  await page.close();
});

test("first paint from a cold start, and the weight of the scripts", { timeout: 120000 }, async () => {
  /** @type {number[]} */
  const took = [];
  let weight = 0;
  for (let time = 0; time < STARTS; time += 1) {
    const page = await own.browser.newPage({ viewport: SIZES[2] });
    const begun = Date.now();
    const program = spawn(PROGRAM, ["serve", own.folder, "--port", "0"], { stdio: ["ignore", "pipe", "inherit"] });
    await page.goto(`${await said(program)}/jobs/boatyard`);
    await until(page, () => performance.getEntriesByName("first-contentful-paint").length > 0);
    const painted = await page.evaluate(() => performance.timeOrigin + performance.getEntriesByName("first-contentful-paint")[0].startTime);
    took.push(painted - begun);
    weight = await page.evaluate(() => performance.getEntriesByType("resource").filter((one) => one.name.endsWith(".js"))
      .reduce((sum, one) => sum + /** @type {PerformanceResourceTiming} */ (one).decodedBodySize, 0));
    await page.close();
    program.kill();
  }
  console.log(`from the start of the program to the first paint of the workbench, ${STARTS} times: median ${part(took, 0.5)} ms, worst ${part(took, 1)} ms; its scripts weigh ${weight} bytes`);
});
