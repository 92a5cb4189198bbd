/** What the fan chapter takes and gives. @module */
import type { Notice } from "../basics/mod.ts";
import type { FanCurve } from "./curve.ts";

export type { FanCurve } from "./curve.ts";
export type { FanInputs } from "./fields.ts";

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
  /** the same while the store is charged, at the speed for it */
  readonly charge: FanPoint;
  /** and while it is discharged */
  readonly discharge: FanPoint;
  /** the same with the dirty filter; null where the fans no longer reach it */
  readonly dirtyFilter: FanPoint | null;
  /** messages for the reader */
  readonly notices: readonly Notice[];
}
