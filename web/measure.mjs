// How long it takes from a changed value to redrawn answers and drawing, and from a cold start to the first paint.
// Run it on a quiet computer: npm run measure

import test from "node:test";
import { SIZES, answered, house, opened, until } from "./tests/house.mjs";

const own = house(["boatyard"]);
const TIMES = 40;

/** @param {number[]} all @param {number} share */
const part = (all, share) => [...all].sort((one, other) => one - other)[Math.min(all.length - 1, Math.floor(all.length * share))].toFixed(0);

test("from a changed value to everything redrawn", { timeout: 300000 }, async () => {
  const page = await opened(own, "/jobs/boatyard/edit?of=device.reader-entry", SIZES[2]);
  await answered(page);
  /** @type {number[]} */
  const took = [];
  for (let time = 0; time < TIMES; time += 1) {
    await until(page, () => document.querySelector("#answers-list")?.getAttribute("data-revision") === document.querySelector("#bench")?.getAttribute("data-revision"));
    took.push(await page.evaluate((value) => new Promise((done) => {
      const field = /** @type {HTMLInputElement} */ (document.querySelector('[data-path="device.reader-entry.least_voltage"]'));
      const was = document.querySelector("#answers-list")?.getAttribute("data-revision");
      const drawing = document.querySelector("#drawing");
      const begun = performance.now();
      const look = () => {
        const list = document.querySelector("#answers-list")?.getAttribute("data-revision") !== was;
        if (list && document.querySelector("#drawing") !== drawing) requestAnimationFrame(() => done(performance.now() - begun));
        else requestAnimationFrame(look);
      };
      field.value = value;
      field.dispatchEvent(new Event("change", { bubbles: true }));
      look();
    }), `${(10 + time * 0.01).toFixed(2)} V`));
  }
  console.log(`change to redrawn, ${TIMES} times: median ${part(took, 0.5)} ms, 95 of 100 within ${part(took, 0.95)} ms`);
  await page.close();
});

test("first paint and the weight of the scripts", async () => {
  const page = await opened(own, "/", SIZES[2]);
  await page.goto(`${own.at}/jobs/boatyard`);
  await answered(page);
  const paint = await page.evaluate(() => performance.getEntriesByName("first-contentful-paint")[0]?.startTime ?? -1);
  const weight = await page.evaluate(() => performance.getEntriesByType("resource").filter((one) => one.name.endsWith(".js"))
    .reduce((sum, one) => sum + /** @type {PerformanceResourceTiming} */ (one).decodedBodySize, 0));
  console.log(`first paint of the workbench after ${paint.toFixed(0)} ms; its scripts weigh ${weight} bytes`);
  await page.close();
});
