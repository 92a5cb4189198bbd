/** Damp air and dripping cover: the water of the free-running house month by month. @module */
import { HOUR, hoursOfMonth, monthlyMeans, monthlySums } from "../basics/mod.ts";
import { isDamp } from "./air/damp_hours.ts";
import type { HouseYear } from "./types.ts";

/** Water of one month. */
export interface HumidityMonth {
  /** 0 to 11 */
  readonly month: number;
  /** mean relative humidity, 0 to 1 */
  readonly meanHumidity: number;
  /** h above 90 % */
  readonly dampHours: number;
  /** kg evaporated by crop and soil */
  readonly evaporated: number;
  /** kg condensed on the cover */
  readonly condensed: number;
}

/**
 * Humidity and water of each month.
 *
 * @param year hourly year of the house
 */
export function humidityByMonth(
  year: Pick<HouseYear, "relativeHumidity" | "evaporated" | "condensed">,
): HumidityMonth[] {
  const mean = monthlyMeans(year.relativeHumidity);
  const evaporated = monthlySums(year.evaporated);
  const condensed = monthlySums(year.condensed);
  return mean.map((meanHumidity, month) => ({
    month,
    meanHumidity,
    dampHours: hoursOfMonth(year.relativeHumidity, month).filter(isDamp).length,
    evaporated: evaporated[month]! * HOUR,
    condensed: condensed[month]! * HOUR,
  }));
}
