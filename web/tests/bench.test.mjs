// The workbench at work: the drawing, the answers, and changes that are kept and taken back.

import assert from "node:assert/strict";
import { readFileSync, writeFileSync } from "node:fs";
import test from "node:test";
import { SIZES, answered, house, opened, until } from "./house.mjs";

const own = house(["boatyard", "vineyard"]);
const DESK = SIZES[2];
const PHONE = SIZES[0];

/** @param {string} site */
const text = (site) => readFileSync(`${own.folder}/${site}/site.toml`, "utf8");

test("the leaf follows the slider, and what it carries goes along", async () => {
  const page = await opened(own, "/jobs/boatyard", DESK);
  const leaf = page.locator(".moving .leaf").first();
  const closed = await leaf.boundingBox();
  await page.locator("#travel").fill("100");
  const open = await leaf.boundingBox();
  assert.ok(closed && open && open.x > closed.x + closed.width * 0.5, "the leaf has moved by its length");
  assert.equal(await page.locator("#opened").textContent(), "100 %");
  await page.close();
});

test("the sheet is moved and zoomed by keys alone", async () => {
  const page = await opened(own, "/jobs/boatyard", DESK);
  const box = () => page.locator("svg.live").getAttribute("viewBox").then((it) => (it ?? "").split(" ").map(Number));
  const [x, , wide] = await box();
  await page.locator("#stage").focus();
  await page.keyboard.press("+");
  const nearer = await box();
  assert.ok(nearer[2] < wide, "nearer");
  await page.keyboard.press("ArrowRight");
  assert.ok((await box())[0] > nearer[0], "to the right");
  await page.keyboard.press("0");
  assert.ok(Math.abs((await box())[0] - x) < 1e-6, "whole again");
  await page.close();
});

test("a layer is hidden and shown", async () => {
  const page = await opened(own, "/jobs/boatyard", DESK);
  await page.locator(".layers summary").click();
  const layer = page.locator("svg .layer-devices");
  await page.getByLabel("Devices, drives, enclosures").uncheck();
  assert.equal(await layer.isVisible(), false);
  await page.getByLabel("Devices, drives, enclosures").check();
  assert.equal(await layer.isVisible(), true);
  await page.close();
});

test("the bar for the scale is as long as it says", async () => {
  const page = await opened(own, "/jobs/boatyard", DESK);
  for (const key of ["0", "+", "+"]) {
    await page.locator("#stage").focus();
    await page.keyboard.press(key);
    const bar = await page.locator(".orientation #scale-bar").boundingBox();
    const stage = await page.locator("#stage").evaluate((it) => it.clientWidth);
    const box = ((await page.locator("svg.live").getAttribute("viewBox")) ?? "").split(" ").map(Number);
    const words = (await page.locator("#scale-length").textContent()) ?? "";
    const feet = Number(/(\d+) ft/.exec(words)?.[1] ?? 0) + Number(/(\d+) in/.exec(words)?.[1] ?? 0) / 12;
    assert.ok(bar && feet > 0, words);
    const meters = (bar.width * box[2]) / stage;
    assert.ok(Math.abs(meters - feet * 0.3048) < 0.01 * feet, `${words} drawn as ${meters} m`);
    const under = await page.locator(".under").boundingBox();
    assert.ok(under && bar.y > under.y && bar.y + bar.height <= under.y + under.height, "it lies under the drawing");
  }
  await page.close();
});

test("two places are measured apart", async () => {
  const page = await opened(own, "/jobs/boatyard", DESK);
  await page.getByRole("button", { name: "Measure" }).click();
  for (const name of ["cover-h2", "cover-h1"]) {
    const place = await page.locator(`.device [data-item="cover.${name}"], [data-item="cover.${name}"] .thing`).first().boundingBox();
    assert.ok(place);
    await page.mouse.click(place.x + place.width / 2, place.y + place.height / 2);
  }
  const said = (await page.locator("#reading").textContent()) ?? "";
  const between = /^(\d+) ft ?(.*) \(/.exec(said);
  assert.ok(between, said);
  const places = [...text("boatyard").matchAll(/\[\[cover\]\]\nid = "cover-(h1|h2)"[\s\S]*?at = \["([^"]*)"/g)].map((match) => feet(match[2]));
  assert.equal(places.length, 2);
  const wanted = Math.abs(places[0] - places[1]);
  assert.ok(Math.abs(feet(said.split(" (")[0]) - wanted) < 1 / 12, `${said} for ${wanted} ft`);
  await page.close();
});

/** Feet of a written length. @param {string} written */
function feet(written) {
  const sign = written.trim().startsWith("-") ? -1 : 1;
  const part = (/** @type {string} */ unit) => {
    const found = new RegExp(`(\\d+)?\\s*(?:(\\d+)/(\\d+))?\\s*${unit}`).exec(written);
    return found ? Number(found[1] ?? 0) + (found[2] ? Number(found[2]) / Number(found[3]) : 0) : 0;
  };
  return sign * (part("ft") + part("in") / 12);
}

test("an answer opens to its working, and lights what it speaks of", async () => {
  const page = await opened(own, "/jobs/boatyard", DESK);
  await answered(page);
  const finding = page.locator('.finding[data-items~="operator.drive"], .finding[data-items*="device."]').first();
  await finding.evaluate((one) => { const topic = one.closest("details.topic"); if (topic instanceof HTMLDetailsElement) topic.open = true; });
  await finding.locator("summary").first().focus();
  assert.ok(await page.locator("svg .lit").count(), "something is lit");
  await page.keyboard.press("Enter");
  await finding.locator(".in-full").waitFor();
  assert.match((await finding.locator(".in-full").textContent()) ?? "", /Sources/);
  await page.close();
});

test("verdicts are left out and the answers searched", async () => {
  const page = await opened(own, "/jobs/boatyard", DESK);
  await answered(page);
  const shown = () => page.locator(".finding:not([hidden])").count();
  const all = await shown();
  await page.locator('.chip[data-verdict="holds"]').click();
  const without = await shown();
  assert.ok(without < all);
  assert.equal(await page.locator('.finding[data-verdict="holds"]:not([hidden])').count(), 0);
  await page.locator('.chip[data-verdict="holds"]').click();
  await page.locator("#find-answer").fill("voltage");
  await until(page, (many) => document.querySelectorAll(".finding:not([hidden])").length < many, all);
  await page.close();
});

test("a value is kept, said how it was understood, turns answers, and is taken back", async () => {
  const before = text("boatyard");
  const page = await opened(own, "/jobs/boatyard/edit?of=device.reader-entry", DESK);
  await answered(page);
  const field = page.locator('[data-path="device.reader-entry.least_voltage"]');
  await field.fill("23 V");
  await page.getByText(/Read as 23/).waitFor();
  await field.press("Enter");
  await page.locator(".finding .turned").first().waitFor({ state: "attached" });
  assert.ok(text("boatyard") !== before, "the file has changed");
  assert.match(text("boatyard"), /least_voltage = "23 V"/);
  await page.locator("#undo").click();
  await until(page, () => document.querySelector("#word")?.textContent === "Taken back.");
  assert.ok(text("boatyard") === before, "the file is as it was");
  await page.close();
});

test("what does not read is refused with what to write, and the file stays", async () => {
  const before = text("boatyard");
  const page = await opened(own, "/jobs/boatyard/edit?of=device.reader-entry", DESK);
  const field = page.locator('[data-path="device.reader-entry.least_voltage"]');
  await field.fill("11 furlongs");
  await field.press("Enter");
  await page.locator("#trouble .trouble").waitFor();
  assert.ok(text("boatyard") === before, "the file is as it was");
  await page.close();
  // A refusal is a 4xx, which the browser notes.
  own.faults.splice(0);
});

test("a beam is dragged, and typed back to where it was", async () => {
  const before = text("boatyard");
  const page = await opened(own, "/jobs/boatyard", DESK);
  await page.locator(".things summary").click();
  await page.locator('[data-thing="device.button-yard"]').click();
  const handle = page.locator('[data-handle="at"]');
  await handle.scrollIntoViewIfNeeded();
  const box = await handle.boundingBox();
  assert.ok(box);
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  await page.mouse.down();
  await page.mouse.move(box.x + box.width / 2 + 60, box.y + box.height / 2 - 30, { steps: 4 });
  await page.mouse.up();
  await until(page, () => document.querySelector("#word")?.textContent === "Kept.");
  assert.ok(text("boatyard") !== before, "the file has changed");
  await page.keyboard.press("Control+z");
  await until(page, () => document.querySelector("#word")?.textContent === "Taken back.");
  assert.ok(text("boatyard") === before, "the file is as it was");
  await page.close();
});

test("what an editor writes into the file appears", async () => {
  const before = text("vineyard");
  const page = await opened(own, "/jobs/vineyard", DESK);
  await answered(page);
  const revision = await page.locator("#answers-list").getAttribute("data-revision");
  writeFileSync(`${own.folder}/vineyard/site.toml`, before.replace(/^name = ".*"$/m, 'name = "Changed beside the page"'));
  await until(page, (was) => document.querySelector("#answers-list")?.getAttribute("data-revision") !== was, revision);
  writeFileSync(`${own.folder}/vineyard/site.toml`, before);
  await page.close();
});

test("on a phone one thing is shown at a time", async () => {
  const page = await opened(own, "/jobs/boatyard", PHONE);
  const shown = () => page.evaluate(() => [...document.querySelectorAll(".panel")].filter((one) => one.checkVisibility()).map((one) => one.id));
  assert.deepEqual(await shown(), ["plan"]);
  for (const [word, id] of [["Answers", "answers"], ["Edit", "edit"], ["Plan", "plan"]]) {
    await page.locator(".bar").getByText(word, { exact: true }).click();
    assert.deepEqual(await shown(), [id]);
  }
  await page.close();
});

test("everything is reached by keyboard", async () => {
  const page = await opened(own, "/jobs/boatyard", DESK);
  await answered(page);
  const wanted = await page.evaluate(() => [...document.querySelectorAll("button, input, select, summary, a[href], #stage")]
    .filter((one) => one.checkVisibility() && !(one instanceof HTMLButtonElement && one.disabled)).length);
  const reached = new Set();
  for (let step = 0; step < wanted + 60; step += 1) {
    await page.keyboard.press("Tab");
    const at = await page.evaluate(() => {
      const one = document.activeElement;
      if (!one || one === document.body) return null;
      const list = /** @type {any} */ (window).seen ?? (/** @type {any} */ (window).seen = []);
      if (!list.includes(one)) list.push(one);
      return list.indexOf(one);
    });
    if (at !== null) reached.add(at);
  }
  assert.ok(reached.size >= wanted, `${reached.size} of ${wanted}`);
  await page.close();
});

test("no fault was told by any page", () => assert.deepEqual(own.faults, []));
