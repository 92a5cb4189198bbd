/** Runs of cold days with little sun. @module */
import { min } from "d3-array";
import { dailyMeans } from "../basics/mod.ts";
import type { ClimateYear, ColdSpell } from "./types.ts";

/**
 * Temperature lift of a house by the sun, K for each W/m² of mean global radiation: 60 % of the
 * light taken in, 6 W/(m² K) lost. Common practice, no source; it only ranks the spells.
 */
const LIFT_BY_SUN = 0.1;

/**
 * The worst spell of a number of whole days: the one with the lowest mean of temperature plus
 * {@link LIFT_BY_SUN} times global radiation. Spells do not run over the turn of the year.
 *
 * @param year the climate
 * @param days length of the spell in days, 1 to 365
 * @returns the spell
 */
export function coldSpells(year: ClimateYear, days: number): ColdSpell {
  const temperature = dailyMeans(year.dryBulb);
  const radiation = dailyMeans(year.globalHorizontal);
  const load = temperature.map((value, day) => value + LIFT_BY_SUN * radiation[day]!);
  let startDay = 0;
  let worst = Infinity;
  for (let start = 0; start + days <= load.length; start++) {
    const total = meanOf(load, start, days);
    if (total < worst) [worst, startDay] = [total, start];
  }
  const hours = year.dryBulb.subarray(startDay * 24, (startDay + days) * 24);
  return {
    length: days,
    startDay,
    meanTemperature: meanOf(temperature, startDay, days),
    minTemperature: min(hours)!,
    globalRadiation: meanOf(radiation, startDay, days) * 24 / 1000,
  };
}

/** Limits of a day that is both cold and dark. */
export interface ColdDarkLimits {
  /** degC, daily mean below which a day counts as cold */
  readonly temperature: number;
  /** kWh/m² a day on the horizontal, below which a day counts as dark */
  readonly radiation: number;
}

/** A run of days. */
export interface DayRun {
  /** first day, 0 to 364 */
  readonly startDay: number;
  /** days */
  readonly length: number;
}

/**
 * The longest run of days each colder and darker than the limits.
 *
 * @param year the climate
 * @param limits what counts as cold and as dark
 * @returns the first of the longest runs; length 0 where no day counts
 */
export function longestColdDarkRun(year: ClimateYear, limits: ColdDarkLimits): DayRun {
  const temperature = dailyMeans(year.dryBulb);
  const radiation = dailyMeans(year.globalHorizontal);
  let longest: DayRun = { startDay: 0, length: 0 };
  let length = 0;
  temperature.forEach((value, day) => {
    const dark = radiation[day]! * 24 / 1000 < limits.radiation;
    length = value < limits.temperature && dark ? length + 1 : 0;
    if (length > longest.length) longest = { startDay: day - length + 1, length };
  });
  return longest;
}

function meanOf(series: Float64Array, start: number, length: number): number {
  let total = 0;
  for (let index = start; index < start + length; index++) total += series[index]!;
  return total / length;
}
