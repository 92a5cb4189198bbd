/**
 * Speed control, and energy over the hours.
 *
 * @module
 */
import { showBoth, showRange } from "../units/mod.ts";
import { halve, HOUR, InputError, kilowattHours, requireInRange } from "../basics/mod.ts";
import { changeFan } from "./laws.ts";
import { type OperatingPoint, operatingPoint } from "./operating_point.ts";
import type { FanCurve, FanPoint } from "./types.ts";

/** Operating point at one speed. */
export interface SpeedPoint {
  /** over rated speed */
  readonly speed: number;
  /** where fan and system meet */
  readonly point: OperatingPoint;
}

/**
 * Operating points of a fan at several speeds on one air path.
 *
 * @param curve fan at rated speed and real density
 * @param system static pressure needed, Pa, by air flow, m³/s
 * @param speeds over rated speed
 * @returns one point a speed
 */
export function speedSweep(
  curve: FanCurve,
  system: (airFlow: number) => number,
  speeds: readonly number[],
): readonly SpeedPoint[] {
  return speeds.map((speed) => ({
    speed,
    point: operatingPoint(changeFan(curve, { speed }), system),
  }));
}

/**
 * Speed at which a fan moves a wanted air flow.
 *
 * @param curve fan at rated speed and real density
 * @param system static pressure needed, Pa, by air flow, m³/s
 * @param airFlow wanted, m³/s
 * @returns the speed over rated speed and the point there
 * @throws {InputError} where the flow is not reached between 0.1 and 1.2 of the rated speed
 */
export function speedForFlow(
  curve: FanCurve,
  system: (airFlow: number) => number,
  airFlow: number,
): { readonly speed: number; readonly point: FanPoint } {
  const flowAt = (speed: number): number => {
    const point = operatingPoint(changeFan(curve, { speed }), system);
    return point.reached ? point.airFlow : Number.NaN;
  };
  const [low, high] = [0.1, 1.2];
  if (!(flowAt(low) <= airFlow && flowAt(high) >= airFlow)) {
    throw new InputError(
      `Cannot move ${
        showBoth(airFlow, "airFlow")
      } with ${curve.name} between 0.1 and 1.2 of its rated speed: ` +
        `it moves ${showRange(flowAt(low), flowAt(high), "airFlow")}`,
    );
  }
  const { holds, fails } = halve((ratio) => flowAt(ratio) < airFlow, low, high);
  const speed = (holds + fails) / 2;
  const point = operatingPoint(changeFan(curve, { speed }), system);
  if (!point.reached) throw new InputError(point.reason);
  return {
    speed,
    point: { airFlow: point.airFlow, pressure: point.pressure, power: point.power },
  };
}

/**
 * Electricity of the fan over the hours of its control.
 *
 * @param power of the running fan, W
 * @param shares share of each hour that it ran, of either sign
 * @param standby power of the idle fan and its control, W
 * @returns kWh
 */
export function fanEnergy(power: number, shares: ArrayLike<number>, standby = 0): number {
  requireInRange("fan power", power, 0, 1e6, "W");
  requireInRange("standby power", standby, 0, 1e5, "W");
  let energy = 0;
  for (let hour = 0; hour < shares.length; hour++) {
    const share = Math.abs(shares[hour]!);
    energy += (power * share + standby * (1 - share)) * HOUR;
  }
  return kilowattHours(energy);
}
