/** What a climate year comes to. @module */
import { degreeHoursBelow, hoursBelow, hoursOfMonth } from "../basics/mod.ts";
import { max, mean, min, sum } from "d3-array";
import { coldSpells } from "./cold_spells.ts";
import { degreeDaysBelow, designTemperature } from "./degrees.ts";
import { climateQuality } from "./mend/quality.ts";
import type { ClimateResult, ClimateYear, MonthSummary } from "./types.ts";

/** degC whose hours are counted */
const LIMITS = [-40, -30, -20, -10, 0, 10, 20, 30];

/**
 * Sums up a climate year: months, design temperatures, degree-days, cold sunless spells.
 *
 * Design temperatures are quantiles of the 8760 hours: 99.6 % of the hours are warmer than
 * `design99_6`. Degree-days below 18 degC are taken from daily means, those below 18.3 degC from
 * hourly values.
 *
 * @param year the climate
 * @returns the figures, with the notices of the quality report; those of reading stay with the year
 */
export function summariseClimate(year: ClimateYear): ClimateResult {
  const months = Array.from({ length: 12 }, (_, month) => summariseMonth(year, month));
  const radiation = (list: readonly number[]) =>
    sum(list, (month) => months[month - 1]!.globalRadiation);
  const [coldestHour, warmestHour] = [min(year.dryBulb)!, max(year.dryBulb)!];
  return {
    months,
    meanTemperature: mean(year.dryBulb)!,
    coldestHour,
    warmestHour,
    design99_6: designTemperature(year.dryBulb),
    design99: designTemperature(year.dryBulb, 0.01),
    heatingDegreeDays18: degreeDaysBelow(year.dryBulb, 18),
    heatingDegreeDays18_3: degreeHoursBelow(year.dryBulb, 18.3) / 24,
    globalRadiation: sum(year.globalHorizontal) / 1000,
    winterRadiation: radiation([12, 1, 2]),
    summerRadiation: radiation([6, 7, 8]),
    hoursBelow: LIMITS.filter((limit) => limit > coldestHour && limit < warmestHour)
      .map((limit) => ({ limit, hours: hoursBelow(year.dryBulb, limit) })),
    coldSpells: [1, 3, 7, 14].map((days) => coldSpells(year, days)),
    notices: climateQuality(year).notices,
  };
}

function summariseMonth(year: ClimateYear, month: number): MonthSummary {
  const part = (series: Float64Array) => hoursOfMonth(series, month);
  const global = sum(part(year.globalHorizontal));
  const diffuseShare = global > 0 ? Math.min(1, sum(part(year.diffuseHorizontal)) / global) : 1;
  const temperatures = part(year.dryBulb);
  return {
    month: month + 1,
    meanTemperature: mean(temperatures)!,
    minTemperature: min(temperatures)!,
    maxTemperature: max(temperatures)!,
    globalRadiation: global / 1000,
    diffuseRadiation: global / 1000 * diffuseShare,
    diffuseShare,
    meanRelativeHumidity: mean(part(year.relativeHumidity))!,
    meanWindSpeed: mean(part(year.windSpeed))!,
    heatingDegreeDays18: degreeDaysBelow(temperatures, 18),
  };
}
