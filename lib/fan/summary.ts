/** What a reader may quote of the fans besides the figures. @module */
import { curveValue, shapedCurve } from "./interpolate.ts";
import { operatingPoint } from "./operating_point.ts";
import type { PressurePoint } from "./system.ts";
import type { FanInputs, FanPoint, FanResult } from "./types.ts";

/** Tables and sums of the fans. */
export interface FanSummary {
  /** curve of all fans at even steps, as it is used, m³/s and Pa */
  readonly curve: readonly PressurePoint[];
  /** what the field asks with the dirty filter, m³/s and Pa; empty where no filter is counted */
  readonly dirtySystemCurve: readonly PressurePoint[];
  /** point against a fifth more resistance; null where there is none */
  readonly moreResistance: FanPoint | null;
  /** point against a fifth less resistance; null where there is none */
  readonly lessResistance: FanPoint | null;
  /** air flow over that of the fans in free air at this speed, 0 to 1 */
  readonly freeAirShare: number;
  /** W that move air: flow × fan static pressure */
  readonly airPower: number;
}

/** Result of the fan chapter with its summary. */
export interface SummarisedFan extends FanResult {
  /** tables and sums a reader may quote */
  readonly summary: FanSummary;
}

const STEPS = 60;

/**
 * The fans' curve read at even steps from its first to its last point.
 *
 * @param curve m³/s, rising, and Pa
 */
export function curvePoints(curve: FanResult["curve"]): PressurePoint[] {
  const { airFlow, staticPressure } = curve;
  const shaped = shapedCurve(airFlow, staticPressure);
  const from = airFlow[0]!;
  const to = airFlow.at(-1)!;
  return Array.from({ length: STEPS + 1 }, (_, step) => {
    const flow = step === STEPS ? to : from + (to - from) * step / STEPS;
    return { airFlow: flow, pressure: curveValue(shaped, flow) };
  });
}

/**
 * Point at which the fans meet `factor` times the resistance of the field.
 *
 * @param result of the fan chapter
 * @param factor ratio of the resistance to that computed
 * @returns the point, or null where they do not meet
 */
export function pointAgainst(
  result: Pick<FanResult, "curve" | "systemCoefficient" | "systemExponent">,
  factor: number,
): FanPoint | null {
  const { systemCoefficient, systemExponent } = result;
  const point = operatingPoint(
    result.curve,
    (airFlow) => factor * systemCoefficient * airFlow ** systemExponent,
  );
  if (!point.reached) return null;
  return { airFlow: point.airFlow, pressure: point.pressure, power: point.power };
}

/**
 * System curve with the dirty filter: the clean one and the filter's growth, which goes with the
 * square of the flow.
 *
 * @param inputs `fan` section of the study
 * @param result of the fan chapter
 */
export function dirtySystemCurve(inputs: FanInputs, result: FanResult): PressurePoint[] {
  const more = inputs.filterPressure * (inputs.filterDirty - 1) || 0;
  if (more === 0) return [];
  const designFlow = result.airFlow / result.flowRatio;
  return result.systemCurve.map(({ airFlow, pressure }) => ({
    airFlow,
    pressure: pressure + more * (airFlow / designFlow) ** 2,
  }));
}

/**
 * Adds the tables and sums of a study's fans.
 *
 * @param inputs `fan` section of the study
 * @param result of the fan chapter
 */
export function summariseFan(inputs: FanInputs, result: FanResult): SummarisedFan {
  return {
    ...result,
    summary: {
      curve: curvePoints(result.curve),
      dirtySystemCurve: dirtySystemCurve(inputs, result),
      moreResistance: pointAgainst(result, 1.2),
      lessResistance: pointAgainst(result, 0.8),
      freeAirShare: result.airFlow / result.curve.airFlow.at(-1)!,
      airPower: result.airFlow * result.pressure,
    },
  };
}
