// Places in a document: ["orders", 0, "sowing", "rate"] ↔ "/orders/0/sowing/rate".

export const pointer = (path) =>
  path.map((part) => `/${String(part).replaceAll("~", "~0").replaceAll("/", "~1")}`).join("");

export const get = (document, path) => path.reduce((value, part) => value?.[part] ?? undefined, document);

const isEmptied = (value) => value !== null && typeof value === "object" && Object.keys(value).length === 0;

/** A copy of the document with a value at a place; undefined takes it away, with objects that it leaves empty. */
export function set(document, [part, ...rest], value) {
  const isItem = typeof part === "number";
  // Nothing is taken away where there is nothing.
  if (value === undefined && !isItem && document?.[part] === undefined) return document;
  const start = typeof rest[0] === "number" ? [] : {};
  const inside = rest.length ? set(document?.[part] ?? start, rest, value) : value;
  const copy = Array.isArray(document) ? [...document] : { ...document };
  if (isItem) copy[part] = inside ?? "";
  else if (inside === undefined || (rest.length && isEmptied(inside))) delete copy[part];
  else copy[part] = inside;
  return copy;
}

/** A copy of the document without one item of a list; a list of the document itself stays, empty. */
export function without(document, path, index) {
  const items = [get(document, path)].flat().filter((_, at) => at !== index);
  return set(document, path, items.length || path.length === 1 ? items : undefined);
}

/** A document as text. What is no number of JSON is left as a word, to be refused by name: JSON itself would leave it out. */
export const written = (document, space) =>
  JSON.stringify(document, (_, value) => (typeof value === "number" && !Number.isFinite(value) ? String(value) : value), space);
