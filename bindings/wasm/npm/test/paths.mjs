// Where the tests find what Rust wrote, and the repository.
import { readFileSync, readdirSync } from "node:fs";

export const root = new URL("../../../../", import.meta.url);
/** The folder that `cargo xtask wasm` fills: describe.json, vectors.txt, plan_*.json. */
export const work = new URL(`file://${process.env.HILUM_WORK ?? `${root.pathname}target/npm`}/`);

export const text = (url) => readFileSync(url, "utf8");
export const json = (url) => JSON.parse(text(url));

export function topics() {
  const folder = new URL("tests/data/", root);
  const names = readdirSync(folder).filter((name) => name.endsWith(".json") && name !== "sources.json");
  return names.map((name) => json(new URL(name, folder)));
}

/** Each demo document of a folder of examples, and the text that Rust writes for it. */
function examples(folder, word) {
  const url = new URL(`examples/${folder}/`, root);
  return readdirSync(url).map((name) => ({
    name,
    given: text(new URL(name, url)),
    written: text(new URL(`${word}_${name}`, work)),
  }));
}

export const jobs = () => examples("jobs", "plan");
export const runs = () => examples("runs", "account");
