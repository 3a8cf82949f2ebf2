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

/** Where one function of the check values is several calculators, one for each result. */
const SEVERAL = {
  "seed.within": { least: "least_within", most: "most_within" },
  "mix.water": { water: "water", share: "water_share" },
  "pack.choose": { large: "large", small: "small", leftover: "leftover" },
  "survival.fit": { d: "fit_d", log10: "fit_log10" },
  "account.used": { used: "used", uncertainty: "used_uncertainty" },
  "account.achieved": { rate: "achieved", uncertainty: "achieved_uncertainty" },
};

/** The calculators of a case: what each is called, and its result's name in the line. */
function parts({ function: name }) {
  const [topic] = name.split(".");
  return Object.entries(SEVERAL[name] ?? { "": name.split(".")[1] }).map(([result, call]) => ({ topic, call, result }));
}

/** A choice among two sizes, through `hilum/shed`. */
function chosen({ choosePacks }, { need, large, small }) {
  const { sets, leftover } = choosePacks({ need, sizes: [{ covers: large }, { covers: small }] });
  return { large: sets[0], small: sets[1], leftover: leftover.value };
}

/** A case through `hilum`: the result in base units. */
function calculated({ hilum, shed }, { function: name, inputs }, { topic, call }) {
  const named = Object.fromEntries(Object.entries(inputs).map(([name, value]) => [camel(name), value]));
  if (name === "pack.choose") return chosen(shed, named)[call];
  if (name === "unit.convert") {
    const there = hilum.convert(named.value, named.to);
    return hilum.convert(there, base(hilum.convert, there)).value;
  }
  const calculator = hilum[topic]?.[camel(call)];
  if (!calculator) throw new Error(`the package has no ${name}`);
  const result = calculator(named);
  return typeof result === "number" ? result : calculator(named, { unit: base(hilum.convert, result) }).value;
}

/** What a line of the vectors says came out: bits, or a code. */
function expected(line, { result }) {
  const fields = line.split("\t");
  const last = fields.at(-1);
  if (last.startsWith("!")) return last.slice(1);
  return bitsOf(fields.find((field) => field.startsWith(`>${result}`)));
}

/** The bits of a field; behind them may stand what they measure. */
const bitsOf = (field) => field.split("=")[1].split(":")[0];

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
  if (name === "pack.choose") return false;
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
  if (name.startsWith("active.") && name !== "active.product" && "content" in inputs) {
    const dose = "rate" in inputs ? measures("rate", "m3/kg") : measures("per_seed", "m3/seed");
    return dose && measures("content", "kg/m3");
  }
  if (name === "active.product") return measures("content", "kg/m3");
  // A titre in a set follows what its inputs are measured by, which numbers do not say.
  if (name === "living.titre_in_set") return measures("titre", "CFU/m3");
  return !("unit" in inputs) || measures("unit", "seeds");
}

/** A case through `hilum/numbers`, by the exact bits of its inputs. */
function positioned(numbers, described, line, { topic, call }) {
  const fields = line.split("\t").slice(2).filter((field) => !/^[>!]/.test(field));
  const given = Object.fromEntries(fields.map((field) => [field.split("=")[0], bitsOf(field)]));
  const names = Object.keys(given);
  const ways = described.calculators.filter((row) => row.topic === topic && row.name === call);
  const way = ways.find(({ inputs }) => inputs.length === names.length && inputs.every(({ name }) => name in given));
  const extra = way.inputs.find(({ name }) => !ways[0].inputs.some((other) => other.name === name));
  const position = numbers[topic][camel(extra ? `${call}_with_${extra.name}` : call)];
  return position(...way.inputs.map(({ name }) => number(given[name])));
}

/** Every case of the topics against its line; gives how many were compared and what was wrong. */
export function check({ hilum, numbers, shed, described, topics, vectors }) {
  const lines = new Map(vectors.trimEnd().split("\n").map((line) => [line.split("\t")[0], line]));
  const report = { cases: 0, hilum: 0, numbers: 0, wrong: [] };
  const compare = (entry, id, got, wanted) => {
    report[entry] += 1;
    if (got !== wanted) report.wrong.push(`${entry}: ${id} gave ${got}, Rust ${wanted}`);
  };
  for (const one of topics.flatMap((topic) => topic.cases)) {
    const line = lines.get(one.id);
    if (line === undefined) continue;
    lines.delete(one.id);
    report.cases += 1;
    const inNumbers = isForNumbers(hilum.convert, one, line);
    for (const part of parts(one)) {
      compare("hilum", one.id, outcome(() => calculated({ hilum, shed }, one, part)), expected(line, part));
      if (!inNumbers) continue;
      compare("numbers", one.id, outcome(() => positioned(numbers, described, line, part)), expected(line, part));
    }
  }
  report.wrong.push(...[...lines.keys()].map((id) => `${id} is in no file of tests/data`));
  return report;
}
