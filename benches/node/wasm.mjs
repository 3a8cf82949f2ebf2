// What a calculation through the npm package takes over the same formula written by hand in JavaScript.
// Prints `name ratio spread`, a line each: the median of the ratios of rounds in one run, and how far apart the
// middle half of them lies. `cargo xtask wasm` builds the package before.
import { rate, seed } from "../../bindings/wasm/npm/dist/hilum.js";
import * as numbers from "../../bindings/wasm/npm/dist/numbers.js";

const ROUNDS = 31;
let kept = 0;

/** Both in turn, so that the machine's moods fall on both. */
function compare(name, ours, theirs) {
  const time = (run) => {
    const start = performance.now();
    kept += run();
    return performance.now() - start;
  };
  for (let n = 0; n < 5; n++) (time(ours), time(theirs));
  const ratios = Array.from({ length: ROUNDS }, () => time(ours) / time(theirs)).sort((a, b) => a - b);
  const at = (share) => ratios[Math.floor(share * (ROUNDS - 1))];
  console.log(`${name} ${at(0.5).toFixed(2)} ${(at(0.75) - at(0.25)).toFixed(2)}`);
}

/** Sums a formula over many inputs, so that none of them can be left out. */
const sum = (calls, formula) => () => {
  let total = 0;
  for (let n = 1; n <= calls; n++) total += formula(n);
  return total;
};

const CALLS = 1_000_000;
// What the formula does by hand, without looking at its inputs.
const count = (mass, size) => mass * size;
const perUnit = (dose, size, unit) => (dose / size) * unit;
const logLinear = (d, time, at, z, temperature) => (-time * 10 ** ((temperature - at) / z)) / d;

compare("scalar_count", sum(CALLS, (n) => numbers.seed.count(n, 6000)), sum(CALLS, (n) => count(n, 6000)));
compare("scalar_per_unit", sum(CALLS, (n) => numbers.rate.perUnit(n * 1e-9, 6000, 140000)), sum(CALLS, (n) => perUnit(n * 1e-9, 6000, 140000)));
compare("scalar_log_linear", sum(CALLS, (n) => numbers.survival.logLinearWithAt(n, 86400, 10, 20, 15)), sum(CALLS, (n) => logLinear(n, 86400, 10, 20, 15)));
compare(
  "scalar_text",
  sum(CALLS / 100, (n) => rate.needed({ rate: "2.5 fl oz/cwt", mass: { value: n, unit: "lb" } }).value),
  sum(CALLS / 100, (n) => n * 45.359237 * (2.5 * 29.5735295625e-6 / 45.359237)),
);

for (const rows of [1_000, 1_000_000]) {
  const values = Float64Array.from({ length: rows }, (_, at) => at + 1);
  const times = 1_000_000 / rows;
  const column = (run) => () => {
    let last = 0;
    for (let n = 0; n < times; n++) last += run()[rows - 1];
    return last;
  };
  const byHand = column(() => {
    const out = new Float64Array(rows);
    for (let at = 0; at < rows; at++) out[at] = values[at] * 6000;
    return out;
  });
  compare(`columns_numbers_${rows}`, column(() => numbers.seed.count.each(values, 6000)), byHand);
  const factor = 0.45359237 * 6283.1;
  const converted = column(() => {
    const out = new Float64Array(rows);
    for (let at = 0; at < rows; at++) out[at] = values[at] * factor;
    return out;
  });
  compare(`columns_text_${rows}`, column(() => seed.count.each({ mass: { values, unit: "lb" }, size: "6283.1 seeds/kg" }).values), converted);
}
if (Number.isNaN(kept)) throw new Error("a calculation gave no number");
