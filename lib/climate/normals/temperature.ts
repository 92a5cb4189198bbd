/** A year of temperatures from monthly normals. @module */
import { HOURS_PER_YEAR, MONTH_FIRST_HOURS, monthOfHour } from "../../basics/mod.ts";
import { curveOfMeans, toMonthlyMeans } from "./monthly_curve.ts";
import { persistentNormal } from "./random_series.ts";
import type { MonthlyNormals } from "../types.ts";

/**
 * Day-to-day memory of the daily mean temperature: between the lag-one correlations of 0.6 to 0.8 of
 * the typical years of Fargo and International Falls (TMY3).
 */
const TEMPERATURE_PERSISTENCE = 0.7;

/** Swings are met to this, K, in at most so many rounds. */
const SWING_KEPT = 0.02;
const ROUNDS = 20;

/**
 * Hourly temperatures with the given monthly means and mean daily swing.
 *
 * Seasonal curve, plus day-to-day departures (autoregression of first order, φ 0.7, standard
 * deviation within months as given, straight between noons), plus a daily wave of the shape of
 * Erbs, Klein & Beckman 1983 [erbs-1983], larger on clear days. Swing and means are then met: the
 * swing to 0.05 K, the means to rounding.
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
  const shape = Array.from({ length: 24 }, (_, hour) => dailyShape(hour));
  const wave = season.map((_, hour) => {
    const clear = Math.sqrt(relativeClearness[Math.floor(hour / 24)]!);
    return Math.min(1.5, Math.max(0.4, clear)) * shape[hour % 24]!;
  });
  let temperature = season;
  for (let round = 0; round < ROUNDS; round++) {
    const raw = season.map((value, hour) =>
      value + departures[hour]! + scale[monthOfHour(hour)]! * wave[hour]!
    );
    temperature = toMonthlyMeans(raw, normals.meanTemperature);
    const have = meanDailySwing(temperature);
    if (have.every((value, month) => Math.abs(value - swing[month]!) < SWING_KEPT)) break;
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
    const [from, to] = [MONTH_FIRST_HOURS[month]!, MONTH_FIRST_HOURS[month + 1]!];
    for (let start = from; start < to; start += 24) {
      let [low, high] = [Infinity, -Infinity];
      for (let hour = start; hour < start + 24; hour++) {
        low = Math.min(low, temperature[hour]!);
        high = Math.max(high, temperature[hour]!);
      }
      total += high - low;
    }
    return total / ((to - from) / 24);
  });
}

/** Departure from the day's mean over the day's swing, at the middle of an hour from 0 to 23; a ratio. */
export function dailyShape(hour: number): number {
  const angle = 2 * Math.PI * (hour + 0.5 - 1) / 24;
  return 0.4632 * Math.cos(angle - 3.805) + 0.0984 * Math.cos(2 * angle - 0.360) +
    0.0168 * Math.cos(3 * angle - 0.822) + 0.0138 * Math.cos(4 * angle - 3.513);
}

/**
 * Spread of daily means within a month that a series of unit spread at noon shows: a day's mean takes
 * 1/8, 3/4 and 1/8 of the noons about it, and a month of 30 dependent days hides part of the spread in
 * its own mean.
 */
function shownSpread(persistence: number): number {
  const ofDay = 0.59375 + 0.375 * persistence + 0.03125 * persistence ** 2;
  const days = 30;
  let together = 1;
  for (let lag = 1; lag < days; lag++) together += 2 * (1 - lag / days) * persistence ** lag;
  return Math.sqrt(ofDay * (1 - together / days));
}

function dayToDay(spread: readonly number[], seed: number): Float64Array {
  const variate = persistentNormal(367, TEMPERATURE_PERSISTENCE, seed + 5);
  const shown = shownSpread(TEMPERATURE_PERSISTENCE);
  const spreadOfHour = curveOfMeans(spread.map((value) => value / shown));
  return Float64Array.from({ length: HOURS_PER_YEAR }, (_, hour) => {
    const at = (hour + 0.5) / 24 + 0.5;
    const day = Math.floor(at);
    const share = at - day;
    const between = (1 - share) * variate[day]! + share * variate[day + 1]!;
    return Math.max(0, spreadOfHour[hour]!) * between;
  });
}
