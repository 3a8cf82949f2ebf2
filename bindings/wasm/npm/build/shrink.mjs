// What wasm-opt of binaryen makes of a wasm: smaller, the same.
import { execFileSync } from "node:child_process";

/** What Rust compiles to since 2025, and vectors. */
export const FEATURES = ["simd", "bulk-memory", "sign-ext", "nontrapping-float-to-int", "mutable-globals", "multivalue", "reference-types"].map((name) => `--enable-${name}`);

export default function shrink(from, to, ...first) {
  const flags = [...first, "-Oz", "--converge", "--low-memory-unused", ...FEATURES];
  const strip = ["--strip-debug", "--strip-producers", "--strip-target-features"];
  execFileSync(process.execPath, ["node_modules/binaryen/bin/wasm-opt", ...flags, ...strip, from, "-o", to]);
}
