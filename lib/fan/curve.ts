/** The curve of a fan. @module */

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
