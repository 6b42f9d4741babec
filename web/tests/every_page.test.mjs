// Every page in three sizes, light and dark: no fault, nothing out of the frame, targets large enough, no violation found
// by axe, nothing cut off when labels are half as long again.

import assert from "node:assert/strict";
import { mkdirSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import test from "node:test";
import { SIZES, answered, house, opened } from "./house.mjs";

const own = house(["boatyard", "boatyard-faulty", "clinic"]);
const AXE = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
const SHOTS = process.env.SHOTS;

const PAGES = [
  ["jobs", "/"],
  ["bench", "/jobs/boatyard-faulty"],
  ["elevation", "/jobs/boatyard?view=elevation&open=0.4"],
  ["edit", "/jobs/boatyard/edit?of=device.reader-entry"],
  ["records", "/jobs/clinic/edit"],
  ["answer", "/jobs/boatyard/answers/force-slide/drive"],
  ["papers", "/jobs/boatyard/papers"],
  ["pictures", "/jobs/boatyard/pictures"],
  ["walk", "/jobs/boatyard-faulty/walk"],
  ["replay", "/jobs/boatyard-faulty/walk?gate=main&walk=1#replay"],
  ["calculations", "/calculations"],
  ["calculation", "/calculations/voltage-drop"],
  ["backward", "/calculations/voltage-drop?source=12+V&current=0.5+A&resistance=6.385+%CE%A9%2Fkft&length=%3F&drop=10+%25"],
];

for (const [name, at] of PAGES) {
  for (const size of SIZES) {
    test(`${name} on ${size.name}`, async () => {
      const page = await opened(own, at, size, { bypassCSP: true });
      if (await page.locator("#answers-list").count()) await answered(page);
      await page.evaluate(() => document.fonts.ready);
      if (SHOTS) {
        mkdirSync(SHOTS, { recursive: true });
        await page.screenshot({ path: `${SHOTS}/${name}-${size.name}.png` });
      }
      assert.deepEqual(await tooWide(page), [], "out of the frame");
      assert.deepEqual(await tooSmall(page), [], "too small to touch");
      for (const colorScheme of /** @type {const} */ (["light", "dark"])) {
        await page.emulateMedia({ colorScheme });
        await page.evaluate(AXE);
        const found = await page.evaluate(async () => {
          // @ts-ignore: axe is brought in above.
          const { violations } = await axe.run(document, { resultTypes: ["violations"] });
          return violations.map((one) => `${one.id}: ${one.nodes.slice(0, 3).map((node) => node.html.slice(0, 160)).join(" | ")}`);
        });
        assert.deepEqual(found, [], colorScheme);
      }
      await lengthen(page);
      if (SHOTS) await page.screenshot({ path: `${SHOTS}/${name}-${size.name}-long.png` });
      assert.deepEqual(await tooWide(page), [], "out of the frame with longer labels");
      assert.deepEqual(await cutOff(page), [], "cut off with longer labels");
      assert.ok(await page.getByText("Gates crush, mains kills").count(), "the caution");
      await page.close();
      assert.deepEqual(own.faults.splice(0), []);
    });
  }
}

/** What sticks out of the frame. @param {import("playwright-core").Page} page */
function tooWide(page) {
  return page.evaluate(() => {
    const wide = document.documentElement.clientWidth;
    const inScroller = (/** @type {Element} */ one) => one.closest("svg, pre, .unseen, .skip");
    return [...document.body.querySelectorAll("*")]
      .filter((one) => one.checkVisibility() && !inScroller(one))
      .filter((one) => one.getBoundingClientRect().right > wide + 1 || one.getBoundingClientRect().left < -1)
      .map((one) => `${one.tagName}.${one.className} ${one.textContent?.slice(0, 40)}`)
      .slice(0, 5);
  });
}

/** What is to be touched and has less than 44 units of height or width. @param {import("playwright-core").Page} page */
function tooSmall(page) {
  return page.evaluate(() => {
    const touched = document.querySelectorAll("button, summary, select, input:not([type=checkbox]):not([type=radio]):not([type=range]), label.choice, .head a, .bar a, .rows a, .views a, .jump a, .worst-walks a, [data-read]");
    return [...touched]
      .filter((one) => one.checkVisibility())
      .map((one) => ({ box: one.getBoundingClientRect(), one }))
      .filter(({ box, one }) => box.height < 43.5 || (one.matches("button, .bar a") && box.width < 43.5))
      .map(({ box, one }) => `${one.tagName}.${one.className} ${box.width.toFixed(0)}×${box.height.toFixed(0)} ${one.textContent?.trim().slice(0, 30)}`)
      .slice(0, 5);
  });
}

/** Makes every label half as long again. @param {import("playwright-core").Page} page */
function lengthen(page) {
  return page.evaluate(() => {
    for (const one of document.querySelectorAll("button, summary.button, label, .button, .bar a, .head a, h1, h2, h3, .verdict")) {
      for (const node of one.childNodes) {
        if (node.nodeType === 3 && node.textContent?.trim()) node.textContent += ` ${"mnopqrst".repeat(9).slice(0, Math.ceil(node.textContent.trim().length / 2))}`;
      }
    }
  });
}

/** Labels whose text does not fit. @param {import("playwright-core").Page} page */
function cutOff(page) {
  return page.evaluate(() =>
    [...document.querySelectorAll("button, .button, .bar a, .head a, label, h1, h2, h3, summary")]
      .filter((one) => one.checkVisibility() && !one.closest("svg, .unseen"))
      .filter((one) => one.scrollWidth > one.clientWidth + 1 && getComputedStyle(one).display !== "inline")
      .map((one) => `${one.tagName}.${one.className} ${one.textContent?.trim().slice(0, 40)}`)
      .slice(0, 5),
  );
}
