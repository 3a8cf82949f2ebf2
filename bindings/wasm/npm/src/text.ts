import carried from "../generated/text_wasm.js";
import { reading, text as textAt } from "./wasm.js";

interface Exports {
  memory: WebAssembly.Memory;
  /** Where the desk of src/text.rs lies. */
  desk(): number;
  /** Reads the text on the desk; 0, or the code of what is wrong with it. */
  read_text(length: number, isUnit: number): number;
  /** Says what a seed unit or a bushel is. */
  word(which: number, base: number): void;
  looked(check: number, number: number, base: number): number;
  why(): number;
  /** Lays numbers down in base units; 0 where one of them must be looked at. */
  are_usual(field: number, rows: number, above: number, below: number, most: number): number;
  /** Makes results numbers of a unit; 0 where one of them is none. */
  are_finite(rows: number, above: number, below: number): number;
}
/** Calculations of the wasm's, over the first rows on the desk. */
type Calls = Exports & Record<string, ((rows: number) => void) | undefined>;

export const ROWS = 512;
const COLUMNS = 9;
// What lies on the desk behind the columns, counted in numbers of 8 bytes or notes of 4.
export const READ = COLUMNS * ROWS;
const OF = 2 * READ + 6;
export const INPUTS = OF + 2;
export const SAID = INPUTS + 8;
export const WANTED = SAID + 1;
const MEANT = WANTED + 1;
const TEXT = 4 * (MEANT + 2);
/** The most characters of a text; each takes 3 bytes at most. */
const MOST = 999;

/** What measures nothing. */
export const NUMBER = 2 ** 31 - 1;
/** What a calculation says that leaves it to the table, and one whose rows measure different things. */
export const NOTHING = -(2 ** 31);
export const SEVERAL = NOTHING + 1;

/** What a number measures: base units in its unit above the line, and below. */
export interface Scale {
  readonly of: number;
  readonly above: number;
  readonly below: number;
}
export const PLAIN: Scale = { of: NUMBER, above: 1, below: 1 };

const encoder = new TextEncoder();

function begun() {
  // What a wasm exports is slow to look up.
  const wasm: Calls = { ...reading<Calls>(carried) };
  const [{ buffer }, desk] = [wasm.memory, wasm.desk()];
  // The wasm asks for no memory, so that these stay.
  const cells = new Float64Array(buffer, desk, READ + 3);
  const [results, ...columns] = Array.from({ length: COLUMNS }, (_, at) => cells.subarray(at * ROWS, (at + 1) * ROWS)) as [Float64Array, ...Float64Array[]];
  return { wasm, cells, results, columns, notes: new Int32Array(buffer, desk, MEANT + 2), bytes: new Uint8Array(buffer, desk + TEXT, 3 * MOST + 3) };
}

let machine: ReturnType<typeof begun> | undefined;

/** The wasm and what lies on its desk. */
export const ready = (): ReturnType<typeof begun> => (machine ??= begun());

/** An input as it was given: a text, or a unit (none for a plain number) with its number or its column. */
export interface Input {
  readonly text: string;
  readonly numbers?: number | Float64Array;
}

/** What was read last. */
export let scale: Scale = PLAIN;

/** The unit that may have been meant by the one that was refused last. */
export function meant(): string {
  const { wasm, notes } = ready();
  return textAt(wasm, notes[MEANT] as number, notes[MEANT + 1] as number);
}

/** UCUM's unit of a share as a plain number. */
export function one(): 0 {
  scale = { of: 0, above: 1, below: 1 };
  return 0;
}

/** Reads a text or a unit: the number lies among the cells. Gives 0, or the code of what is wrong. */
export function read({ text, numbers }: Input): number {
  scale = PLAIN;
  if (text === "" && numbers !== undefined) return 0;
  const { wasm, cells, notes, bytes } = ready();
  const code = wasm.read_text(put(text.length > MOST ? `${text.slice(0, MOST)}…` : text, bytes), numbers === undefined ? 0 : 1);
  if (code === 0) scale = { of: notes[OF] as number, above: cells[READ + 1] as number, below: cells[READ + 2] as number };
  return code;
}

/** Leaves a text in the room; how many bytes it has. */
function put(text: string, bytes: Uint8Array): number {
  for (let at = 0; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (code > 127) return encoder.encodeInto(text, bytes).written;
    bytes[at] = code;
  }
  return text.length;
}
