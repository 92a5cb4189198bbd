/** Radiation moved back to the hours it belongs to. @module */
import { HOURS_PER_YEAR, monthOfHour } from "../../basics/mod.ts";
import type { MonthFit } from "./sun_shift.ts";

/** Months that must agree where only the global radiation speaks. */
const AGREEING_MONTHS = 3;

/**
 * Whole hours by which the radiation of each month is certainly late.
 *
 * Certain is what the closure of three measured series says, and what the global radiation alone says
 * of at least three months alike. Half hours stay where they are.
 *
 * @param fits of twelve months
 * @returns twelve whole numbers, January first; 0 where nothing is to be moved, negative where early
 */
export function certainMoves(fits: readonly MonthFit[]): number[] {
  return fits.map(({ late, against }) => {
    const alike = fits.filter((fit) => fit.late === late).length;
    return against === "closure" || alike >= AGREEING_MONTHS ? Math.trunc(late) : 0;
  });
}

/**
 * A series with each month's values moved earlier by that month's hours.
 *
 * @param series 8760 values
 * @param moves twelve whole numbers of hours
 * @returns a new series
 */
export function moveSeries(series: Float64Array, moves: readonly number[]): Float64Array {
  return series.map((_, hour) =>
    series[(hour + moves[monthOfHour(hour)]! + HOURS_PER_YEAR) % HOURS_PER_YEAR]!
  );
}

/** kWh/m² a year that stand in another hour after a move: half the sum of all changes. */
export function movedEnergy(global: Float64Array, moves: readonly number[]): number {
  return moveSeries(global, moves).reduce((sum, value, hour) => {
    const change = Math.abs(value - global[hour]!);
    return sum + (Number.isNaN(change) ? 0 : change / 2000);
  }, 0);
}
