/** Values as a person would write them. @module */

/**
 * Nearest multiple of a step.
 *
 * @example
 * ```ts
 * import { assertEquals } from "@std/assert";
 * import { roundTo } from "./round.ts";
 *
 * assertEquals(roundTo(2.1478, 0.01), 2.15);
 * ```
 *
 * @param value any number
 * @param step greater than 0, in the unit of the value
 */
export function roundTo(value: number, step: number): number {
  return roundToDecimals(Math.round(value / step) * step, 6);
}

/**
 * Nearest number with so many significant figures.
 *
 * @example
 * ```ts
 * import { assertEquals } from "@std/assert";
 * import { roundToFigures } from "./round.ts";
 *
 * assertEquals(roundToFigures(0.0123456, 3), 0.0123);
 * ```
 *
 * @param value any number
 * @param figures count, 1 to 100
 */
export function roundToFigures(value: number, figures: number): number {
  return Number(value.toPrecision(figures));
}

/**
 * Nearest number with so many decimals.
 *
 * @example
 * ```ts
 * import { assertEquals } from "@std/assert";
 * import { roundToDecimals } from "./round.ts";
 *
 * assertEquals(roundToDecimals(1.2345, 2), 1.23);
 * ```
 *
 * @param value any number
 * @param decimals count, 0 to 100
 */
export function roundToDecimals(value: number, decimals: number): number {
  return Number(value.toFixed(decimals));
}
