/** Nonlinear least squares by Levenberg and Marquardt. @module */
import { Matrix, QrDecomposition } from "ml-matrix";
import { InputError } from "../../basics/mod.ts";
import { type Certainty, certaintyOf } from "./certainty.ts";
import { slopes } from "./slopes.ts";

/** What a fit found. */
export interface Fit extends Certainty {
  /** in the order and the units of the start */
  readonly parameters: readonly number[];
  /** sum of the squared residuals, in squared units of the residuals */
  readonly sumOfSquares: number;
  /** false where the rounds ran out before the parameters stood still */
  readonly settled: boolean;
}

/** share of a parameter below which a move counts as none */
const STILL = 1e-11;
const MOST_ROUNDS = 500;
/** share of a move at which its bend is looked at, and the most bend that is followed */
const BEND_STEP = 0.1;
const MOST_BEND = 0.75;
/** share of the sum below which a gain may be rounding */
const ROUNDING = 1e-13;
const FIRST_DAMPING = 100;
const LEAST_DAMPING = 1e-20;
const MOST_DAMPING = 1e16;

/**
 * Parameters with the least sum of squared residuals: damped Gauss and Newton steps (Levenberg 1944
 * [levenberg-1944]) with the damping scaled by the slopes (Marquardt 1963 [marquardt-1963]), each
 * solved by orthogonal factors and not by the normal matrix, which would halve the digits, and led
 * round the bend of the model (Transtrum & Sethna 2012 [transtrum-2012]). The npm package
 * `ml-levenberg-marquardt` 5.1 misses three of the twelve certified fits that the tests ask for
 * [nist-strd-1999] and gives no covariance, hence sums of our own; docs/measured.md has the figures.
 *
 * @param residuals model less measured (or the other way round, weighted or not) at parameters;
 * more of them than parameters; numbers that are not finite mark parameters that cannot be
 * @param start first guess of the parameters, near enough that the residuals are finite
 * @returns parameters with standard deviations, correlation and what the data cannot tell
 * @throws InputError where the start is no use or there are too few residuals
 */
export function fitLeastSquares(
  residuals: (parameters: readonly number[]) => readonly number[],
  start: readonly number[],
): Fit {
  let at = [...start];
  let here = residuals(at);
  let cost = sumOfSquares(here);
  if (here.length <= at.length) {
    throw new InputError(
      `fit: ${here.length} measured values for ${at.length} parameters; expected more values ` +
        "than parameters: measure longer or fit fewer",
    );
  }
  if (!Number.isFinite(cost)) {
    throw new InputError(
      `fit: the model gives no finite value at the start (${at.join(", ")}); choose another start`,
    );
  }
  let damping = FIRST_DAMPING;
  const scale = at.map(() => 0);
  let [settled, stuck, flat] = [false, false, 0];
  for (let round = 0; round < MOST_ROUNDS && !settled && !stuck; round++) {
    const columns = slopes(residuals, at);
    columns.forEach((column, j) => scale[j] = Math.max(scale[j]!, Math.hypot(...column)) || 1);
    for (let lowered = false; !lowered && !settled && !stuck;) {
      const penalties = scale.map((one) => one * Math.sqrt(damping));
      const move = bentMove(residuals, { at, here, columns, penalties });
      const next = at.map((value, j) => value + move[j]!);
      const there = residuals(next);
      const nextCost = sumOfSquares(there);
      settled = move.every((one, j) => Math.abs(one) <= STILL * Math.abs(at[j]!));
      lowered = nextCost < cost;
      if (lowered) {
        const gain = (cost - nextCost) / (cost - sumOfSquares(straight(columns, here, move)));
        flat = cost - nextCost <= ROUNDING * cost ? flat + 1 : 0;
        settled ||= flat >= 3;
        [at, here, cost] = [next, there, nextCost];
        damping *= gain > 0.75 ? 0.1 : gain > 0.25 ? 1 : 4;
        damping = Math.max(LEAST_DAMPING, damping);
      } else {
        damping *= 10;
        stuck = damping > MOST_DAMPING;
      }
    }
  }
  const { parameters, sum } = polish(residuals, at, cost);
  return {
    parameters,
    sumOfSquares: sum,
    settled,
    ...certaintyOf(slopes(residuals, parameters), parameters, sum, here.length),
  };
}

interface Place {
  readonly at: readonly number[];
  readonly here: readonly number[];
  readonly columns: readonly (readonly number[])[];
  readonly penalties: readonly number[];
}

/** The damped move, led round the bend of the residuals where they bend little enough. */
function bentMove(
  residuals: (parameters: readonly number[]) => readonly number[],
  place: Place,
): number[] {
  const { at, here, columns, penalties } = place;
  const move = dampedMove(columns, here, penalties);
  const bend = dampedMove(columns, bendAlong(residuals, at, here, columns, move), penalties);
  const length = (list: readonly number[]) =>
    Math.hypot(...list.map((one, j) => one * penalties[j]!));
  const follows = 2 * length(bend) <= MOST_BEND * length(move);
  return follows ? move.map((one, j) => one + bend[j]! / 2) : move;
}

/** Undamped moves at the end, taken while they shrink: the sum is flat there to rounding. */
function polish(
  residuals: (parameters: readonly number[]) => readonly number[],
  from: readonly number[],
  cost: number,
): { readonly parameters: readonly number[]; readonly sum: number } {
  let [at, sum, last] = [from, cost, Infinity];
  for (let round = 0; round < 5; round++) {
    const move = dampedMove(slopes(residuals, at), residuals(at), at.map(() => 0));
    const next = at.map((value, j) => value + move[j]!);
    const nextSum = sumOfSquares(residuals(next));
    const size = Math.max(...move.map((one, j) => Math.abs(one) / (Math.abs(at[j]!) || 1)));
    if (!(nextSum <= sum * (1 + 1e-12)) || !(size < last)) break;
    [at, sum, last] = [next, nextSum, size];
  }
  return { parameters: at, sum };
}

/** The move that lowers the residuals most with a penalty on each parameter's move. */
function dampedMove(
  columns: readonly (readonly number[])[],
  here: readonly number[],
  penalties: readonly number[],
): number[] {
  const damped = penalties.some((one) => one > 0);
  // columns brought to length one keep the factors of parameters of any size sound
  const lengths = columns.map((column, j) => Math.hypot(...column, penalties[j]!) || 1);
  const rows = here.length + (damped ? columns.length : 0);
  const left = Matrix.zeros(rows, columns.length);
  const right = Matrix.zeros(rows, 1);
  here.forEach((value, i) => right.set(i, 0, -value));
  columns.forEach((column, j) => {
    column.forEach((slope, i) => left.set(i, j, slope / lengths[j]!));
    if (damped) left.set(here.length + j, j, penalties[j]! / lengths[j]!);
  });
  const factors = new QrDecomposition(left);
  if (!factors.isFullRank()) return columns.map(() => 0);
  const solved = factors.solve(right).to1DArray();
  return solved.map((one, j) => one / lengths[j]!);
}

/** How the residuals bend along a move: their second slope along it, by a difference. */
function bendAlong(
  residuals: (parameters: readonly number[]) => readonly number[],
  at: readonly number[],
  here: readonly number[],
  columns: readonly (readonly number[])[],
  move: readonly number[],
): number[] {
  const there = residuals(at.map((value, j) => value + BEND_STEP * move[j]!));
  const line = straight(columns, here.map(() => 0), move);
  return here.map((value, i) => 2 / BEND_STEP * ((there[i]! - value) / BEND_STEP - line[i]!));
}

/** Residuals after a move if the model were straight. */
function straight(
  columns: readonly (readonly number[])[],
  here: readonly number[],
  move: readonly number[],
): number[] {
  return here.map((value, i) =>
    columns.reduce((sum, column, j) => sum + column[i]! * move[j]!, value)
  );
}

function sumOfSquares(values: readonly number[]): number {
  const sum = values.reduce((total, value) => total + value * value, 0);
  return Number.isFinite(sum) ? sum : Infinity;
}
