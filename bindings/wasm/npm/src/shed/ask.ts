import carried from "../../generated/shed_wasm.js";
import { codes } from "../../generated/words.js";
import { lacking, unknown as notKnown } from "../fields.js";
import { HilumError, convert, type Amount, type Quantity } from "../hilum.js";
import { instance } from "../wasm.js";

interface Exports {
  memory: WebAssembly.Memory;
  numbers_for(length: number): number;
  ask(question: number, at: number, length: number): number;
}

/** The questions, in the order of the wasm's list. */
const QUESTIONS = { packs: 0, setting: 1, begin: 2, feed: 3, batches: 4 };

let wasm: Exports | undefined;

/** Numbers in base units in, numbers in base units out; the first is 0, or says what is refused. */
export function ask(question: keyof typeof QUESTIONS, numbers: Float64Array): Float64Array {
  wasm ??= instance<Exports>(carried);
  const at = wasm.numbers_for(numbers.length);
  new Float64Array(wasm.memory.buffer, at, numbers.length).set(numbers);
  const told = wasm.ask(QUESTIONS[question], at, numbers.length);
  const [start = 0, length = 0] = new Uint32Array(wasm.memory.buffer, told, 2);
  return new Float64Array(wasm.memory.buffer, start, length).slice();
}

/** What is measured: its base unit, what to give it in, and an example. */
const KINDS = {
  mass: ["kg", "kg", "lb", "12000 lb"],
  volume: ["m3", "L", "fl oz", "2.5 gal"],
  time: ["s", "h", "h", "24 h"],
  share: ["1", "%", "%", "5 %"],
  rate: ["m3/kg", "mL/100 kg", "fl oz/cwt", "5 fl oz/cwt"],
  flow: ["m3/s", "mL/min", "fl oz/min", "100 mL/min"],
  seedFlow: ["kg/s", "kg/min", "lb/min", "550 lb/min"],
} as const;
export type Kind = keyof typeof KINDS;

/** An object's fields, if it has no others and lacks none that is needed. */
export function fields<Type extends object>(
  place: string, value: Type, needed: readonly string[], optional: readonly string[] = [],
): Type {
  const known = [...needed, ...optional];
  if (typeof value !== "object" || value === null || Array.isArray(value)) {
    throw new HilumError("wrong_type", place, value, `${place}: must be an object with ${known.join(", ")}.`);
  }
  const names = Object.keys(value);
  const unknown = names.find((name) => !known.includes(name));
  if (unknown !== undefined) {
    const field = inside(place, unknown);
    const told = notKnown(place || "inputs", unknown, value, known);
    throw new HilumError("unknown_field", field, (value as Record<string, unknown>)[unknown], told);
  }
  const missing = needed.find((name) => (value as Record<string, unknown>)[name] === undefined);
  if (missing !== undefined) {
    const field = inside(place, missing);
    throw new HilumError("missing", field, undefined, lacking(field, missing, value, [needed]));
  }
  return value;
}

export const inside = (place: string, name: string | number): string => (place ? `${place}.${name}` : String(name));

/** A list, with its items' places. */
export function items<Item>(place: string, list: readonly Item[]): [string, Item][] {
  if (!Array.isArray(list)) throw new HilumError("wrong_type", place, list, `${place}: must be a list.`);
  return list.map((item, at) => [inside(place, at), item as Item]);
}

/** A quantity in base units. */
export function base(place: string, amount: Amount, kind: Kind): number {
  const [unit, , , example] = KINDS[kind];
  try {
    return convert(amount, unit).value;
  } catch (error) {
    if (!(error instanceof HilumError)) throw error;
    const why = error.field === "unit" ? `does not measure this; write it as in "${example}".` : undefined;
    const told = why ? `${JSON.stringify(amount)} ${why}` : error.message.replace(/^[\w.]+: /, "");
    throw new HilumError(error.code, place, amount, `${place}: ${told}`);
  }
}

/** The same, where nothing may be given; NaN says so. */
export const maybe = (place: string, amount: Amount | undefined, kind: Kind): number =>
  amount === undefined ? NaN : base(place, amount, kind);

/** A text in quotation marks, so that "4" is not taken for 4. */
const written = (value: unknown) => (typeof value === "string" ? JSON.stringify(value) : String(value));

/** A plain number, NaN for none. */
export function plain(place: string, value: number | undefined, isWhole = false): number {
  if (value === undefined) return NaN;
  if (typeof value !== "number" || !Number.isFinite(value) || (isWhole && !(Number.isInteger(value) && value >= 0 && value < 2 ** 32))) {
    const wanted = isWhole ? "a whole number of at least 0" : "a finite number";
    throw new HilumError("wrong_type", place, value, `${place}: ${written(value)} must be ${wanted}.`);
  }
  return value;
}

/** One of some words, as its number. */
export function word(place: string, value: string | undefined, words: readonly string[]): number {
  const at = words.indexOf(value ?? (words[0] as string));
  if (at < 0) throw new HilumError("wrong_type", place, value, `${place}: ${written(value)} must be one of ${words.join(", ")}.`);
  return at;
}

export type Units = "metric" | "us" | undefined;

/** A number in base units as a quantity. */
export function given(value: number, kind: Kind, units: Units): Quantity {
  const [unit, metric, us] = KINDS[kind];
  return convert({ value, unit }, units === "us" ? us : metric);
}

/** What the wasm refuses of a place and the value given there. */
export function refused(answer: Float64Array, places: readonly (readonly [string, unknown])[]): HilumError {
  const [code = 0, , at = 0] = answer;
  const name = codes[code] ?? "other";
  const [place, value] = places[at] ?? places[0] ?? ["", undefined];
  return new HilumError(name, place, value, `${place}: ${JSON.stringify(value)} is refused (${name}); ${REMEDIES[name] ?? "look at it again"}.`);
}

const REMEDIES: Record<string, string> = {
  not_positive: "give more than 0",
  negative: "give 0 or more",
  out_of_range: "give a value within 1e-30 and 1e30 base units",
  sizes_of_pack: "give 1 to 8 sizes",
  too_many_sets: "look at the need and what a set covers",
  one_setting: "make the catches at two different settings",
  not_rising: "the flow must rise with the setting; look at the catches",
  needed: "give at least one catch",
};
