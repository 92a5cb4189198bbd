/**
 * Where the curve of the fans meets that of the system.
 *
 * @module
 */
import { halve } from "../basics/mod.ts";
import { showBoth } from "../units/mod.ts";
import { curveValue, type ShapedCurve, shapedCurve } from "./interpolate.ts";
import { stallLimit } from "./laws.ts";
import type { FanCurve, FanPoint } from "./types.ts";

/** The fans meet the system. */
export interface PointReached extends FanPoint {
  /** whether there is such a point */
  readonly reached: true;
  /** true at or left of the pressure hump of the curve */
  readonly stalled: boolean;
  /** air flows of all crossings, m³/s, rising; more than one means that the fan may hunt between them */
  readonly crossings: readonly number[];
}

/** They do not; `reason` is a sentence for the reader. */
export interface PointMissed {
  /** whether there is such a point */
  readonly reached: false;
  /** why there is none */
  readonly reason: string;
}

/** Outcome of the search for the operating point. */
export type OperatingPoint = PointReached | PointMissed;

/** Stretches in which the search for crossings looks. */
const STRETCHES = 400;

/**
 * Finds the operating point: the crossing at the largest flow, where the fan's pressure falls through
 * the system's.
 *
 * Between its points the fan's curve is shape-preserving; outside them nothing is guessed.
 *
 * @param curve all fans at their real density and speed
 * @param system static pressure that the system needs, Pa, by air flow, m³/s
 * @returns the point, or why there is none
 */
export function operatingPoint(
  curve: FanCurve,
  system: (airFlow: number) => number,
): OperatingPoint {
  const shaped = shapedCurve(curve.airFlow, curve.staticPressure);
  const from = curve.airFlow[0]!;
  const to = curve.airFlow.at(-1)!;
  const surplus = (airFlow: number): number => curveValue(shaped, airFlow) - system(airFlow);
  const crossings = findCrossings(surplus, from, to);
  const airFlow = crossings.at(-1);
  if (airFlow === undefined || surplus(to) > 1e-9) return missed(shaped, system);
  const limit = stallLimit(curve);
  return {
    reached: true,
    airFlow,
    pressure: curveValue(shaped, airFlow),
    power: curveValue(shapedCurve(curve.airFlow, curve.power), airFlow),
    stalled: limit !== null && airFlow <= limit,
    crossings,
  };
}

function findCrossings(surplus: (airFlow: number) => number, from: number, to: number): number[] {
  const crossings: number[] = [];
  let left = from;
  let atLeft = surplus(left);
  for (let i = 1; i <= STRETCHES; i++) {
    const right = i === STRETCHES ? to : from + (to - from) * i / STRETCHES;
    const atRight = surplus(right);
    if (atRight === 0) crossings.push(right);
    else if (atLeft * atRight < 0) crossings.push(rootBetween(surplus, left, right));
    left = right;
    atLeft = atRight;
  }
  return crossings;
}

/** Root between two places of opposite sign, to rounding. */
function rootBetween(surplus: (airFlow: number) => number, from: number, to: number): number {
  const sign = Math.sign(surplus(from));
  const { holds, fails } = halve((airFlow) => Math.sign(surplus(airFlow)) === sign, from, to);
  return (holds + fails) / 2;
}

function missed(shaped: ShapedCurve, system: (airFlow: number) => number): PointMissed {
  const from = shaped.at[0]!;
  const to = shaped.at.at(-1)!;
  const say = (airFlow: number): string =>
    `at ${showBoth(airFlow, "airFlow")} it gives ${
      showBoth(curveValue(shaped, airFlow), "pressure")
    }, but the ` +
    `field needs ${showBoth(system(airFlow), "pressure")}`;
  const reason = curveValue(shaped, to) > system(to)
    ? `Cannot find the operating point: the fan's curve ends before it meets the system curve, ${
      say(to)
    }. ` +
      "Add points at larger flows, or choose a smaller fan or speed."
    : `Cannot find the operating point: the fan is too weak for the field, ${say(from)}. ` +
      "Choose a stronger fan, more or shorter tubes, or larger headers.";
  return { reached: false, reason };
}
