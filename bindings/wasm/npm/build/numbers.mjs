// From the wasm of `hilum/numbers` or `hilum/numbers/after` as it was compiled to what the package holds of it.
//
// A call from a script into a wasm takes ten times as long as a product of two numbers. So what is arithmetic alone becomes
// script again, by wasm2js: the same operations on the same doubles. What has branches over memory, powers or logarithms stays;
// and so do the reasons why a calculation is refused, and the loops over columns of which the compiler made vectors.
import { execFileSync } from "node:child_process";
import { readFileSync, writeFileSync } from "node:fs";
import binaryen from "binaryen";
import shrink, { FEATURES } from "./shrink.mjs";

// What binaryen prints has colours in it, so that no word begins where it seems to.
const NOT_ARITHMETIC = /call|loop|global|i64|v128|unreachable|memory|load|store/;

/** The exports of a module, by name. */
function exports(module) {
  const all = Array.from({ length: module.getNumExports() }, (_, at) => binaryen.getExportInfo(module.getExportByIndex(at)));
  return new Map(all.map(({ name, value }) => [name, value]));
}

/**
 * Writes the entry's small wasm and its formulas into the folder. Gives what each calculator has, by
 * `topic.name input input…`: the name of its formula, and those of its exports for the reason or the number, and for columns.
 */
export function numbers(work, entry) {
  const file = (part) => `${work}/${entry}.${part}`;
  shrink(file("wasm"), file("whole.wasm"));
  const module = binaryen.readBinary(readFileSync(file("whole.wasm")));
  module.setFeatures(binaryen.Features.All);
  const before = exports(module);
  // Where the compiler made no vectors, the script's own loop does.
  const compiled = binaryen.readBinary(readFileSync(file("wasm")));
  const hasVectors = (name) => {
    const { body } = binaryen.getFunctionInfo(compiled.getFunction(exportsCompiled.get(name)));
    return binaryen.emitText(body).includes("f64x2");
  };
  const exportsCompiled = exports(compiled);
  const isArithmetic = (name) => !NOT_ARITHMETIC.test(binaryen.emitText(binaryen.getFunctionInfo(module.getFunction(name)).body));
  const kept = { formulas: new Map(), exports: new Map() };
  const keep = (list, name) => {
    if (!list.has(name)) list.set(name, `$${list.size.toString(36)}`);
    return list.get(name);
  };
  const calculators = {};
  for (const [name, quiet] of before) {
    if (!name.startsWith("quiet ")) continue;
    const own = name.slice("quiet ".length);
    const [once, each] = [before.get(own), before.get(`each ${own}`)];
    const isFormula = isArithmetic(quiet);
    calculators[own] = {
      formula: isFormula ? keep(kept.formulas, quiet) : undefined,
      once: isFormula && once === quiet ? undefined : keep(kept.exports, once),
      each: hasVectors(`each ${own}`) ? keep(kept.exports, each) : undefined,
    };
  }
  for (const name of before.keys()) if (name.includes(" ")) module.removeExport(name);
  const part = (name, more) => {
    const path = file(`${name}.wasm`);
    const one = binaryen.readBinary(module.emitBinary());
    one.setFeatures(binaryen.Features.All);
    more(one);
    writeFileSync(path, one.emitBinary());
    return path;
  };
  const add = (list) => (one) => list.forEach((short, name) => one.addFunctionExport(name, short));
  shrink(part("calls", add(kept.exports)), file("small.wasm"));
  const alone = part("formulas", (one) => {
    for (const name of exports(one).keys()) one.removeExport(name);
    add(kept.formulas)(one);
  });
  shrink(alone, file("formulas.small.wasm"));
  const wasm2js = ["node_modules/binaryen/bin/wasm2js", ...FEATURES, "-Oz", file("formulas.small.wasm")];
  writeFileSync(file("formulas.js"), formulas(execFileSync(process.execPath, wasm2js, { encoding: "utf8" })));
  return calculators;
}

/**
 * What wasm2js writes, as functions that look at what they are given and say `no` to what is no number or gives none.
 * NaN never goes through a formula: where it meets a result, V8 keeps both on the heap.
 */
function formulas(script) {
  const bodies = new Map(
    [...script.matchAll(/^ function (\$\w+)\(([^)]*)\) \{\n([^]*?)^ \}$/gm)].map(([, name, inputs, body]) => [name, { inputs: inputs.split(", "), body }]),
  );
  const names = [...script.matchAll(/^ {2}"(\$\w+)": (\$\w+)/gm)];
  const out = names.map(([, short, name]) => {
    const { inputs, body } = bodies.get(name);
    const lines = inputs.reduce((body, input) => body.replace(`  ${input} = +${input};\n`, ""), body);
    const are = [`arguments.length === ${inputs.length}`, ...inputs.map((input) => `typeof ${input} === "number"`)].join(" && ");
    const [, steps, result] = /^([^]*?) {2}return \+?([^;]*);\n$/.exec(lines);
    if (/\breturn\b/.test(steps)) throw new Error(`wasm2js returns from within ${name}: ${lines}`);
    const rest = /^\(.*\)$/s.test(result) && steps === "" ? `return ${result.replaceAll("NaN", "no(arguments)")};` : `${steps} const result = ${result}; if (result === result) return result;`;
    return `export const ${short} = (no) => function (${inputs.join(", ")}) {\n if (${are}) {\n ${rest}\n }\n return no(arguments);\n};\n`;
  });
  if (out.length === 0) throw new Error("wasm2js wrote no function that is known here");
  return out.join("");
}
