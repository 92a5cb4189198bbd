/** Runs of cold days with little sun. @module */
import { dailyMeans } from "./degrees.ts";
import type { ClimateYear, ColdSpell } from "./types.ts";

/**
 * Temperature lift of a house by the sun, K for each W/m² of mean global radiation: 60 % of the
 * light taken in, 6 W/(m² K) lost. Common practice, no source; it only ranks the spells.
 */
export const LIFT_BY_SUN = 0.1;

/**
 * The worst spell of a number of whole days: the one with the lowest mean of temperature plus
 * {@link LIFT_BY_SUN} times global radiation. Spells do not run over the turn of the year.
 *
 * @param year the climate
 * @param days length of the spell, 1 to 365
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
    minTemperature: hours.reduce((least, value) => Math.min(least, value)),
    globalRadiation: meanOf(radiation, startDay, days) * 24 / 1000,
  };
}

function meanOf(series: Float64Array, start: number, length: number): number {
  let total = 0;
  for (let index = start; index < start + length; index++) total += series[index]!;
  return total / length;
}
