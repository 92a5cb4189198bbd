/**
 * Curve through points that neither overshoots nor wiggles between them.
 *
 * @module
 */
import { InputError } from "../basics/mod.ts";

/** A curve through points, ready to be read anywhere between its ends. */
export interface ShapedCurve {
  /** places, rising; any unit of x */
  readonly at: readonly number[];
  /** values at those places; any unit of y */
  readonly values: readonly number[];
  /** slope at each point, unit of y over unit of x */
  readonly slopes: readonly number[];
}

/**
 * Prepares a piecewise cubic Hermite curve that rises and falls only where the points do.
 *
 * Slopes inside are the weighted harmonic mean of the neighbouring secants, 0 at a turning point.
 *
 * Source: Fritsch & Butland 1984 [fritsch-butland-1984]; ends after Moler 2004 [moler-2004], ch. 3.
 *
 * @param at places of the points, rising, 2 or more
 * @param values values there
 * @returns the curve
 * @throws {InputError} where the places do not rise
 */
export function shapedCurve(at: readonly number[], values: readonly number[]): ShapedCurve {
  const n = at.length;
  if (n < 2 || values.length !== n) throw new InputError("Cannot draw a curve: too few points");
  const steps = at.slice(1).map((place, i) => place - at[i]!);
  if (steps.some((step) => !(step > 0))) {
    throw new InputError("Cannot draw a curve: its points must be in ascending order");
  }
  const secants = steps.map((step, i) => (values[i + 1]! - values[i]!) / step);
  const slopes = at.map((_, i) => {
    if (n === 2) return secants[0]!;
    if (i === 0) return endSlope(steps[0]!, steps[1]!, secants[0]!, secants[1]!);
    if (i === n - 1) {
      return endSlope(steps[n - 2]!, steps[n - 3]!, secants[n - 2]!, secants[n - 3]!);
    }
    return innerSlope(steps[i - 1]!, steps[i]!, secants[i - 1]!, secants[i]!);
  });
  return { at, values, slopes };
}

function innerSlope(before: number, after: number, left: number, right: number): number {
  if (left * right <= 0) return 0;
  const weightLeft = 2 * after + before;
  const weightRight = after + 2 * before;
  return (weightLeft + weightRight) / (weightLeft / left + weightRight / right);
}

function endSlope(near: number, far: number, secant: number, next: number): number {
  const slope = ((2 * near + far) * secant - near * next) / (near + far);
  if (Math.sign(slope) !== Math.sign(secant)) return 0;
  if (Math.sign(secant) !== Math.sign(next) && Math.abs(slope) > Math.abs(3 * secant)) {
    return 3 * secant;
  }
  return slope;
}

/**
 * Reads a curve between its ends.
 *
 * @param curve the curve
 * @param place where, between the first and last point
 * @returns value there
 * @throws {RangeError} outside the points: nothing is known there
 */
export function curveValue(curve: ShapedCurve, place: number): number {
  const { at, values, slopes } = curve;
  const last = at.length - 1;
  if (!(place >= at[0]! && place <= at[last]!)) {
    throw new RangeError(
      `Cannot read a curve outside its points: ${place} is not in ${at[0]} to ${at[last]}`,
    );
  }
  let i = 0;
  while (i < last - 1 && place > at[i + 1]!) i++;
  const step = at[i + 1]! - at[i]!;
  const t = (place - at[i]!) / step;
  const s = 1 - t;
  return s * s * (1 + 2 * t) * values[i]! + t * t * (3 - 2 * t) * values[i + 1]! +
    s * t * (s * slopes[i]! - t * slopes[i + 1]!) * step;
}
