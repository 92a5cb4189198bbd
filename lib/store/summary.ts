/** What a reader may quote of the store besides the figures. @module */
import { max, min } from "d3-array";
import { dailyMeans, hoursBelow, ratio } from "../basics/mod.ts";
import { type FreezingRange, freezingRange } from "../house/mod.ts";
import { chargeByQuarter, type QuarterCharge } from "./charge_by_quarter.ts";
import { type Condensate, condensateOfYear } from "./condensate.ts";
import { fanByMonth, type FanYear } from "./fan_by_month.ts";
import { type FirstQuarter, firstQuarter } from "./first_quarter.ts";
import { type FirstYear, firstYears } from "./first_years.ts";
import type { StoreRequest } from "./site.ts";
import { heatByDay, type HeatDay } from "./heat_by_day.ts";
import { heatByMonth, type HeatMonth } from "./heat_by_month.ts";
import { type HeaterPeaks, heaterPeaks } from "./heater_peaks.ts";
import { yearFlows } from "./ledger/year_flows.ts";
import { recoveryByDay, type SeasonRecovery } from "./recovery_by_day.ts";
import { type RunningTotals, runningTotals } from "./running_totals.ts";
import type { HeatFlow, StoreResult } from "./types.ts";
import { type StoreWeek, storeWeek } from "./week.ts";

/** degC below which an hour belongs to the cold end, and the fewest such hours shown. */
const COLD = 2;
const LEAST_COLD_HOURS = 48;

/** Hours below one limit with the fan always off and with the store. */
export interface HoursBelow {
  /** degC */
  readonly limit: number;
  /** h a year with the fan always off */
  readonly noFan: number;
  /** h a year with the store */
  readonly store: number;
}

/** Means of each day, degC, 365 each. */
export interface DailyTemperatures {
  /** degC */
  readonly outdoors: Float64Array;
  /** degC in the house with the fan always off */
  readonly noFan: Float64Array;
  /** degC in the house with the store */
  readonly house: Float64Array;
  /** degC between the tubes */
  readonly store: Float64Array;
}

/** Tables and sums of the store. */
export interface StoreSummary {
  /** latent part of the heat put in, 0 to 1; null where nothing is put in */
  readonly latentShare: number | null;
  /** h a year, at least 48, in which the house with the fan always off is below 2 degC */
  readonly coldHours: number;
  /** h below freezing with the store, 1 K warmer and colder */
  readonly freezingRange: FreezingRange;
  /** hours below -10 to 30 degC */
  readonly hoursBelow: readonly HoursBelow[];
  /** around the coldest hour with the fan always off */
  readonly worstWeek: StoreWeek;
  /** means of each day */
  readonly dailyMeans: DailyTemperatures;
  /** heat by month, sensible and latent */
  readonly heatMonths: readonly HeatMonth[];
  /** heat by day from midnight */
  readonly heatDays: readonly HeatDay[];
  /** recovery by day and by quarter, the year last */
  readonly recoveryByDay: readonly SeasonRecovery[];
  /** kWh since New Year */
  readonly runningTotals: RunningTotals;
  /** flows of the year, the floor taken apart, kWh */
  readonly flows: readonly HeatFlow[];
  /** origin of the heat of January to March */
  readonly firstQuarter: FirstQuarter;
  /** state of charge by quarter */
  readonly chargeByQuarter: readonly QuarterCharge[];
  /** degC between the tubes at which the state of charge is 0 and 1 */
  readonly chargeEnds: readonly [number, number];
  /** highest means of the heater that holds the set point */
  readonly heaterPeaks: HeaterPeaks;
  /** years after building, the one that repeats last */
  readonly firstYears: readonly FirstYear[];
  /** electricity and hours of the fans */
  readonly fan: FanYear;
  /** water left in the tubes */
  readonly condensate: Condensate;
  /** degC, coldest and warmest place of each picture of the soil */
  readonly sectionEnds: readonly (readonly [number, number])[];
}

/** Result of the store chapter with its summary. */
export interface SummarisedStore extends StoreResult {
  /** tables and sums a reader may quote */
  readonly summary: StoreSummary;
}

/** degC whose hours are counted */
const LIMITS = [-10, -5, 0, 5, 10, 30];

/**
 * Adds the tables and sums of a study's store.
 *
 * @param request weather and tubes
 * @param result of the store chapter
 */
export function summariseStore(
  { climate, tubes }: Pick<StoreRequest, "climate"> & {
    readonly tubes: Pick<StoreRequest["tubes"], "count" | "length">;
  },
  result: StoreResult,
): SummarisedStore {
  const { year } = result;
  const without = result.noFan.airTemperature;
  const air = year.house.airTemperature;
  const summary: StoreSummary = {
    latentShare: ratio(result.latentIn, result.heatIn),
    coldHours: Math.max(LEAST_COLD_HOURS, hoursBelow(without, COLD)),
    freezingRange: freezingRange(air),
    hoursBelow: LIMITS.map((limit) => ({
      limit,
      noFan: hoursBelow(without, limit),
      store: hoursBelow(air, limit),
    })),
    worstWeek: storeWeek(result, climate),
    dailyMeans: {
      outdoors: dailyMeans(climate.dryBulb),
      noFan: dailyMeans(without),
      house: dailyMeans(air),
      store: dailyMeans(year.storeTemperature),
    },
    heatMonths: heatByMonth(year),
    heatDays: heatByDay(year),
    recoveryByDay: recoveryByDay(year, tubes.count * tubes.length),
    runningTotals: runningTotals(year),
    flows: yearFlows(result),
    firstQuarter: firstQuarter(result.quarters[0]!),
    chargeByQuarter: chargeByQuarter(result.stateOfCharge),
    chargeEnds: [min(year.storeTemperature)!, max(year.storeTemperature)!],
    heaterPeaks: heaterPeaks(result.backupYear.heater),
    firstYears: firstYears(result),
    fan: fanByMonth(year),
    condensate: condensateOfYear(year.condensate),
    sectionEnds: result.sections.temperatures.map((values) => [min(values)!, max(values)!]),
  };
  return { ...result, summary };
}
