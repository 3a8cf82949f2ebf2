// The form: every field of the document, its messages, what it keeps.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";
import { demo, demoRun, farm, fresh, openFile, planned, saved, served, toAccount } from "./harness.mjs";

const text = (page, selector) => page.innerText(selector);
const field = (page, place) => page.locator(`form:not([hidden]) [data-field="${place}"]`);
const schema = (name) => JSON.parse(readFileSync(new URL(`../../../bindings/wasm/npm/dist/schemas/${name}.json`, import.meta.url), "utf8"));

async function unfold(page) {
  await page.evaluate(() => document.querySelectorAll("form details").forEach((details) => (details.open = true)));
}

/** The places that a schema knows: "/orders/0/sowing/rate", one item for each list. */
function places(node, root, at = "", seen = []) {
  if (node.$ref) {
    if (seen.includes(node.$ref)) return [];
    return places(root.$defs[node.$ref.split("/").at(-1)], root, at, [...seen, node.$ref]);
  }
  const options = (node.anyOf ?? node.oneOf)?.filter(({ type }) => type !== "null");
  if (options?.length === 1) return places(options[0], root, at, seen);
  if (node.properties && !("value" in node.properties)) return Object.entries(node.properties).flatMap(([name, inner]) => places(inner, root, `${at}/${name}`, seen));
  // A list of texts is one field.
  if (node.items && node.items.type !== "string") return places(node.items, root, `${at}/0`, seen);
  return [at];
}

/** Every place that the form can ask, whatever ways are taken: adds one item to each list, takes each way in turn. */
async function asked(page) {
  const all = new Set();
  const look = async () => {
    for (const place of await page.locator("form:not([hidden]) [data-field]").evaluateAll((fields) => fields.map((one) => one.dataset.field))) all.add(place);
  };
  for (let round = 0; round < 4; round++) {
    await unfold(page);
    const empty = await page.locator("form:not([hidden]) [data-add]").evaluateAll((buttons) =>
      buttons.map((one) => one.dataset.add).filter((list) => !document.querySelector(`form:not([hidden]) [data-at="${list}/0"]`)),
    );
    for (const list of empty) {
      await page.locator(`form:not([hidden]) [data-add="${list}"]`).click();
      await unfold(page);
    }
  }
  await look();
  for (const ways of await page.locator("form:not([hidden]) [data-ways]").evaluateAll((all) => all.map((one) => one.dataset.ways))) {
    const select = page.locator(`form:not([hidden]) [data-ways="${ways}"] select`).first();
    for (let at = 0; at < (await select.locator("option").count()); at++) {
      await select.selectOption({ index: at });
      await unfold(page);
      await look();
    }
  }
  return all;
}

test("the form asks every field of a job", async () => {
  const page = await fresh();
  await page.click("#blank");
  const wanted = places(schema("job"), schema("job"));
  assert.ok(wanted.length > 100, String(wanted.length));
  const all = await asked(page);
  // The version of the format is no question; a model is a way to say how cells die.
  const others = ["/format", "/treatments/0/living/survival/model"];
  assert.deepEqual(wanted.filter((place) => !all.has(place) && !others.includes(place)), []);
});

test("the form asks every reading of a run", async () => {
  const page = await fresh();
  await openFile(page, "run.json", { job: JSON.parse(demo.given), orders: [] });
  await page.waitForSelector("#run:not([hidden])");
  const wanted = places(schema("run"), schema("run")).filter((place) => !place.startsWith("/job/") && place !== "/format");
  assert.ok(wanted.length > 20, String(wanted.length));
  const all = await asked(page);
  const reading = (place) => place.replace(/\/(added|lost)$/, "/$1/0");
  assert.deepEqual(wanted.filter((place) => !all.has(place) && !all.has(reading(place))), []);
});

test("a bad field shows its message beside the field, and the plan comes back with a good one", async () => {
  const page = await fresh();
  await page.locator("#job summary").getByText("Orders of seed").click();
  await page.locator("#job .item summary").first().click();
  const amount = field(page, "/orders/0/amount");
  await amount.locator("input").fill("43o");
  await page.waitForSelector("body.stale");
  assert.match(await amount.locator(".error").innerText(), /43o/);
  assert.equal(await amount.locator("input").getAttribute("aria-invalid"), "true");
  const described = await amount.locator("input").getAttribute("aria-describedby");
  assert.ok(described.split(" ").includes(await amount.locator(".error").getAttribute("id")));
  await page.click("#first-wrong");
  assert.equal(await page.evaluate(() => document.activeElement.closest(".field").dataset.field), "/orders/0/amount");
  await amount.locator("input").fill("860");
  await page.waitForSelector("body:not(.stale)");
  assert.equal(await amount.locator(".error").innerText(), "");
  assert.equal(await page.isVisible("#first-wrong"), false);
  await page.waitForFunction(() => /Q-311\s+FERN-08[\s\S]*?860/.test(document.querySelector("#pump").innerText));
  await amount.locator("select").selectOption("lb");
  await page.waitForFunction(() => /Q-311\s+FERN-08\s+860\s/.test(document.querySelector("#pump").innerText));
});

test("every kind of field shows its own message beside it", async () => {
  const page = await fresh();
  const wrong = JSON.parse(demo.given);
  Object.assign(wrong.orders[0], { size: "2815 sheep", temperature: "44", on_seed: [{ active: "nobody's", per_seed: "3 mg/seed" }], after: { storage: [{ for: "x", at: "1 degC" }] } });
  Object.assign(wrong.treatments[0], { also_stated: ["2.3 oz/cwt"], expires: "soon", cells: "1e5 CFU/seed" });
  wrong.treatments[1].with_living = [{ living: "Nobody", same_seed: true }];
  wrong.treatments[0].living.survival = { model: "weibull", scale: "10 d" };
  wrong.work[0].to = "noon";
  await openFile(page, "wrong.json", wrong);
  await page.waitForSelector("body.stale");
  const places = await page.locator("#job .wrong").evaluateAll((fields) => fields.map((one) => one.dataset.field || one.dataset.list || one.dataset.also));
  const messages = await page.locator("#job .wrong > .error").allInnerTexts();
  assert.ok(messages.every((message) => message.length > 10), messages.join("\n"));
  for (const place of ["/orders/0/size", "/orders/0/temperature", "/orders/0/after/storage/0/for", "/treatments/0/also_stated/0"]) assert.ok(places.includes(place), `${place} of ${places}`);
  assert.doesNotMatch(await text(page, "#said"), /\/orders|\/treatments|\/work/);
});

test("what is missing is told where it is to be filled in", async () => {
  const page = await fresh();
  await page.click("#blank");
  await page.waitForSelector("#job [data-list='/orders'].wrong");
  await page.click('#job [data-add="/orders"]');
  await page.waitForSelector("#job [data-field='/orders/0/amount'].wrong");
  const order = { order: "7", lot: "K-3" };
  for (const [name, value] of Object.entries(order)) await field(page, `/orders/0/${name}`).locator("input").fill(value);
  await field(page, "/orders/0/amount").locator("input").fill("12000");
  await field(page, "/orders/0/size").locator("input").fill("2650");
  await unfold(page);
  await page.click('#job [data-add="/treatments"]');
  await field(page, "/treatments/0/product").locator("input").fill("Peat inoculant");
  await page.waitForSelector("#job .wrong");
  await field(page, "/treatments/0/rate").locator("select").selectOption("oz av/cwt");
  await field(page, "/treatments/0/rate").locator("input").fill("3.5");
  // Worked by hand: 3.5 oz av over 100 lb, for 12,000 lb: 420 oz av, 26.25 lb, 11.906798 kg.
  await page.waitForFunction(() => /11\.91\u00A0kg/.test(document.querySelector("#pour").innerText));
  assert.equal(await page.locator("body.stale").count(), 0);
});

test("one way of several is taken, and the others are dropped", async () => {
  const page = await fresh();
  await unfold(page);
  const way = (label) => page.locator(`#job [data-ways="/treatments/0 ${label}"] select`).first();
  await way("How the cells die").selectOption({ label: "some fast, the rest slowly" });
  await page.waitForSelector("body.stale");
  for (const [name, value] of [["fraction", "90"], ["fast", "2"], ["slow", "60"]]) await field(page, `/treatments/0/living/survival/${name}`).locator("input").fill(value);
  await page.waitForSelector("body:not(.stale)");
  await way("Dose stated as").selectOption({ label: "living cells" });
  await field(page, "/treatments/0/cells").locator("input").fill("8e5");
  await page.waitForSelector("body:not(.stale)");
  const { treatments } = await saved(page);
  assert.deepEqual(treatments[0].living.survival, { model: "two_phase", fraction: "90 %", fast: "2 d", slow: "60 d", at: "50 degF", z: "32.4 delta_degF" });
  assert.equal(treatments[0].rate, undefined);
  assert.equal(treatments[0].cells, "8e5 CFU/seed");
});

test("a unit that is not offered can be written", async () => {
  const page = await fresh();
  await unfold(page);
  const rate = field(page, "/treatments/1/rate");
  await rate.locator("select").selectOption("other…");
  await rate.locator("input").last().fill("mL/kg");
  await rate.locator("input").first().fill("1.1");
  await page.waitForSelector("body:not(.stale)");
  assert.equal((await saved(page)).treatments[1].rate, "1.1 mL/kg");
});

test("a stop is told at once", async () => {
  const page = await fresh();
  await unfold(page);
  await field(page, "/orders/0/temperature").locator("input").fill("30");
  await page.waitForSelector('#findings li.stop[data-code="frozen_seed"]');
  assert.match(await text(page, "#said"), /to see to first/);
});

test("a job and a run are saved, opened and carried by a link, unchanged", async () => {
  const page = await fresh();
  assert.deepEqual(await saved(page), JSON.parse(demo.given));
  const run = JSON.parse(demoRun.given);
  run.orders = run.orders.slice(1, 4);
  for (const [name, document] of [["farm.json", JSON.parse(farm.given)], ["run.json", run]]) {
    await openFile(page, name, document);
    await page.waitForFunction((name) => document.querySelector("#said").textContent.startsWith(`Opened ${name}`), name);
    assert.deepEqual(await saved(page), document);
    await page.click("#link");
    await page.waitForFunction(() => /The link with/.test(document.querySelector("#said").textContent));
    const second = await served.context.newPage();
    await second.goto(page.url());
    await second.waitForFunction(() => /Planned|Accounted/.test(document.querySelector("#said").textContent));
    assert.deepEqual(await saved(second), document);
    await second.close();
  }
  for (const nothing of ["{", "[]", "null", '"job"']) {
    await openFile(page, "no.json", nothing);
    await page.waitForFunction(() => /no\.json is no job/.test(document.querySelector("#said").textContent));
    assert.deepEqual(await saved(page), run);
  }
});

test("a link that carries nothing is told, and the demonstration is shown", async () => {
  const page = await fresh();
  await page.goto(`${served.server.address}/#job=AAAA`);
  await page.reload();
  await planned(page);
  assert.match(await text(page, "#said"), /holds no job/);
});

test("an order is added and removed by keyboard alone", async () => {
  const page = await fresh();
  await page.locator("#job summary").getByText("Orders of seed").focus();
  await page.keyboard.press("Enter");
  await page.locator('#job [data-add="/orders"]').focus();
  await page.keyboard.press("Enter");
  assert.equal(await page.evaluate(() => document.activeElement.closest("[data-field]")?.dataset.field), "/orders/6/order");
  await page.keyboard.type("Q-400");
  await page.keyboard.press("Tab");
  await page.keyboard.type("FERN-20");
  for (let tabs = 0; tabs < 3; tabs++) await page.keyboard.press("Tab");
  await page.keyboard.type("900");
  for (let tabs = 0; tabs < 2; tabs++) await page.keyboard.press("Tab");
  await page.keyboard.type("2800");
  await page.waitForFunction(() => document.querySelector("#pump").innerText.includes("Q-400"));
  await page.locator('#job [data-at="/orders/6"] .remove').focus();
  await page.keyboard.press("Space");
  await page.waitForFunction(() => !document.querySelector("#pump").innerText.includes("Q-400"));
  assert.equal(await page.evaluate(() => document.activeElement.dataset.add), "/orders");
});

test("going to the account and back loses nothing", async () => {
  const page = await fresh();
  await unfold(page);
  await field(page, "/title").locator("input").fill("Another day");
  await toAccount(page);
  await page.click("#to-plan");
  await page.waitForFunction(() => document.querySelector("#title").textContent === "Another day");
  assert.equal((await saved(page)).title, "Another day");
});

test("a link within the page leads to the form and keeps what was written", async () => {
  const page = await fresh({ viewport: { width: 360, height: 800 } });
  await page.click(".to-form");
  await page.waitForFunction(() => location.hash === "#forms" && document.querySelector("#forms").getBoundingClientRect().top < 100);
  await field(page, "/title").locator("input").fill("Kept");
  await page.waitForFunction(() => document.querySelector("#title").textContent === "Kept");
  await page.evaluate(() => (location.hash = "#sheet"));
  await page.waitForTimeout(200);
  assert.equal((await saved(page)).title, "Kept");
});

test("a new shift is written in the offset of the others", async () => {
  const page = await fresh({ timezoneId: "Asia/Kolkata" });
  await unfold(page);
  await page.click('#job [data-add="/work"]');
  const zone = (place) => field(page, place).locator("input").last().inputValue();
  assert.equal(await zone("/work/2/from"), "-05:00");
  await page.click("#blank");
  await unfold(page);
  await page.click('#job [data-add="/work"]');
  // India is 5 h 30 min ahead of UTC all year.
  assert.equal(await zone("/work/0/from"), "+05:30");
  await field(page, "/work/0/from").locator("input").first().fill("2027-04-14T07:00");
  await page.waitForFunction(() => /07:00/.test(document.querySelector('[data-at="/work/0"] > summary').innerText));
  assert.equal((await saved(page)).work[0].from, "2027-04-14T07:00:00+05:30");
});
