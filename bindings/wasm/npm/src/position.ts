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

/** A calculation on numbers: `number` of the table, and the names of its arguments. */
export function position<Call extends (...numbers: number[]) => number>(
  number: number,
  names: string,
): Call & { each(...inputs: (number | Float64Array)[]): Float64Array } {
  const fields = names.split(" ");
  const result = (numbers: ArrayLike<unknown>): number => {
    wasm ??= instance<Exports>(carried);
    if (numbers.length !== fields.length) throw new NumberError("missing", fields[numbers.length] ?? "", undefined);
    for (let at = 0; at < fields.length; at++) {
      if (typeof numbers[at] !== "number") throw new NumberError("wrong_type", fields[at] as string, numbers[at]);
    }
    const [a, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0] = numbers as unknown as Seven;
    const value = wasm.once(number, a, b, c, d, e, f, g);
    if (!Number.isNaN(value)) return value;
    const field = wasm.why(number, 1, a, b, c, d, e, f, g);
    throw new NumberError(codes[wasm.why(number, 0, a, b, c, d, e, f, g)] ?? "other", fields[field] ?? "", numbers[field]);
  };
  const each = (...inputs: (number | Float64Array)[]): Float64Array => {
    const columns = inputs.filter((input) => input instanceof Float64Array);
    const rows = columns[0]?.length ?? 1;
    if (columns.some((column) => column.length !== rows)) throw new NumberError("unequal_columns", "", undefined);
    const row = inputs.slice();
    return Float64Array.from({ length: rows }, (_, at) => {
      inputs.forEach((input, field) => {
        if (input instanceof Float64Array) row[field] = input[at] as number;
      });
      return result(row);
    });
  };
  return Object.assign((...numbers: number[]) => result(numbers), { each }) as unknown as Call & { each: typeof each };
}
