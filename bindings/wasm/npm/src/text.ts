import carried from "../generated/text_wasm.js";
import { instance, text } from "./wasm.js";

interface Exports {
  memory: WebAssembly.Memory;
  calculate(
    base: number, number: number, rows: number, numbers: number, places: number, text: number, unit: number, bushel: number,
  ): number;
  suggest(base: number, length: number): number;
}

const PAGE = 65536;
let wasm: Exports | undefined;
/** Behind all that the wasm itself uses. */
let base = 0;

function ready(): Exports {
  if (wasm === undefined) {
    wasm = instance<Exports>(carried);
    base = wasm.memory.grow(1) * PAGE;
  }
  return wasm;
}

/** So many bytes from the base on. */
function room(bytes: number): ArrayBuffer {
  const { memory } = ready();
  const lacking = base + bytes - memory.buffer.byteLength;
  if (lacking > 0) memory.grow(Math.ceil(lacking / PAGE));
  return memory.buffer as ArrayBuffer;
}

/** An input as the wasm reads it: a text, or a unit (none for a plain number) with its numbers. */
export interface Input {
  readonly text: string;
  readonly numbers?: ArrayLike<number>;
  readonly isColumn?: boolean;
}

/** Calculates for each row. Gives the results; or code, field, row, value and powers of what was refused. */
export function calculate(
  number: number, inputs: readonly Input[], rows: number, wanted: string, unit: number, bushel: number,
): { refused?: number[]; values: Float64Array } {
  const texts = [...inputs.map((input) => input.text), wanted].map((text) => new TextEncoder().encode(text));
  let numbers = Math.max(rows, 16);
  const first = inputs.map(({ numbers: own }) => {
    const at = numbers;
    numbers += own?.length ?? 0;
    return own ? at : -1;
  });
  const length = texts.reduce((sum, text) => sum + text.length, 0);
  const start = numbers * 8 + texts.length * 16;
  const buffer = room(start + length);
  const cells = new Float64Array(buffer, base, numbers);
  const places = new Int32Array(buffer, base + numbers * 8, texts.length * 4);
  let at = 0;
  texts.forEach((text, input) => {
    const { numbers: own, isColumn } = inputs[input] ?? {};
    if (own) cells.set(own, first[input]);
    places.set([at, text.length, first[input] ?? -1, isColumn ? 1 : 0], input * 4);
    new Uint8Array(buffer, base + start + at).set(text);
    at += text.length;
  });
  const code = ready().calculate(base, number, rows, numbers, texts.length, length, unit, bushel);
  if (code === 0) return { values: cells.slice(0, rows) };
  return { refused: [code, ...cells.subarray(0, 15)], values: cells };
}

/** What a unit may have been meant to be; empty when nothing is near. */
export function suggest(unit: string): string {
  const bytes = new TextEncoder().encode(unit);
  const buffer = room(16 + bytes.length);
  new Uint8Array(buffer, base + 16).set(bytes);
  if (ready().suggest(base, bytes.length) === 0) return "";
  const [at = 0, length = 0] = new Float64Array(buffer, base, 2);
  return text(ready(), at, length);
}
