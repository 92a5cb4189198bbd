/** Runs of hours of a year, such as those in which values are missing. @module */
import { HOURS_PER_YEAR } from "../basics/mod.ts";

/** Longest run of missing hours that is filled in, h. */
export const LONGEST_GAP = 6;

/** A run of hours. */
export interface HourRun {
  /** hour index of its first hour */
  readonly start: number;
  /** h */
  readonly length: number;
}

/** Runs of hours of the year for which something holds, in order; none goes over the year's end. */
export function findGaps(holds: (hour: number) => boolean): HourRun[] {
  const runs: HourRun[] = [];
  for (let hour = 0; hour < HOURS_PER_YEAR; hour++) {
    if (!holds(hour)) continue;
    const start = hour;
    while (hour < HOURS_PER_YEAR && holds(hour)) hour++;
    runs.push({ start, length: hour - start });
  }
  return runs;
}
