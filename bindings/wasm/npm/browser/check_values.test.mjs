import assert from "node:assert/strict";
import { readFileSync, writeFileSync } from "node:fs";
import { after, before, test } from "node:test";
import { fileURLToPath } from "node:url";
import { jobs, runs, text, topics, work } from "../test/paths.mjs";
import { browser, serve } from "./serve.mjs";

const npm = fileURLToPath(new URL("..", import.meta.url));
let server, context, page;

before(async () => {
  server = await serve({ "": `${fileURLToPath(work)}fresh`, dist: `${npm}dist`, test: `${npm}test` });
  context = await browser();
  page = await context.newPage();
});

after(async () => {
  await context?.close();
  server?.close();
});

test("every check value has the bits that Rust wrote, in Chromium", async () => {
  const given = { topics: topics(), vectors: text(new URL("vectors.txt", work)), described: JSON.parse(text(new URL("describe.json", work))) };
  await page.goto(`${server.address}/package.json`);
  const report = await page.evaluate(async (given) => {
    const [{ check }, hilum, numbers, after, shed] = await Promise.all([
      import("/test/check.mjs"), import("/dist/hilum.js"), import("/dist/numbers.js"), import("/dist/after.js"), import("/dist/shed.js"),
    ]);
    return check({ hilum, numbers: { ...numbers, ...after }, shed, ...given });
  }, given);
  assert.deepEqual(report.wrong, []);
  assert.deepEqual(report.untried, []);
  assert.equal(report.cases, given.vectors.trimEnd().split("\n").length);
  console.log(`${report.cases} check values: ${report.hilum} results through hilum, ${report.numbers} through hilum/numbers, in Chromium`);
});

for (const [call, documents] of [["planText", jobs()], ["accountText", runs()]]) {
  for (const { name, given, written } of documents) {
    test(`${call} of ${name} is the bytes that Rust writes, in Chromium`, async () => {
      const made = await page.evaluate(async ([call, given]) => (await import("/dist/job.js"))[call](given), [call, given]);
      assert.equal(made, written);
    });
  }
}

test("the page in the README works as pasted", async () => {
  const [, html] = /```html\n([\s\S]*?)```/.exec(readFileSync(`${npm}README.md`, "utf8"));
  writeFileSync(`${fileURLToPath(work)}fresh/pasted.html`, html);
  const errors = [];
  page.on("pageerror", (error) => errors.push(error.message));
  await page.goto(`${server.address}/pasted.html`);
  // Worked by hand: 2.5 fl oz/cwt on 300 cwt is 750 fl oz.
  await page.waitForFunction(() => document.querySelector("output").value === "750\u00A0fl oz");
  await page.fill("#rate", "2.5 fl oz/140000 seeds");
  assert.match(await page.textContent("output"), /^rate: .* is volume per seed, but volume per mass of seed is needed\.$/);
  assert.deepEqual(errors, []);
});

for (const bundler of ["esbuild", "vite"]) {
  test(`a bundle of ${bundler} works, in Chromium`, async () => {
    const { given, written } = jobs()[0];
    const results = await page.evaluate(async ([bundler, job]) => (await import(`/${bundler}/main.js`)).results(job), [bundler, given]);
    assert.deepEqual(results, ["5.859\u00A0gal", 6000000, -0.5, written, [2, 1]]);
  });
}
