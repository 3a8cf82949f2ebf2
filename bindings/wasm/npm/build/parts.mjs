// node build/parts.mjs FILE.wasm [DEPTH] [all]: what a wasm as it was compiled (target/npm/job.wasm) consists of, after wasm-opt: bytes of code
// by crate and module to a depth of 2 or as told, and what they weigh in gzip when each stands alone; `all` shows those below 1 %, too.
import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { gzipSync } from "node:zlib";
import { FEATURES } from "./shrink.mjs";

const [from, depth = "2", which] = process.argv.slice(2);
if (!from) throw new Error("Usage: node build/parts.mjs FILE.wasm [DEPTH] [all]");

/** As build.mjs shrinks it, but with names. */
function shrunk(from) {
  const folder = mkdtempSync(`${tmpdir()}/parts`);
  const flags = ["-Oz", "--converge", "--low-memory-unused", ...FEATURES, "-g"];
  execFileSync(process.execPath, ["node_modules/binaryen/bin/wasm-opt", ...flags, from, "-o", `${folder}/named.wasm`]);
  const bytes = readFileSync(`${folder}/named.wasm`);
  rmSync(folder, { recursive: true });
  return bytes;
}

/** Reads a wasm's sections: its functions' bodies and names, and how long each other section is. */
function read(bytes) {
  let at = 8;
  const number = () => {
    for (let [value, shift] = [0, 0]; ; shift += 7) {
      const byte = bytes[at++];
      value += (byte & 127) * 2 ** shift;
      if (byte < 128) return value;
    }
  };
  const text = () => {
    const length = number();
    return bytes.toString("utf8", at, (at += length));
  };
  const [bodies, names, others] = [[], new Map(), new Map()];
  let imported = 0;
  const readers = {
    0: (end) => {
      if (text() !== "name") return;
      while (at < end) {
        const [kind, size] = [bytes[at++], number()];
        const next = at + size;
        if (kind === 1) for (let count = number(); count > 0; count--) names.set(number(), text());
        at = next;
      }
    },
    2: () => {
      for (let count = number(); count > 0; count--) {
        text();
        text();
        if (bytes[at++] !== 0) throw new Error("something other than a function is imported");
        number();
        imported += 1;
      }
    },
    10: () => {
      for (let count = number(); count > 0; count--) {
        const size = number();
        bodies.push(bytes.subarray(at, at + size));
        at += size;
      }
    },
  };
  while (at < bytes.length) {
    const [id, size] = [bytes[at++], number()];
    const end = at + size;
    readers[id]?.(end);
    const name = id === 11 ? "data: tables and texts" : "other sections";
    if (id !== 0 && id !== 10) others.set(name, (others.get(name) ?? 0) + size);
    at = end;
  }
  return { functions: bodies.map((body, at) => ({ body, name: names.get(at + imported) ?? "" })), others };
}

/** crate::module of a mangled name; of what is implemented for a type, the type's. */
function place(name) {
  const own = (path) => path.split("::").slice(0, Number(depth)).join("::");
  const [, length, rest] = /^_R.*?C[a-zA-Z0-9]*_(\d+)_?(\w+)/.exec(name) ?? [];
  if (length) return own(rest.slice(0, Number(length)));
  if (!name.startsWith("_ZN")) return "exports";
  const parts = [];
  for (let left = name.slice(3); /^\d/.test(left); ) {
    const [digits] = /^\d+/.exec(left);
    parts.push(left.slice(digits.length, digits.length + Number(digits)));
    left = left.slice(digits.length + Number(digits));
  }
  const plain = parts.slice(0, -1).join("::").replaceAll("..", "::").replace(/\$\w+\$/g, " ");
  return own(/[a-z_0-9]+::[a-z_0-9]+(::[a-z_0-9]+)*/.exec(plain)?.[0] ?? plain);
}

const { functions, others } = read(shrunk(from));
const groups = new Map();
for (const one of functions) groups.set(place(one.name), [...(groups.get(place(one.name)) ?? []), one]);
const size = (group) => group.reduce((sum, { body }) => sum + body.length, 0);
const total = size(functions) + [...others.values()].reduce((sum, bytes) => sum + bytes, 0);
console.log(`${total} bytes, ${functions.length} functions`);
const rows = [...groups].map(([name, group]) => [name, size(group), gzipSync(Buffer.concat(group.map(({ body }) => body)), { level: 9 }).length]);
rows.push(...[...others].map(([name, bytes]) => [name, bytes, ""]));
for (const [name, bytes, gzip] of rows.sort((a, b) => b[1] - a[1])) {
  if (which === "all" || bytes > total / 100) console.log([String(bytes).padStart(8), String(gzip).padStart(7), name].join(" "));
}
