/**
 * The calculations of `hilum` for what comes after the treating (how many cells are still alive, what was applied, what goes over
 * the bus), on plain numbers as `hilum/numbers` takes them.
 *
 * @packageDocumentation
 */
export { NumberError } from "./numbers.js";
export * from "../generated/after.js";
