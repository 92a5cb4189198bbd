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
  return Number((Math.round(value / step) * step).toFixed(6));
}
