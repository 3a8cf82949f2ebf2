import carried from "../generated/text_wasm.js";
import { reading, text } from "./wasm.js";

interface Exports {
  memory: WebAssembly.Memory;
  /** Where the columns of the inputs' numbers lie, `ROWS` numbers each; the results are the ninth. */
  desk(): number;
  begin(base: number, number: number, places: number, text: number, unit: number, bushel: number): number;
  rows(rows: number, laid: number): number;
  suggest(base: number, length: number): number;
}

const PAGE = 65536;
const ROWS = 512;
const RESULTS = 8 * ROWS;
const encoder = new TextEncoder();

let wasm: Exports | undefined;
/** Behind all that the wasm itself uses. */
let base = 0;
// What lies there changes when the memory grows.
let cells: Float64Array;
let places: Int32Array;
let bytes: Uint8Array;

/** The wasm, with room for so many bytes from the base on. */
function ready(most: number): Exports {
  if (wasm === undefined) {
    wasm = reading<Exports>(carried);
    base = wasm.memory.grow(1) * PAGE;
  }
  const { memory } = wasm;
  const lacking = base + most - memory.buffer.byteLength;
  if (lacking > 0) memory.grow(Math.ceil(lacking / PAGE));
  if (cells?.buffer !== memory.buffer) {
    cells = new Float64Array(memory.buffer, wasm.desk(), RESULTS + ROWS);
    places = new Int32Array(memory.buffer, base);
    bytes = new Uint8Array(memory.buffer, base);
  }
  return wasm;
}

/** Leaves a text in the room; how many bytes it has. */
function put(text: string, at: number): number {
  for (let next = 0; next < text.length; next++) {
    const code = text.charCodeAt(next);
    if (code > 127) return encoder.encodeInto(text, bytes.subarray(at)).written;
    bytes[at + next] = code;
  }
  return text.length;
}

/** An input as the wasm reads it: a text, or a unit (none for a plain number) with its number or its column. */
export interface Input {
  readonly text: string;
  readonly numbers?: number | Float64Array;
}

/** Calculates for each row. Gives the results; or code, field, row, value and powers of what was refused. */
export function calculate(
  number: number, inputs: readonly Input[], rows: number, wanted: string, unit: number, bushel: number,
): Float64Array | number[] {
  const count = inputs.length + 1;
  let most = wanted.length;
  for (const { text } of inputs) most += text.length;
  const { begin, rows: run } = ready(count * 12 + most * 3);
  let length = 0;
  for (let input = 0; input < count; input++) {
    const { text, numbers } = inputs[input] ?? { text: wanted };
    const written = put(text, count * 12 + length);
    places[input * 3] = length;
    places[input * 3 + 1] = written;
    places[input * 3 + 2] = numbers === undefined ? 0 : typeof numbers === "number" ? 1 : 2;
    length += written;
    if (typeof numbers === "number") cells[input * ROWS] = numbers;
  }
  const values = new Float64Array(rows);
  let code = begin(base, number, count, length, unit, bushel);
  for (let at = 0; at < rows && code === 0; at += ROWS) {
    const end = Math.min(at + ROWS, rows);
    for (let input = 0; input < inputs.length; input++) {
      const { numbers } = inputs[input] as Input;
      if (typeof numbers === "object") cells.set(rows > ROWS ? numbers.subarray(at, end) : numbers, input * ROWS);
    }
    code = run(end - at, at);
    if (rows === 1) values[0] = cells[RESULTS] as number;
    else if (code === 0) values.set(cells.subarray(RESULTS, RESULTS + end - at), at);
    if (code !== 0) cells[RESULTS + 1]! += at;
  }
  return code === 0 ? values : [code, ...cells.subarray(RESULTS, RESULTS + 15)];
}

/** What a unit may have been meant to be; empty when nothing is near. */
export function suggest(unit: string): string {
  const { suggest } = ready(unit.length * 3);
  if (suggest(base, put(unit, 0)) === 0) return "";
  const [at = 0, length = 0] = cells.subarray(RESULTS);
  return text(wasm!, at, length);
}
