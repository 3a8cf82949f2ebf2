import { wrong } from "./error.js";

/** A number and its unit, spelled as the trade does (`"fl oz/cwt"`) or in UCUM. */
export interface Quantity {
  readonly value: number;
  readonly unit: string;
}

/** A quantity as it is given: `"2.5 fl oz/cwt"` or `{ value: 2.5, unit: "fl oz/cwt" }`. */
export type Amount = string | Quantity;

/** Many numbers of one unit. */
export interface Column {
  readonly values: Float64Array;
  readonly unit: string;
}

/** How results come out. */
export interface Options {
  /** The unit of the result; `"1"` for a share as a plain number. */
  readonly unit?: string;
  /** Which units to choose from when `unit` is not given; metric when neither is. */
  readonly units?: "metric" | "us";
}

/** How a quantity is shown: the language (the page's by default) and what `Intl.NumberFormat` takes. */
export interface Format extends Intl.NumberFormatOptions {
  readonly locale?: string | readonly string[];
}

/** A quantity for people to read, in the language of the page: four significant digits unless told. */
export function format(quantity: Quantity, how: Format = {}): string {
  if (typeof quantity?.unit !== "string" || !Number.isFinite(quantity.value)) {
    throw wrong("quantity", quantity, "must be a result, { value, unit }");
  }
  const { locale, ...options } = how;
  const page = typeof document === "undefined" ? undefined : document.documentElement.lang || undefined;
  const digits = Object.keys(options).some((name) => /Digits$/.test(name)) ? {} : { maximumSignificantDigits: 4 };
  const number = new Intl.NumberFormat((locale ?? page) as string | undefined, { ...digits, ...options });
  return `${number.format(quantity.value)}\u00A0${quantity.unit}`;
}
