// Work on the plan: things that are added, taken out and moved, routes that are drawn, zones that the leaf passes; and answers
// that come without the list being put in place again.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import test from "node:test";
import { SIZES, answered, house, opened, until } from "./house.mjs";

const own = house(["boatyard", "quarry"]);
const [PHONE, TABLET, DESK] = SIZES;

/** @param {string} site */
const text = (site) => readFileSync(`${own.folder}/${site}/site.toml`, "utf8");
/** @param {import("playwright-core").Page} page @param {string} word */
const told = (page, word) => until(page, (word) => document.querySelector("#word")?.textContent === word, word);
/** @param {import("playwright-core").Page} page @param {string} path */
async function choose(page, path) {
  await page.locator(".things summary").click();
  await page.locator(`[data-thing="${path}"]`).click();
}

test("drawing, answers and form stand side by side, and what is dragged stays in sight", async () => {
  for (const size of [DESK, { width: 1120, height: 800 }]) {
    const page = await opened(own, "/jobs/boatyard", size);
    await choose(page, "device.button-yard");
    await page.getByRole("button", { name: "All about it" }).click();
    await page.locator("#record-name").waitFor();
    const boxes = await page.evaluate(() => ["plan", "answers", "edit"].map((id) => {
      const { left, right, top, bottom } = /** @type {HTMLElement} */ (document.getElementById(id)).getBoundingClientRect();
      return { id, left, right, top, bottom };
    }));
    for (const one of boxes) {
      assert.ok(one.right - one.left > 300 && one.bottom - one.top > 200, `${one.id} has room at ${size.width}`);
      for (const other of boxes.filter((box) => box !== one)) {
        const over = Math.min(one.right, other.right) - Math.max(one.left, other.left) > 1 && Math.min(one.bottom, other.bottom) - Math.max(one.top, other.top) > 1;
        assert.ok(!over, `${one.id} and ${other.id} lie over each other at ${size.width}`);
      }
    }
    const handle = await page.locator('[data-handle="at"]').boundingBox();
    const stage = await page.locator("#stage").boundingBox();
    assert.ok(handle && stage);
    const [x, y] = [handle.x + handle.width / 2, handle.y + handle.height / 2];
    assert.ok(x > stage.x && x < stage.x + stage.width && y > stage.y && y < stage.y + stage.height, "the handle is on the sheet");
    const top = await page.evaluate(([x, y]) => document.elementFromPoint(x, y)?.closest("[data-handle]") !== null, [x, y]);
    assert.ok(top, "nothing lies over the handle");
    await page.close();
  }
});

test("a thing is added by keyboard alone, and taken back in one step", async () => {
  const before = text("boatyard");
  const page = await opened(own, "/jobs/boatyard", DESK);
  await page.getByRole("button", { name: "Add", exact: true }).focus();
  await page.keyboard.press("Enter");
  await page.locator("#add-kind").selectOption("device:warning light");
  await page.locator("#add-name").fill("light-by-hand");
  await page.locator("#stage").focus();
  for (const key of ["ArrowRight", "ArrowUp", "Shift+ArrowUp", "Enter"]) await page.keyboard.press(key);
  const place = await page.locator('[data-axis="at 1"]').inputValue();
  assert.match(place, /\d/);
  await page.locator('[data-axis="at 2"]').fill("7 ft");
  await page.getByRole("button", { name: "Add it" }).focus();
  await page.keyboard.press("Enter");
  await told(page, "Kept.");
  await page.locator('svg [data-item="device.light-by-hand"]').first().waitFor({ state: "attached" });
  assert.match(text("boatyard"), /id = "light-by-hand"\nkind = "warning light"\nat = \["[^"]+",\s*"[^"]+",\s*"7 ft"\]/);
  await page.keyboard.press("Control+z");
  await told(page, "Taken back.");
  assert.equal(text("boatyard"), before);
  await page.close();
});

test("what has the focus on the drawing keeps it when that is drawn anew", async () => {
  const page = await opened(own, "/jobs/boatyard", DESK);
  await choose(page, "device.reader-entry");
  await page.locator('[data-axis="at 2"]').fill("45 in");
  await page.getByRole("button", { name: "Keep its place" }).focus();
  const digits = await page.locator("#drawing").getAttribute("data-digits");
  await page.keyboard.press("Enter");
  await until(page, (was) => document.querySelector("#drawing")?.getAttribute("data-digits") !== was, digits);
  assert.equal(await page.evaluate(() => /** @type {HTMLElement} */ (document.activeElement).dataset.do), "keep");
  await page.keyboard.press("Control+z");
  await told(page, "Taken back.");
  await page.close();
});

test("a thing is added by touch", async () => {
  const before = text("quarry");
  const page = await opened(own, "/jobs/quarry", PHONE, { hasTouch: true });
  await page.getByRole("button", { name: "Add", exact: true }).tap();
  const stage = await page.locator("#stage").boundingBox();
  assert.ok(stage);
  await page.touchscreen.tap(stage.x + stage.width * 0.4, stage.y + stage.height * 0.3);
  await until(page, () => /** @type {HTMLInputElement} */ (document.querySelector('[data-axis="at 0"]')).value !== "");
  await page.getByRole("button", { name: "Add it" }).tap();
  await told(page, "Kept.");
  assert.notEqual(text("quarry"), before);
  await page.locator("#card").getByText("through-beam photo-eye").waitFor();
  await page.close();
});

test("before a thing is taken out, what goes with it is told; one step brings all of it back", async () => {
  const before = text("boatyard");
  const page = await opened(own, "/jobs/boatyard", DESK);
  await choose(page, "device.reader-entry");
  await page.getByRole("button", { name: "Take it out" }).click();
  await page.locator("#card").getByText("Cable w-06 goes with it.").waitFor();
  await page.locator("#card").getByText(/Way point wp-entry no longer names it/).waitFor();
  await page.getByRole("button", { name: /^Take out \d+ things/ }).click();
  await told(page, "Kept.");
  assert.ok(!/id = "reader-entry"/.test(text("boatyard")));
  await until(page, () => !document.querySelector('svg [data-item="device.reader-entry"]'));
  await page.keyboard.press("Control+z");
  await told(page, "Taken back.");
  assert.equal(text("boatyard"), before);
  await page.close();
});

test("the form, too, tells what goes with a thing before it is taken out", async () => {
  const before = text("boatyard");
  const page = await opened(own, "/jobs/boatyard/edit?of=device.reader-entry", DESK);
  await page.locator("#edit").getByRole("button", { name: "Take it out" }).click();
  await page.locator("#edit").getByText("Cable w-06 goes with it.").waitFor();
  await page.getByRole("button", { name: "Leave it" }).click();
  await page.locator("#edit").getByRole("button", { name: "Take it out" }).click();
  await page.getByRole("button", { name: /^Take out \d+ things/ }).click();
  await told(page, "Kept.");
  assert.ok(!/id = "reader-entry"/.test(text("boatyard")));
  await page.locator("#find-record").waitFor();
  await page.keyboard.press("Escape");
  await page.locator("#stage").focus();
  await page.keyboard.press("Control+z");
  await told(page, "Taken back.");
  assert.equal(text("boatyard"), before);
  await page.close();
});

test("a route is drawn from thing to thing, with its conduit and its cable", async () => {
  const before = text("boatyard");
  const page = await opened(own, "/jobs/boatyard", DESK);
  await page.getByRole("button", { name: "Route" }).click();
  await page.locator("#route-name").waitFor();
  const spot = async (/** @type {string} */ path) => {
    const box = await page.locator(`svg .item[data-item="${path}"] .target`).first().boundingBox();
    assert.ok(box, path);
    return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  };
  const [from, to] = [await spot("operator.drive"), await spot("device.button-yard")];
  await page.mouse.click(from.x, from.y);
  await page.mouse.click(from.x, to.y);
  await page.mouse.click(to.x, to.y);
  await page.locator("#card").getByText(/From drive to button-yard: .*, 1 corner\./).waitFor();
  await page.locator("#route-cable").selectOption("*");
  await page.getByRole("button", { name: "Keep the route" }).click();
  await told(page, "Kept.");
  const after = text("boatyard");
  assert.match(after, /\[\[way\]\]\nid = "way-1"\nfrom = "[^"]+"\nto = "[^"]+"\nby = "trench"\nvia = \[\[.*\nconduits = \["conduit-1"\]/);
  assert.match(after, /\[\[conduit\]\]\nid = "conduit-1"[\s\S]*bend = "\d+°"/);
  assert.match(after, /\[\[cable\]\]\nid = "cable-1"\nfrom = "drive"\nto = "button-yard"\nroute = \["conduit-1"\]/);
  await page.keyboard.press("Control+z");
  await told(page, "Taken back.");
  assert.equal(text("boatyard"), before);
  await page.close();
});

test("zones light as the leaf passes them, in words and by a mark", async () => {
  const page = await opened(own, "/jobs/boatyard", DESK);
  const live = () => page.locator("svg .zone.live-now").count();
  assert.equal(await live(), 0, "nothing is said before the gate is moved");
  await page.locator("#travel").fill("50");
  await page.locator("#travel").fill("1");
  assert.ok((await live()) > 0, "the leading edge is at what it closes on");
  assert.match((await page.locator("#reading").textContent()) ?? "", /^Closing: the leaf is at zones? [\d, ]+, live\.$/);
  const number = await page.locator("svg .zone.live-now").first().getAttribute("data-zone");
  assert.match((await page.locator("svg .zone.live-now text").first().textContent()) ?? "", /live$/);
  assert.match((await page.locator(`[data-zone-words="${number}"] .now`).textContent()) ?? "", /Live now, closing/);
  const closing = await page.locator("svg .zone.live-now").evaluateAll((all) => all.map((one) => one.getAttribute("data-zone")));
  await page.locator("#travel").fill("2");
  const opening = await page.locator("svg .zone.live-now").evaluateAll((all) => all.map((one) => one.getAttribute("data-zone")));
  assert.notDeepEqual(opening, closing, "the other way, others are live");
  await page.close();
});

test("a part is found and taken, and only parts of the right kind are offered", async () => {
  const before = text("boatyard");
  const page = await opened(own, "/jobs/boatyard/edit?of=device.reader-entry", TABLET);
  await page.getByText("Choose from the parts file").click();
  await page.locator("#find-part").waitFor();
  const names = await page.locator("#part-choices [data-part]").evaluateAll((all) => all.map((one) => one.getAttribute("data-part")));
  const parts = readFileSync(`${own.folder}/boatyard/parts.toml`, "utf8").split(/\n(?=\[\[)/);
  const readers = parts.filter((one) => /^\[\[device\]\]/.test(one) && /kind = "reader"/.test(one)).map((one) => /id = "([^"]+)"/.exec(one)?.[1]);
  assert.deepEqual([...names].sort(), readers.sort());
  await page.locator("#find-part").fill("no such part");
  assert.equal(await page.locator("#part-choices li:not([hidden])").count(), 0);
  assert.equal(text("boatyard"), before);
  await page.close();
  const cable = await opened(own, "/jobs/boatyard/edit?of=cable.w-06", TABLET);
  await cable.getByText("Choose from the parts file").click();
  await cable.locator("#find-part").fill("14 AWG");
  const found = cable.locator("#part-choices li:not([hidden]) [data-part]:not([disabled])").first();
  const name = await found.getAttribute("data-part");
  await found.click();
  await told(cable, "Kept.");
  assert.match(text("boatyard"), new RegExp(`id = "w-06"\\npart = "${name}"`));
  await cable.close();
});

test("after a change, rows that read the same are the same rows, and what is open stays open with its new working", async () => {
  const page = await opened(own, "/jobs/boatyard/edit?of=cable.w-07", DESK);
  await answered(page);
  await page.evaluate(() => { for (const row of document.querySelectorAll(".finding")) Object.assign(row, { stood: true }); });
  const open = page.locator('.finding[data-items~="cable.w-07"]').first();
  await open.evaluate((row) => { /** @type {HTMLDetailsElement} */ (row.closest(".topic")).open = true; /** @type {HTMLDetailsElement} */ (row).open = true; });
  await open.locator(".in-full").waitFor();
  const name = await open.getAttribute("data-finding");
  const revision = await page.locator("#bench").getAttribute("data-revision");
  await page.locator('[data-path="cable.w-07.length"]').fill("131 ft ± 3 ft, measured");
  await page.keyboard.press("Enter");
  await until(page, (was) => { const { revision, redrawn } = /** @type {HTMLElement} */ (document.querySelector("#bench")).dataset; return revision !== was && redrawn === revision; }, revision);
  const rows = await page.evaluate(() => [...document.querySelectorAll(".finding")].map((row) => Boolean(/** @type {any} */ (row).stood)));
  assert.ok(rows.length > 300);
  assert.ok(rows.filter(Boolean).length > rows.length * 0.8, "most rows were left alone");
  assert.ok(rows.some((same) => !same), "some were written again");
  const again = page.locator(`.finding[data-finding="${name}"]`);
  assert.equal(await again.evaluate((row) => /** @type {HTMLDetailsElement} */ (row).open), true);
  // What the page has put together is what the server would list anew.
  const shown = await page.locator("#answers-list .topics").evaluate((list) => [...list.querySelectorAll(".topic, .finding")].map((one) => one.matches(".topic") ? `${one.querySelector("h3")?.textContent} ${one.querySelector(".counts")?.textContent}` : one.querySelector("summary")?.textContent));
  const fresh = await page.evaluate(async () => {
    const page = new DOMParser().parseFromString(await (await fetch("/jobs/boatyard/answers")).text(), "text/html");
    return [...page.querySelectorAll("#answers-list .topics :is(.topic, .finding)")].map((one) => one.matches(".topic") ? `${one.querySelector("h3")?.textContent} ${one.querySelector(".counts")?.textContent}` : one.querySelector("summary")?.textContent);
  });
  assert.deepEqual(shown, fresh);
  await page.close();
});

test("no fault was told by any page", () => assert.deepEqual(own.faults, []));
