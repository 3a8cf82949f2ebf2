// From the wasm of `hilum/numbers` or `hilum/numbers/after` as it was compiled to what the package holds of it.
//
// A call from a script into a wasm takes ten times as long as a product of two numbers. So what is arithmetic alone becomes
// script again: the same operations on the same doubles. What has branches over memory, powers or logarithms stays; and so do
// the reasons why a calculation is refused, and the loops over columns of which the compiler made vectors.
import { writeFileSync } from "node:fs";
import { Exports } from "./exports.mjs";
import shrink from "./shrink.mjs";

/**
 * Writes the entry's small wasm and its formulas into the folder. Gives what each calculator has, by
 * `topic.name input input…`: the name of its formula, and those of its exports for the reason or the number, and for columns.
 */
export function numbers(work, entry) {
  const file = (part) => `${work}/${entry}.${part}`;
  shrink(file("wasm"), file("whole.wasm"));
  const [compiled, small] = [new Exports(file("wasm")), new Exports(file("whole.wasm"))];
  const kept = { formulas: new Map(), exports: new Map() };
  const keep = (list, name) => {
    if (!list.has(name)) list.set(name, `$${list.size.toString(36)}`);
    return list.get(name);
  };
  const calculators = {};
  for (const [name, quiet] of small.functions) {
    const [, id] = /^quiet (.*)$/.exec(name) ?? [];
    if (id === undefined) continue;
    const [once, each] = ["once", "each"].map((part) => small.functions.get(`${part} ${id}`));
    const isFormula = small.isArithmetic(quiet);
    // Where the compiler made no vectors, the script's own loop does.
    const hasVectors = compiled.text(compiled.functions.get(`each ${id}`)).includes("f64x2");
    calculators[id.slice(2)] = {
      formula: isFormula ? keep(kept.formulas, quiet) : undefined,
      once: isFormula && once === quiet ? undefined : keep(kept.exports, once),
      each: hasVectors ? keep(kept.exports, each) : undefined,
    };
  }
  small.write(file("small.wasm"), (name) => !name.includes(" "), kept.exports);
  const formulas = small.script(file("formulas.wasm"), kept.formulas);
  writeFileSync(file("formulas.js"), formulas.map(checked).join(""));
  return calculators;
}

/**
 * A formula that looks at what it is given and says `no` to what is no number or gives none. NaN never goes through a formula:
 * where it meets a result, V8 keeps both on the heap.
 */
function checked({ short, inputs, steps, result }) {
  const are = [`arguments.length === ${inputs.length}`, ...inputs.map((input) => `typeof ${input} === "number"`)].join(" && ");
  const rest = /^\(.*\)$/s.test(result) && steps === "" ? `return ${result.replaceAll("NaN", "no(arguments)")};` : `${steps} const result = ${result}; if (result === result) return result;`;
  return `export const ${short} = (no) => function (${inputs.join(", ")}) {\n if (${are}) {\n ${rest}\n }\n return no(arguments);\n};\n`;
}
