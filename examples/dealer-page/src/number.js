// Numbers as people read and measure them: few digits, whole pounds, gallons with fluid ounces.
import { numbers } from "./intl.js";

const write = (value, options) => numbers(options).format(value);
const JOIN = "\u00A0";
const SUPERSCRIPT = "⁰¹²³⁴⁵⁶⁷⁸⁹";
const FL_OZ_PER_GAL = 128;
const MOST_DECIMALS = 6;

const fixed = (value, decimals) => write(value, { minimumFractionDigits: decimals, maximumFractionDigits: decimals });
const joined = (number, unit) => `${number}${JOIN}${unit}`.replaceAll(" ", JOIN);

/** So many significant digits, zeros behind the point left out. */
export const short = (value, digits = 4) => write(value, { maximumSignificantDigits: digits });

/** The fewest decimals that keep each number within a thousandth of itself. */
function decimals(values) {
  const fits = (value, decimals) => Math.abs(Number(value.toFixed(decimals)) - value) <= 1e-3 * Math.abs(value);
  for (let many = 0; many <= MOST_DECIMALS; many++) if (values.every((value) => fits(value, many))) return many;
  return undefined;
}

/** A dose, a flow or a share of one column, to within a thousandth of itself. */
export function aligned(values) {
  const many = decimals(values.filter((value) => value !== undefined));
  return values.map((value) => (value === undefined ? undefined : many === undefined ? short(value) : fixed(value, many)));
}

const doses = (outs) => aligned(outs.map((out) => out?.value));

/** A column of quantities: the unit stands at its head where all share it. */
export function column(name, outs, write = doses) {
  const units = new Set(outs.filter(Boolean).map(({ unit }) => unit));
  if (units.size === 1) return [`${name}, ${[...units][0].replaceAll(" ", JOIN)}`, write(outs)];
  return [name, write(outs).map((text, at) => text && joined(text, outs[at].unit))];
}

/** A dose or flow with its unit. */
export const dose = (out) => out && joined(aligned([out.value])[0], out.unit);

/** Whole from 100 on, else three significant digits. */
export const count = (out) => out && (out.value >= 100 ? write(out.value, { maximumFractionDigits: 0 }) : short(out.value, 3));

export const counts = (outs) => outs.map(count);

/** An amount of seed with its unit. */
export const seed = (out) => out && joined(count(out), out.unit);

/** A number of seeds, in millions where there are so many. */
export const seeds = (out) =>
  out && (out.value >= 1e6 ? joined(write(out.value / 1e6, { minimumSignificantDigits: 4, maximumSignificantDigits: 4 }), "M") : count(out));

/** An amount of product as it is measured out. */
export function product(out) {
  if (!out) return undefined;
  const { value, unit } = out;
  if (unit === "fl oz") return gallons(value);
  if (unit === "L" && value < 1) return joined(short(value * 1000), "mL");
  if (unit === "kg" && value < 1) return joined(short(value * 1000), "g");
  if (unit === "lb" && value < 1) return joined(short(value * 16), "oz av");
  return joined(short(value), unit);
}

function gallons(value) {
  // Rounded before it is split, so that 127.99 becomes a gallon.
  const decimals = value < 1000 ? 1 : 0;
  const rounded = Number(value.toFixed(decimals));
  if (rounded < FL_OZ_PER_GAL) return joined(short(value), "fl oz");
  const whole = Math.floor(rounded / FL_OZ_PER_GAL);
  const rest = write(rounded - whole * FL_OZ_PER_GAL, { maximumFractionDigits: 1 });
  return rest === "0" ? joined(write(whole), "gal") : `${joined(write(whole), "gal")}${JOIN}${joined(rest, "fl oz")}`;
}

/** Cells on a seed. */
export function cells(out) {
  if (!out) return undefined;
  if (!(out.value > 0)) return "0";
  const [digits, power] = out.value.toExponential(2).split("e");
  return `${write(Number(digits), { minimumFractionDigits: 2 })}${JOIN}×${JOIN}10${raised(power)}`;
}

/** A whole power as it is written behind a ten. */
export const raised = (power) => String(Number(power)).replace(/\d/g, (digit) => SUPERSCRIPT[digit]).replace("-", "⁻");

/** A setting of a pump. */
export const setting = (value) => (value === undefined ? undefined : fixed(value, 1));

const PERCENT = { style: "percent", minimumFractionDigits: 1, maximumFractionDigits: 1 };
export const percent = (share) => write(share, PERCENT);

/** How far something is off, with its sign. */
export const off = (share) => write(share, { ...PERCENT, signDisplay: "exceptZero" });

export const money = (value, currency = "") => joined(fixed(value, 2), currency).trim();

/** Money without its cents. */
export const roundly = (value, currency = "") => joined(fixed(value, 0), currency).trim();

/** A limit: four significant digits, never rounded up. */
export const atMost = (out) => out && joined(write(out.value, { maximumSignificantDigits: 4, roundingMode: "floor" }), out.unit);
