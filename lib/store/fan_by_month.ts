/** Electricity and hours of the fans month by month. @module */
import { sum } from "d3-array";
import { hoursOfMonth } from "../basics/mod.ts";
import type { StoreYear } from "./types.ts";

/** Electricity of the fans in one month. */
export interface FanMonth {
  /** 0 to 11 */
  readonly month: number;
  /** kWh while heat is put in */
  readonly charge: number;
  /** kWh while heat is fetched */
  readonly discharge: number;
  /** h of running */
  readonly hours: number;
}

/** Months and year of the fans. */
export interface FanYear {
  /** January to December */
  readonly months: readonly FanMonth[];
  /** kWh a year */
  readonly energy: number;
  /** h a year */
  readonly hours: number;
  /** h a day that the fans run on the days on which they run at all */
  readonly hoursPerDay: number;
}

/** Electricity and hours of the fans by month, charge and discharge apart, and of the year. */
export function fanByMonth(year: Pick<StoreYear, "fanShare" | "fanPower">): FanYear {
  const months = Array.from({ length: 12 }, (_, month) => fanMonth(year, month));
  return {
    months,
    energy: sum(months.flatMap(({ charge, discharge }) => [charge, discharge])),
    hours: sum(months, (row) => row.hours),
    hoursPerDay: fanHoursPerDay(year.fanShare),
  };
}

function fanMonth(year: Pick<StoreYear, "fanShare" | "fanPower">, month: number): FanMonth {
  const share = hoursOfMonth(year.fanShare, month);
  const power = hoursOfMonth(year.fanPower, month);
  const row = { month, charge: 0, discharge: 0, hours: 0 };
  share.forEach((running, hour) => {
    const energy = power[hour]! / 1000;
    if (running > 0) row.charge += energy;
    else row.discharge += energy;
    row.hours += Math.abs(running);
  });
  return row;
}

/** h below which the fan does not count as having run on a day. */
const RAN = 0.1;

/**
 * Mean hours a day that the fan runs on the days on which it runs at all.
 *
 * @param fanShare 8760 hourly shares, of either sign
 * @returns h; 0 where it never runs
 */
export function fanHoursPerDay(fanShare: Float64Array): number {
  const days = Array.from(
    { length: 365 },
    (_, day) => sum(fanShare.subarray(24 * day, 24 * day + 24), Math.abs),
  ).filter((hours) => hours > RAN);
  return days.length === 0 ? 0 : sum(days) / days.length;
}
