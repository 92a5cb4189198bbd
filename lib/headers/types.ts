/** What the headers chapter takes and gives. @module */
import type { Notice } from "../basics/mod.ts";

export type { HeaderLayout, HeadersInputs, TubeInlet } from "./fields.ts";

/** One point of the pressure that headers and tubes need. */
export interface SystemPoint {
  /** m³/s of the whole field */
  readonly airFlow: number;
  /** Pa, as HeadersResult.pressureDrop */
  readonly pressure: number;
}

/** Result of the headers chapter, at the design air flow. */
export interface HeadersResult {
  /** inside diameter, m */
  readonly diameter: number;
  /** ratio of the area of all tubes of a group to one header cross-section */
  readonly areaRatio: number;
  /** flow of each tube over the mean, in the order of TubesResult.positions */
  readonly shares: Float64Array;
  /** least tube flow over the mean */
  readonly flowMin: number;
  /** greatest tube flow over the mean */
  readonly flowMax: number;
  /** coefficient of variation of the shares */
  readonly unevenness: number;
  /** Pa from fan outlet to fan inlet: headers and tubes, exit head not counted */
  readonly pressureDrop: number;
  /** static pressure along supply and return header, Pa over the return outlet, by tube */
  readonly supplyPressure: Float64Array;
  /** static pressure along the return header, Pa, by tube */
  readonly returnPressure: Float64Array;
  /** the group each tube belongs to, from 0 */
  readonly groups: readonly number[];
  /** pressure at other flows than the design flow, rising */
  readonly systemCurve: readonly SystemPoint[];
  /**
   * heat of the field at constant wall temperature over that of an even share, a ratio; above 1 only
   * where tubes lie on both sides of turbulence
   */
  readonly heatFactor: number;
  /** messages for the reader */
  readonly notices: readonly Notice[];
}
