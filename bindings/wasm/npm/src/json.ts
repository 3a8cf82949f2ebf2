import { HilumError } from "./error.js";

/** JSON text of a document; what JSON.stringify would drop or change is refused instead. */
export function json(document: unknown): string {
  if (typeof document !== "object" || document === null) throw refuse("", document, "is no document; give an object, or JSON text to planText or accountText");
  look(document, "", 0);
  return JSON.stringify(document);
}

function look(value: unknown, pointer: string, depth: number): void {
  if (value === null || typeof value === "string" || typeof value === "boolean") return;
  if (typeof value === "number" && Number.isFinite(value)) return;
  if (depth > 64) throw refuse(pointer, value, "is nested too deep, or in a circle");
  if (Array.isArray(value)) {
    for (let at = 0; at < value.length; at++) look(value[at], `${pointer}/${at}`, depth + 1);
    return;
  }
  if (typeof value !== "object" || !isPlain(value)) {
    throw refuse(pointer, value, "is nothing that JSON can write; leave the field out, or write null");
  }
  for (const [name, inside] of Object.entries(value)) {
    look(inside, `${pointer}/${name.replaceAll("~", "~0").replaceAll("/", "~1")}`, depth + 1);
  }
}

function isPlain(value: object): boolean {
  const prototype: unknown = Object.getPrototypeOf(value);
  return prototype === null || Object.getPrototypeOf(prototype) === null;
}

function refuse(pointer: string, value: unknown, message: string): HilumError {
  const shown = typeof value === "object" ? "this value" : String(value);
  const text = `${pointer || "the document"}: ${shown} ${message}`;
  const problem = { pointer, value: shown, message };
  return new HilumError("invalid_document", pointer, value, text, { problems: [problem] });
}
