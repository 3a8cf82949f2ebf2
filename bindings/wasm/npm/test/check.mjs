// Runs the check values through the package and compares the results, bit for bit, with what Rust wrote.
// The same module runs in Node and in a browser.

const camel = (name) => name.replace(/_(.)/g, (_, letter) => letter.toUpperCase());

const BASES = [
  "kg", "m3", "s", "K", "degC", "seeds", "CFU", "m2", "m3/kg", "m3/seed", "kg/seed", "kg/m2", "kg/m3", "seeds/kg",
  "seeds/m2", "CFU/m3", "CFU/kg", "CFU/m2", "CFU/seed", "kg/s", "m3/s", "m3/m2", "1",
];

/** The core calls all three the wrong dimension. */
const SAME = { temperature_point: "wrong_dimension", not_a_temperature: "wrong_dimension" };

export function bits(number) {
  const view = new DataView(new ArrayBuffer(8));
  view.setFloat64(0, number);
  return view.getBigUint64(0).toString(16).padStart(16, "0");
}

function number(bits) {
  const view = new DataView(new ArrayBuffer(8));
  view.setBigUint64(0, BigInt(`0x${bits}`));
  return view.getFloat64(0);
}

/** The base unit of a quantity: the one into which it converts. */
function base(convert, quantity) {
  for (const unit of BASES) {
    try {
      convert(quantity, unit);
      return unit;
    } catch (error) {
      if (!["wrong_dimension", "temperature_point", "not_a_temperature"].includes(error.code)) throw error;
    }
  }
  throw new Error(`no base unit for ${quantity.unit}`);
}

/** A case through `hilum`: the result in base units. */
function calculated(hilum, { function: name, inputs }) {
  const named = Object.fromEntries(Object.entries(inputs).map(([name, value]) => [camel(name), value]));
  if (name === "unit.convert") {
    const there = hilum.convert(named.value, named.to);
    return hilum.convert(there, base(hilum.convert, there)).value;
  }
  const [topic, call] = name.split(".");
  const calculator = hilum[topic]?.[camel(call)];
  if (!calculator) throw new Error(`the package has no ${name}`);
  const result = calculator(named);
  return typeof result === "number" ? result : calculator(named, { unit: base(hilum.convert, result) }).value;
}

/** What a line of the vectors says came out: bits, or a code. */
function expected(line) {
  const fields = line.split("\t");
  const last = fields.at(-1);
  return last.startsWith("!") ? last.slice(1) : last.split("=")[1];
}

function outcome(run) {
  try {
    return bits(run());
  } catch (error) {
    if (typeof error.code !== "string") throw error;
    return SAME[error.code] ?? error.code;
  }
}

/** Whether numbers alone say it: `hilum/numbers` takes the first kind of each input. */
function isForNumbers(convert, { function: name, inputs }, line) {
  // A number has no dimension that could be wrong, and no unit that could be unknown.
  if (name.startsWith("unit.") || line.includes('="') || line.endsWith("!wrong_dimension")) return false;
  const measures = (input, unit) => {
    try {
      convert(inputs[input], unit);
      return true;
    } catch {
      return false;
    }
  };
  if (name.startsWith("active.") && "content" in inputs) {
    const dose = "rate" in inputs ? measures("rate", "m3/kg") : measures("per_seed", "m3/seed");
    return dose && measures("content", "kg/m3");
  }
  return !("unit" in inputs) || measures("unit", "seeds");
}

/** A case through `hilum/numbers`, by the exact bits of its inputs. */
function positioned(numbers, described, { function: name }, line) {
  const given = Object.fromEntries(
    line.split("\t").slice(2).filter((field) => !/^[>!]/.test(field)).map((field) => field.split("=")),
  );
  const names = Object.keys(given);
  const [topic, call] = name.split(".");
  const ways = described.calculators.filter((row) => row.topic === topic && row.name === call);
  const way = ways.find(({ inputs }) => inputs.length === names.length && inputs.every(({ name }) => name in given));
  const extra = way.inputs.find(({ name }) => !ways[0].inputs.some((other) => other.name === name));
  const position = numbers[topic][camel(extra ? `${call}_with_${extra.name}` : call)];
  return position(...way.inputs.map(({ name }) => number(given[name])));
}

/** Every case of the topics against its line; gives how many were compared and what was wrong. */
export function check({ hilum, numbers, described, topics, vectors }) {
  const lines = new Map(vectors.trimEnd().split("\n").map((line) => [line.split("\t")[0], line]));
  const report = { hilum: 0, numbers: 0, wrong: [] };
  const compare = (entry, id, got, wanted) => {
    report[entry] += 1;
    if (got !== wanted) report.wrong.push(`${entry}: ${id} gave ${got}, Rust ${wanted}`);
  };
  for (const one of topics.flatMap((topic) => topic.cases)) {
    const line = lines.get(one.id);
    if (line === undefined) continue;
    lines.delete(one.id);
    compare("hilum", one.id, outcome(() => calculated(hilum, one)), expected(line));
    if (isForNumbers(hilum.convert, one, line)) {
      compare("numbers", one.id, outcome(() => positioned(numbers, described, one, line)), expected(line));
    }
  }
  report.wrong.push(...[...lines.keys()].map((id) => `${id} is in no file of tests/data`));
  return report;
}
