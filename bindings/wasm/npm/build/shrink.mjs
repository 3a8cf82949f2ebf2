// What wasm-opt of binaryen makes of a wasm: smaller, the same.
import { execFileSync } from "node:child_process";

export default function shrink(from, to, features = []) {
  const flags = ["-Oz", "--converge", "--low-memory-unused", ...features];
  const strip = ["--strip-debug", "--strip-producers", "--strip-target-features"];
  execFileSync(process.execPath, ["node_modules/binaryen/bin/wasm-opt", ...flags, ...strip, from, "-o", to]);
}
