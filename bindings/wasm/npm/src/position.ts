import carried from "../generated/numbers_wasm.js";
import { codes } from "../generated/words.js";
import { instance } from "./wasm.js";

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
    super(`${field}: ${String(value)} is refused (${code}).`);
    this.code = code;
    this.field = field;
    this.value = value;
  }
}

type Seven = [number, number, number, number, number, number, number];

interface Exports {
  memory: WebAssembly.Memory;
  once(number: number, ...inputs: Seven): number;
  why(number: number, what: number, ...inputs: Seven): number;
}

let wasm: Exports | undefined;
const ready = (): Exports => (wasm ??= instance<Exports>(carried));

/** A calculation on numbers: `number` of the table, and the names of its arguments. */
export function position<Call extends (...numbers: number[]) => number>(
  number: number,
  names: string,
): Call & { each(...inputs: (number | Float64Array)[]): Float64Array } {
  const fields = names.split(" ");
  const count = fields.length;
  const refused = (numbers: ArrayLike<unknown>): NumberError => {
    if (numbers.length !== count) return new NumberError("missing", fields[numbers.length] ?? "", undefined);
    const wrong = fields.findIndex((_, at) => typeof numbers[at] !== "number");
    if (wrong >= 0) return new NumberError("wrong_type", fields[wrong] as string, numbers[wrong]);
    const seven = Array.from({ length: 7 }, (_, at) => numbers[at] ?? 0) as unknown as Seven;
    const field = ready().why(number, 1, ...seven);
    return new NumberError(codes[ready().why(number, 0, ...seven)] ?? "other", fields[field] ?? "", numbers[field]);
  };
  // One by one: a list would be made anew for each call, and a call is about as long as its formula.
  function result(a: number, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0): number {
    if (
      arguments.length === count &&
      typeof a === "number" && typeof b === "number" && typeof c === "number" && typeof d === "number" &&
      typeof e === "number" && typeof f === "number" && typeof g === "number"
    ) {
      const value = (wasm ?? ready()).once(number, a, b, c, d, e, f, g);
      // NaN is no result.
      if (value === value) return value;
    }
    throw refused(arguments);
  }
  const each = (...inputs: (number | Float64Array)[]): Float64Array => {
    const columns = inputs.filter((input) => input instanceof Float64Array);
    const rows = columns[0]?.length ?? 1;
    if (columns.some((column) => column.length !== rows)) throw new NumberError("unequal_columns", "", undefined);
    const row = inputs.slice();
    return Float64Array.from({ length: rows }, (_, at) => {
      inputs.forEach((input, field) => {
        if (input instanceof Float64Array) row[field] = input[at] as number;
      });
      return result(...(row as Seven));
    });
  };
  return Object.assign(result, { each }) as unknown as Call & { each: typeof each };
}
