// A gatewright of its own for each file of tests, on copies of the example sites, and a browser to look at it.

import { spawn } from "node:child_process";
import { cpSync, existsSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { after, before } from "node:test";
import { chromium } from "playwright-core";

const ROOT = path.resolve(import.meta.dirname, "../..");
export const PROGRAM = process.env.GATEWRIGHT ?? path.join(ROOT, "target/release/gatewright");

/** The three sizes that every page is looked at in. */
export const SIZES = [
  { name: "phone", width: 390, height: 844 },
  { name: "tablet", width: 820, height: 1180 },
  { name: "desk", width: 1440, height: 900 },
];

/** Starts program and browser before the tests of a file, and ends them after. @param {string[]} sites */
export function house(sites) {
  const own = { at: "", folder: "", browser: /** @type {import("playwright-core").Browser} */ (/** @type {unknown} */ (null)), faults: /** @type {string[]} */ ([]) };
  /** @type {import("node:child_process").ChildProcess} */
  let program;
  before(async () => {
    if (!existsSync(PROGRAM)) throw new Error(`There is no program at ${PROGRAM}: build it first.`);
    own.folder = mkdtempSync(path.join(tmpdir(), "gatewright-"));
    for (const site of sites) cpSync(path.join(ROOT, "examples", site), path.join(own.folder, site), { recursive: true });
    program = spawn(PROGRAM, ["serve", own.folder, "--port", "0"], { stdio: ["ignore", "pipe", "inherit"] });
    own.at = await said(program);
    own.browser = await chromium.launch({ executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium", args: ["--no-sandbox"] });
  });
  after(async () => {
    await own.browser?.close();
    program?.kill();
    rmSync(own.folder, { recursive: true, force: true });
  });
  return own;
}

/** The address that the program prints. @param {import("node:child_process").ChildProcess} program @returns {Promise<string>} */
export function said(program) {
  return new Promise((found, lost) => {
    let text = "";
    program.stdout?.on("data", (piece) => {
      text += piece;
      const at = /http:\/\/127\.0\.0\.1:\d+/.exec(text);
      if (at) found(at[0]);
    });
    program.on("exit", (code) => lost(new Error(`gatewright ended with ${code}: ${text}`)));
  });
}

/**
 * A page of the house; whatever goes wrong in it is kept in `own.faults`.
 * @param {ReturnType<typeof house>} own @param {string} at @param {{width: number, height: number}} size @param {object} [more]
 */
export async function opened(own, at, size, more = {}) {
  const page = await own.browser.newPage({ viewport: { width: size.width, height: size.height }, reducedMotion: "reduce", ...more });
  page.on("pageerror", (error) => own.faults.push(`${at}: ${error.message}`));
  page.on("console", (message) => message.type() === "error" && own.faults.push(`${at}: ${message.text()}`));
  page.on("request", (request) => request.url().startsWith(own.at) || own.faults.push(`${at} asks elsewhere: ${request.url()}`));
  await page.goto(own.at + at);
  return page;
}

/** Waits until the answers are on the page. @param {import("playwright-core").Page} page */
export async function answered(page) {
  await page.locator("#answers-list .topics").waitFor({ state: "attached", timeout: 60000 });
}

/**
 * Waits until something on the page is so. The page's policy forbids what the browser's own way of waiting needs.
 * @template T
 * @param {import("playwright-core").Page} page @param {(arg: T) => unknown} holds @param {T} [arg]
 */
export async function until(page, holds, arg) {
  const end = Date.now() + 60000;
  while (!(await page.evaluate(holds, /** @type {any} */ (arg)))) {
    if (Date.now() > end) throw new Error(`It never came: ${holds}`);
    await new Promise((next) => setTimeout(next, 25));
  }
}
