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

/** The calculator of `hilum/numbers` for a case, what it takes, and the exact numbers of its inputs. */
function position(numbers, described, given, { topic, call }) {
  const names = Object.keys(given);
  const ways = described.calculators.filter((row) => row.topic === topic && row.name === call);
  const way = ways.find(({ inputs }) => inputs.length === names.length && inputs.every(({ name }) => name in given));
  const extra = way.inputs.find(({ name }) => !ways[0].inputs.some((other) => other.name === name));
  const calculator = numbers[topic][camel(extra ? `${call}_with_${extra.name}` : call)];
  return { calculator, inputs: way.inputs, given: way.inputs.map(({ name }) => given[name]) };
}

const BAD = [
  [NaN, "not_finite"], [Infinity, "not_finite"], [-Infinity, "not_finite"], [-1, "not_positive"], [0, "not_positive"], [-0, "not_positive"],
  [1e31, "out_of_range"], [9e-31, "out_of_range"], ["1", "wrong_type"], [undefined, "wrong_type"], [1n, "wrong_type"],
];

/** How a calculator that gave a result behaves in columns, and towards what it must refuse; what is wrong. */
function tried({ calculator, inputs, given }, result) {
  const wrong = [];
  const same = (got, of) => got.every((value) => bits(value) === bits(result)) || wrong.push(`${of}: ${got}`);
  for (const rows of [1, 2, 3, 1025]) {
    same([...calculator.each(...given.map((value) => new Float64Array(rows).fill(value)))], `${rows} rows`);
    given.forEach((value, at) => same([...calculator.each(...given.with(at, new Float64Array(rows).fill(value)))], `${rows} rows of one`));
  }
  inputs.forEach(({ name, check }, at) => {
    for (const [value, code] of BAD) {
      if (check !== 0 && code !== "wrong_type") continue;
      const column = typeof value === "number" ? new Float64Array(1500).fill(given[at]).fill(value, 1400, 1401) : value;
      for (const call of [() => calculator(...given.with(at, value)), () => calculator.each(...given.with(at, column))]) {
        const got = outcome(call);
        if (got !== code) wrong.push(`${name} = ${String(value)} gave ${got}, not ${code}`);
      }
    }
  });
  return wrong;
}

/** The inputs of a line, as numbers. */
function numbersOf(line) {
  const fields = line.split("\t").slice(2).filter((field) => !/^[>!]/.test(field));
  return Object.fromEntries(fields.map((field) => [field.split("=")[0], number(bitsOf(field))]));
}

/** What no check value calls with numbers alone. */
const MORE = [
  ["active.per_mass", { rate: 3e-6, content: 480, density: 1100 }],
  ["active.product", { active: 5e-4, content: 480, density: 1100 }],
  ["survival.two_phase", { fraction: 0.9, fast: 86400, slow: 864000, time: 172800, at: 10, z: 15, temperature: 20 }],
  ["treater.effective_flow", { seed_flow: 3, utilisation: 0.8 }],
];

/** A case through `hilum/numbers`. */
function positioned(numbers, described, given, part, report) {
  const found = position(numbers, described, given, part);
  report.calculators.add(found.calculator);
  const result = found.calculator(...found.given);
  report.wrong.push(...tried(found, result).map((what) => `numbers: ${part.topic}.${part.call}: ${what}`));
  return result;
}

/** Every case of the topics against its line; gives how many were compared and what was wrong. */
export function check({ hilum, numbers, shed, described, topics, vectors }) {
  const lines = new Map(vectors.trimEnd().split("\n").map((line) => [line.split("\t")[0], line]));
  const report = { cases: 0, hilum: 0, numbers: 0, calculators: new Set(), wrong: [] };
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
      compare("numbers", one.id, outcome(() => positioned(numbers, described, numbersOf(line), part, report)), expected(line, part));
    }
  }
  report.wrong.push(...[...lines.keys()].map((id) => `${id} is in no file of tests/data`));
  for (const [name, given] of MORE) {
    const [topic, call] = name.split(".");
    positioned(numbers, described, given, { topic, call }, report);
  }
  const all = Object.entries(numbers).flatMap(([topic, names]) => Object.entries(names).map(([name, one]) => [`${topic}.${name}`, one]));
  const untried = all.filter(([, one]) => one.each && !report.calculators.has(one)).map(([name]) => name);
  return { ...report, calculators: report.calculators.size, untried };
}
