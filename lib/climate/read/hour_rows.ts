/** Rows of a table sorted into the hours of a year. @module */
import { HOURS_PER_YEAR } from "../../basics/mod.ts";

/** Which rows of a table hold each hour of the year. */
export interface HourRows {
  /** row numbers, hour by hour */
  readonly rows: Int32Array;
  /** where the rows of hour i start in `rows`; those of hour i end where hour i + 1 starts */
  readonly starts: Int32Array;
  /** rows a full hour has: 1, or more where the table is finer than hours */
  readonly perHour: number;
  /** minutes by which the middle of the rows lies after that of their clock hour, on the mean */
  readonly early: number;
}

/** First row of an hour; -1 where the table has none. */
export function firstRowOf(hours: HourRows, hour: number): number {
  return hours.starts[hour] === hours.starts[hour + 1] ? -1 : hours.rows[hours.starts[hour]!]!;
}

/** Values of a column by hour: the mean of an hour's rows, NaN where half of them or more are missing. */
export function valuesByHour(hours: HourRows, column: Float64Array): Float64Array {
  return Float64Array.from({ length: HOURS_PER_YEAR }, (_, hour) => {
    let [total, count] = [0, 0];
    for (let index = hours.starts[hour]!; index < hours.starts[hour + 1]!; index++) {
      const value = column[hours.rows[index]!]!;
      if (Number.isNaN(value)) continue;
      total += value;
      count++;
    }
    return count * 2 > hours.perHour || count === hours.perHour ? total / count : NaN;
  });
}

/** Sorts rows into hours; -1 marks rows that belong to none. */
export function groupRows(hourOfRow: Int32Array, perHour: number, early = 0): HourRows {
  const starts = new Int32Array(HOURS_PER_YEAR + 1);
  for (const hour of hourOfRow) if (hour >= 0) starts[hour + 1]!++;
  for (let hour = 0; hour < HOURS_PER_YEAR; hour++) starts[hour + 1]! += starts[hour]!;
  const next = starts.slice();
  const rows = new Int32Array(starts[HOURS_PER_YEAR]!);
  hourOfRow.forEach((hour, row) => {
    if (hour >= 0) rows[next[hour]!++] = row;
  });
  return { rows, starts, perHour, early };
}
