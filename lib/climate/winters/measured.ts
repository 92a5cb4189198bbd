/** Winters out of measured years, as they are. @module */
import { FIRST_OF_JULY, requireInRange } from "../../basics/mod.ts";
import type { ClimateYear } from "../types.ts";
import { HOURLY_SERIES } from "../weather.ts";

/**
 * One winter of measured years: July to December of a year and January to June of the next, in calendar
 * order like a winter that is made. Long-wave radiation and albedo are there where both years have
 * them.
 *
 * @param years that follow one another, the oldest first
 * @param winter place of the winter, from 0: that between the years of this place and the next
 */
export function measuredWinter(years: readonly ClimateYear[], winter: number): ClimateYear {
  requireInRange("place of the winter", winter, 0, years.length - 2, "winters");
  const [old, young] = [years[winter]!, years[winter + 1]!];
  const series = HOURLY_SERIES.map((key) => {
    const [late, early] = [old[key], young[key]];
    if (late == null || early == null) return [key, null] as const;
    const joined = late.slice();
    joined.set(early.subarray(0, FIRST_OF_JULY));
    return [key, joined] as const;
  });
  const derived = [
    ...young.derivedMonths?.filter((month) => month <= 6) ?? [],
    ...old.derivedMonths?.filter((month) => month > 6) ?? [],
  ];
  return {
    ...old,
    ...Object.fromEntries(series),
    source: `July to December of ${old.source}, January to June of ${young.source}`,
    derivedMonths: derived,
    normals: undefined,
    notices: [],
  };
}
