/**
 * Typed calculations for treating seed.
 *
 * @packageDocumentation
 */
export { convert, type Calculator, type Columns } from "./calculate.js";
export { HilumError, type Problem } from "./error.js";
export { format, type Amount, type Column, type Format, type Options, type Quantity } from "./quantity.js";
export * from "../generated/calculators.js";
