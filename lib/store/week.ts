/** Seven days of the store, day by day. @module */
import { sum } from "d3-array";
import { weekAroundLowest } from "../basics/mod.ts";
import type { ClimateYear } from "../climate/types.ts";
import type { StoreResult } from "./types.ts";

/** One day of the week. */
export interface StoreDay {
  /** hour index of its first hour; may run past the year's end */
  readonly hour: number;
  /** degC, lowest hour outdoors */
  readonly outdoorsLowest: number;
  /** degC, lowest hour in the house with the fan always off */
  readonly noFanLowest: number;
  /** degC, lowest hour in the house with the store */
  readonly storeLowest: number;
  /** kWh of sensible heat into the soil, less what is given back */
  readonly sensible: number;
  /** kWh of latent heat into the soil, less what is given back */
  readonly latent: number;
}

/** The week and its days. */
export interface StoreWeek {
  /** hour index of the first hour */
  readonly start: number;
  /** seven days */
  readonly days: readonly StoreDay[];
}

/**
 * Seven days from an hour on, over New Year where needed.
 *
 * @param result hourly years of the store chapter
 * @param climate the weather of the year
 * @param start hour index; the week around the coldest hour with the fan always off unless given
 */
export function storeWeek(
  result: Pick<StoreResult, "year" | "noFan">,
  climate: Pick<ClimateYear, "dryBulb">,
  start: number = weekAroundLowest(result.noFan.airTemperature),
): StoreWeek {
  const { year, noFan } = result;
  const days = Array.from({ length: 7 }, (_, day): StoreDay => {
    const hour = start + day * 24;
    const of = (series: Float64Array) =>
      Array.from({ length: 24 }, (_, k) => series[(hour + k) % series.length]!);
    return {
      hour,
      outdoorsLowest: Math.min(...of(climate.dryBulb)),
      noFanLowest: Math.min(...of(noFan.airTemperature)),
      storeLowest: Math.min(...of(year.house.airTemperature)),
      sensible: sum(of(year.sensible)) / 1000,
      latent: sum(of(year.latent)) / 1000,
    };
  });
  return { start, days };
}
