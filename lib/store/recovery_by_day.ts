/** What of a day's heat comes back by the next morning, season by season. @module */
import { sum } from "d3-array";
import { monthOfHour, ratio } from "../basics/mod.ts";
import { heatByDay, type HeatDay } from "./heat_by_day.ts";
import type { StoreYear } from "./types.ts";

/** What a season's days put in and get back. */
export interface SeasonRecovery {
  /** quarter of the year, 0 to 3; null for the whole year */
  readonly quarter: number | null;
  /** kWh put in */
  readonly heatIn: number;
  /** kWh given back */
  readonly heatOut: number;
  /** kWh of fan energy */
  readonly fan: number;
  /** days on which more than 1 kWh goes in */
  readonly chargeDays: number;
  /** middle of those days' ratios of heat given back by the next morning to heat put in; null: none */
  readonly dayRecovery: number | null;
  /** heatOut / heatIn; null where nothing goes in */
  readonly recovery: number | null;
  /** kWh put in on a charging day for each metre of tube; null without charging days */
  readonly heatPerDayAndMetre: number | null;
  /** heatOut / fan; null where the fan does not run */
  readonly heatPerFanEnergy: number | null;
}

/** Hour of the clock at which a day of sun and its night begin. */
const MORNING = 6;
/** kWh below which a day does not count as one of charging. */
const CHARGED = 1;

function seasonOf(
  quarter: number | null,
  days: readonly HeatDay[],
  tubeLength: number,
): SeasonRecovery {
  const heatIn = days.map((day) => day.sensibleIn + day.latentIn);
  const heatOut = days.map((day) => day.sensibleOut + day.latentOut);
  const ratios = days.flatMap((_, k) => heatIn[k]! > CHARGED ? [heatOut[k]! / heatIn[k]!] : [])
    .sort((a, b) => a - b);
  const all = { heatIn: sum(heatIn), heatOut: sum(heatOut), fan: sum(days, (day) => day.fan) };
  return {
    quarter,
    ...all,
    chargeDays: ratios.length,
    dayRecovery: ratios[Math.floor(ratios.length / 2)] ?? null,
    recovery: ratio(all.heatOut, all.heatIn),
    heatPerDayAndMetre: ratio(all.heatIn, ratios.length * tubeLength),
    heatPerFanEnergy: ratio(all.heatOut, all.fan),
  };
}

/**
 * Recovery by day (06:00 to 06:00) and by quarter; the last row is the year.
 *
 * @param year hourly year of the store, W
 * @param tubeLength m of all tubes
 */
export function recoveryByDay(year: StoreYear, tubeLength: number): SeasonRecovery[] {
  const days = heatByDay(year, MORNING);
  const quarterOf = (day: HeatDay) => Math.floor(monthOfHour(day.day * 24) / 3);
  return [
    ...[0, 1, 2, 3].map((quarter) =>
      seasonOf(quarter, days.filter((day) => quarterOf(day) === quarter), tubeLength)
    ),
    seasonOf(null, days, tubeLength),
  ];
}
