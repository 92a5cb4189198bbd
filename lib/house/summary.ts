/** What a reader may quote of the house besides the figures. @module */
import { max, sum } from "d3-array";
import { DAY, type DayRange, dayRanges, hoursBelow } from "../basics/mod.ts";
import type { ClimateYear } from "../climate/types.ts";
import { type ColdestWeek, coldestWeek } from "./coldest_week.ts";
import { type FreezingRange, freezingRange } from "./freezing_range.ts";
import { heatByMonth, type HeatMonth } from "./heat_by_month.ts";
import { humidityByMonth, type HumidityMonth } from "./humidity_by_month.ts";
import {
  leakageRange,
  type LossRow,
  lossRows,
  type LossShare,
  lossShares,
  type SkinAreas,
  skinAreas,
} from "./skin/loss_table.ts";
import { type TemperatureMonth, temperaturesByMonth } from "./temperatures_by_month.ts";
import type { HouseInputs, HouseResult } from "./types.ts";

/** Hours below one limit, outdoors and in the free-running house. */
export interface HoursBelow {
  /** degC */
  readonly limit: number;
  /** h a year outdoors */
  readonly outdoors: number;
  /** h a year in the house */
  readonly inside: number;
}

/** Tables and sums of the house in its screening year; free running unless said. */
export interface HouseSummary {
  /** m² of the skin */
  readonly areas: SkinAreas;
  /** surface by surface, leakage and floor edge */
  readonly losses: readonly LossRow[];
  /** parts of the loss coefficient with their shares, in the order of the chapter */
  readonly lossShares: readonly LossShare[];
  /** W/K at half and at twice the leakage */
  readonly leakageRange: readonly [number, number];
  /** h below freezing, 1 K warmer and colder */
  readonly freezingRange: FreezingRange;
  /** hours below -20 to 30 degC */
  readonly hoursBelow: readonly HoursBelow[];
  /** around the coldest hour in the house */
  readonly coldestWeek: ColdestWeek;
  /** degC of each day outdoors */
  readonly outdoorDays: readonly DayRange[];
  /** degC of each day in the house */
  readonly insideDays: readonly DayRange[];
  /** relative humidity, 0 to 1, of each day in the house */
  readonly humidityDays: readonly DayRange[];
  /** kg condensed on the cover on each day */
  readonly condensedDays: readonly number[];
  /** degC by month, outdoors and in the house */
  readonly temperatureMonths: readonly TemperatureMonth[];
  /** humidity and water by month */
  readonly humidityMonths: readonly HumidityMonth[];
  /** h a year above 90 % relative humidity */
  readonly dampHours: number;
  /** kg a year condensed on the cover */
  readonly condensed: number;
  /** kWh by month and part, held at the set point */
  readonly heatMonths: readonly HeatMonth[];
  /** W, largest hour of heat demand */
  readonly peakDemand: number;
}

/** Result of the house chapter with its summary. */
export interface SummarisedHouse extends HouseResult {
  /** tables and sums a reader may quote */
  readonly summary: HouseSummary;
}

/** degC whose hours are counted */
const LIMITS = [-20, -10, 0, 5, 10, 30];

/**
 * Adds the tables and sums of a study's house.
 *
 * @param inputs house section of the study
 * @param climate the weather the house ran in
 * @param result of the house chapter
 */
export function summariseHouse(
  inputs: HouseInputs,
  climate: ClimateYear,
  result: HouseResult,
): SummarisedHouse {
  const { freeRunning, heated } = result;
  const air = freeRunning.airTemperature;
  const outdoors = climate.dryBulb;
  const humidityMonths = humidityByMonth(freeRunning);
  const summary: HouseSummary = {
    areas: skinAreas(result.geometry.parts),
    losses: lossRows(result, inputs),
    lossShares: lossShares(result),
    leakageRange: leakageRange(result),
    freezingRange: freezingRange(air),
    hoursBelow: LIMITS.map((limit) => ({
      limit,
      outdoors: hoursBelow(outdoors, limit),
      inside: hoursBelow(air, limit),
    })),
    coldestWeek: coldestWeek({
      outdoors,
      radiation: climate.globalHorizontal,
      inside: air,
      heater: heated.heater,
    }),
    outdoorDays: dayRanges(outdoors),
    insideDays: dayRanges(air),
    humidityDays: dayRanges(freeRunning.relativeHumidity),
    condensedDays: dayRanges(freeRunning.condensed).map(({ mean }) => mean * DAY),
    temperatureMonths: temperaturesByMonth(outdoors, air),
    humidityMonths,
    dampHours: sum(humidityMonths, (month) => month.dampHours),
    condensed: sum(result.condensateByMonth),
    heatMonths: heatByMonth(heated),
    peakDemand: max(heated.heater)!,
  };
  return { ...result, summary };
}
