/** Hours of a log on the clock of the house: standard time, a year of 365 days. @module */
import { HOUR, HOURS_PER_YEAR, MONTH_FIRST_HOURS } from "../../basics/mod.ts";

/** An hour of a log. */
export interface LocalHour {
  /** hour of the year of 365 days, 0 to 8759; null on 29 February */
  readonly hourOfYear: number | null;
  /** ISO day by local standard time, such as "2025-11-03" */
  readonly day: string;
  /** 0 to 23 */
  readonly clock: number;
}

/**
 * Where an hour stands in the house's own time.
 *
 * @param start s since 1970 UTC at which the hour begins
 * @param timeZone hours east of UTC, standard time
 */
export function localHour(start: number, timeZone: number): LocalHour {
  const date = new Date(1000 * (start + timeZone * HOUR));
  const [month, dayOfMonth, clock] = [date.getUTCMonth(), date.getUTCDate(), date.getUTCHours()];
  const leap = month === 1 && dayOfMonth === 29;
  const hour = MONTH_FIRST_HOURS[month]! + 24 * (dayOfMonth - 1) + clock;
  return {
    hourOfYear: leap ? null : hour % HOURS_PER_YEAR,
    day: date.toISOString().slice(0, 10),
    clock,
  };
}

/** Mean of each hour of a series; NaN where less than half of the hour is there. */
export function hourlyMeans(values: Float64Array, step: number): Float64Array {
  const perHour = Math.max(1, Math.round(HOUR / step));
  return Float64Array.from({ length: Math.floor(values.length / perHour) }, (_, hour) => {
    let [sum, count] = [0, 0];
    for (let at = hour * perHour; at < (hour + 1) * perHour; at++) {
      if (Number.isNaN(values[at]!)) continue;
      sum += values[at]!;
      count++;
    }
    return 2 * count >= perHour && count > 0 ? sum / count : NaN;
  });
}
