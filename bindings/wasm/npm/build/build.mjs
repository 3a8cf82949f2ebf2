// node build/build.mjs FOLDER: from the folder with describe.json and the wasm of each entry, to dist/.
import { execFileSync } from "node:child_process";
import { copyFileSync, mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { build } from "esbuild";
import { filled } from "./carry.mjs";
import shrink from "./shrink.mjs";
import { generate } from "./generate.mjs";
import { numbers } from "./numbers.mjs";
import { text } from "./text.mjs";

const work = process.argv[2];
if (!work) throw new Error("Usage: node build/build.mjs FOLDER; `cargo xtask wasm` calls it.");

const root = new URL("..", import.meta.url).pathname;
process.chdir(root);
shrink(`${work}/shed.wasm`, `${work}/shed.small.wasm`);
// The linker has put functions into others where that is shorter; more of it is shorter, too, but less alike: 1 kB after gzip.
shrink(`${work}/job.wasm`, `${work}/job.small.wasm`, "--no-inline=*");
copyFileSync("../../../LICENSE", "LICENSE");
const parts = { text: text(work), numbers: numbers(work, "numbers"), after: numbers(work, "after") };
const schemas = await generate(work, "generated", parts);

rmSync("dist", { recursive: true, force: true });
await build({
  entryPoints: ["src/hilum.ts", "src/numbers.ts", "src/after.ts", "src/shed.ts", "src/job.ts"],
  // The shed reads its quantities by the calculators, and both entries of numbers have one machine; a page may have them already.
  plugins: [
    {
      name: "beside",
      setup: ({ onResolve }) => onResolve({ filter: /^\.\.?\/(src\/)?(hilum|numbers)\.js$/ }, ({ path }) => ({ path: `./${path.split("/").at(-1)}`, external: true })),
    },
  ],
  bundle: true,
  minify: true,
  // Node prints the line that an error comes from.
  lineLimit: 1000,
  format: "esm",
  target: "es2022",
  charset: "utf8",
  legalComments: "none",
  outdir: "dist",
});
for (const [entry, { wasm }] of Object.entries(JSON.parse(readFileSync("sizes.json", "utf8")))) {
  const script = `dist/${entry}.js`;
  writeFileSync(script, filled(readFileSync(script, "utf8"), readFileSync(`generated/${wasm}_wasm.txt`, "utf8")));
}
execFileSync(process.execPath, ["node_modules/typescript/bin/tsc", "-p", "."], { stdio: "inherit" });

mkdirSync("dist/schemas", { recursive: true });
for (const [name, schema] of Object.entries(schemas)) {
  writeFileSync(`dist/schemas/${name}.json`, `${JSON.stringify(schema, null, 2)}\n`);
}
