// For everyone: phone and desk, light and dark, screen readers, no network, paper.
import assert from "node:assert/strict";
import { test } from "node:test";
import { demo, fresh, jobs, openFile, planned, serveAgain, served, shots, toAccount, violations } from "./harness.mjs";

const unfold = (page) => page.evaluate(() => document.querySelectorAll("details").forEach((details) => (details.open = true)));
const fits = async (page, width, state) => assert.ok((await page.evaluate(() => document.documentElement.scrollWidth)) <= width, state);

/** States of the page that people meet. */
const STATES = {
  plan: async () => {},
  account: toAccount,
  errors: async (page) => {
    const job = JSON.parse(demo.given);
    job.orders[0].amount = "43o units";
    job.treatments[0].rate = "1.15 oz/unit";
    job.tanks[0].pump.curve[1].flow = "fast";
    job.orders[1].size = "many seeds/lb";
    await openFile(page, "wrong.json", job);
    await page.waitForSelector("body.stale");
    assert.ok((await page.locator("#job .wrong").count()) >= 4);
  },
  empty: async (page) => {
    await page.click("#blank");
    await page.click('#job [data-add="/orders"]');
    await page.waitForSelector("#job [data-field='/orders/0/amount'].wrong");
  },
};

for (const [width, scheme] of [[1280, "light"], [360, "light"], [1280, "dark"], [360, "dark"]]) {
  test(`at ${width} px, ${scheme}: nothing runs over, and axe finds nothing, in each state, folded or not`, async () => {
    const page = await fresh({ viewport: { width, height: 900 }, colorScheme: scheme, bypassCSP: true });
    for (const [state, reach] of Object.entries(STATES)) {
      await reach(page);
      await fits(page, width, state);
      await page.screenshot({ path: `${shots}${state}-${width}-${scheme}.png`, fullPage: true });
      assert.deepEqual(await violations(page), [], state);
      await unfold(page);
      await fits(page, width, state);
      assert.deepEqual(await violations(page), [], `${state}, unfolded`);
      await page.reload();
      await planned(page);
    }
  });
}

/** Words of the pictures that are cut off at the side. */
const cut = (page, view) =>
  page.locator(`#${view} svg`).evaluateAll((pictures) =>
    pictures.flatMap((picture) => {
      const box = picture.getBoundingClientRect();
      const isCut = (own) => own.left < box.left - 1 || own.right > box.right + 1;
      return [...picture.querySelectorAll("text")].filter((text) => text.textContent && isCut(text.getBoundingClientRect())).map((text) => text.textContent);
    }),
  );

for (const width of [1280, 360]) {
  test(`at ${width} px, nothing of a picture is drawn outside of it, whatever the job`, async () => {
    const page = await fresh({ viewport: { width, height: 900 } });
    await toAccount(page);
    assert.deepEqual(await cut(page, "account"), []);
    for (const { name, given } of jobs()) {
      await openFile(page, name, given);
      await page.waitForFunction((name) => document.querySelector("#said").textContent.startsWith(`Opened ${name}`), name);
      await planned(page);
      assert.deepEqual(await cut(page, "plan"), [], name);
      await fits(page, width);
    }
  });
}

test("it is printed", async () => {
  const page = await fresh();
  await page.pdf({ path: `${shots}print.pdf`, format: "Letter" });
  await toAccount(page);
  await page.pdf({ path: `${shots}print-account.pdf`, format: "Letter" });
  await page.emulateMedia({ media: "print" });
  assert.equal(await page.isVisible("#record"), true);
  assert.equal(await page.isVisible("#forms"), false);
});

test("it works without a network after the first visit, and without its server", async () => {
  await fresh();
  const page = await served.context.newPage();
  const other = await serveAgain();
  await page.goto(`${other.address}/`);
  await page.evaluate(() => navigator.serviceWorker.ready);
  await planned(page);
  other.close();
  await served.context.setOffline(true);
  await page.goto("about:blank");
  await page.goto(`${other.address}/`);
  await planned(page);
  assert.match(await page.innerText("#title"), /Quillwater/);
  // Also the planner beside it.
  assert.deepEqual(page.workers().map((worker) => worker.url()), [`${other.address}/planner.js`]);
  await toAccount(page);
  assert.equal(await page.locator("#record article").count(), 6);
});

test("it asks nothing of any other place", async () => {
  const page = await fresh({ serviceWorkers: "block" });
  const asked = [];
  page.on("request", (request) => asked.push(request.url()));
  await page.reload();
  await planned(page);
  await toAccount(page);
  const own = (url) => [served.server.address, "blob:", "data:"].some((start) => url.startsWith(start));
  assert.deepEqual(asked.filter((url) => !own(url)), []);
});

test("the headings and the landmarks are in order", async () => {
  const page = await fresh();
  const levels = await page.locator("h1, #plan h2, #plan h3, #plan h4").evaluateAll((all) => all.map((one) => Number(one.tagName[1])));
  assert.equal(levels[0], 1);
  levels.slice(1).forEach((level, at) => assert.ok(level <= levels[at] + 1, levels.join(" ")));
  assert.equal(await page.locator("main").count(), 1);
  // Every picture says in words what it shows.
  const labels = await page.locator("#plan figure svg[role=img]").evaluateAll((all) => all.map((one) => one.getAttribute("aria-label")));
  assert.equal(labels.length, 4);
  assert.ok(labels.every((label) => label.length > 20), labels.join(" | "));
});
