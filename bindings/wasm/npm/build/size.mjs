// node build/size.mjs FOLDER: what each entry weighs, against the budget in sizes.json.
import { existsSync, readFileSync } from "node:fs";
import { gzipSync } from "node:zlib";

const gzip = (path) => gzipSync(readFileSync(path), { level: 9 }).length;
const kB = (bytes) => `${(bytes / 1000).toFixed(1)} kB`;
const budget = JSON.parse(readFileSync("sizes.json", "utf8"));
let isOver = false;
for (const [entry, { most, wasm }] of Object.entries(budget)) {
  const path = `dist/${entry}.js`;
  const size = gzip(path);
  const inner = `${process.argv[2]}/${wasm}.small.wasm`;
  const parts = existsSync(inner) ? `, of which ${kB(gzip(inner))} wasm before it is made text` : "";
  console.log(`${path}: ${kB(readFileSync(path).length)}, ${kB(size)} gzip of at most ${kB(most)}${parts}`);
  isOver ||= size > most;
}
if (isOver) {
  console.error("The package grew over its budget, bindings/wasm/npm/sizes.json; make it smaller, or argue for more there.");
  process.exit(1);
}
