/** Ratios that may not exist. @module */

/**
 * One value over another, both in the same unit or in two that make sense together.
 *
 * @example
 * ```ts
 * import { assertEquals } from "@std/assert";
 * import { ratio } from "./ratio.ts";
 *
 * assertEquals(ratio(3, 4), 0.75);
 * assertEquals(ratio(0, 0), null);
 * ```
 *
 * @param above any number
 * @param below the whole; a ratio to nothing does not exist
 * @returns above / below; null where `below` is not above 0
 */
export function ratio(above: number, below: number): number | null {
  return below > 0 ? above / below : null;
}
