/**
 * The calculations of `hilum` up to the treating, on plain numbers in base units: kg, m³, s, °C, seeds, CFU and their quotients;
 * shares lie within 0 and 1. For a product that is measured by mass, read kg for m³.
 *
 * @packageDocumentation
 */
export { NumberError, using } from "./position.js";
export * from "../generated/positions.js";
