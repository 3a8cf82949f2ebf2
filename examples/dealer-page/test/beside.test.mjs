// The planner beside the page: typing never waits for it, and what is shown is of what the form says.
import assert from "node:assert/strict";
import { test } from "node:test";
import { demo, fresh, openFile, planned, shots, toAccount, violations } from "./harness.mjs";

/** In the page: keeps what the planner answers for as long as `held` is a list, and counts what it is asked. */
function holding() {
  window.asked = [];
  window.held = undefined;
  window.Worker = class extends Worker {
    set onmessage(take) {
      super.onmessage = (event) => (window.held ? window.held.push(() => take(event)) : take(event));
    }

    postMessage(question) {
      window.asked.push(question);
      super.postMessage(question);
    }
  };
}

/** In the page: every text that the sheet shows of the seed of the first order. */
function watching() {
  window.seen = new Set();
  const look = () => window.seen.add(document.querySelector("#pump tbody tr")?.innerText.split("\t")[2]);
  new MutationObserver(look).observe(document.querySelector("#pump"), { childList: true, subtree: true });
}

const hold = (page) => page.evaluate(() => void ([window.held, window.asked] = [[], []]));
const isHeld = (page) => page.waitForFunction(() => window.held.length > 0);
const isBehind = (page) => page.waitForSelector("body.behind");
const letGo = (page) => page.evaluate(() => window.held.shift()());
const letAllGo = (page) => page.evaluate(() => [window.held, window.held = undefined][0].forEach((go) => go()));
const said = (page) => page.innerText("#said");
const isShown = (page, words) => page.waitForFunction((words) => document.querySelector("#pump").innerText.includes(words), words);

/** The amount of the first order, in pounds as it is shown. */
async function amount(page) {
  await page.evaluate(() => document.querySelectorAll("#job details").forEach((details) => (details.open = true)));
  await page.locator('#job [data-field="/orders/0/amount"] select').selectOption("lb");
  return page.locator('#job [data-field="/orders/0/amount"] input');
}

/** The demonstration with sixty orders over ten days. */
function many() {
  const job = JSON.parse(demo.given);
  const orders = (_, at) => ({ ...job.orders[at % 6], order: `Q-${400 + at}`, size: `${2600 + 37 * ((at * 7) % 17)} seeds/lb`, amount: `${60 + ((at * 53) % 170)} units` });
  const on = (day) => (shift) => Object.fromEntries(Object.entries(shift).map(([end, at]) => [end, at.replace("04-14", `04-${10 + day}`)]));
  const work = Array.from({ length: 10 }, (_, day) => job.work.map(on(day))).flat();
  return { ...job, work, orders: Array.from({ length: 60 }, orders) };
}

test("the planner is not part of the page, but beside it", async () => {
  const page = await fresh({}, () => {
    window.compiled = [];
    const { Module } = WebAssembly;
    WebAssembly.Module = function (bytes) {
      window.compiled.push(bytes.byteLength);
      return new Module(bytes);
    };
  });
  await toAccount(page);
  assert.equal(page.workers().length, 1);
  const heldByPage = await page.evaluate(() => window.compiled);
  assert.ok(Math.max(0, ...heldByPage) < 100_000, heldByPage.join());
  const files = await page.evaluate(() => performance.getEntriesByType("resource").map(({ name, initiatorType }) => `${initiatorType} ${name.split("/").at(-1)}`));
  assert.ok(!files.includes("script planner.js"), files.join());
});

test("while the planner is busy with sixty orders, keys are answered", async () => {
  const page = await fresh();
  await openFile(page, "many.json", many());
  await page.waitForFunction(() => document.querySelector("#said").textContent.startsWith("Opened many.json"));
  const input = await amount(page);
  await planned(page);
  await page.evaluate(() => {
    window.waits = [];
    new PerformanceObserver((list) => window.waits.push(...list.getEntries().map(({ duration }) => duration))).observe({ type: "longtask" });
    addEventListener("keydown", ({ timeStamp }) => window.waits.push(performance.now() - timeStamp), true);
    new MutationObserver(() => (window.shownAt ??= performance.now())).observe(document.querySelector("#pump"), { childList: true, subtree: true });
  });
  const BUSY = 3000;
  const busy = page.workers()[0].evaluate((busy) => {
    for (const end = performance.now() + busy; performance.now() < end; );
  }, BUSY);
  await input.fill("");
  await input.pressSequentially("12345678", { delay: 100 });
  const typedAt = await page.evaluate(() => performance.now());
  assert.equal(await input.inputValue(), "12345678");
  await isBehind(page);
  assert.equal(await said(page), "Planning…");
  await busy;
  await isShown(page, "12,345,678");
  await planned(page);
  const { waits, shownAt } = await page.evaluate(() => ({ waits, shownAt }));
  assert.ok(shownAt > typedAt, "the planner was not busy while keys were pressed");
  // Neither a key nor anything that is drawn takes the page for a good part of what the planner takes.
  assert.ok(waits.length >= 8 && Math.max(...waits) < BUSY / 4, waits.map(Math.round).join());
});

test("only what belongs to the newest edit is shown", async () => {
  const page = await fresh({}, holding);
  const input = await amount(page);
  await isShown(page, "430");
  await page.evaluate(watching);
  await hold(page);
  await input.fill("5001");
  await isHeld(page);
  for (const newer of ["5002", "5003"]) {
    await input.fill(newer);
    await page.waitForTimeout(200);
  }
  await isBehind(page);
  assert.equal(await page.getAttribute("#sheet", "aria-busy"), "true");
  assert.equal(await page.getAttribute("#said", "aria-live"), "polite");
  assert.equal(await said(page), "Planning…");
  await letGo(page);
  // What was asked for in between has been overtaken.
  await isHeld(page);
  assert.deepEqual(await page.evaluate(() => window.asked.map(({ text }) => JSON.parse(text).orders[0].amount)), ["5001 lb", "5003 lb"]);
  assert.equal(await said(page), "Planning…");
  // An answer that comes while a newer edit rests is not shown either.
  await input.fill("5004");
  await letGo(page);
  await isHeld(page);
  assert.deepEqual(await page.evaluate(() => [...window.seen]), []);
  await letAllGo(page);
  await isShown(page, "5,004");
  await page.waitForSelector("body:not(.behind)");
  assert.equal(await page.getAttribute("#sheet", "aria-busy"), null);
  assert.match(await said(page), /^Planned/);
  assert.deepEqual(await page.evaluate(() => [...window.seen]), ["5,004"]);
});

test("a plan that comes after a refusal, and a refusal that comes after a plan, find nothing to overwrite", async () => {
  const page = await fresh({}, holding);
  const input = await amount(page);
  await hold(page);
  await input.fill("50o1");
  await isHeld(page);
  await input.fill("5002");
  await page.waitForTimeout(200);
  await letGo(page);
  await isHeld(page);
  assert.equal(await page.locator("body.stale, .wrong").count(), 0);
  await letAllGo(page);
  await isShown(page, "5,002");
  await hold(page);
  await input.fill("5003");
  await isHeld(page);
  await input.fill("50o4");
  await page.waitForTimeout(200);
  await letGo(page);
  await isHeld(page);
  await letAllGo(page);
  await page.waitForSelector("body.stale");
  assert.doesNotMatch(await page.innerText("#pump"), /5,003/);
});

test("the curve of an older plan is not left standing", async () => {
  const page = await fresh({}, holding);
  const input = await amount(page);
  await planned(page);
  await hold(page);
  await input.fill("5001");
  await isHeld(page);
  await letGo(page);
  await isShown(page, "5,001");
  await isHeld(page);
  await page.waitForFunction(() => getComputedStyle(document.querySelector("#alive .body")).visibility === "hidden");
  await letAllGo(page);
  await planned(page);
  assert.equal(await page.locator("#alive figure").isVisible(), true);
});

test("the account of a day that is looked at no longer is not shown over the plan", async () => {
  const page = await fresh({}, holding);
  await hold(page);
  await page.click("#to-account");
  await isHeld(page);
  await page.click("#to-plan");
  await letGo(page);
  await isHeld(page);
  assert.equal(await page.locator("#record article").count(), 0);
  await letAllGo(page);
  await page.waitForFunction(() => document.querySelector("#said").textContent.startsWith("Planned"));
});

test("what goes on paper is what the form says", async () => {
  const page = await fresh({}, holding);
  const input = await amount(page);
  await page.evaluate(() => {
    window.papers = [];
    window.print = () => window.papers.push(document.querySelector("#pump tbody tr").innerText);
  });
  await hold(page);
  await input.fill("5001");
  await page.click("#print");
  await isHeld(page);
  assert.equal(await page.evaluate(() => window.papers.length), 0);
  // Who prints past the page's own button reads that the sheet is behind.
  await isBehind(page);
  await page.emulateMedia({ media: "print" });
  assert.equal(await page.isVisible("#said"), true);
  await page.emulateMedia({ media: "screen" });
  await letAllGo(page);
  await page.waitForFunction(() => window.papers.length === 1);
  assert.match(await page.evaluate(() => window.papers[0]), /5,001/);
  await page.emulateMedia({ media: "print" });
  assert.equal(await page.isVisible("#said"), false);
});

const WITHOUT = {
  "has no workers": () => delete window.Worker,
  "allows none": () => {
    window.Worker = class {
      constructor() {
        throw new DOMException("not here", "SecurityError");
      }
    };
  },
  "cannot load its file": () => {
    window.Worker = class extends Worker {
      constructor(_, options) {
        super("nowhere.js", options);
      }
    };
  },
};
for (const [why, without] of Object.entries(WITHOUT)) {
  test(`where the browser ${why}, the page plans by itself`, async () => {
    const page = await fresh({}, without);
    assert.equal(page.workers().length, 0);
    assert.match(await page.innerText("#title"), /Quillwater/);
    const input = await amount(page);
    await input.fill("5001");
    await isShown(page, "5,001");
    await toAccount(page);
    assert.equal(await page.locator("#record article").count(), 6);
  });
}

for (const [width, scheme] of [[1280, "light"], [360, "light"], [1280, "dark"], [360, "dark"]]) {
  test(`at ${width} px, ${scheme}: axe finds nothing while it plans`, async () => {
    const page = await fresh({ viewport: { width, height: 900 }, colorScheme: scheme, bypassCSP: true }, holding);
    await hold(page);
    await openFile(page, "again.json", demo.given);
    await isBehind(page);
    assert.deepEqual(await violations(page), []);
    await letAllGo(page);
    await planned(page);
    await hold(page);
    await (await amount(page)).fill("5001");
    await isBehind(page);
    assert.deepEqual(await violations(page), []);
    await page.evaluate(() => scrollTo(0, 0));
    await page.screenshot({ path: `${shots}planning-${width}-${scheme}.png` });
  });
}
