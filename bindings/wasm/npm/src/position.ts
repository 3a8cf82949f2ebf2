import { codes } from "../generated/words.js";
import { instance } from "./wasm.js";

/** What is told of the most frequent codes. */
const MESSAGES: Record<string, string> = {
  missing: "must be given",
  too_many: "is one argument too many",
  wrong_type: "must be a number, or in `each` a Float64Array",
  unequal_columns: "has not as many rows as the columns before it",
  not_finite: "must be a finite number",
  not_positive: "must be more than 0",
  negative: "must not be negative",
  not_a_share: "must lie within 0 and 1",
};

/** Why a number was refused. */
export class NumberError extends Error {
  override readonly name = "NumberError";
  /** What is wrong, in one word: `"not_positive"`, … */
  readonly code: string;
  /** Which argument. */
  readonly field: string;
  /** What was given there. */
  readonly value: unknown;

  constructor(code: string, field: string, value: unknown) {
    const shown = typeof value === "object" ? "this list" : typeof value === "string" ? `"${value}"` : String(value);
    super(`${field}: ${shown} ${MESSAGES[code] ?? `is refused (${code})`}.`);
    this.code = code;
    this.field = field;
    this.value = value;
  }
}

interface Exports {
  memory: WebAssembly.Memory;
  /** Where the columns lie, `ROWS` numbers each; the results are the ninth. */
  columns(): number;
  /** Whether the first pairs of rows of a column are all more than 0; those calculate alone. */
  are_positive(column: number, pairs: number): number;
  /** The code of what is wrong with a number, by the number of the check. */
  refused(check: number, value: number): number;
  /** 16 × the code of what else was wrong with the last calculation, + the number of the input. */
  why(): number;
  [calculator: string]: unknown;
}

type Numbers = (...numbers: number[]) => number;
/** Calculates so many pairs of rows of numbers above 0; whether some of them have no result. */
type Rows = (pairs: number) => number;

const ROWS = 1024;
const RESULTS = 8 * ROWS;

/**
 * What makes the calculations of a wasm.
 *
 * @internal
 */
export function using(carried: () => Uint8Array<ArrayBuffer>) {
  let wasm: Exports | undefined;
  const ready = (): Exports => (wasm ??= instance<Exports>(carried));
  let room: Float64Array | undefined;

  /**
   * A calculation on numbers: the names of its arguments; its formula, when it is one; which calculation of the wasm gives the
   * number, or the reason why there is none; which one takes columns; what the wasm looks at in each argument.
   */
  function position<Call extends Numbers>(
    names: string,
    formula: ((no: (numbers: ArrayLike<unknown>) => never) => Numbers) | undefined,
    once = "",
    columns = "",
    checks = "",
  ): Call & { each(...inputs: (number | Float64Array)[]): Float64Array } {
    const fields = names.split(" ");
    const no = (numbers: ArrayLike<unknown>): never => {
      throw refused(fields, checks, once, numbers);
    };
    const result = (formula ?? calling(once, fields.length))(no);
    const each = (...inputs: (number | Float64Array)[]): Float64Array => {
      let rows: number | undefined;
      let areRight = inputs.length === fields.length;
      for (const [field, input] of inputs.entries()) {
        if (input instanceof Float64Array) {
          if (input.length !== (rows ??= input.length)) throw new NumberError("unequal_columns", fields[field] ?? "", input);
        } else areRight &&= typeof input === "number";
      }
      const one = (row: number) =>
        result(...inputs.map((input) => (input instanceof Float64Array ? (input[row] as number) : input)));
      return columns && areRight
        ? chunks(ready()[columns] as Rows, inputs, rows ?? 1, one)
        : Float64Array.from({ length: rows ?? 1 }, (_, row) => one(row));
    };
    return Object.assign(result, { each }) as unknown as Call & { each: typeof each };
  }

  /** A calculation that the wasm makes. */
  function calling(name: string, count: number) {
    let run: Numbers = (...numbers) => (run = ready()[name] as Numbers)(...numbers);
    // One by one: a list would be made anew for each call.
    return (no: (numbers: ArrayLike<unknown>) => never) =>
      function (...numbers: number[]): number {
        const [a, b, c, d, e, f, g] = numbers as [number, number, number, number, number, number, number];
        if (
          numbers.length === count && typeof a === "number" &&
          (count < 2 || typeof b === "number") && (count < 3 || typeof c === "number") &&
          (count < 4 || typeof d === "number") && (count < 5 || typeof e === "number") &&
          (count < 6 || typeof f === "number") && (count < 7 || typeof g === "number")
        ) {
          const value = run(a, b, c, d, e, f, g);
          // NaN is no result.
          if (value === value) return value;
        }
        return no(numbers);
      };
  }

  /** Columns, a part at a time, which stays near the processor. */
  function chunks(run: Rows, inputs: (number | Float64Array)[], rows: number, one: (row: number) => number): Float64Array {
    // This wasm asks for no memory, so that what lies over it stays.
    const { are_positive } = ready();
    room ??= new Float64Array(ready().memory.buffer, ready().columns(), RESULTS + ROWS);
    const out = new Float64Array(rows);
    for (let at = 0; at < rows; at += ROWS) {
      const end = Math.min(at + ROWS, rows);
      for (let field = 0; field < inputs.length; field++) {
        const input = inputs[field] as number | Float64Array;
        if (typeof input !== "number") room.set(rows > ROWS ? input.subarray(at, end) : input, field * ROWS);
        else if (at === 0) room.fill(input, field * ROWS, field * ROWS + end);
      }
      const pairs = (end - at + 1) >> 1;
      // What lies behind the last of an odd number of rows is calculated, too.
      const arePositive = inputs.every((input, field) => {
        const last = field * ROWS + end - at;
        if ((end - at) & 1) room![last] = room![last - 1] as number;
        // What is the same in all rows is looked at once.
        return typeof input === "number" ? at > 0 || are_positive(field, 1) : are_positive(field, pairs);
      });
      if (arePositive && run(pairs) === 0) out.set(room.subarray(RESULTS, RESULTS + end - at), at);
      // The row that has none says why.
      else for (let row = at; row < end; row++) out[row] = one(row);
    }
    return out;
  }

  function refused(fields: string[], checks: string, once: string, numbers: ArrayLike<unknown>): NumberError {
    const error = (code: string, field: number) => new NumberError(code, fields[field] ?? `argument ${field + 1}`, numbers[field]);
    if (numbers.length < fields.length) return error("missing", numbers.length);
    if (numbers.length > fields.length) return error("too_many", fields.length);
    const all = Array.from(numbers) as number[];
    const wrong = all.findIndex((number) => typeof number !== "number");
    if (wrong >= 0) return error("wrong_type", wrong);
    const wasm = ready();
    const found = all.map((number, field) => wasm.refused(Number(checks[field] ?? 0), number));
    const field = found.findIndex((code) => code > 0);
    if (field >= 0) return error(codes[found[field] as number] ?? "other", field);
    if (once) (wasm[once] as Numbers)(...all);
    const why = wasm.why();
    return error(codes[why >> 4] ?? "other", why & 15);
  }

  return position;
}
