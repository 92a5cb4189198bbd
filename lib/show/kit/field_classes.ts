/** Colour classes that fit the values of a field. @module */
import { ticks } from "d3-array";
import type { ColourClasses } from "./carpet.ts";
import { GROUND_CLASSES, RADIATION_CLASSES } from "./palette.ts";

// light is cool, dark is warm: the radiation colours the other way round, without the night
const WARMING = RADIATION_CLASSES.colours.slice(1).reverse();

/**
 * Classes for ground temperatures: those around freezing where anything freezes, else even steps
 * over the span of the values.
 */
export function groundClasses(series: readonly ArrayLike<number>[]): ColourClasses {
  let low = Infinity;
  let high = -Infinity;
  for (const values of series) {
    for (let index = 0; index < values.length; index++) {
      low = Math.min(low, values[index]!);
      high = Math.max(high, values[index]!);
    }
  }
  if (!(low > 0)) return GROUND_CLASSES;
  const inner = ticks(low, high, 5).filter((limit) => limit > low && limit < high);
  const thresholds = inner.slice(0, WARMING.length - 1);
  if (thresholds.length === 0) return GROUND_CLASSES;
  return { thresholds, colours: WARMING.slice(0, thresholds.length + 1) };
}
