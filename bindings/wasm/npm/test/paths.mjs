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

export function jobs() {
  const folder = new URL("examples/jobs/", root);
  return readdirSync(folder).map((name) => ({
    name,
    job: text(new URL(name, folder)),
    plan: text(new URL(`plan_${name}`, work)),
  }));
}
