// From what `describe` prints and what cargo compiled: everything under generated/.
import { mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { compile } from "json-schema-to-typescript";
import { carry } from "./carry.mjs";

export const camel = (name) => name.replace(/_(.)/g, (_, letter) => letter.toUpperCase());

/** Ways to call of one topic and name, gathered. */
function gathered(calculators) {
  const topics = new Map();
  calculators.forEach((row, number) => {
    const topic = topics.get(row.topic) ?? new Map();
    topics.set(row.topic, topic);
    topic.set(row.name, [...(topic.get(row.name) ?? []), { ...row, number }]);
  });
  topics.delete("unit");
  return topics;
}

const isPlain = (input) => input.kinds.every((kind) => kind.metric === "");
const words = (input) => input.kinds.map((kind) => `${kind.words}${kind.metric && `, such as ${kind.metric}`}`).join("; or ");
const comment = (indent, lines) =>
  [`${indent}/**`, ...lines.map((line) => `${indent} * ${line}`), `${indent} */`].join("\n");

function calculators(described) {
  const out = [
    'import { calculator } from "../src/calculate.js";',
    'import type { Amount, Quantity } from "../src/quantity.js";',
  ];
  for (const [topic, names] of gathered(described.calculators)) {
    out.push(`\nexport const ${topic} = {`);
    for (const [name, ways] of names) out.push(calculatorOf(name, ways));
    out.push("};");
  }
  return `${out.join("\n")}\n`;
}

function calculatorOf(name, ways) {
  const types = ways.map((way) => {
    const fields = way.inputs.map(
      (input) => `\n      /** ${words(input)} */\n      ${camel(input.name)}: ${isPlain(input) ? "number" : "Amount"};`,
    );
    return `{${fields.join("")}\n    }`;
  });
  const calls = ways.map((way) =>
    [way.number, ...way.inputs.map((input) => camel(input.name) + (isPlain(input) ? "#" : ""))].join(" "),
  );
  const { output } = ways[0];
  const units = (system) => JSON.stringify(output.kinds.map((kind) => kind[system]).join("\n"));
  const unitArguments = isPlain(output) ? "" : `, ${units("metric")}, ${units("us")}`;
  const result = isPlain(output) ? "number" : "Quantity";
  const gives = `@returns ${camel(output.name)}: ${isPlain(output) ? "a plain number" : words(output)}`;
  return `${comment("  ", [...ways.map((way) => way.about), gives])}
  ${camel(name)}: /* @__PURE__ */ calculator<${types.join(" | ")}, ${result}>(${JSON.stringify(calls.join(";"))}${unitArguments}),`;
}

function positions(described, parts, { entry, machine }) {
  const out = [
    `import { using } from "${machine}";`,
    `import carried from "./${entry}_wasm.js";`,
    `import * as formulas from "./${entry}_formulas.js";`,
    "\nconst position = /* @__PURE__ */ using(carried);",
  ];
  for (const [topic, names] of gathered(described.calculators)) {
    const has = ([way]) => idOf(way) in parts;
    const own = [...names.values()].filter(has);
    if (own.length === 0) continue;
    out.push(`\nexport const ${topic} = {`);
    for (const ways of own) {
      ways.forEach((way, at) => out.push(positionOf(way, at === 0 ? undefined : ways[0], parts)));
    }
    out.push("};");
  }
  return `${out.join("\n")}\n`;
}

/** A way to calculate, as the wasm names it. */
const idOf = (way) => [`${way.topic}.${way.name}`, ...way.inputs.map((input) => input.name)].join(" ");

function formulasOf(parts) {
  const names = [...new Set(Object.values(parts).flatMap(({ formula }) => formula ?? []))];
  const about = "/** Looks at its numbers; gives the result, or what `no` gives. */\n";
  return `${about}type Formula = (no: (numbers: ArrayLike<unknown>) => never) => (...numbers: number[]) => number;\n${names
    .map((name) => `export declare const ${name}: Formula;\n`)
    .join("")}`;
}

/** A second way to call is named after the first input that the first way lacks. */
function positionOf(way, first, parts) {
  const extra = first && way.inputs.find((input) => !first.inputs.some((other) => other.name === input.name));
  const name = camel(extra ? `${way.name}_with_${extra.name}` : way.name);
  const base = (input) => input.bases.filter(Boolean).join(" or ") || "a plain number";
  const names = way.inputs.map((input) => camel(input.name));
  const { formula, once, each } = parts[idOf(way)];
  // The first check is the most frequent, and left out at the end; one beyond the last is none.
  const checks = way.inputs.map((input) => input.check ?? 9).join("").replace(/0+$/, "");
  const given = [JSON.stringify(names.join(" ")), formula ? `formulas.${formula}` : "undefined"];
  given.push(...[once ?? "", each ?? "", checks].join(" ").trimEnd().split(" ").map((part) => JSON.stringify(part)));
  const lines = [
    way.about,
    ...way.inputs.map((input) => `@param ${camel(input.name)} ${input.kinds[0].words}, in ${base(input)}`),
    `@returns ${camel(way.output.name)}, in ${base(way.output)}`,
  ];
  return `${comment("  ", lines)}
  ${name}: /* @__PURE__ */ position<(${names.map((input) => `${input}: number`).join(", ")}) => number>(${given.join(", ")}),`;
}

function wordsOf(described) {
  const table = (name, about, type, entries) =>
    `/** ${about} */\nexport const ${name}: ${type} = ${JSON.stringify(entries)};\n`;
  // Those of texts come after a gap; numbers alone do without.
  const all = Object.entries(described.codes);
  const [plain, ofText] = [(number) => number < 30, (number) => number >= 30].map((are) => all.filter(([number]) => are(Number(number))));
  return (
    `/** The version of the library. */\nexport const version = ${JSON.stringify(described.version)};\n` +
    table("codes", "What is wrong, by the number that the wasm gives.", "readonly string[]", plain.reduce((list, [number, word]) => list.with(Number(number), word), Array(27).fill(""))) +
    table("textCodes", "What is wrong with a text.", "Record<string, string>", Object.fromEntries(ofText)) +
    table("dimensions", "What is measured, by its powers of the base quantities.", "Record<string, string>", described.dimensions)
  );
}

/** One file for all documents: what they share is declared once. */
async function documents(schemas) {
  const definitions = Object.assign({}, ...Object.values(schemas).map((schema) => schema.$defs ?? {}));
  const properties = {};
  for (const schema of Object.values(schemas)) {
    const { $defs, $schema, ...own } = schema;
    definitions[own.title] = own;
    properties[own.title] = { $ref: `#/$defs/${own.title}` };
  }
  const all = { title: "Documents", type: "object", properties, additionalProperties: false, $defs: definitions };
  return compile(all, "Documents", { bannerComment: "", additionalProperties: false, format: false });
}

export async function generate(work, into, parts) {
  const described = JSON.parse(readFileSync(`${work}/describe.json`, "utf8"));
  rmSync(into, { recursive: true, force: true });
  mkdirSync(into, { recursive: true });
  writeFileSync(`${into}/calculators.ts`, calculators(described));
  writeFileSync(`${into}/positions.ts`, positions(described, parts.numbers, { entry: "numbers", machine: "../src/position.js" }));
  writeFileSync(`${into}/after.ts`, positions(described, parts.after, { entry: "after", machine: "../src/numbers.js" }));
  writeFileSync(`${into}/words.ts`, wordsOf(described));
  writeFileSync(`${into}/documents.ts`, await documents(described.schemas));
  for (const entry of ["numbers", "after"]) {
    writeFileSync(`${into}/${entry}_formulas.js`, readFileSync(`${work}/${entry}.formulas.js`));
    writeFileSync(`${into}/${entry}_formulas.d.ts`, formulasOf(parts[entry]));
  }
  for (const entry of ["text", "numbers", "after", "shed", "job"]) {
    writeFileSync(`${into}/${entry}_wasm.js`, carry(readFileSync(`${work}/${entry}.small.wasm`)));
    writeFileSync(`${into}/${entry}_wasm.d.ts`, "export default function carried(): Uint8Array<ArrayBuffer>;\n");
  }
  return described.schemas;
}
