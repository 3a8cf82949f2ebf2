/**
 * Whole treating jobs: a job in, a plan out; a run in, an account out.
 *
 * @packageDocumentation
 */
import { account as accounted, initSync, plan as planned, version as told } from "../generated/job.js";
import carried from "../generated/job_wasm.js";
import type { Account, Job, Plan, Run } from "../generated/documents.js";
import { bytes } from "./bytes.js";
import { HilumError, type Problem } from "./error.js";
import { json } from "./json.js";

export { HilumError, type Problem } from "./error.js";
export { format, type Format } from "./quantity.js";
export type * from "../generated/documents.js";

let isReady = false;

function ready(): void {
  if (isReady) return;
  initSync({ module: bytes(carried) });
  isReady = true;
}

/** The plan of a job, both as JSON text: the very bytes that Rust writes. */
export function planText(job: string): string {
  if (typeof job !== "string") throw whole("wrong_type", job, "must be JSON text");
  return document(planned, job);
}

/** The plan of a job. */
export function plan(job: Job): Plan {
  return JSON.parse(document(planned, json(job))) as Plan;
}

/** The account of a run, both as JSON text: the very bytes that Rust writes. */
export function accountText(run: string): string {
  if (typeof run !== "string") throw whole("wrong_type", run, "must be JSON text");
  return document(accounted, run);
}

/** The account of a run: what was really applied. */
export function account(run: Run): Account {
  return JSON.parse(document(accounted, json(run))) as Account;
}

/** The version of the library. */
export function version(): string {
  ready();
  return told();
}

/** A document is an object; a list is a list of problems. */
function document(make: (text: string) => string, text: string): string {
  ready();
  // What is no Unicode would be changed on its way, so it is refused before.
  if (!text.isWellFormed()) throw whole("invalid_document", text, "holds half of a surrogate pair");
  const made = make(text);
  if (made.startsWith("{")) return made;
  const problems = JSON.parse(made) as Problem[];
  const { pointer = "", value, message = "" } = problems[0] ?? {};
  const place = [pointer || "the document", value === undefined ? message : `${value} ${message}`];
  throw new HilumError("invalid_document", pointer, value, place.join(": "), { problems });
}

function whole(code: string, value: unknown, message: string): HilumError {
  return new HilumError(code, "", value, `the document: ${message}.`);
}
