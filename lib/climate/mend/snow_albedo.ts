/** Albedo of the ground through the year. @module */
import type { ClimateYear } from "../types.ts";

/** Albedo of bare or grassy ground. Liu & Jordan 1963 [liu-jordan-1963]. */
const BARE_ALBEDO = 0.2;
/** Albedo of old snow lying, between 0.5 and 0.8. Common practice, no source. */
const SNOW_ALBEDO = 0.6;
/** degC of the past 30 days' mean below which the ground is taken as white. Common practice, no source. */
const WHITE_BELOW = -3;
const PAST_HOURS = 720;

/**
 * Albedo of the ground for each hour: that of the file where it has one, else snow while the mean of
 * the past 30 days is below -3 degC, and bare ground otherwise.
 *
 * Common practice, no source; in windy dry places the ground may be bare all winter. Give a number of
 * your own where you know the snow.
 *
 * @param climate the year
 * @returns a value for each hour, 0 to 1
 */
export function groundAlbedo(climate: ClimateYear): Float64Array {
  if (climate.albedo) return climate.albedo;
  return meanOfPast30Days(climate.dryBulb).map((mean) =>
    mean < WHITE_BELOW ? SNOW_ALBEDO : BARE_ALBEDO
  );
}

/** Mean of the past 30 days, running through the year's end. */
function meanOfPast30Days(series: Float64Array): Float64Array {
  const hours = series.length;
  const window = Math.min(PAST_HOURS, hours);
  let sum = 0;
  for (let hour = hours - window; hour < hours; hour++) sum += series[hour]!;
  return series.map((value, hour) => {
    sum += value - series[(hour - window + hours) % hours]!;
    return sum / window;
  });
}
