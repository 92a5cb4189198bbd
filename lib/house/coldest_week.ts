/** The week around the coldest hour of the house alone, day by day. @module */
import { sum } from "d3-array";
import { weekAroundLowest } from "../basics/mod.ts";

/** One day of the week. */
export interface ColdDay {
  /** hour index of its midnight */
  readonly hour: number;
  /** degC, lowest hour outdoors */
  readonly outdoorsLowest: number;
  /** degC, lowest hour in the house */
  readonly insideLowest: number;
  /** degC, highest hour in the house */
  readonly insideHighest: number;
  /** kWh/m² on the horizontal */
  readonly radiation: number;
  /** kWh to hold the set point */
  readonly heatDemand: number;
}

/** The week and its days. */
export interface ColdestWeek {
  /** hour index of the first midnight */
  readonly start: number;
  /** seven days */
  readonly days: readonly ColdDay[];
}

/** Hourly series of the year. */
export interface WeekSeries {
  /** degC */
  readonly outdoors: Float64Array;
  /** W/m² on the horizontal */
  readonly radiation: Float64Array;
  /** degC in the free-running house */
  readonly inside: Float64Array;
  /** W to hold the set point */
  readonly heater: Float64Array;
}

/**
 * The seven days around the coldest hour in the house.
 *
 * @param series hourly series of the year
 */
export function coldestWeek(series: WeekSeries): ColdestWeek {
  const start = weekAroundLowest(series.inside);
  const days = Array.from({ length: 7 }, (_, day): ColdDay => {
    const hour = start + day * 24;
    const of = (values: Float64Array) => values.subarray(hour, hour + 24);
    const inside = of(series.inside);
    return {
      hour,
      outdoorsLowest: Math.min(...of(series.outdoors)),
      insideLowest: Math.min(...inside),
      insideHighest: Math.max(...inside),
      radiation: sum(of(series.radiation)) / 1000,
      heatDemand: sum(of(series.heater)) / 1000,
    };
  });
  return { start, days };
}
