// From the wasm of `hilum` as it was compiled to what the package holds of it.
//
// What is arithmetic alone becomes loops of the script's over columns in base units, which weigh a fifth of a wasm's. What has
// branches over memory, powers or logarithms stays in the wasm, and so do the reasons why a calculation is refused.
import { writeFileSync } from "node:fs";
import { Exports, withInstructions } from "./exports.mjs";
import shrink from "./shrink.mjs";

/** Writes the small wasm and its formulas. Gives the short names of each calculation's ways, liquid before dry, by `topic.name input input…`. */
export function text(work) {
  const [compiled, small] = ["formulas", "text"].map((name) => {
    withInstructions(`${work}/${name}.wasm`, `${work}/${name}.whole.wasm`);
    shrink(`${work}/${name}.whole.wasm`, `${work}/${name}.whole.wasm`);
    return new Exports(`${work}/${name}.whole.wasm`);
  });
  const [kept, formulas, calls] = [new Map(), new Map(), new Map()];
  const calculators = {};
  for (const [name, quiet] of compiled.functions) {
    const [, which, id] = /^quiet (\d) (.*)$/.exec(name) ?? [];
    if (id === undefined) continue;
    const each = small.functions.get(`each ${which} ${id}`);
    const isFormula = compiled.isArithmetic(quiet);
    // What is never refused needs no reason.
    const isCall = !isFormula || compiled.text(quiet).includes("nan");
    const key = `${isFormula && quiet} ${isCall && each}`;
    const short = kept.get(key) ?? kept.size.toString(36);
    kept.set(key, short);
    if (isFormula) formulas.set(quiet, new Set(formulas.get(quiet)).add(short));
    if (isCall) calls.set(each, short);
    (calculators[id] ??= [])[Number(which)] = short;
  }
  small.write(`${work}/text.small.wasm`, (name) => !name.includes(" "), calls);
  const own = new Map([...formulas.keys()].map((name, at) => [name, `$${at}`]));
  const scripts = compiled.script(`${work}/text.formulas.wasm`, own);
  const shorts = [...formulas.values()];
  const loops = scripts.flatMap(({ short, ...formula }) => [...shorts[Number(short.slice(1))]].map((name) => `  ${JSON.stringify(name)}: ${loop(formula)},\n`));
  const scalars = ["base", "celsius"].map((name) => {
    const [{ inputs, steps, result }] = compiled.script(`${work}/text.formulas.wasm`, new Map([[compiled.functions.get(`scalar ${name}`), name]]));
    if (steps) throw new Error(`${name} has more than a result: ${steps}`);
    return `export const ${name} = (${inputs.join(", ")}) => ${result};\n`;
  });
  writeFileSync(`${work}/text.formulas.js`, `${scalars.join("")}export const loops = {\n${loops.join("")}};\n`);
  return calculators;
}

/** A formula over the first rows of columns. */
function loop({ inputs, steps, result }) {
  const columns = inputs.map((input) => `${input}s`);
  const at = (text) => inputs.reduce((text, input) => text.replaceAll(new RegExp(`\\${input}\\b`, "g"), `${input}s[row]`), text);
  const isChanged = inputs.some((input) => new RegExp(`\\${input} = `).test(steps));
  const body = isChanged
    ? `{ let ${inputs.map((input) => `${input} = ${input}s[row]`).join(", ")}; ${steps} results[row] = ${result}; }`
    : `{ ${at(steps)} results[row] = ${at(result)}; }`;
  return `(results, rows, ${columns.join(", ")}) => { for (let row = 0; row < rows; row++) ${body} }`.replaceAll("Math_", "Math.");
}
