// The page in a real Chromium, served on this machine alone.
import { execFileSync } from "node:child_process";
import { mkdirSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { after, before } from "node:test";
import { fileURLToPath } from "node:url";
import { launch, serve } from "../../../bindings/wasm/npm/browser/serve.mjs";
import { jobs, runs, text, work } from "../../../bindings/wasm/npm/test/paths.mjs";

const here = fileURLToPath(new URL("..", import.meta.url));
const find = (documents, name) => documents.find((one) => one.name === name);
const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

export { jobs };
export const shots = fileURLToPath(new URL("../dealer-page/", work));
export const demo = find(jobs(), "dealer_day.json");
export const farm = find(jobs(), "small_farm.json");
export const demoRun = find(runs(), "dealer_day_run.json");
/** The sheet that an example prints of the same document in a terminal. */
export const sheet = (example) => text(new URL(`${example}.txt`, work));

export const served = {};
/** Another server of the page. */
export const serveAgain = () => serve({ "": `${here}dist` });

before(async () => {
  execFileSync(process.execPath, ["build.mjs"], { cwd: here, stdio: "inherit" });
  mkdirSync(shots, { recursive: true });
  [served.server, served.browser] = await Promise.all([serve({ "": `${here}dist` }), launch()]);
});

after(async () => {
  await served.browser?.close();
  served.server?.close();
});

export const planned = (page) => page.waitForSelector("#alive:not([aria-busy]) :is(figure, p)");

/** A new profile with the page in it, at the demonstration; `before` runs in the page before its own scripts. */
export async function fresh(options = {}, before = () => {}) {
  await served.context?.close();
  served.context = await served.browser.newContext({ viewport: { width: 1280, height: 900 }, locale: "en-US", ...options });
  await served.context.addInitScript(before);
  const page = await served.context.newPage();
  page.on("pageerror", (error) => {
    throw error;
  });
  await page.goto(`${served.server.address}/`);
  await planned(page);
  return page;
}

export async function toAccount(page) {
  await page.click("#to-account");
  await page.waitForSelector("#record article, #nothing:not([hidden])");
}

/** Opens a document as a person does: a file. */
export const openFile = (page, name, document) =>
  page.setInputFiles("#open", { name, mimeType: "application/json", buffer: Buffer.from(typeof document === "string" ? document : JSON.stringify(document)) });

/** What the page saves. */
export async function saved(page) {
  const [download] = await Promise.all([page.waitForEvent("download"), page.click("#save")]);
  return JSON.parse(readFileSync(await download.path(), "utf8"));
}

/** What axe has to say of the page as it stands. The page's policy lets no foreign script in: it needs `bypassCSP`. */
export async function violations(page) {
  await page.evaluate(axe);
  const { violations } = await page.evaluate(() => axe.run(document));
  return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 160)).join(" | ")}`);
}

/** Text with its numbers and spaces as a terminal and a page both could write them. */
export const plain = (text) =>
  text.replace(/\u00A0/g, " ").replace(/(\d)[, ](?=\d{3}(\D|$))/g, "$1").replace(/\s+/g, " ");

export const marks = (page, section, name, shape) => page.locator(`#${section} svg .mark-${name} ${shape}`).count();
