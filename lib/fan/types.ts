/** What the fan chapter takes and gives. @module */
import type { Notice } from "../basics/mod.ts";

/** `fan` section of the study file, in SI. */
export interface FanInputs {
  /** curves of the user's own to choose from before those of data/fans; none where not given */
  readonly ownFans?: readonly FanCurve[] | undefined;
  /** id in data/fans */
  readonly fan: string;
  /** fans side by side */
  readonly count: number;
  /** speed over the rated speed, 0.2 to 1.2 */
  readonly speed: number;
  /** riser, screen, elbows outside the tube field: velocity heads at the riser's diameter */
  readonly riserDiameter: number;
  /** velocity heads at the riser's diameter, elbows and screen included */
  readonly riserLosses: number;
  /** Pa of the filter or screen at the design flow, clean */
  readonly filterPressure: number;
  /** pressure of the dirty filter over the clean one; 2 where not given (common practice, no source) */
  readonly filterDirty?: number;
  /** price is kept in worth; here only the wire-to-air data */
  readonly note: string;
}

/** A fan curve at standard density, rated speed. */
export interface FanCurve {
  /** id of the row */
  readonly id: string;
  /** name for the reader */
  readonly name: string;
  /** m³/s, rising */
  readonly airFlow: readonly number[];
  /** Pa, fan static pressure */
  readonly staticPressure: readonly number[];
  /** W electric */
  readonly power: readonly number[];
  /** m² of the outlet */
  readonly outletArea: number;
  /** where the values come from */
  readonly source: string;
}

/** One state of fan and system. */
export interface FanPoint {
  /** m³/s, all fans */
  readonly airFlow: number;
  /** Pa, fan static pressure */
  readonly pressure: number;
  /** W electric, all fans */
  readonly power: number;
}

/** Result of the fan chapter. */
export interface FanResult {
  /** m³/s of the whole field at the operating point */
  readonly airFlow: number;
  /** Pa, fan static pressure there */
  readonly pressure: number;
  /** W electric, all fans */
  readonly power: number;
  /** 0 to 1, static, wire to air */
  readonly efficiency: number;
  /** W/(m³/s) */
  readonly specificPower: number;
  /** system curve p = coefficient·flow^exponent, Pa and m³/s */
  readonly systemCoefficient: number;
  /** exponent of the flow in the system curve */
  readonly systemExponent: number;
  /** true where the point lies left of the curve's highest pressure */
  readonly stalled: boolean;
  /** kg/m³ used */
  readonly density: number;
  /** curve of all fans together at this density and speed */
  readonly curve: FanCurve;
  /** static pressure that the field asks of the fans, at rising flows */
  readonly systemCurve: readonly { readonly airFlow: number; readonly pressure: number }[];
  /** share of the design flow that is reached */
  readonly flowRatio: number;
  /** the same with the dirty filter; null where the fans no longer reach it */
  readonly dirtyFilter: FanPoint | null;
  /** messages for the reader */
  readonly notices: readonly Notice[];
}
