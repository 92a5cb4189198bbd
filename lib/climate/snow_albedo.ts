/** Albedo of the ground through the year. @module */
import { HOURS_PER_YEAR } from "../basics/mod.ts";
import { MONTH_STARTS, monthOfHour } from "./calendar.ts";
import type { ClimateYear } from "./types.ts";

/** Albedo of bare or grown ground. Liu & Jordan 1963. */
export const BARE_ALBEDO = 0.2;
/** Albedo of lying snow some days old: between fresh 0.8 and old 0.5. Common practice, no source. */
export const SNOW_ALBEDO = 0.65;

/**
 * Albedo of the ground for each hour: that of the file where it has one, else snow in months colder
 * than -3 degC on the mean, bare ground in months warmer than 1 degC, and a mix between.
 *
 * Common practice, no source; in windy dry places the ground may be bare all winter. Give a number of
 * your own where you know the snow.
 *
 * @param climate the year
 * @returns 8760 values, 0 to 1
 */
export function groundAlbedo(climate: ClimateYear): Float64Array {
  if (climate.albedo) return climate.albedo;
  const monthly = Array.from({ length: 12 }, (_, month) => {
    const part = climate.dryBulb.subarray(MONTH_STARTS[month], MONTH_STARTS[month + 1]);
    const mean = part.reduce((sum, value) => sum + value, 0) / part.length;
    const snow = Math.min(1, Math.max(0, (1 - mean) / 4));
    return BARE_ALBEDO + snow * (SNOW_ALBEDO - BARE_ALBEDO);
  });
  return Float64Array.from({ length: HOURS_PER_YEAR }, (_, hour) => monthly[monthOfHour(hour)]!);
}
