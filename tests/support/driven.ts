/** A column between two measured depths, to test a soil against a record. @module */
import { InputError } from "../../lib/basics/mod.ts";
import { columnStepper, startColumn } from "../../lib/soil/column.ts";
import type { SoilColumn } from "../../lib/soil/column.ts";

/** Temperatures that drive a column from both ends. */
export interface DrivenQuestion {
  /** the soil between the two depths; its top is the upper sensor, its bottom the lower one */
  readonly column: SoilColumn;
  /** s of each record after the first, rising */
  readonly times: ArrayLike<number>;
  /** degC at the top at those times */
  readonly upper: ArrayLike<number>;
  /** degC at the bottom */
  readonly lower: ArrayLike<number>;
  /** degC at the first time by depth below the upper sensor, m */
  readonly start: (depth: number) => number;
  /** s, longest step */
  readonly longestStep: number;
}

/**
 * Profiles of a column whose two ends follow measured series (straight lines between records, so
 * gaps in the record are bridged).
 *
 * @param question soil, times, series, start
 * @returns degC by record and cell
 * @throws {InputError} where the times do not rise
 */
export function drivenColumn(question: DrivenQuestion): Float64Array[] {
  const { column, times, upper, lower } = question;
  const state = startColumn(column, question.start);
  const step = columnStepper(column);
  const profiles = [state.temperature.slice()];
  for (let record = 1; record < times.length; record++) {
    const span = times[record]! - times[record - 1]!;
    if (!(span > 0)) throw new InputError(`Record ${record + 1} is not later than the one before`);
    const count = Math.ceil(span / question.longestStep);
    const between = (series: ArrayLike<number>, share: number) => ({
      temperature: series[record - 1]! + share * (series[record]! - series[record - 1]!),
      conductance: Infinity,
    });
    for (let i = 1; i <= count; i++) {
      step(state, between(upper, i / count), between(lower, i / count), span / count);
    }
    profiles.push(state.temperature.slice());
  }
  return profiles;
}
