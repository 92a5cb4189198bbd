/** A whole year made from twelve monthly normals. @module */
import {
  saturationPressure,
  saturationPressureOverWater,
  standardPressure,
} from "../../air/mod.ts";
import {
  dailyMeans,
  HOURS_PER_YEAR,
  MONTH_DAYS,
  MONTH_FIRST_HOURS,
  MONTH_NAMES,
  monthlySums,
  monthOfHour,
  type Notice,
  notice,
} from "../../basics/mod.ts";
import { hourlySun } from "../../sun/mod.ts";
import { showBoth, showSi } from "../../units/mod.ts";
import { radiationFromNormals } from "./radiation.ts";
import { temperatureFromNormals } from "./temperature.ts";
import { normalProbability, persistentNormal } from "./random_series.ts";
import type { ClimateYear, MonthlyNormals, Place } from "../types.ts";

/** Hour-to-hour memory of the wind. Common practice, no source. */
const WIND_PERSISTENCE = 0.9;

/**
 * A year of hourly weather with the given monthly normals; the same seed gives the same year.
 *
 * Radiation as in {@link radiationFromNormals}, temperature as in {@link temperatureFromNormals}.
 * Humidity: the vapour pressure of a day is steady and never above saturation (over ice in frost);
 * monthly means are met as far as that lets them. Wind: a Weibull distribution of shape 2 with memory.
 * Pressure: the standard atmosphere at the elevation.
 *
 * Not in it: fronts, weather that links wind, temperature and cloud, and the rare extremes; a measured
 * cold winter should be run beside it.
 *
 * @param normals twelve monthly normals
 * @param place where
 * @param seed whole number that picks the year
 * @returns the year
 */
export function yearFromNormals(normals: MonthlyNormals, place: Place, seed: number): ClimateYear {
  const sun = hourlySun(place);
  const { relativeClearness, ...radiation } = radiationFromNormals(
    normals.globalRadiation,
    sun,
    seed,
  );
  const dryBulb = temperatureFromNormals(normals, relativeClearness, seed);
  const notices = [
    notice(
      "info",
      "climate",
      "The year is generated from twelve monthly normals: it has their means, daily swings and ordinary " +
        "cold spells, but no rare extremes; run a measured cold winter as well",
    ),
    ...unmetRadiation(normals.globalRadiation, radiation.globalHorizontal, place),
  ];
  return {
    place,
    source: `monthly normals, seed ${seed}`,
    layout: "normals",
    dryBulb,
    relativeHumidity: humidityFromNormals(normals.relativeHumidity, dryBulb),
    ...radiation,
    windSpeed: windFromNormals(normals.windSpeed, seed),
    pressure: new Float64Array(HOURS_PER_YEAR).fill(standardPressure(place.elevation)),
    skyLongwave: null,
    albedo: null,
    derivedMonths: Array.from({ length: 12 }, (_, month) => month + 1),
    notices,
  };
}

/** Share of a month's radiation, and kWh/m² a day, that may be missing without a word. */
const UNMET = { share: 0.02, most: 0.02 };

/** Months for which the normals ask for more light than the sun gives at the place. */
function unmetRadiation(
  means: readonly number[],
  global: Float64Array,
  place: Place,
): readonly Notice[] {
  const made = monthlySums(global).map((sum, month) => sum / 1000 / MONTH_DAYS[month]!);
  const short = means.map((mean, month) => mean - made[month]!);
  const months = [...short.keys()].filter((month) =>
    short[month]! > Math.max(UNMET.most, UNMET.share * means[month]!)
  );
  if (months.length === 0) return [];
  const shown = months.map((month) =>
    `${showBoth(means[month]!, "dailyRadiation")} in ${
      MONTH_NAMES[month]
    }, where the sun can give ` +
    showSi(made[month]!, "dailyRadiation")
  );
  return [notice(
    "warning",
    "climate",
    `At latitude ${place.latitude} deg the normals give more radiation than is possible: ` +
      `${shown.join("; ")}. The possible amount is used: check latitude and normals`,
  )];
}

/**
 * Relative humidity whose monthly means are the given ones as far as saturation lets them.
 *
 * @param means 0 to 1, twelve values
 * @param dryBulb degC by hour
 */
export function humidityFromNormals(means: readonly number[], dryBulb: Float64Array): Float64Array {
  const daily = dailyMeans(dryBulb);
  const overWater = dryBulb.map(saturationPressureOverWater);
  const highest = dryBulb.map((temperature, hour) =>
    Math.min(1, saturationPressure(temperature) / overWater[hour]!)
  );
  const dailySaturation = daily.map(saturationPressureOverWater);
  const result = new Float64Array(HOURS_PER_YEAR);
  for (let month = 0; month < 12; month++) {
    let scale = means[month]!;
    const [from, to] = [MONTH_FIRST_HOURS[month]!, MONTH_FIRST_HOURS[month + 1]!];
    for (let round = 0; round < 40; round++) {
      let total = 0;
      for (let hour = from; hour < to; hour++) {
        const vapour = scale * dailySaturation[Math.floor(hour / 24)]!;
        result[hour] = Math.min(highest[hour]!, vapour / overWater[hour]!);
        total += result[hour]!;
      }
      const factor = means[month]! / (total / (to - from));
      if (Math.abs(factor - 1) < 1e-6) break;
      scale *= factor;
    }
  }
  return result;
}

function windFromNormals(means: readonly number[], seed: number): Float64Array {
  const variate = persistentNormal(HOURS_PER_YEAR, WIND_PERSISTENCE, seed + 4);
  const shape = variate.map((value) => Math.sqrt(-Math.log(1 - normalProbability(value))));
  const total = new Float64Array(12);
  shape.forEach((value, hour) => total[monthOfHour(hour)]! += value);
  return shape.map((value, hour) => {
    const month = monthOfHour(hour);
    const mean = total[month]! / (MONTH_FIRST_HOURS[month + 1]! - MONTH_FIRST_HOURS[month]!);
    return means[month]! * value / mean;
  });
}
