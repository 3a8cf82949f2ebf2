// The page in a real Chromium: numbers, messages, pictures, keyboard, screen reader, phone, offline.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { mkdirSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { after, before, test } from "node:test";
import { fileURLToPath } from "node:url";
import { browser, serve } from "../../../bindings/wasm/npm/browser/serve.mjs";
import { jobs, work } from "../../../bindings/wasm/npm/test/paths.mjs";

const here = fileURLToPath(new URL("..", import.meta.url));
const shots = fileURLToPath(new URL("../dealer-page/", work));
const demo = jobs().find(({ name }) => name === "dealer_day.json");
const plan = JSON.parse(demo.written);
const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
let server, context, page;

const text = (selector) => page.innerText(selector);
const field = (place) => page.locator(`[data-field="${place}"]`);
const planned = () => page.waitForSelector("#alive figure, #alive p");

async function fresh(options = {}) {
  await context?.close();
  context = await browser({ viewport: { width: 1280, height: 900 }, locale: "en-US", ...options });
  page = await context.newPage();
  await page.goto(`${server.address}/`);
  await planned();
}

async function open(...names) {
  for (const name of names) await page.locator("form summary").getByText(name, { exact: false }).first().click();
}

before(async () => {
  execFileSync(process.execPath, ["build.mjs"], { cwd: here, stdio: "inherit" });
  mkdirSync(shots, { recursive: true });
  server = await serve({ "": `${here}dist` });
  await fresh();
});

after(async () => {
  await context?.close();
  server?.close();
});

test("it shows the numbers of the plan that Rust writes", async () => {
  const digits = new Intl.NumberFormat("en", { maximumSignificantDigits: 4 });
  const page = (await text("#plan")).replaceAll("\u00A0", " ");
  const shown = ({ value, unit }) => `${digits.format(value)} ${unit}`;
  for (const { mass, seeds } of plan.orders) assert.ok(page.includes(shown(mass)) && page.includes(shown(seeds)));
  for (const { batches, orders } of plan.tanks) {
    for (const { flow, setting } of orders) assert.ok(page.includes(shown(flow)) && page.includes(digits.format(setting)));
    for (const batch of batches) {
      assert.ok(batch.pour.every(({ volume }) => page.includes(shown(volume))));
      assert.ok(page.includes(`begin ${batch.mix_at.slice(11, 16)}`));
      assert.ok(!batch.use_by || page.includes(`use by ${batch.use_by.slice(11, 16)}`));
    }
  }
  for (const { product, packs } of plan.treatments) {
    for (const { pack, sets } of packs) assert.ok(page.includes(`${sets} × ${pack} of ${product}`), product);
  }
});

test("every finding is told, worst first", async () => {
  const codes = await page.locator("#findings li").evaluateAll((items) => items.map((item) => item.dataset.code));
  const wanted = plan.findings.map(({ code }) => code).filter((code) => code !== "treated_seed");
  assert.deepEqual([...codes].sort(), [...wanted].sort());
  const ranks = await page.locator("#findings li").evaluateAll((items) => items.map((item) => item.className));
  assert.deepEqual(ranks, ["stop", "warn", "note"].flatMap((rank) => ranks.filter((own) => own === rank)));
});

test("the pictures have a mark for each thing", async () => {
  const marks = (section, name, shape) => page.locator(`#${section} svg .mark-${name} ${shape}`).count();
  const batches = plan.tanks.flatMap((tank) => tank.batches);
  assert.equal(await marks("day", "mixing", "rect"), batches.length);
  assert.equal(await marks("day", "running", "rect"), batches.length);
  assert.equal(await marks("day", "shift", "rect"), JSON.parse(demo.given).work.length);
  assert.equal(await marks("day", "use-by", "line"), batches.filter((batch) => batch.use_by).length);
  assert.equal(await marks("day", "discarded", "path"), batches.filter(({ discarded }) => discarded.value > 0).length);
  const sets = plan.treatments.flatMap(({ packs }) => packs).reduce((sum, { sets }) => sum + sets, 0);
  assert.equal(await marks("open-packs", "set", "rect"), sets);
  const living = plan.treatments.flatMap(({ orders }) => orders.filter((order) => order.living));
  assert.equal(await marks("alive", "cells-over-days", "path"), living.length);
  const shares = plan.actives.filter((one) => one.share_of_season_limit !== undefined).length;
  assert.equal(await marks("allowed", "share-of-a-limit", "rect"), shares + plan.orders.filter(({ liquid }) => liquid.limit).length);
});

test("a bad field shows its message beside the field, and the plan comes back with a good one", async () => {
  await open("Orders of seed");
  await page.locator("form .item summary").first().click();
  const amount = field("/orders/0/amount");
  await amount.locator("input").fill("43o");
  await page.waitForSelector("body.stale");
  assert.match(await amount.locator(".error").innerText(), /430?o/i);
  assert.equal(await amount.locator("input").getAttribute("aria-invalid"), "true");
  const described = await amount.locator("input").getAttribute("aria-describedby");
  assert.ok(described.split(" ").includes(await amount.locator(".error").getAttribute("id")));
  await amount.locator("input").fill("860");
  await page.waitForSelector("body:not(.stale)");
  assert.equal(await amount.locator(".error").innerText(), "");
  assert.match((await text("#pump")).replaceAll("\u00A0", " "), /860 units/);
  await amount.locator("select").selectOption("lb");
  await page.waitForFunction(() => /860\u00A0lb/.test(document.querySelector("#pump").innerText));
});

test("a stop is told at once", async () => {
  await field("/orders/0/temperature").locator("input").fill("30");
  await page.waitForSelector('#findings li.stop[data-code="frozen_seed"]');
  assert.match(await text("#said"), /to see to first/);
});

test("a job is saved, opened and carried by a link, unchanged", async () => {
  await fresh();
  const [download] = await Promise.all([page.waitForEvent("download"), page.click("#save")]);
  const saved = readFileSync(await download.path(), "utf8");
  assert.deepEqual(JSON.parse(saved), JSON.parse(demo.given));
  const other = JSON.parse(jobs().find(({ name }) => name === "small_farm.json").given);
  const buffer = Buffer.from(JSON.stringify(other));
  await page.setInputFiles("#open", { name: "farm.json", mimeType: "application/json", buffer });
  await page.waitForFunction((title) => document.querySelector("#title").textContent === title, other.title ?? "A day without a title");
  await page.click("#link");
  await page.waitForFunction(() => location.hash.startsWith("#job="));
  const link = page.url();
  const second = await context.newPage();
  await second.goto(link);
  await second.waitForSelector("#alive p, #alive figure");
  const [again] = await Promise.all([second.waitForEvent("download"), second.click("#save")]);
  assert.deepEqual(JSON.parse(readFileSync(await again.path(), "utf8")), other);
  await second.close();
  await page.setInputFiles("#open", { name: "no.json", mimeType: "application/json", buffer: Buffer.from("{") });
  await page.waitForFunction(() => /no\.json is no job/.test(document.querySelector("#said").textContent));
});

test("an order is added and removed by keyboard alone", async () => {
  await fresh();
  await page.locator("form summary").getByText("Orders of seed").focus();
  await page.keyboard.press("Enter");
  await page.locator('[data-add="/orders"]').focus();
  await page.keyboard.press("Enter");
  assert.equal(await page.evaluate(() => document.activeElement.closest("[data-field]")?.dataset.field), "/orders/6/order");
  await page.keyboard.press("Control+A");
  await page.keyboard.type("Q-400");
  await page.waitForFunction(() => document.querySelector("#pump").innerText.includes("Q-400"));
  await page.locator('[data-at="/orders/6"] .remove').focus();
  await page.keyboard.press("Space");
  await page.waitForFunction(() => !document.querySelector("#pump").innerText.includes("Q-400"));
});

test("a day is planned from nothing", async () => {
  await fresh();
  await page.click("#blank");
  await open("Orders of seed");
  await page.click('[data-add="/orders"]');
  await open("Products");
  await page.click('[data-add="/treatments"]');
  // Worked by hand: 3 oz av over 100 lb, for 10,000 lb: 300 oz av, 18.75 lb, 8.505 kg.
  await page.waitForFunction(() => /8\.505\u00A0kg|New product/.test(document.querySelector("#plan").innerText));
  assert.equal(await page.locator("body.stale").count(), 0);
});

for (const [width, scheme] of [[1280, "light"], [360, "light"], [1280, "dark"], [360, "dark"]]) {
  test(`at ${width} px, ${scheme}: nothing runs over, and axe finds nothing`, async () => {
    // The page's policy lets no foreign script in, which axe is.
    await fresh({ viewport: { width, height: 900 }, colorScheme: scheme, bypassCSP: true });
    await page.evaluate(() => document.querySelectorAll("details").forEach((details) => (details.open = true)));
    assert.ok((await page.evaluate(() => document.documentElement.scrollWidth)) <= width);
    await page.evaluate(axe);
    const { violations } = await page.evaluate(() => axe.run(document));
    assert.deepEqual(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 120)).join(" | ")}`), []);
    await page.reload();
    await planned();
    await page.screenshot({ path: `${shots}${width}-${scheme}.png`, fullPage: true });
  });
}

test("it prints the plan without the form", async () => {
  await fresh();
  await page.emulateMedia({ media: "print" });
  assert.equal(await page.isVisible("#job"), false);
  assert.equal(await page.isVisible("#pour"), true);
  await page.pdf({ path: `${shots}print.pdf`, format: "Letter" });
});

test("it works without a network after the first visit", async () => {
  await fresh();
  await page.evaluate(() => navigator.serviceWorker.ready);
  await page.reload();
  await planned();
  await context.setOffline(true);
  await page.reload();
  await planned();
  assert.match(await text("#title"), /Quillwater/);
});

test("it asks nothing of any other place", async () => {
  await fresh({ serviceWorkers: "block" });
  const asked = [];
  page.on("request", (request) => asked.push(request.url()));
  await page.reload();
  await planned();
  assert.deepEqual(asked.filter((url) => !url.startsWith(server.address) && !url.startsWith("blob:") && !url.startsWith("data:")), []);
});
