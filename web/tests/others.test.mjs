// Jobs, calculators and papers.

import assert from "node:assert/strict";
import { mkdirSync, readFileSync, rmSync, rmdirSync, writeFileSync } from "node:fs";
import path from "node:path";
import test from "node:test";
import { SIZES, answered, house, opened, until } from "./house.mjs";

const own = house(["clinic"]);
const [PHONE, , DESK] = SIZES;

test("a calculation is worked while one writes, and its address carries it", async () => {
  const page = await opened(own, "/calculations/voltage-drop", PHONE);
  const answer = page.locator("#answer");
  const first = await answer.textContent();
  const field = page.locator("#v-current");
  const before = await field.inputValue();
  await field.fill("3.21 A");
  await until(page, (was) => document.querySelector("#answer")?.textContent !== was, first);
  assert.match(page.url(), /current=3\.21/);
  const worked = await answer.textContent();
  const again = await opened(own, new URL(page.url()).pathname + new URL(page.url()).search, PHONE);
  assert.equal(await again.locator("#answer").textContent(), worked);
  await field.fill(before);
  await until(page, (was) => document.querySelector("#answer")?.textContent === was, first);
  await page.close();
  await again.close();
});

test("a calculation is solved backward", async () => {
  const page = await opened(own, "/calculations/voltage-drop", PHONE);
  const given = await page.locator("#v-length").inputValue();
  await page.locator('[data-look="v-length"]').click();
  await page.locator("#v-drop").fill("10 %");
  await until(page, () => /Looked for from/.test(document.querySelector("#answer")?.textContent ?? ""));
  assert.notEqual(await page.locator("#answer dd").first().textContent(), given);
  await page.close();
});

test("a wrong input is said beside its field", async () => {
  const page = await opened(own, "/calculations/voltage-drop", PHONE);
  await page.locator("#v-current").fill("three");
  await page.locator('[data-says="current"] .wrong').waitFor();
  await page.close();
});

test("a first site comes from the survey", async () => {
  const page = await opened(own, "/", PHONE);
  await page.getByRole("button", { name: "New job" }).click();
  await page.getByLabel("What is the site called?").fill("North yard");
  await page.getByLabel("How wide is the clear opening?").fill("16 ft");
  await page.getByLabel("How high is the leaf?").fill("6 ft");
  await page.getByLabel("How often does it open on a full day?").fill("60");
  await page.getByRole("button", { name: "Make it" }).click();
  await page.waitForURL(/\/jobs\/north-yard/);
  assert.ok(await page.locator("svg.live").count());
  await page.close();
});

test("files beside a site file are brought in with it, and the one that is missing is named", async () => {
  const page = await opened(own, "/", PHONE);
  await page.getByRole("button", { name: "Bring in" }).click();
  await page.locator("#import-name").fill("brought in");
  const file = (/** @type {string} */ name) => ({ name, mimeType: "text/plain", buffer: readFileSync(`${own.folder}/clinic/${name}`) });
  await page.locator("#import-file").setInputFiles([file("site.toml"), file("parts.toml")]);
  await page.getByText("Here: parts.toml, what the things are bought as").waitFor();
  await page.getByText("Missing: price-book.toml, prices for the offer").waitFor();
  await page.locator("#import-file").setInputFiles(["site.toml", "parts.toml", "price-book.toml"].map(file));
  await page.getByText("Here: price-book.toml").waitFor();
  await page.getByRole("button", { name: "Bring it in" }).click();
  await page.waitForURL(/\/jobs\/brought-in/);
  for (const name of ["site.toml", "parts.toml", "price-book.toml"]) {
    assert.equal(readFileSync(`${own.folder}/brought-in/${name}`, "utf8"), readFileSync(`${own.folder}/clinic/${name}`, "utf8"));
  }
  await page.close();
});

test("kept walks that cannot be read are said above the answers while the page is open, and no longer once the file is away", async () => {
  const page = await opened(own, "/jobs/clinic", DESK);
  await answered(page);
  const said = "#answers-list .counted .trouble";
  assert.equal(await page.locator(said).count(), 0);
  const papers = await opened(own, "/jobs/clinic/papers", PHONE);
  const kept = path.join(own.folder, "clinic", "walk.json");
  writeFileSync(kept, "no records");
  await page.locator(said).waitFor({ timeout: 60000 });
  await papers.locator("#unread .trouble").waitFor({ timeout: 60000 });
  assert.match((await page.locator(said).textContent()) ?? "", /^walk\.json is not what gatewright walk --keep writes\.Take it away, and run that again\./);
  const walks = await opened(own, "/jobs/clinic/walk", PHONE);
  assert.match((await walks.locator("#walks > .trouble").textContent()) ?? "", /Take it away/);
  await walks.close();
  rmSync(kept);
  await page.locator(said).waitFor({ state: "detached", timeout: 60000 });
  // What nobody can read at all is said as well.
  mkdirSync(kept);
  await page.locator(said).waitFor({ timeout: 60000 });
  await papers.locator("#unread").getByText("walk.json cannot be read").waitFor({ timeout: 60000 });
  rmdirSync(kept);
  await papers.locator("#unread .trouble").waitFor({ state: "detached", timeout: 60000 });
  await papers.close();
  await page.close();
});

test("the papers are made and handed out", { timeout: 240000 }, async () => {
  const page = await opened(own, "/jobs/clinic/papers", PHONE);
  await page.getByRole("button", { name: "Make the papers" }).click();
  await page.locator("#list li").first().waitFor({ timeout: 200000 });
  const at = await page.locator("#list a").first().getAttribute("href");
  const got = await page.request.get(own.at + at);
  assert.equal(got.status(), 200);
  assert.ok((await got.body()).length > 1000);
  await page.close();
});

test("no fault was told by any page", () => assert.deepEqual(own.faults, []));
