/** A year by month, for the table behind the charts. @module */
import { MONTH_DAYS } from "../../basics/constants.ts";
import { MONTH_FIRST_DAYS } from "../../basics/series/calendar.ts";
import type { LivePart } from "../types.ts";

/** A month of a year. */
export interface MonthRow {
  /** degC, coldest hour outdoors */
  readonly outdoors: number;
  /** degC, coldest hour with the store; not there while it is being computed */
  readonly store: number | undefined;
  /** degC with the fan always off */
  readonly noFan: number | undefined;
  /** kWh of back-up heat with the store */
  readonly heat: number | undefined;
  /** kWh with the fan always off */
  readonly heatNoFan: number | undefined;
}

/** Coldest hours and back-up heat of the twelve months, as far as they are known. */
export function monthRows({ days, months }: LivePart): MonthRow[] {
  const lowest = (series: readonly number[] | undefined, month: number) =>
    series === undefined ? undefined : Math.min(
      ...series.slice(MONTH_FIRST_DAYS[month]!, MONTH_FIRST_DAYS[month]! + MONTH_DAYS[month]!),
    );
  return MONTH_DAYS.map((_, month) => ({
    outdoors: lowest(days.outdoors, month)!,
    store: lowest(days.store, month),
    noFan: lowest(days.noFan, month),
    heat: months.store?.[month],
    heatNoFan: months.noFan?.[month],
  }));
}
