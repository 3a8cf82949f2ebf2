// Places in a document: ["orders", 0, "sowing", "rate"] ↔ "/orders/0/sowing/rate".

export const pointer = (path) =>
  path.map((part) => `/${String(part).replaceAll("~", "~0").replaceAll("/", "~1")}`).join("");

export const get = (document, path) => path.reduce((value, part) => value?.[part], document);

/** A copy of the document with a value at a place; undefined takes it away, with objects that it leaves empty. */
export function set(document, [part, ...rest], value) {
  const inside = rest.length ? set(document?.[part] ?? (typeof rest[0] === "number" ? [] : {}), rest, value) : value;
  const copy = Array.isArray(document) ? [...document] : { ...document };
  const isEmpty = inside !== null && typeof inside === "object" && Object.keys(inside).length === 0;
  if (inside === undefined || (isEmpty && typeof part === "string" && rest.length)) delete copy[part];
  else copy[part] = inside;
  return copy;
}

/** A copy of the document without one item of a list. */
export function without(document, path, index) {
  const items = get(document, path).filter((_, at) => at !== index);
  return set(document, path, items.length || path.length === 1 ? items : undefined);
}
