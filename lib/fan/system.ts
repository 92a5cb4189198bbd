/**
 * What the whole air path asks of the fans.
 *
 * The air is taken from the house and given back to it, both at rest. By the convention of AMCA 210
 * [amca-210-2016] the fan total pressure is P_t = P_t2 − P_t1 and the fan static pressure P_s = P_t
 * − P_v2, with P_v2 the velocity pressure at the fan's outlet. The system loses all it gets, so
 * that P_t = headers and tubes + riser + filter + **one** velocity head where the air leaves into
 * the house; what the fan's curve must give is that less P_v2.
 *
 * @module
 */
import { curveValue, type ShapedCurve, shapedCurve } from "./interpolate.ts";

/** A point of pressure by flow. */
export interface PressurePoint {
  /** m³/s */
  readonly airFlow: number;
  /** Pa */
  readonly pressure: number;
}

/** The whole air path. */
export interface AirPath {
  /** headers and tubes, as HeadersResult.systemCurve */
  readonly field: readonly PressurePoint[];
  /** m, one riser to each fan */
  readonly riserDiameter: number;
  /** velocity heads of the riser */
  readonly riserLosses: number;
  /** Pa of the filter at the design flow */
  readonly filterPressure: number;
  /** m³/s of all fans */
  readonly designFlow: number;
  /** number of fans side by side */
  readonly fanCount: number;
  /** m² of one fan's outlet */
  readonly outletArea: number;
  /** kg/m³ */
  readonly density: number;
}

/** Pressure by flow through points, straight beyond them, all on logarithmic scales. */
function logarithmicCurve(points: readonly PressurePoint[]): (airFlow: number) => number {
  const curve: ShapedCurve = shapedCurve(
    points.map(({ airFlow }) => Math.log(airFlow)),
    points.map(({ pressure }) => Math.log(pressure)),
  );
  const last = curve.at.length - 1;
  const value = (place: number): number => {
    if (place < curve.at[0]!) return curve.values[0]! + curve.slopes[0]! * (place - curve.at[0]!);
    if (place > curve.at[last]!) {
      return curve.values[last]! + curve.slopes[last]! * (place - curve.at[last]!);
    }
    return curveValue(curve, place);
  };
  return (airFlow) => airFlow <= 0 ? 0 : Math.exp(value(Math.log(airFlow)));
}

/**
 * Loss between the fan's outlet and the riser, in Pa: Borda–Carnot where it widens, ½(1 − A₂/A₁)
 * heads of the riser where it narrows.
 *
 * Source: Borda–Carnot; Idelchik [idelchik-1994] for the sudden contraction.
 */
function transitionLoss(density: number, outletSpeed: number, riserSpeed: number): number {
  if (outletSpeed >= riserSpeed) return density / 2 * (outletSpeed - riserSpeed) ** 2;
  return density / 2 * 0.5 * (1 - outletSpeed / riserSpeed) * riserSpeed ** 2;
}

/**
 * Fan static pressure that the air path needs, by air flow.
 *
 * The filter's pressure grows with the square of the flow, as a screen's does; filter media grow
 * more slowly.
 *
 * @param path the air path
 * @param filterFactor ratio of the filter pressure to that of the clean filter
 * @returns Pa by m³/s of all fans
 */
export function systemPressure(path: AirPath, filterFactor = 1): (airFlow: number) => number {
  const field = logarithmicCurve(path.field);
  const riserArea = Math.PI * path.riserDiameter ** 2 / 4;
  return (airFlow) => {
    const riserSpeed = airFlow / path.fanCount / riserArea;
    const outletSpeed = airFlow / path.fanCount / path.outletArea;
    const head = path.density / 2 * riserSpeed ** 2;
    const exitHead = head;
    const filter = path.filterPressure * filterFactor * (airFlow / path.designFlow) ** 2;
    const total = field(airFlow) + path.riserLosses * head + filter + exitHead +
      transitionLoss(path.density, outletSpeed, riserSpeed);
    return total - path.density / 2 * outletSpeed ** 2;
  };
}
