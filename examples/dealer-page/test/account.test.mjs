// After the day: what was really applied.
import assert from "node:assert/strict";
import { test } from "node:test";
import { demo, demoRun, fresh, marks, openFile, plain, saved, sheet, toAccount } from "./harness.mjs";

const account = JSON.parse(demoRun.written);
const run = JSON.parse(demoRun.given);
const rates = account.orders.flatMap(({ order, tanks }) => tanks.map((tank) => ({ order, ...tank })));
const field = (page, place) => page.locator(`#run [data-field="${place}"]`);

function section(name) {
  const [, body] = sheet("close_day").split(`-- ${name} -`);
  return body.replace(/^-*/, "").split("\n-- ")[0];
}

test("it shows the rates that close_day prints, against the label's, and how far off they are", async () => {
  const page = await fresh();
  await toAccount(page);
  const rows = (await page.locator("#applied tbody tr").allInnerTexts()).map(plain);
  const printed = section("What each tank gave").split("\n").filter((line) => /%/.test(line)).map(plain);
  assert.equal(rows.length, printed.length);
  printed.forEach((line, at) => {
    const [, off, verdict] = /([+-]?[\d.]+) % (.*)$/.exec(line.trim());
    const [used] = /(?:\d+ gal )?[\d.]+ fl oz/.exec(line);
    assert.ok(rows[at].includes(`${off}%`), `${rows[at]} | ${line}`);
    assert.ok(rows[at].toLowerCase().includes(verdict.toLowerCase()), `${rows[at]} | ${line}`);
    assert.ok(rows[at].includes(used), `${rows[at]} | ${line}`);
  });
  // The page keeps each number within a thousandth of itself.
  const reads = (text, value) => text.match(/\d+\.\d+/g).some((number) => Math.abs(Number(number) - value) <= 1e-3 * value);
  rates.forEach(({ achieved, target }, at) => {
    for (const { value } of [achieved, target]) assert.ok(reads(rows[at], value), `${rows[at]} | ${value}`);
  });
});

test("it shows the living cells, the actives and the record that close_day prints", async () => {
  const page = await fresh();
  await toAccount(page);
  const alive = plain(await page.innerText("#account-alive"));
  const cells = [...section("How much is alive").matchAll(/(\d\.\d\d)e(\d)/g)];
  assert.ok(cells.length >= 15);
  for (const [, digits, power] of cells) assert.ok(alive.includes(`${digits} × 10${"⁰¹²³⁴⁵⁶⁷⁸⁹"[power]}`));
  await page.evaluate(() => document.querySelectorAll("#account details").forEach((details) => (details.open = true)));
  const allowed = plain(await page.innerText("#account-allowed"));
  for (const [, share] of section("How much active").matchAll(/([\d.]+) %/g)) assert.ok(allowed.includes(`${share}%`), share);
  const record = plain(await page.innerText("#record"));
  for (const word of ["Marit Halloran", "certificate demo 4471", "demo 11-204", "LSI-2704", "3 gal 107.6 fl oz", "bay 2"]) assert.ok(record.includes(word), word);
  assert.match(record, /Write in: certification number of the applicator/);
  assert.equal(await page.locator("#record article").count(), account.orders.length);
});

test("every finding of the account is told", async () => {
  const page = await fresh();
  await toAccount(page);
  const codes = await page.locator("#account-findings li").evaluateAll((items) => items.map((item) => item.dataset.code));
  assert.deepEqual(codes, account.findings.map(({ code }) => code).filter((code) => code !== "treated_seed"));
  assert.match(await page.innerText("#said"), /1 to see to first/);
});

test("the pictures have a mark for each rate, whatever its verdict", async () => {
  const page = await fresh();
  await toAccount(page);
  for (const verdict of ["low", "on_target", "high", "cannot_tell"]) {
    const wanted = rates.filter((rate) => rate.verdict === verdict).length;
    assert.ok(wanted > 0, verdict);
    assert.equal(await marks(page, "applied", verdict.replace("_", "-"), ":is(path, circle)"), wanted, verdict);
  }
  assert.equal(await marks(page, "applied", "uncertainty", "line"), rates.filter(({ uncertainty }) => uncertainty).length);
  assert.equal(await marks(page, "applied", "tolerance", "rect"), 1);
  assert.equal(await marks(page, "applied", "target", "line"), 1);
  const shares = account.orders.flatMap(({ actives }) => actives).filter((one) => one.share_of_season_limit !== undefined).length;
  assert.equal(await marks(page, "account-allowed", "share-of-a-limit", "rect"), shares);
});

test("a wrong reading shows its message beside its field", async () => {
  const page = await fresh();
  await toAccount(page);
  await page.evaluate(() => document.querySelectorAll("#run details").forEach((details) => (details.open = true)));
  const end = field(page, "/orders/0/tanks/0/end");
  await end.locator("input").fill("12");
  await page.waitForSelector("body.stale");
  assert.match(await end.locator(".error").innerText(), /12 gal/);
  await end.locator("input").fill("3.5");
  await page.waitForSelector("body:not(.stale)");
  assert.deepEqual(await saved(page), run);
});

test("a run is written down order by order, and accounted for as it goes", async () => {
  const page = await fresh();
  await openFile(page, "job.json", demo.given);
  await page.waitForFunction(() => /Opened job\.json/.test(document.querySelector("#said").textContent));
  await page.click("#to-account");
  await page.waitForSelector("#nothing:not([hidden])");
  await page.click('#run [data-add="/orders"]');
  // The first order of the job, with the tanks that it gets.
  assert.equal(await field(page, "/orders/0/order").locator("input").inputValue(), "Q-311");
  await page.evaluate(() => document.querySelectorAll("#run details").forEach((details) => (details.open = true)));
  const fill = async (place, value, unit) => {
    if (unit) await field(page, place).locator("select").selectOption(unit);
    await field(page, place).locator("input").fill(value);
  };
  await fill("/orders/0/seed/mass", "21380", "lb");
  await fill("/orders/0/tanks/0/start", "8.8", "gal");
  await fill("/orders/0/tanks/0/end", "3.8", "gal");
  await fill("/orders/0/tanks/1/start", "14", "gal");
  await fill("/orders/0/tanks/1/end", "6", "gal");
  await page.waitForSelector("#applied tbody tr");
  // Worked by hand: 5 gal are 640 fl oz, over 213.8 cwt: 2.993 fl oz/cwt.
  const [living] = (await page.locator("#applied tbody tr").allInnerTexts()).map(plain);
  assert.match(living, /2\.99/);
  await page.locator('#run [data-at="/orders/0/tanks/0"] [data-add="/orders/0/tanks/0/lost"]').click();
  await fill("/orders/0/tanks/0/lost/0", "64", "fl oz");
  await fill("/orders/0/tanks/0/lost/0/resolution", "1", "fl oz");
  // Worked by hand: 576 fl oz over 213.8 cwt: 2.694 fl oz/cwt.
  await page.waitForFunction(() => /2\.69/.test(document.querySelector("#applied tbody tr").innerText));
  const written = await saved(page);
  assert.deepEqual(written.orders[0].tanks[0], { tank: "Living", start: "8.8 gal", end: "3.8 gal", lost: [{ reading: "64 fl oz", resolution: "1 fl oz" }] });
  assert.deepEqual(written.job, JSON.parse(demo.given));
});
