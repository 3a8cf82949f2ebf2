// node build.mjs: index.html, scripts, styles and the worker that keeps them for offline use, in dist/.
import { createHash } from "node:crypto";
import { cpSync, mkdirSync, readFileSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { build } from "esbuild";

process.chdir(new URL(".", import.meta.url).pathname);
rmSync("dist", { recursive: true, force: true });
mkdirSync("dist");
await build({
  entryPoints: { page: "src/main.js", planner: "src/planner.js", style: "style/page.css" },
  bundle: true,
  minify: true,
  format: "esm",
  target: "es2022",
  charset: "utf8",
  legalComments: "none",
  // The package as it is built beside, so that the page shows what the repository holds.
  alias: {
    "hilum/job": new URL("../../bindings/wasm/npm/dist/job.js", import.meta.url).pathname,
    hilum: new URL("../../bindings/wasm/npm/dist/hilum.js", import.meta.url).pathname,
  },
  outdir: "dist",
});
cpSync("index.html", "dist/index.html");
cpSync("icon.svg", "dist/icon.svg");
cpSync("page.webmanifest", "dist/page.webmanifest");

const files = readdirSync("dist").sort();
const hash = createHash("sha256");
for (const file of files) hash.update(file).update(readFileSync(`dist/${file}`));
const worker = readFileSync("src/worker.js", "utf8")
  .replace("VERSION", JSON.stringify(hash.digest("hex").slice(0, 16)))
  .replace("FILES", JSON.stringify(["./", ...files]));
writeFileSync("dist/worker.js", worker);
