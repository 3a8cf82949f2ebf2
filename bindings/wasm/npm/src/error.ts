import { TEXTS, codes, dimensions, textCodes } from "../generated/words.js";

/** One thing that is wrong with a document. */
export interface Problem {
  /** Where: a JSON pointer into the document; empty for the whole of it. */
  readonly pointer: string;
  /** The value that was refused, as written. */
  readonly value?: string;
  /** What is wrong with it and what would be right. */
  readonly message: string;
}

/** What every entry's errors bear, so that `instanceof` knows them whichever entry it was imported from. */
const BRAND = Symbol.for("hilum.HilumError");

/** Why something was refused. */
export class HilumError extends Error {
  static override [Symbol.hasInstance](error: unknown): boolean {
    return typeof error === "object" && error !== null && BRAND in error;
  }

  /** @internal */
  readonly [BRAND] = true;
  override readonly name = "HilumError";
  /** What is wrong, in one word: `"wrong_dimension"`, `"not_positive"`, … */
  readonly code: string;
  /** Which input: its name, or its place in a document as a JSON pointer; empty for the whole. */
  readonly field: string;
  /** What was given there. */
  readonly value: unknown;
  /** The row of a column, counted from 0. */
  readonly row: number | undefined;
  /** All that is wrong with a document, first problem first; empty for a calculation. */
  readonly problems: readonly Problem[];

  constructor(
    code: string,
    field: string,
    value: unknown,
    message: string,
    more: { row?: number | undefined; problems?: readonly Problem[] } = {},
  ) {
    super(message);
    this.code = code;
    this.field = field;
    this.value = value;
    this.row = more.row;
    this.problems = more.problems ?? [];
  }
}

const EXAMPLE = 'write a number, a space and a unit, as in "2.5 fl oz/cwt"';

const MESSAGES: Record<string, string> = {
  not_finite: "must be a finite number",
  not_positive: "must be more than 0",
  negative: "must not be negative",
  out_of_range: "must lie within 1e-30 and 1e30 base units",
  not_a_share: "must lie within 0 % and 100 %",
  below_absolute_zero: "must be at or above absolute zero (-273.15 °C)",
  more_than: "is more than what bounds it",
  too_little: "is less than the least that works",
  not_a_count: "must be a whole number",
  too_many_sets: "comes to more sets than can be counted",
  already_below: "is below the minimum from the start",
  never: "is never reached",
  outside_curve: "is beyond the settings that were tested",
  one_setting: "needs two different settings",
  not_rising: "does not rise with the setting",
  not_falling: "does not fall with time",
  all_equal: "must differ from the other",
  no_entry: "is no entry of the data dictionary that is known here",
  not_for_the_bus: "is neither 0 nor within what the bus carries",
  needed: "needs another input with it: the density",
  temperature_point: "is a temperature, but here an amount is needed (a difference is written in K)",
  not_a_temperature: "is not a temperature; write degC or degF",
  empty: `is empty; ${EXAMPLE}`,
  not_a_number: `does not begin with a number; ${EXAMPLE}`,
  number_form: "has a number in a form that is not read; write it as 0.5, 5 or 1e5",
  comma: "has a comma in its number; write 1000 or 1_000, and a point for decimals",
  space_in_number: "has a space in its number; write 140000 or 140_000",
  no_space: "needs a space between number and unit, and the number in full (140000000, not 140M)",
  number_too_long: "has a number of more than 100 characters",
  too_large: "has a number that is too large to calculate with",
  no_unit: `has no unit; ${EXAMPLE}`,
  bare_ounce: 'has a bare "oz", which may be weight or volume; write "oz av" (weight) or "fl oz" (volume)',
  ton: 'has "ton", of which there are several; write t (1000 kg), or 2000 lb for a US short ton',
  unknown_unit: "has an unknown unit",
  two_lines: "has more than one /; write one unit over one other",
  below_the_line: "has a number below the line that is not more than 0",
  form: "has a unit in a form that is not read; write a, a/b, a/100 b, or UCUM a/(100.b)",
  unit_not_given: 'is per unit, but it is not said how many seeds a unit is; write the seeds, as in "1.2 fl oz/140000 seeds"',
  bushel_not_given: 'is per bushel, but it is not said what a bushel weighs; write the mass, as in "2 fl oz/60 lb"',
};

/** What is known of a refusal beside its code. */
interface More {
  readonly row?: number | undefined;
  /** What was given measures, and what is needed. */
  readonly given?: number | undefined;
  readonly needed?: number | undefined;
  /** The unit that may have been meant. */
  readonly meant: () => string;
}

/** A point on the temperature scale, as what is measured. */
const POINT = 2 ** 31 - 3;

/** The error for what the wasm said of an input. */
export function refused(number: number, field: string, value: unknown, { row, given, needed, meant }: More): HilumError {
  let code = codes[number] ?? textCodes[number - TEXTS] ?? "other";
  if (code === "wrong_dimension") code = needed === POINT ? "not_a_temperature" : given === POINT ? "temperature_point" : code;
  let message = MESSAGES[code] ?? "is refused";
  if (code === "wrong_dimension") {
    const name = (of = 0) => dimensions[of] ?? "a quantity of a kind that is not used here";
    message = `is ${name(given)}, but ${name(needed)} is needed`;
  } else if (code === "unknown_unit" && meant()) {
    message += `; did you mean "${meant()}"?`;
  }
  const place = row === undefined ? field : `${field}, row ${row}`;
  return new HilumError(code, field, value, `${place}: ${shown(value, row)} ${message}${message.endsWith("?") ? "" : "."}`, { row });
}

export function wrong(field: string, value: unknown, message: string): HilumError {
  return new HilumError("wrong_type", field, value, `${field}: ${shown(value)} ${message}.`);
}

function unitOf(value: unknown): string {
  return typeof value === "object" && value !== null && "unit" in value ? String(value.unit) : "";
}

/** A value as a message can carry it. */
export function shown(value: unknown, row?: number): string {
  if (typeof value === "string") return JSON.stringify(value.length > 60 ? `${value.slice(0, 60)}…` : value);
  if (typeof value === "object" && value !== null && "value" in value) return `"${value.value} ${unitOf(value)}"`;
  if (typeof value === "object" && value !== null && "values" in value && row !== undefined) {
    return `"${(value.values as ArrayLike<number>)[row]} ${unitOf(value)}"`;
  }
  if (value instanceof Float64Array && row !== undefined) return String(value[row]);
  if (typeof value === "object" && value !== null && "values" in value && !Array.isArray(value)) return "this column";
  return typeof value === "object" && value !== null ? `this ${value.constructor?.name ?? "object"}` : String(value);
}
