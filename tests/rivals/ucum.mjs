// node ucum.mjs FILE: every unit and every quotient of units, by its UCUM code, against a UCUM library; FILE is from units.py.
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";

const { UcumLhcUtils } = createRequire(`${process.cwd()}/`)("@lhncbc/ucum-lhc");
const rival = UcumLhcUtils.getInstance();
const { units, grid, kinds, dimensions } = JSON.parse(readFileSync(process.argv[2], "utf8"));

// Its table writes customary units with up to 15 digits.
const CLOSE = 1e-12;
// Seeds have no code in UCUM: an annotation, which counts as 1. Its [CFU] is an arbitrary unit, which no library may convert, not
// even to itself: cells are left out here, and pint has them.
const base = { mass: "kg", volume: "m3", area: "m2", time: "s", temperature: "K", seeds: "{seeds}" };
const dimension = (unit) => Object.keys(dimensions).find((name) => dimensions[name].join() === unit.powers.join());

let [compared, worst] = [0, 0];
const wrong = [];
const compare = (what, ours, theirs) => {
  compared += 1;
  const off = Math.abs(ours - theirs) / Math.max(Math.abs(theirs), Number.MIN_VALUE);
  worst = Math.max(worst, off);
  if (!(off <= CLOSE)) wrong.push(`${what}: ${ours} here, ${theirs} there (${off.toExponential(1)})`);
};
const convert = (from, value, to) => {
  const { status, toVal, msg } = rival.convertUnitTo(from, value, to);
  if (status !== "succeeded") throw new Error(`${from} to ${to}: ${status} ${msg}`);
  return toVal;
};

// The codes of the scales of temperature are points there, and differences here.
const isScale = (unit) => unit.ucum === "[degF]" || unit.ucum === "Cel";
const known = units.filter((unit) => base[dimension(unit)] && !isScale(unit));
for (const unit of known) {
  for (const value of grid) compare(unit.ucum, value * unit.factor, convert(unit.ucum, value, base[dimension(unit)]));
}
const pairs = new Set(Object.values(kinds).map(([above, below]) => `${above}/${below}`));
for (const [above, below] of [...pairs].map((pair) => pair.split("/"))) {
  for (const a of known.filter((unit) => dimension(unit) === above)) {
    for (const b of known.filter((unit) => dimension(unit) === below)) {
      for (const value of grid) {
        const theirs = convert(`${a.ucum}/(${b.ucum})`, value, `${base[above]}/(${base[below]})`);
        compare(`${a.ucum}/(${b.ucum})`, (value * a.factor) / b.factor, theirs);
      }
    }
  }
}
console.log(`${known.length} units, ${compared} values against @lhncbc/ucum-lhc, the worst ${worst.toExponential(1)} apart`);
for (const problem of wrong.slice(0, 20)) console.log(problem);
process.exit(wrong.length > 0 ? 1 : 0);
