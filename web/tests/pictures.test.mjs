// Pictures are read with pointer and keys and follow the site; walks are begun, stopped, watched.

import assert from "node:assert/strict";
import test from "node:test";
import { SIZES, house, opened, until } from "./house.mjs";

const own = house(["boatyard", "boatyard-faulty"]);
const [PHONE, , DESK] = SIZES;

test("a value is read from a curve with the keys and with the pointer", async () => {
  const page = await opened(own, "/jobs/boatyard/pictures", PHONE);
  const figure = page.locator("#gate-speed-main");
  const reading = figure.locator(".reading");
  await figure.locator("[data-read]").focus();
  await page.keyboard.press("End");
  await until(page, () => /^At .+ s: /.test(document.querySelector("#gate-speed-main .reading")?.textContent ?? ""));
  const last = await reading.textContent();
  for (let time = 0; time < 60; time += 1) await page.keyboard.press("ArrowLeft");
  await until(page, (was) => document.querySelector("#gate-speed-main .reading")?.textContent !== was, last);
  const box = await figure.locator(".chart .frame").boundingBox();
  assert.ok(box);
  await figure.locator(".chart").scrollIntoViewIfNeeded();
  const now = await figure.locator(".chart .frame").boundingBox();
  assert.ok(now);
  await page.mouse.move(now.x + now.width / 2, now.y + now.height / 2);
  await until(page, () => /** @type {HTMLInputElement} */ (document.querySelector("#gate-speed-main [data-read]")).value === "100");
  const told = await (await page.request.get(`${own.at}/api/jobs/boatyard/pictures/gate-speed-main`)).json();
  const { across, up } = told.axes;
  const at = (across.from + across.to) / 2;
  await until(page, (where) => document.querySelector("#gate-speed-main .reading")?.textContent?.startsWith(where), `At ${at.toFixed(across.digits)} ${across.unit}: `);
  const points = told.series[0].points;
  const after = points.findIndex((/** @type {number[]} */ point) => point[0] >= at);
  const [x, y] = points[after - 1];
  const [toX, toY] = points[after];
  const expected = `${(y + ((at - x) / (toX - x)) * (toY - y)).toFixed(up.digits)} ${up.unit}`;
  assert.ok((await reading.textContent())?.includes(expected), expected);
  await page.close();
});

test("pictures are drawn again when the site changes", async () => {
  const page = await opened(own, "/jobs/boatyard/pictures", DESK);
  const before = await page.locator("#gate-speed-main .chart").innerHTML();
  const { revision } = await (await page.request.get(`${own.at}/api/jobs/boatyard`)).json();
  const sent = await page.request.post(`${own.at}/api/jobs/boatyard/edits`, {
    data: { expects: revision, edits: [{ do: "set", path: "gate.main.motion.cruise_speed", value: "9 in/s" }] },
  });
  assert.equal(sent.status(), 200, await sent.text());
  await until(page, (was) => document.querySelector("#gate-speed-main .chart")?.innerHTML !== was, before);
  await page.close();
});

test("a finding leads to its picture", async () => {
  const page = await opened(own, "/jobs/boatyard/answers/force-slide/drive", PHONE);
  await page.getByRole("link", { name: "See it drawn" }).click();
  await page.waitForURL(/pictures#motion$/);
  assert.ok(await page.locator("#motion .picture").count());
  await page.close();
});

test("a walk is begun and stopped", { timeout: 120000 }, async () => {
  const page = await opened(own, "/jobs/boatyard/walk", PHONE);
  await page.getByRole("button", { name: "Walk", exact: true }).click();
  await page.getByRole("button", { name: "Stop" }).click();
  await until(page, () => /stopped/.test(document.querySelector("#word")?.textContent ?? "") && !(/** @type {HTMLButtonElement} */ (document.querySelector("#make")).disabled));
  await page.close();
});

test("a worst walk is stepped, and its touch is told", async () => {
  const page = await opened(own, "/jobs/boatyard-faulty/walk", PHONE);
  await page.getByRole("link", { name: "Watch it" }).first().click();
  await page.locator("#replay.ready").waitFor();
  assert.equal(await page.locator("#play").isVisible(), false, "nobody who asked for less motion is offered to play");
  const clock = page.locator("#clock");
  const before = await clock.textContent();
  await page.locator("#time").focus();
  await page.keyboard.press("ArrowRight");
  await until(page, (was) => document.querySelector("#clock")?.textContent !== was, before);
  await page.getByRole("button", { name: "To the touch" }).click();
  await until(page, () => /touched:/.test(document.querySelector("#doing")?.textContent ?? ""));
  assert.equal(await page.locator("#board .cross").getAttribute("visibility"), "visible");
  await page.getByRole("button", { name: "Step back" }).click();
  await until(page, () => /not touched/.test(document.querySelector("#doing")?.textContent ?? ""));
  await page.close();
});

test("a worst walk plays and pauses", async () => {
  const page = await opened(own, "/jobs/boatyard-faulty/walk", DESK, { reducedMotion: "no-preference" });
  await page.getByRole("link", { name: "Watch it" }).first().click();
  await page.locator("#replay.ready").waitFor();
  const before = await page.locator("#clock").textContent();
  assert.equal(await page.locator("#clock").textContent(), before, "nothing plays by itself");
  await page.locator("#play").click();
  await until(page, (was) => document.querySelector("#clock")?.textContent !== was, before);
  await page.getByRole("button", { name: "Pause" }).click();
  const paused = await page.locator("#clock").textContent();
  await page.getByRole("button", { name: "Play" }).waitFor();
  assert.equal(await page.locator("#clock").textContent(), paused);
  await page.close();
});

test("no fault was told by any page", () => assert.deepEqual(own.faults, []));
