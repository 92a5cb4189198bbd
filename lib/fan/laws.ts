/**
 * Fan laws, and fans side by side or one behind the other.
 *
 * @module
 */
import { InputError, requireInRange } from "../basics/mod.ts";
import { curveValue, shapedCurve } from "./interpolate.ts";
import type { FanCurve } from "./types.ts";

/** Density at which fans are rated, kg/m³. AMCA 210 [amca-210-2016] standard air. */
export const STANDARD_DENSITY = 1.2;

/** Change of a fan from its rating. */
export interface FanChange {
  /** speed over rated speed */
  readonly speed?: number;
  /** ratio of the density to that of the curve */
  readonly density?: number;
  /** ratio of the wheel diameter to that of the curve, all else to scale */
  readonly size?: number;
}

/**
 * The curve of a fan at another speed, density or size.
 *
 * Q ∝ n·D³, p ∝ ρ·n²·D², P ∝ ρ·n³·D⁵.
 *
 * Source: fan laws, as Stoecker & Jones 1982 [stoecker-jones-1982], fan chapter, and AMCA 210
 * [amca-210-2016]. Valid for: equal efficiency; motors and drives get worse at low speed, so that
 * the electric power below about half speed is too low here.
 *
 * @example Air of 40 °C instead of 20 °C
 * ```ts
 * import { changeFan } from "./laws.ts";
 * import assert from "node:assert/strict";
 *
 * const rated = { id: "a", name: "a", airFlow: [2.4], staticPressure: [340], power: [1800],
 *   outletArea: 0.5, source: "Stoecker & Jones" };
 * const warm = changeFan(rated, { density: 293.15 / 313.15 });
 * assert.equal(warm.staticPressure[0]!.toFixed(1), "318.3"); // Pa
 * assert.equal(warm.power[0]!.toFixed(0), "1685"); // W
 * ```
 *
 * @param curve the curve
 * @param change ratios; 1 where not given
 * @returns the new curve
 */
export function changeFan(curve: FanCurve, change: FanChange): FanCurve {
  const { speed = 1, density = 1, size = 1 } = change;
  requireInRange("fan speed", speed, 0.01, 10, "times the rated speed");
  requireInRange("density ratio", density, 0.01, 10, "(0.01 to 10)");
  requireInRange("fan size", size, 0.01, 100, "times the rated size");
  return {
    ...curve,
    airFlow: curve.airFlow.map((value) => value * speed * size ** 3),
    staticPressure: curve.staticPressure.map((value) => value * density * speed ** 2 * size ** 2),
    power: curve.power.map((value) => value * density * speed ** 3 * size ** 5),
    outletArea: curve.outletArea * size ** 2,
  };
}

/**
 * Several equal fans side by side: flows add at equal pressure.
 *
 * @param curve one fan
 * @param count number of fans
 * @returns curve of all
 */
export function fansInParallel(curve: FanCurve, count: number): FanCurve {
  requireInRange("number of fans", count, 1, 100, "fans");
  return {
    ...curve,
    airFlow: curve.airFlow.map((value) => value * count),
    power: curve.power.map((value) => value * count),
    outletArea: curve.outletArea * count,
  };
}

/**
 * Fans one behind the other: static pressures and powers add at equal flow, over the range of flows
 * that all curves cover.
 *
 * The velocity pressure of an earlier fan is taken as reaching the next one in full.
 *
 * @param curves the fans, in the order of the air
 * @returns curve of all, with the outlet of the last
 * @throws {InputError} where the curves have no flow in common
 */
export function fansInSeries(curves: readonly FanCurve[]): FanCurve {
  const last = curves.at(-1);
  if (last === undefined) throw new InputError("Cannot put fans in series: no fan given");
  const from = Math.max(...curves.map(({ airFlow }) => airFlow[0]!));
  const to = Math.min(...curves.map(({ airFlow }) => airFlow.at(-1)!));
  if (!(to > from)) {
    throw new InputError("Cannot put fans in series: their curves have no flow in common");
  }
  const airFlow = [...new Set([from, to, ...curves.flatMap((curve) => curve.airFlow)])]
    .filter((flow) => flow >= from && flow <= to).sort((a, b) => a - b);
  const sum = (values: (curve: FanCurve) => readonly number[]): number[] => {
    const shaped = curves.map((curve) => shapedCurve(curve.airFlow, values(curve)));
    return airFlow.map((flow) =>
      shaped.reduce((total, curve) => total + curveValue(curve, flow), 0)
    );
  };
  return {
    ...last,
    name: curves.map(({ name }) => name).join(" + "),
    airFlow,
    staticPressure: sum(({ staticPressure }) => staticPressure),
    power: sum(({ power }) => power),
  };
}

/**
 * Air flow at and left of which a fan stalls: that of the curve's highest pressure, where it is not
 * the first point.
 *
 * @param curve the curve
 * @returns m³/s, or null where the pressure falls all the way
 */
export function stallLimit(curve: FanCurve): number | null {
  const { airFlow, staticPressure } = curve;
  let highest = 0;
  let turns = false;
  for (let i = 1; i < staticPressure.length; i++) {
    if (staticPressure[i]! > staticPressure[i - 1]!) {
      turns = true;
      highest = i;
    }
  }
  return turns ? airFlow[highest]! : null;
}
