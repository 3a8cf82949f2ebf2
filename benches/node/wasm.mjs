// The rows of measure.mjs, in Node and in Chromium, as `cargo xtask bench` reads them. `cargo xtask wasm web` makes what is needed.
import { fileURLToPath } from "node:url";
import * as hilum from "../../bindings/wasm/npm/dist/hilum.js";
import * as planner from "../../bindings/wasm/npm/dist/job.js";
import * as after from "../../bindings/wasm/npm/dist/after.js";
import * as before from "../../bindings/wasm/npm/dist/numbers.js";
import { browser, serve } from "../../bindings/wasm/npm/browser/serve.mjs";
import { rows } from "./measure.mjs";

const job = process.env.HILUM_JOB;
const numbers = { ...before, ...after };
for (const row of rows({ hilum, numbers, planner }, job, "Node")) console.log(row);

const root = fileURLToPath(new URL("../..", import.meta.url));
// A page that shares nothing with others has a finer clock.
const alone = { "cross-origin-opener-policy": "same-origin", "cross-origin-embedder-policy": "require-corp" };
const server = await serve({ "": `${root}bindings/wasm/npm`, benches: `${root}benches` }, alone);
const context = await browser();
try {
  const page = await context.newPage();
  await page.goto(`${server.address}/package.json`);
  const measured = await page.evaluate(async (job) => {
    const [{ rows }, hilum, before, after, planner] = await Promise.all(
      ["/benches/node/measure.mjs", "/dist/hilum.js", "/dist/numbers.js", "/dist/after.js", "/dist/job.js"].map((path) => import(path)),
    );
    return rows({ hilum, numbers: { ...before, ...after }, planner }, job, "Chromium");
  }, job);
  for (const row of measured) console.log(row);
} finally {
  await context.close();
  server.close();
}
