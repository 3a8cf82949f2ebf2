import { HilumError, refused, shown, wrong } from "./error.js";
import { lacking, unknown } from "./fields.js";
import type { Amount, Column, Options, Quantity } from "./quantity.js";
import { calculate as run, suggest, type Input } from "./text.js";

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

type Way = { number: number; names: string[]; plain: boolean[]; unit: number; bushel: number };

/**
 * A calculator. `ways` are `number input input…` for each way to call it, a plain number with `#`; `metric` and
 * `us` the units of what it may give, nothing for a plain number.
 */
export function calculator<Inputs, Result>(ways: string, metric = "", us = metric): Calculator<Inputs, Result> {
  const parsed = ways.split(";").map((way): Way => {
    const [number, ...inputs] = way.split(" ");
    const names = inputs.map((name) => name.replace("#", ""));
    return {
      number: Number(number),
      names,
      plain: inputs.map((name) => name.endsWith("#")),
      // Beyond all inputs, when there is none.
      unit: names.indexOf("unit") >>> 0,
      bushel: names.indexOf("bushel") >>> 0,
    };
  });
  const call = (inputs: unknown, options: unknown, areColumns: boolean) => {
    const way = chosen(parsed, inputs);
    const units = wanted(options, metric, us);
    return calculated(way, inputs as Record<string, unknown>, units, areColumns);
  };
  const once = (inputs: Inputs, options?: Options) => {
    const { values, unit } = call(inputs, options, false);
    return (metric ? { value: values[0], unit } : values[0]) as Result;
  };
  const each = (inputs: Columns<Inputs>, options?: Options) => {
    const column = call(inputs, options, true);
    return metric ? column : column.values;
  };
  return Object.assign(once, { each }) as unknown as Calculator<Inputs, Result>;
}

/** The units that the result may have, a line each. */
function wanted(options: unknown, metric: string, us: string): string {
  if (options === undefined) return metric || "1";
  const { unit, units } = fields("options", options, ["unit", "units"]);
  if (unit !== undefined && typeof unit !== "string") throw wrong("options.unit", unit, 'must be a unit as text, such as "kg"');
  if (units !== undefined && units !== "metric" && units !== "us") {
    throw wrong("options.units", units, 'must be "metric" or "us"');
  }
  return unit ?? ((units === "us" ? us : metric) || "1");
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

function calculated(way: Way, inputs: Record<string, unknown>, units: string, areColumns: boolean) {
  let rows: number | undefined;
  const all = way.names.map((name, at) => {
    const input = written(name, inputs[name], way.plain[at] === true, areColumns);
    if (typeof input.numbers === "object") {
      const { length } = input.numbers;
      if (length !== (rows ??= length)) {
        throw wrong(name, inputs[name], `has ${length} rows, but the columns before it have ${rows}`);
      }
    }
    return input;
  });
  let said: number[] | undefined;
  // The first unit that can measure the result is taken.
  for (const unit of units.split("\n")) {
    const values = run(way.number, all, rows ?? 1, unit, way.unit, way.bushel);
    if (values instanceof Float64Array) return { values, unit };
    // What is wrong with an input says more than that the first unit does not fit.
    if (values[1] !== RESULT) {
      said = values;
      break;
    }
    said ??= values;
  }
  const [, place = -1] = said ?? [];
  const field = way.names[place];
  throw field === undefined
    ? refused(said ?? [], "unit", units.split("\n")[0], suggest, false)
    : refused(said ?? [], field, inputs[field], suggest, rows !== undefined);
}

/** The field of a refusal that is about the result's unit. */
const RESULT = 99;

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

const converting = calculator<{ value: Amount }, Quantity>("0 value", " ");

/** The same quantity in another unit: `convert("2.5 fl oz/cwt", "mL/100 kg")`. */
export function convert(amount: Amount, unit: string): Quantity;
export function convert(amount: Column, unit: string): Column;
export function convert(amount: Amount | Column, unit: string): Quantity | Column {
  if (typeof unit !== "string") throw wrong("unit", unit, 'must be a unit as text, such as "kg"');
  return typeof amount === "object" && amount !== null && "values" in amount
    ? converting.each({ value: amount }, { unit })
    : converting({ value: amount }, { unit });
}
