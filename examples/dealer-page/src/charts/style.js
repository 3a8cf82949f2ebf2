import * as Plot from "@observablehq/plot";

/** As wide as its section, and not so tall that a phone shows half of it. */
export function plot(options) {
  const width = Math.max(280, document.querySelector("#plan").clientWidth - 32);
  const drawn = Plot.plot({ width, marginLeft: Math.min(130, width * 0.28), marginBottom: 42, style: { fontSize: "12px", background: "none" }, ...options });
  return drawn;
}

export { Plot };

/** The wall clock of an instant, whatever zone the reader is in. */
export const wall = (instant) => new Date(`${instant.slice(0, 19)}Z`);

export const short = (text, length = 20) => (text.length > length ? `${text.slice(0, length - 1)}…` : text);
