/** A year of temperatures from monthly normals. @module */
import { HOURS_PER_YEAR } from "../basics/mod.ts";
import { MONTH_STARTS, monthOfHour } from "./calendar.ts";
import { curveOfMeans, toMonthlyMeans } from "./monthly_curve.ts";
import { persistentNormal } from "./random_series.ts";
import type { MonthlyNormals } from "./types.ts";

/**
 * Day-to-day memory of the daily mean temperature: between the lag-one correlations of 0.6 to 0.8 of
 * the typical years of Fargo and International Falls (TMY3).
 */
const TEMPERATURE_PERSISTENCE = 0.7;

/**
 * Hourly temperatures with the given monthly means and mean daily swing.
 *
 * Seasonal curve, plus day-to-day departures (autoregression of first order, φ 0.7, standard
 * deviation as given, straight between noons), plus a daily wave of the shape of D. G. Erbs, S. A.
 * Klein, W. A. Beckman, "Estimation of degree-days and ambient temperature bin data from
 * monthly-average temperatures", ASHRAE Journal 25 (1983) 60 (coefficients from memory), larger on clear days.
 * Swing and means are then met: the swing to 0.05 K, the means to rounding.
 *
 * @param normals the normals
 * @param relativeClearness clearness of each day over its month's mean
 * @param seed of the random series
 * @returns 8760 values, degC
 */
export function temperatureFromNormals(
  normals: MonthlyNormals,
  relativeClearness: Float64Array,
  seed: number,
): Float64Array {
  const departures = dayToDay(normals.dayToDaySpread, seed);
  const season = curveOfMeans(normals.meanTemperature);
  const swing = normals.meanDailyMaximum.map((high, month) =>
    high - normals.meanDailyMinimum[month]!
  );
  const scale = [...swing];
  let temperature = season;
  for (let round = 0; round < 12; round++) {
    const wave = Float64Array.from({ length: HOURS_PER_YEAR }, (_, hour) => {
      const clear = Math.sqrt(relativeClearness[Math.floor(hour / 24)]!);
      return scale[monthOfHour(hour)]! * Math.min(1.5, Math.max(0.4, clear)) *
        dailyShape(hour % 24);
    });
    const raw = season.map((value, hour) => value + departures[hour]! + wave[hour]!);
    temperature = toMonthlyMeans(raw, normals.meanTemperature);
    const have = meanDailySwing(temperature);
    scale.forEach((value, month) =>
      scale[month] = Math.max(0, value + (swing[month]! - have[month]!))
    );
  }
  return temperature;
}

/** Mean over each month of the day's highest less the day's lowest. */
export function meanDailySwing(temperature: Float64Array): number[] {
  return Array.from({ length: 12 }, (_, month) => {
    let total = 0;
    const [from, to] = [MONTH_STARTS[month]!, MONTH_STARTS[month + 1]!];
    for (let start = from; start < to; start += 24) {
      const day = temperature.subarray(start, start + 24);
      total += day.reduce((a, b) => Math.max(a, b)) - day.reduce((a, b) => Math.min(a, b));
    }
    return total / ((to - from) / 24);
  });
}

/** Departure from the day's mean over the day's swing, at the middle of an hour. */
function dailyShape(hour: number): number {
  const angle = 2 * Math.PI * (hour + 0.5 - 1) / 24;
  return 0.4632 * Math.cos(angle - 3.805) + 0.0984 * Math.cos(2 * angle - 0.360) +
    0.0168 * Math.cos(3 * angle - 0.822) + 0.0138 * Math.cos(4 * angle - 3.513);
}

function dayToDay(spread: readonly number[], seed: number): Float64Array {
  const variate = persistentNormal(367, TEMPERATURE_PERSISTENCE, seed + 5);
  const spreadOfHour = curveOfMeans(spread);
  return Float64Array.from({ length: HOURS_PER_YEAR }, (_, hour) => {
    const at = (hour + 0.5) / 24 + 0.5;
    const day = Math.floor(at);
    const share = at - day;
    const between = (1 - share) * variate[day]! + share * variate[day + 1]!;
    return Math.max(0, spreadOfHour[hour]!) * between;
  });
}
