/** The typical year: one made year that keeps the monthly normals. @module */
import { MONTH_DAYS, MONTH_NAMES, monthlySums, type Notice, notice } from "../../basics/mod.ts";
import { showBoth, showSi } from "../../units/mod.ts";
import type { ClimateYear, MonthlyNormals, Place } from "../types.ts";
import { makeWinter, typicalClimate } from "./winter.ts";

/**
 * A year of hourly weather with the given monthly normals; the same seed gives the same year.
 *
 * It is the first winter of the seed as {@link makeWinter} makes it, from 1 July to 30 June in the
 * order of the calendar, with every month brought to the normals: the mean of the temperature, its
 * mean daily swing, the light and the wind. Days keep their spread, their memory and the link of
 * clear and cold. Winters of their own months are for odds.
 *
 * @param normals twelve monthly normals
 * @param place where
 * @param seed whole number that picks the year
 * @returns the year
 */
export function yearFromNormals(normals: MonthlyNormals, place: Place, seed: number): ClimateYear {
  const key = { seed, winter: 0 };
  const year = makeWinter(typicalClimate(normals, place, key), key);
  return {
    ...year,
    source: `monthly normals, seed ${seed}`,
    normals,
    notices: [
      notice(
        "info",
        "climate",
        "The year is generated from twelve monthly normals: it has their means, daily swings and ordinary " +
          "cold spells, but no rare extremes; run a measured cold winter as well",
      ),
      ...unmetRadiation(normals.globalRadiation, year.globalHorizontal, place),
    ],
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
