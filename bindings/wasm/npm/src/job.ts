/**
 * Whole treating jobs: a job in, a plan out; a run in, an account out.
 *
 * @packageDocumentation
 */
import carried from "../generated/job_wasm.js";
import { version as told } from "../generated/words.js";
import type { Account, Job, Plan, Run } from "../generated/documents.js";
import { HilumError, type Problem } from "./error.js";
import { json } from "./json.js";
import { reading, text as decoded } from "./wasm.js";

export { HilumError, type Problem } from "./error.js";
export { format, type Format } from "./quantity.js";
export type * from "../generated/documents.js";

interface Exports {
  memory: WebAssembly.Memory;
  room(length: number): number;
  plan(at: number, length: number): number;
  account(at: number, length: number): number;
}

let wasm: Exports | undefined;

/** What the wasm makes of a text. */
function made(call: "plan" | "account", text: string): string {
  wasm ??= reading<Exports>(carried);
  const given = new TextEncoder().encode(text);
  const at = wasm.room(given.length);
  new Uint8Array(wasm.memory.buffer, at).set(given);
  const told = wasm[call](at, given.length);
  const [start, length] = new Uint32Array(wasm.memory.buffer, told, 2);
  return decoded(wasm, start ?? 0, length ?? 0);
}

/** The plan of a job, both as JSON text: the very bytes that Rust writes. */
export function planText(job: string): string {
  if (typeof job !== "string") throw whole("wrong_type", job, "must be JSON text");
  return document("plan", job);
}

/** The plan of a job. */
export function plan(job: Job): Plan {
  return JSON.parse(document("plan", json(job))) as Plan;
}

/** The account of a run, both as JSON text: the very bytes that Rust writes. */
export function accountText(run: string): string {
  if (typeof run !== "string") throw whole("wrong_type", run, "must be JSON text");
  return document("account", run);
}

/** The account of a run: what was really applied. */
export function account(run: Run): Account {
  return JSON.parse(document("account", json(run))) as Account;
}

/** The version of the library. */
export function version(): string {
  return told;
}

/** A document is an object; a list is a list of problems. */
function document(call: "plan" | "account", text: string): string {
  // What is no Unicode would be changed on its way, so it is refused before.
  if (!text.isWellFormed()) throw whole("invalid_document", text, "holds half of a surrogate pair");
  const document = made(call, text);
  if (document.startsWith("{")) return document;
  const problems = JSON.parse(document) as Problem[];
  const { pointer = "", value, message = "" } = problems[0] ?? {};
  const place = [pointer || "the document", value === undefined ? message : `${value} ${message}`];
  throw new HilumError("invalid_document", pointer, value, place.join(": "), { problems });
}

function whole(code: string, value: unknown, message: string): HilumError {
  return new HilumError(code, "", value, `the document: ${message}.`);
}
