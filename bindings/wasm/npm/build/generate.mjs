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
  // The script has its own words for converting.
  topics.delete("unit");
  return topics;
}

const isPlain = (input) => input.kinds.every((kind) => kind.metric === "");
const words = (input) => input.kinds.map((kind) => `${kind.words}${kind.metric && `, such as ${kind.metric}`}`).join("; or ");
const comment = (indent, lines) =>
  [`${indent}/**`, ...lines.map((line) => `${indent} * ${line}`), `${indent} */`].join("\n");

/** Letters for what inputs and results are: from `0` on, without those that a text would escape. */
const letter = (at) => {
  if (at > 43) throw new Error("there are more kinds than letters");
  return String.fromCharCode(48 + at);
};

/** What measures nothing. */
const NUMBER = 2 ** 31 - 1;

/** What the inputs are, each once: what they measure and what looks at them. Those of products first, liquid before dry. */
function kindsOf(described) {
  const all = new Map();
  const key = ({ of, check }) => JSON.stringify([[...new Set(of)], check]);
  // What the calculation itself looks at may measure anything, but is no plain number.
  const measured = (input, { topic }) => {
    const of = isPlain(input) && topic !== "unit" ? [NUMBER] : input.check === null ? [0] : input.of;
    return { of, check: input.check };
  };
  for (const way of described.calculators) for (const input of way.inputs) all.set(key(measured(input, way)), measured(input, way));
  const isPair = ({ of }) => new Set(of).size > 1;
  const [pairs, others] = [true, false].map((are) => [...all].filter(([, input]) => isPair(input) === are));
  const places = new Map([...pairs.map(([key], at) => [key, 2 * at]), ...others.map(([key], at) => [key, 2 * pairs.length + at])]);
  const kinds = [...pairs, ...others].flatMap(([, { of, check }]) => [...new Set(of)].map((of) => [of, check ?? 9]));
  return { kinds, pairs: 2 * pairs.length, letterOf: (input, way) => letter(places.get(key(measured(input, way)))) };
}

function calculators(described, parts) {
  const kinds = kindsOf(described);
  const units = [];
  const letterOfUnit = ({ metric, us }) => {
    const both = metric === us ? metric : `${metric}|${us}`;
    if (!units.includes(both)) units.push(both);
    return letter(units.indexOf(both));
  };
  const run = (way) => {
    const [liquid, dry = liquid] = parts[idOf(way)];
    const inputs = way.inputs.map((input) => camel(input.name) + kinds.letterOf(input, way));
    return [liquid === dry ? liquid : `${liquid},${dry}`, ...inputs].join(" ");
  };
  const out = [
    'import { topic, type Calculator } from "../src/calculate.js";',
    'import type { Amount, Quantity } from "../src/quantity.js";',
  ];
  for (const [topic, names] of gathered(described.calculators)) {
    const lines = [...names].map(([name, ways]) => {
      const { output } = ways[0];
      return [camel(name), isPlain(output) ? "" : output.kinds.map(letterOfUnit).join(""), ways.map(run).join("|")].join(" ");
    });
    const types = [...names].map(([name, ways]) => calculatorOf(name, ways));
    out.push(`\nexport const ${topic} = /* @__PURE__ */ topic<{\n${types.join("\n")}\n}>(${JSON.stringify(lines.join("\n"))});`);
  }
  const convert = described.calculators.find(({ topic }) => topic === "unit");
  const tables = [
    "/** What an input measures, and which check looks at its number. */\nexport type Kind = readonly [of: number, check: number];\n",
    `export const KINDS: readonly Kind[] = ${JSON.stringify(kinds.kinds)};\n`,
    `/** So many kinds are of liquid and, next to it, of dry product. */\nexport const PAIRS: number = ${kinds.pairs};\n`,
    `/** Units of results, metric ones and others. */\nexport const UNITS: readonly string[] = ${JSON.stringify(units)};\n`,
    `/** The most that a number of base units may be. */\nexport const LARGEST: number = ${JSON.stringify(described.largest)};\n`,
    `export const CONVERT: string = ${JSON.stringify(run(convert))};\n`,
  ];
  return { calculators: `${out.join("\n")}\n`, kinds: tables.join("") };
}

function calculatorOf(name, ways) {
  const types = ways.map((way) => {
    const fields = way.inputs.map(
      (input) => `\n      /** ${words(input)} */\n      ${camel(input.name)}: ${isPlain(input) ? "number" : "Amount"};`,
    );
    return `{${fields.join("")}\n    }`;
  });
  const { output } = ways[0];
  const gives = `@returns ${camel(output.name)}: ${isPlain(output) ? "a plain number" : words(output)}`;
  return `${comment("  ", [...ways.map((way) => way.about), gives])}
  ${camel(name)}: Calculator<${types.join(" | ")}, ${isPlain(output) ? "number" : "Quantity"}>;`;
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

const TEXT_FORMULAS = `/** A number of a unit in base units, by those in the unit above the line and below. */
export declare function base(number: number, above: number, below: number): number;
/** °F in °C. */
export declare function celsius(fahrenheit: number): number;
/** Formulas over the first rows of columns. */
export declare const loops: Record<string, ((results: Float64Array, rows: number, ...columns: Float64Array[]) => void) | undefined>;
`;

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

/** The first code of a text. */
const TEXTS = 30;

function wordsOf(described) {
  // Those of texts come after a gap; numbers alone do without.
  const list = (from, to) => JSON.stringify(Array.from({ length: to - from }, (_, at) => described.codes[from + at] ?? "").join(" "));
  const most = 1 + Math.max(...Object.keys(described.codes).map(Number));
  return (
    `/** The version of the library. */\nexport const version = ${JSON.stringify(described.version)};\n` +
    `/** What is wrong, by the number that the wasm gives. */\nexport const codes: readonly string[] = /* @__PURE__ */ ${list(0, 27)}.split(" ");\n` +
    `/** What is wrong with a text, from ${TEXTS} on. */\nexport const textCodes: readonly string[] = /* @__PURE__ */ ${list(TEXTS, most)}.split(" ");\nexport const TEXTS = ${TEXTS};\n` +
    `/** What is measured, by its powers of the base quantities. */\nexport const dimensions: Record<number, string> = ${JSON.stringify(described.dimensions)};\n`
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
  const { calculators: text, kinds } = calculators(described, parts.text);
  writeFileSync(`${into}/calculators.ts`, text);
  writeFileSync(`${into}/kinds.ts`, kinds);
  writeFileSync(`${into}/text_formulas.js`, readFileSync(`${work}/text.formulas.js`));
  writeFileSync(`${into}/text_formulas.d.ts`, TEXT_FORMULAS);
  writeFileSync(`${into}/positions.ts`, positions(described, parts.numbers, { entry: "numbers", machine: "../src/position.js" }));
  writeFileSync(`${into}/after.ts`, positions(described, parts.after, { entry: "after", machine: "../src/numbers.js" }));
  writeFileSync(`${into}/words.ts`, wordsOf(described));
  writeFileSync(`${into}/documents.ts`, await documents(described.schemas));
  for (const entry of ["numbers", "after"]) {
    writeFileSync(`${into}/${entry}_formulas.js`, readFileSync(`${work}/${entry}.formulas.js`));
    writeFileSync(`${into}/${entry}_formulas.d.ts`, formulasOf(parts[entry]));
  }
  for (const entry of ["text", "numbers", "after", "shed", "job"]) {
    const { module, text } = carry(readFileSync(`${work}/${entry}.small.wasm`));
    writeFileSync(`${into}/${entry}_wasm.js`, module);
    writeFileSync(`${into}/${entry}_wasm.txt`, text);
    writeFileSync(`${into}/${entry}_wasm.d.ts`, "export default function carried(): Uint8Array<ArrayBuffer>;\n");
  }
  return described.schemas;
}
