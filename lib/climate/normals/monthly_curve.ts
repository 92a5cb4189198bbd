/** Smooth curves through the year with given monthly means. @module */
import { Matrix, solve } from "ml-matrix";
import { HOURS_PER_YEAR, MONTH_FIRST_HOURS, monthlyMeans, monthOfHour } from "../../basics/mod.ts";

/**
 * Continuous hourly curve whose mean over each month is the given value: straight between knots at
 * the middles of the months, knots found by solving for the twelve means.
 *
 * @param means twelve values, January first
 * @returns 8760 values
 */
export function curveOfMeans(means: readonly number[]): Float64Array {
  return curveThrough(solve(WEIGHTS, Matrix.columnVector([...means])).to1DArray());
}

/**
 * Continuous hourly curve, straight between given values at the middles of the months.
 *
 * @param knots twelve values, January first
 * @returns 8760 values
 */
export function curveThrough(knots: readonly number[]): Float64Array {
  const curve = new Float64Array(HOURS_PER_YEAR);
  for (let hour = 0; hour < HOURS_PER_YEAR; hour++) {
    const left = LEFT_KNOT[hour]!;
    const share = RIGHT_SHARE[hour]!;
    curve[hour] = (1 - share) * knots[left]! + share * knots[(left + 1) % 12]!;
  }
  return curve;
}

/** Adds a smooth curve so that the monthly means become the given ones. */
export function toMonthlyMeans(series: Float64Array, means: readonly number[]): Float64Array {
  const have = monthlyMeans(series);
  const curve = curveOfMeans(means.map((mean, month) => mean - have[month]!));
  return series.map((value, hour) => value + curve[hour]!);
}

/** Month of the knot before an hour, and how far the hour is on the way to the next knot. */
function knotBefore(hour: number): [left: number, share: number] {
  const middle = (month: number) => (MONTH_FIRST_HOURS[month]! + MONTH_FIRST_HOURS[month + 1]!) / 2;
  const month = monthOfHour(hour);
  const at = hour + 0.5;
  const left = at >= middle(month) ? month : (month + 11) % 12;
  const right = (left + 1) % 12;
  const from = middle(left) - (at < middle(left) ? HOURS_PER_YEAR : 0);
  const to = middle(right) + (right === 0 && at > middle(11) ? HOURS_PER_YEAR : 0);
  return [left, (at - from) / (to - from)];
}

const LEFT_KNOT = new Uint8Array(HOURS_PER_YEAR);
const RIGHT_SHARE = new Float64Array(HOURS_PER_YEAR);
for (let hour = 0; hour < HOURS_PER_YEAR; hour++) {
  [LEFT_KNOT[hour], RIGHT_SHARE[hour]] = knotBefore(hour);
}

const WEIGHTS = knotWeights();

function knotWeights(): Matrix {
  const weights = Matrix.zeros(12, 12);
  for (let hour = 0; hour < HOURS_PER_YEAR; hour++) {
    const month = monthOfHour(hour);
    const hours = MONTH_FIRST_HOURS[month + 1]! - MONTH_FIRST_HOURS[month]!;
    const left = LEFT_KNOT[hour]!;
    const right = (left + 1) % 12;
    const share = RIGHT_SHARE[hour]!;
    weights.set(month, left, weights.get(month, left) + (1 - share) / hours);
    weights.set(month, right, weights.get(month, right) + share / hours);
  }
  return weights;
}
