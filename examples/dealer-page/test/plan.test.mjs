// The plan: its numbers, findings and pictures.
import assert from "node:assert/strict";
import { test } from "node:test";
import { demo, fresh, jobs, marks, openFile, plain, planned, sheet } from "./harness.mjs";

const plan = JSON.parse(demo.written);
const batches = plan.tanks.flatMap((tank) => tank.batches);
const words = async (page, selector) => plain(await page.innerText(selector));

/** A section of the sheet that plan_day prints, by the line that heads it. */
function section(name) {
  const [, body] = sheet("plan_day").split(`-- ${name} -`);
  return plain(body.replace(/^-*/, "").split("\n-- ")[0]);
}

test("it shows the numbers that plan_day prints", async () => {
  const page = await fresh();
  await page.evaluate(() => document.querySelectorAll("details").forEach((details) => (details.open = true)));
  const shown = {
    pour: await words(page, "#pour"), open: await words(page, "#open-packs"), pump: await words(page, "#pump"), allowed: await words(page, "#allowed"), tag: await words(page, "#tag"),
    alive: plain(await page.innerText("#alive table")),
  };
  const each = (text, pattern, least) => {
    const found = [...text.matchAll(pattern)].map(([all]) => all);
    assert.ok(found.length >= least, `${found.length} of ${pattern}`);
    return found;
  };
  const pour = section("What to pour");
  for (const volume of each(pour, /\d+ gal [\d.]+ fl oz|[\d.]+ fl oz/g, 20)) assert.ok(shown.pour.includes(volume), volume);
  for (const mass of each(pour, /= [\d.]+ lb/g, 8)) assert.ok(shown.pour.includes(mass.slice(2)), mass);
  for (const clock of each(pour, /(?:begin|ready|empty) \d\d:\d\d|USE BY \d\d:\d\d/g, 20)) assert.ok(shown.pour.includes(clock.toLowerCase()), clock);
  for (const share of each(pour, /[\d.]+ %/g, 13)) assert.ok(shown.pour.includes(share.replace(" ", "")), share);
  for (const amount of each(section("What to open"), /\d+ gal [\d.]+ fl oz|[\d.]+ fl oz(?! *,)/g, 7)) {
    assert.ok(shown.open.includes(amount) || / (220|61|83|23) fl oz/.test(` ${amount}`), amount);
  }
  const seed = section("How much seed");
  for (const number of each(seed, /\b\d{4,5}\b|[\d.]+ M|\d+ x \d+ (?:units|lb)/g, 20)) assert.ok(shown.pump.includes(number.replace(" x ", " × ")), number);
  for (const number of each(section("How fast to pump"), /\d+\.\d+/g, 15)) assert.ok(shown.pump.includes(number), number);
  for (const number of each(section("How much on the seed"), /\b\d+\.\d+/g, 60)) {
    // A column of the page may need a decimal more or less to keep each number within a thousandth.
    assert.ok(shown.pump.includes(number) || shown.pump.includes(number.replace(/0+$/, "")) || [1, 2].some((more) => near(shown.pump, number, more)), number);
  }
  for (const [, digits, power] of section("How much is alive").matchAll(/(\d\.\d\d)e(\d)/g)) {
    assert.ok(shown.alive.includes(`${digits} × 10${"⁰¹²³⁴⁵⁶⁷⁸⁹"[power]}`), `${digits}e${power}`);
  }
  for (const share of each(section("What is allowed"), /[\d.]+ %/g, 12)) assert.ok(shown.allowed.includes(share.replace(" ", "")), share);
  for (const rate of each(section("For the tag and the record"), /\d+ seeds\/ac/g, 5)) assert.ok(shown.tag.includes(rate), rate);
  const cost = section("What it costs").match(/= all ([\d.]+) ([\d.]+) ([\d.]+) ([\d.]+)/).slice(1);
  for (const money of cost) assert.ok(shown.open.includes(money), money);
});

/** Whether a text holds a number that reads the same to fewer decimals. */
function near(text, number, more) {
  const decimals = number.split(".")[1].length;
  return [...text.matchAll(/\d+\.\d+/g)].some(([other]) => other.split(".")[1].length === decimals + more && Math.abs(Number(other) - Number(number)) <= 0.5 * 10 ** -decimals);
}

test("it says in short what the day is", async () => {
  const page = await fresh();
  const short = await words(page, "#short");
  // Six mixes, from the first to the last instant of plan_day's sheet, rounded up.
  assert.match(short, /Mixes 6 /);
  assert.match(short, /Begin 07:00 /);
  const last = sheet("plan_day").match(/The last seed is treated by .* (\d\d:\d\d)\./)[1];
  assert.ok(short.includes(`Last seed ${last}`));
  assert.match(short, /Plant by May 13 first Q-315/);
});

test("every finding is told, worst first, with the way to its field", async () => {
  const page = await fresh();
  const told = await page.locator("#findings li").evaluateAll((items) => items.map((item) => [item.dataset.code, item.className]));
  const wanted = plan.findings.map(({ code }) => code).filter((code) => code !== "treated_seed");
  assert.deepEqual(told.map(([code]) => code).sort(), [...wanted].sort());
  const ranks = told.map(([, rank]) => rank);
  assert.deepEqual(ranks, ["stop", "warn", "note"].flatMap((rank) => ranks.filter((own) => own === rank)));
  await page.locator("#findings li.warn button").first().click();
  const at = await page.evaluate(() => document.activeElement.closest(".field").dataset.field);
  assert.equal(at, plan.findings.find(({ severity }) => severity === "warn").where);
});

test("the cautions are told", async () => {
  const page = await fresh();
  const shown = await words(page, "#tag");
  for (const caution of plan.orders[0].record.cautions) assert.ok(shown.includes(caution), caution);
});

test("the pictures have a mark for each thing", async () => {
  const page = await fresh();
  const many = (...of) => marks(page, ...of);
  assert.equal(await many("day", "mixing", "rect"), batches.length);
  assert.equal(await many("day", "running", "rect"), batches.length);
  assert.equal(await many("day", "shift", "rect"), JSON.parse(demo.given).work.length);
  assert.equal(await many("day", "use-by", "line"), batches.filter((batch) => batch.use_by).length);
  assert.equal(await many("day", "discarded", "circle"), batches.filter(({ discarded }) => discarded.value > 0).length);
  const sets = plan.treatments.flatMap(({ packs }) => packs).reduce((sum, { sets }) => sum + sets, 0);
  assert.equal(await many("open-packs", "set", "rect"), sets);
  const living = plan.treatments.flatMap(({ orders }) => orders.filter((order) => order.living)).map((order) => order.living);
  assert.equal(await many("alive", "cells-over-days", "path"), living.length);
  assert.equal(await many("alive", "minimum", "line"), new Set(living.map(({ minimum }) => minimum.value)).size);
  assert.equal(await many("alive", "plant-by", "line"), new Set(living.map(({ plant_by: by }) => by.slice(0, 10))).size);
  assert.equal(await many("alive", "uncertainty", "path"), 0);
  // Orders that use the same share of one limit share a bar: rates by mass are alike on all orders.
  const season = plan.actives.filter((one) => one.share_of_season_limit !== undefined).map((one) => `${one.active} ${one.share_of_season_limit.toPrecision(9)}`);
  const liquid = plan.orders.filter(({ liquid }) => liquid.limit).map(({ liquid }) => liquid.per_mass.value.toPrecision(9));
  const labels = JSON.parse(demo.given).treatments.filter((one) => one.max_rate).length;
  assert.equal(await many("allowed", "share-of-a-limit", "rect"), new Set(season).size + new Set(liquid).size + labels);
});

test("a dose that hangs on the size of the seed is drawn with what the size leaves open", async () => {
  const page = await fresh();
  const job = JSON.parse(demo.given);
  job.treatments[0].rate = "2.3 fl oz/cwt";
  delete job.treatments[0].also_stated;
  job.orders[0].size_tolerance = "25 %";
  await openFile(page, "wide.json", job);
  await page.waitForSelector("#alive .mark-uncertainty path");
  assert.equal(await marks(page, "alive", "uncertainty", "path"), 1);
});

test("jobs of all sizes are drawn: without shifts, without packs, without anything alive", async () => {
  const page = await fresh();
  for (const { name, given, written } of jobs()) {
    await openFile(page, name, given);
    await page.waitForFunction((name) => document.querySelector("#said").textContent.startsWith(`Opened ${name}`), name);
    await planned(page);
    const { tanks, treatments } = JSON.parse(written);
    const mixes = tanks.flatMap(({ batches }) => batches).filter(({ mix_at: at }) => at).length;
    assert.equal(await marks(page, "day", "mixing", "rect"), mixes, name);
    const living = treatments.flatMap(({ orders }) => orders).filter((order) => order.living?.at_planting).length;
    assert.equal(await marks(page, "alive", "cells-over-days", "path"), living, name);
  }
  const bare = { orders: [{ order: "7", lot: "K-3", amount: "12000 lb", size: "2650 seeds/lb" }], treatments: [{ product: "Peat inoculant", rate: "3.5 oz av/cwt" }], units: "us" };
  await openFile(page, "bare.json", bare);
  await page.waitForFunction(() => /Peat inoculant/.test(document.querySelector("#pour").innerText));
  await planned(page);
  // Worked by hand: 3.5 oz av over 100 lb, for 12,000 lb: 420 oz av, 26.25 lb.
  assert.match(await words(page, "#pour"), /26\.25 lb/);
  assert.match(await words(page, "#alive"), /No product of this job is alive/);
});

test("it prints the plan alone", async () => {
  const page = await fresh();
  await page.emulateMedia({ media: "print" });
  for (const only of ["#forms", "header nav", ".views"]) assert.equal(await page.locator(only).first().isVisible(), false, only);
  assert.equal(await page.isVisible("#pour"), true);
  assert.equal(await page.evaluate(() => getComputedStyle(document.querySelector(".desk")).display), "block");
});

test("each limit has its share, whatever basis it is stated in", async () => {
  const page = await fresh();
  const job = {
    units: "us",
    orders: [{ order: "7", lot: "K-3", amount: "12000 lb", size: "2800 seeds/lb", bushel: "60 lb", sowing: { rate: "140000 seeds/ac" } }],
    treatments: [
      { product: "By mass", rate: "2 fl oz/cwt", max_rate: "4 fl oz/cwt", tank: "T", density: "1 kg/L", actives: [{ active: "a", content: "100 g/kg" }] },
      { product: "By unit", rate: "1 fl oz/unit", max_rate: "1.25 fl oz/unit", label_unit: "140000 seeds", tank: "T" },
      { product: "By bushel", rate: "1 fl oz/bu", max_rate: "2.5 fl oz/bu", tank: "T" },
      { product: "By area", rate: "1 fl oz/ac", max_rate: "1.6 fl oz/ac", tank: "T" },
    ],
    tanks: [{ tank: "T", capacity: "50 gal" }],
    actives: [{ active: "a", max_per_mass: "520 mg/kg", max_per_seed: "0.1 mg/seed" }],
  };
  await openFile(page, "limits.json", job);
  await page.waitForSelector("#allowed .mark-share-of-a-limit rect");
  // Worked by hand: 2 of 4, 1 of 1.25, 1 of 2.5, 1 of 1.6; 2 fl oz (29.573 53 mL each) at 1 kg/L and 10 % over 100 lb (45.359 237 kg) is
  // 130.396 mg/kg, 25.1 % of 520; over 2800 seeds a lb (453.592 37 g) it is 0.021 124 mg a seed, 21.1 % of 0.1.
  const shares = await page.locator("#allowed tbody td").allTextContents();
  assert.deepEqual(shares, ["50.0%", "80.0%", "40.0%", "62.5%", "25.1%", "21.1%"]);
});

test("each of many sets is seen, on a phone too", async () => {
  const page = await fresh({ viewport: { width: 360, height: 800 } });
  const job = JSON.parse(demo.given);
  for (const order of job.orders) order.amount = "3000 units";
  job.treatments.forEach(({ packs }) => packs.forEach((pack) => (pack.on_hand = 500)));
  await openFile(page, "large.json", job);
  await page.waitForFunction(() => document.querySelectorAll("#open-packs .mark-set rect").length > 60);
  const widths = await page.locator("#open-packs .mark-set rect").evaluateAll((all) => all.map((one) => one.getBoundingClientRect().width));
  assert.ok(Math.min(...widths) > 1, String(Math.min(...widths)));
});
