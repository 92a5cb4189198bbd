/** Hours of damp air and of a dripping cover. @module */
import { HOUR } from "../../basics/mod.ts";
import type { HouseYear } from "../types.ts";

/** Relative humidity above which mould grows on leaves and wood. Common practice, no source. */
export const DAMP = 0.9;

/** kg/h for each m² of floor from which a cover drips instead of misting. Own judgement. */
const DRIPS = 0.01;

/**
 * Whether an hour is damp: the one rule by which months, years and figures count.
 *
 * @param relativeHumidity 0 to 1
 */
export function isDamp(relativeHumidity: number): boolean {
  return relativeHumidity > DAMP;
}

/** How damp a year is. */
export interface DampHours {
  /** h a year with air above {@link DAMP} */
  readonly humid: number;
  /** h a year in which more than 10 g/h of water for each m² of floor condense on the cover */
  readonly dripping: number;
  /** kg of water a year that condenses on the cover */
  readonly condensed: number;
}

/**
 * Counts the damp hours of a year of the house.
 *
 * @param year humidity, 0 to 1, and water condensed on the cover, kg/s, 8760 hours each
 * @param floorArea m²
 */
export function dampHours(
  year: Pick<HouseYear, "relativeHumidity" | "condensed">,
  floorArea: number,
): DampHours {
  let [humid, dripping, condensed] = [0, 0, 0];
  for (const [hour, humidity] of year.relativeHumidity.entries()) {
    const water = year.condensed[hour]! * HOUR;
    if (isDamp(humidity)) humid++;
    if (water > DRIPS * floorArea) dripping++;
    condensed += water;
  }
  return { humid, dripping, condensed };
}
