// What is said of the fields of an object: those that are lacking, and those that nobody knows.

const list = (names: readonly string[]): string => names.join(", ").replace(/, ([^,]+)$/, " and $1");

/** What is lacking, what there is, and what to do about it. */
export function lacking(place: string, name: string, fields: object, ways: readonly (readonly string[])[]): string {
  const given = Object.entries(fields).flatMap(([name, value]) => (value === undefined ? [] : name));
  const only = given.length > 0 ? `only ${list(given)} ${given.length > 1 ? "are" : "is"} given` : "nothing is given";
  return `${place}: is ${name in fields ? "undefined" : "missing"}, ${only}; give ${ways.map(list).join(", or ")}.`;
}

/** A field that nobody knows; when just one of those that are known is not given, that may have been meant. */
export function unknown(place: string, name: string, fields: object, known: readonly string[]): string {
  const left = known.filter((name) => !(name in fields));
  return `${place}: there is no field "${name}"; ${left.length === 1 ? `did you mean "${left[0]}"?` : `the fields are ${list(known)}.`}`;
}
