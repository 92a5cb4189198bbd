/** Monthly normals as one year has them. @module */
import { deviation } from "d3-array";
import {
  dailyMeans,
  MONTH_DAYS,
  MONTH_FIRST_HOURS,
  monthlyMeans,
  monthlySums,
} from "../../basics/mod.ts";
import type { ClimateYear, MonthlyNormals } from "../types.ts";
import { meanDailySwing } from "./daily_swing.ts";

/**
 * Monthly normals of a year from a file: what winters are made from where nothing else is known of
 * the place. The spread within months of one year has a standard error of some 13 %, and it says
 * nothing of the spread between years.
 *
 * @param year 8760 hours of weather
 */
export function normalsOfYear(year: ClimateYear): MonthlyNormals {
  const days = dailyMeans(year.dryBulb);
  const swing = meanDailySwing(year.dryBulb);
  const meanTemperature = monthlyMeans(year.dryBulb);
  return {
    meanTemperature,
    meanDailyMaximum: meanTemperature.map((mean, month) => mean + swing[month]! / 2),
    meanDailyMinimum: meanTemperature.map((mean, month) => mean - swing[month]! / 2),
    relativeHumidity: monthlyMeans(year.relativeHumidity),
    globalRadiation: monthlySums(year.globalHorizontal).map((sum, month) =>
      sum / 1000 / MONTH_DAYS[month]!
    ),
    windSpeed: monthlyMeans(year.windSpeed),
    dayToDaySpread: MONTH_DAYS.map((count, month) => {
      const first = MONTH_FIRST_HOURS[month]! / 24;
      return deviation(days.subarray(first, first + count))!;
    }),
  };
}
