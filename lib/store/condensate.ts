/** Water that the air leaves in the tubes. @module */
import { sum } from "d3-array";

/** Water in the tubes of the whole field. */
export interface Condensate {
  /** kg a year condensed less evaporated: what has to run off or soak away */
  readonly net: number;
  /** kg condensed on the wettest day, midnight to midnight */
  readonly wettestDay: number;
}

/**
 * Water of the year and of the wettest day.
 *
 * @param condensate 8760 hourly values, kg condensed (+) or evaporated (−)
 */
export function condensateOfYear(condensate: Float64Array): Condensate {
  const days = Array.from(
    { length: 365 },
    (_, day) => sum(condensate.subarray(24 * day, 24 * day + 24), (kg) => Math.max(0, kg)),
  );
  return { net: sum(condensate), wettestDay: Math.max(...days) };
}
