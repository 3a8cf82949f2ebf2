import * as Plot from "@observablehq/plot";

let width;

/** Measures how wide a picture may be; before anything is drawn, because to ask in between lays the page out each time. */
export function measure() {
  width = Math.max(280, document.querySelector("#sheet").clientWidth - 32);
}

export const room = () => width;
export const isNarrow = () => room() < 500;

/** As wide as its section. */
export function plot(options) {
  return Plot.plot({ width, marginLeft: Math.min(130, width * 0.28), marginBottom: 42, style: { fontSize: "13px", background: "none" }, ...options });
}

export { Plot };

export const short = (text, length = 20) => (text.length > length ? `${text.slice(0, length - 1)}…` : text);

/** Space for names on the left. */
export const margin = (names) => Math.min(room() * 0.5, 14 + 7.2 * Math.max(...names.map((name) => name.length)));

/** Items by what they share, in the order of the first of each. */
export function gathered(items, key) {
  const groups = new Map();
  for (const item of items) groups.set(key(item), [...(groups.get(key(item)) ?? []), item]);
  return [...groups.values()];
}
