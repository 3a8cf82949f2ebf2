import { base, celsius, loops } from "../generated/text_formulas.js";
import { CONVERT, KINDS, LARGEST, PAIRS, UNITS, type Kind } from "../generated/kinds.js";
import { HilumError, refused, shown, wrong } from "./error.js";
import { lacking, unknown } from "./fields.js";
import type { Amount, Column, Options, Quantity } from "./quantity.js";
import {
  INPUTS, NOTHING, NUMBER, PLAIN, READ, ROWS, SAID, SEVERAL, WANTED, meant, one, read, ready, scale, type Input, type Scale,
} from "./text.js";

const WRONG_DIMENSION = 20;
const OUT_OF_RANGE = 4;
/** What the calculation itself looks at. */
const LATER = 9;

/** Inputs of which some may be columns: one number for each row. */
export type Columns<Inputs> = Inputs extends unknown
  ? { [Name in keyof Inputs]: Inputs[Name] | (Inputs[Name] extends number ? Float64Array : Column) }
  : never;

/** A calculation: once, or for each row of columns. */
export interface Calculator<Inputs, Result> {
  (inputs: Inputs, options?: Options): Result;
  /** The same for each row; inputs that are not columns are the same in all rows. */
  each(inputs: Columns<Inputs>, options?: Options): Result extends number ? Float64Array : Column;
}

/** A way to call: what calculates it, liquid before dry, and its inputs. */
interface Way {
  readonly runs: string[];
  readonly names: string[];
  readonly kinds: number[];
  /** The inputs that say what `unit` and `bu` mean; -1 for none. */
  readonly unitAt: number;
  readonly bushelAt: number;
}

/** A line is `name units way|way…`, a way `run,run input input…`; an input and a unit end with what it is, as a letter. */
export function topic<Topic>(lines: string): Topic {
  return Object.fromEntries(
    lines.split("\n").map((line) => {
      const [, name, units, ways] = /(.*?) (.*?) (.*)/.exec(line) as unknown as [string, string, string, string];
      return [name, calculator(units, ways)];
    }),
  ) as Topic;
}

const place = (letter: string): number => letter.charCodeAt(0) - 48;

function calculator<Inputs, Result>(letters: string, lines: string): Calculator<Inputs, Result> {
  const ways = lines.split("|").map((line): Way => {
    const [runs, ...inputs] = line.split(" ") as [string, ...string[]];
    const names = inputs.map((name) => name.slice(0, -1));
    const kinds = inputs.map((name) => place(name.slice(-1)));
    return { runs: runs.split(","), names, kinds, unitAt: names.indexOf("unit"), bushelAt: names.indexOf("bushel") };
  });
  const call = (inputs: unknown, options: unknown, areColumns: boolean) => {
    const way = chosen(ways, inputs);
    const [unit, system] = wanted(options);
    const units = Array.from(letters, (letter) => (UNITS[place(letter)] as string).split("|").at(system) as string);
    return calculated(way, inputs as Record<string, unknown>, units, unit, areColumns);
  };
  const once = (inputs: Inputs, options?: Options) => {
    const { values, unit } = call(inputs, options, false);
    return (letters ? { value: values[0], unit } : values[0]) as Result;
  };
  const each = (inputs: Columns<Inputs>, options?: Options) => {
    const column = call(inputs, options, true);
    return letters ? column : column.values;
  };
  return Object.assign(once, { each }) as unknown as Calculator<Inputs, Result>;
}

/** The unit that is wanted, and otherwise which of those there are. */
function wanted(options: unknown): [unit: string | undefined, system: number] {
  if (options === undefined) return [undefined, 0];
  const { unit, units } = fields("options", options, ["unit", "units"]);
  if (unit !== undefined && typeof unit !== "string") throw wrong("options.unit", unit, 'must be a unit as text, such as "kg"');
  if (units !== undefined && units !== "metric" && units !== "us") {
    throw wrong("options.units", units, 'must be "metric" or "us"');
  }
  return [unit, units === "us" ? -1 : 0];
}

/** An object's fields, if it has no others. */
function fields(place: string, value: unknown, known: readonly string[]): Record<string, unknown> {
  if (typeof value !== "object" || value === null || Array.isArray(value)) {
    throw wrong(place, value, `must be an object, { ${known.join(", ")} }`);
  }
  for (const name of Object.keys(value)) {
    if (!known.includes(name)) {
      throw new HilumError(
        "unknown_field",
        name,
        (value as Record<string, unknown>)[name],
        unknown(place, name, value, known),
      );
    }
  }
  return value as Record<string, unknown>;
}

/** The way to call that has these inputs; when none does, what is wrong with the nearest. */
function chosen(ways: Way[], inputs: unknown): Way {
  if (typeof inputs === "object" && inputs !== null) {
    const count = Object.keys(inputs).length;
    const hasAll = ({ names }: Way) => names.length === count && names.every((name) => (inputs as Record<string, unknown>)[name] !== undefined);
    const exact = ways.find(hasAll);
    if (exact) return exact;
  }
  const all = [...new Set(ways.flatMap((way) => way.names))];
  const given = Object.keys(fields("inputs", inputs, all)).filter(
    (name) => (inputs as Record<string, unknown>)[name] !== undefined,
  );
  const fits = (way: Way) => given.filter((name) => way.names.includes(name)).length;
  const exact = ways.find((way) => fits(way) === given.length && way.names.length === given.length);
  if (exact) return exact;
  const nearest = [...ways].sort((a, b) => fits(b) - fits(a) || a.names.length - b.names.length)[0] as Way;
  const missing = nearest.names.find((name) => !given.includes(name));
  if (missing !== undefined) {
    const names = ways.map((way) => way.names);
    throw new HilumError("missing", missing, undefined, lacking(missing, missing, inputs as object, names));
  }
  const extra = given.find((name) => !nearest.names.includes(name)) ?? "";
  const value = (inputs as Record<string, unknown>)[extra];
  const message = `${extra}: ${shown(value)} does not go with ${nearest.names.join(", ")}; leave one of them out.`;
  throw new HilumError("unknown_field", extra, value, message);
}

/** An input whose text is read. */
interface Scaled extends Scale {
  readonly numbers: number | Float64Array;
  /** What it must measure, and what looks at its numbers. */
  readonly needed: number;
  readonly check: number;
}

/** Whether the wasm was told what `unit` and `bu` mean. */
const said = [false, false];

function calculated(
  { runs, names, kinds, unitAt, bushelAt }: Way, inputs: Record<string, unknown>, units: string[], asked: string | undefined, areColumns: boolean,
): Column {
  let rows: number | undefined;
  const { wasm, cells, columns, results, notes } = ready();
  const all = names.map((name, at) => {
    const input = written(name, inputs[name], KINDS[kinds[at] as number]?.[0] === NUMBER, areColumns);
    if (typeof input.numbers === "object") {
      const { length } = input.numbers;
      if (length !== (rows ??= length)) {
        throw wrong(name, inputs[name], `has ${length} rows, but the columns before it have ${rows}`);
      }
    }
    return input;
  });
  const no = (code: number, at: number, row: number, given?: number, needed?: number) => {
    const name = names[at] as string;
    return refused(code, name, inputs[name], { row: rows === undefined ? undefined : row, given, needed, meant });
  };
  const noUnit = (code: number, unit: string, given?: number, needed?: number) => refused(code, "unit", unit, { given, needed, meant });

  for (let which = 0; which < 2; which++) {
    const input = all[which === 0 ? unitAt : bushelAt];
    if (input === undefined && !said[which]) continue;
    const isRead = input !== undefined && typeof input.numbers !== "object" && read(input) === 0;
    said[which] = isRead;
    notes[INPUTS] = scale.of;
    wasm.word(which, isRead ? based(input.numbers ?? (cells[READ] as number), scale.above, scale.below) : NaN);
  }
  let isDry = 0;
  const scaled: Scaled[] = [];
  for (let at = 0; at < all.length; at++) {
    const { numbers } = all[at] as Input;
    const code = read(all[at] as Input);
    if (code !== 0) throw no(code, at, 0);
    if (at === 0 && !(scale.of & 1)) isDry = 1;
    const kind = kinds[at] as number;
    const [needed, check] = KINDS[kind < PAIRS ? kind + isDry : kind] as Kind;
    const { of, above, below } = scale;
    scaled.push({ numbers: numbers ?? (cells[READ] as number), of, above, below, needed, check });
  }
  const scaleOf = (unit: string): Scale => {
    const code = unit === "1" ? one() : read({ text: unit, numbers: 1 });
    if (code !== 0) throw noUnit(code, unit);
    return scale;
  };
  const usual = units[isDry] ?? units[0] ?? "";
  let own = asked === undefined ? undefined : scaleOf(asked);
  let unit = asked ?? usual;
  const run = runs[isDry] ?? (runs[0] as string);
  const values = new Float64Array(rows ?? 1);

  /** Calculates some rows; false when one of them is refused, which one alone says why. */
  function some(first: number, count: number): boolean {
    const isOne = count === 1;
    for (let at = 0; at < scaled.length; at++) {
      const { numbers, of, above, below, needed, check } = scaled[at] as Scaled;
      if (check < LATER && of !== NUMBER && of !== needed) {
        if (isOne) throw no(WRONG_DIMENSION, at, first, of, needed);
        return false;
      }
      notes[INPUTS + at] = of;
      const into = columns[at] as Float64Array;
      const isColumn = typeof numbers === "object";
      if (isColumn && check < 3 && !isOne) {
        into.set(count < numbers.length ? numbers.subarray(first, first + count) : numbers);
        if (wasm.are_usual(at, count, above, below, check === 2 ? 1 : LARGEST) === 1) continue;
      }
      for (let row = 0; row < (isColumn ? count : 1); row++) {
        const number = isColumn ? (numbers[first + row] as number) : numbers;
        const looked = (into[row] = wasm.looked(check, number, based(number, above, below)));
        if (looked !== looked) {
          if (isOne) throw no(wasm.why() >> 4, at, first);
          return false;
        }
      }
      if (!isColumn && !isOne) into.fill(into[0] as number, 0, count);
    }
    notes[SAID] = NOTHING;
    const loop = loops[run];
    const call = wasm[run];
    if (loop && !(isOne && call)) loop(results, count, ...columns);
    else call!(count);
    if (results[0] !== results[0]) {
      if (!isOne) return false;
      const why = wasm.why();
      throw no(why >> 4, why & 15, first, notes[INPUTS + (why & 15)], notes[WANTED]);
    }
    if (units.length > 0) {
      const told = notes[SAID] as number;
      if (told === SEVERAL) return false;
      if (own === undefined) {
        own = known(usual, scaleOf);
        if (told !== NOTHING) for (const other of units) if (own.of !== told) own = known((unit = other), scaleOf);
      }
      const given = told === NOTHING ? known(usual, scaleOf).of : told;
      if (given !== own.of) {
        if (isOne) throw noUnit(WRONG_DIMENSION, unit, own.of, given);
        return false;
      }
    }
    const { above, below } = units.length > 0 ? (own as Scale) : PLAIN;
    if (wasm.are_finite(count, above, below) === 1) {
      if (isOne) values[first] = results[0] as number;
      else values.set(results.subarray(0, count), first);
      return true;
    }
    if (isOne) throw noUnit(OUT_OF_RANGE, unit);
    return false;
  }

  for (let first = 0; first < values.length; first += ROWS) {
    const end = Math.min(first + ROWS, values.length);
    if (!some(first, end - first)) for (let row = first; row < end; row++) some(row, 1);
  }
  return { values, unit };
}

/** The units of the table, as they were read: they depend on nothing. */
const KNOWN = new Map<string, Scale>();

function known(unit: string, read: (unit: string) => Scale): Scale {
  let own = KNOWN.get(unit);
  if (own === undefined) KNOWN.set(unit, (own = read(unit)));
  return own;
}

/** A number in base units, or in °C. */
const based = (number: number, above: number, below: number): number => (below === 0 ? celsius(number) : base(number, above, below));

/** An input as the wasm reads it. */
function written(name: string, value: unknown, isPlain: boolean, areColumns: boolean): Input {
  if (isPlain) {
    if (typeof value === "number") return { text: "", numbers: value };
    if (areColumns && value instanceof Float64Array) return { text: "", numbers: value };
    throw wrong(name, value, areColumns ? "must be a number or a Float64Array" : "must be a number");
  }
  if (typeof value === "string") return { text: value };
  const isColumn = typeof value === "object" && value !== null && "values" in value;
  if (isColumn && !areColumns) throw wrong(name, value, "is for `each`, which calculates row by row");
  const own = isColumn ? "values" : "value";
  if (typeof value !== "object" || value === null || Array.isArray(value)) {
    throw wrong(name, value, 'must be a quantity: a text such as "2.5 fl oz/cwt", or { value, unit }');
  }
  const { [own]: numbers, unit } = fields(name, value, [own, "unit"]);
  if (typeof unit !== "string") throw wrong(`${name}.unit`, unit, 'must be a unit as text, such as "kg"');
  // Without a unit, the numbers would be plain.
  const text = unit || " ";
  if (isColumn && numbers instanceof Float64Array) return { text, numbers };
  if (!isColumn && typeof numbers === "number") return { text, numbers };
  throw wrong(`${name}.${own}`, numbers, isColumn ? "must be a Float64Array; Float64Array.from makes one of a list" : "must be a number");
}

const converting = calculator<{ value: Amount }, Quantity>("0", CONVERT);

/** The same quantity in another unit: `convert("2.5 fl oz/cwt", "mL/100 kg")`. */
export function convert(amount: Amount, unit: string): Quantity;
export function convert(amount: Column, unit: string): Column;
export function convert(amount: Amount | Column, unit: string): Quantity | Column {
  if (typeof unit !== "string") throw wrong("unit", unit, 'must be a unit as text, such as "kg"');
  return typeof amount === "object" && amount !== null && "values" in amount
    ? converting.each({ value: amount }, { unit })
    : converting({ value: amount }, { unit });
}
