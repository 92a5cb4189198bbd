/** How the reduced kernel holds states, inputs and coefficients. @module */

/** Lanes advanced together, so that each coefficient is loaded once for four. */
export const BLOCK = 4;

/** A run of inputs: from port `from` up to port `to`, `ports` of them in a row of coefficients. */
export interface InputRun {
  readonly ports: number;
  readonly from: number;
  readonly to: number;
}

/** How the states of a step move: what is left of each, and what a unit of input adds. */
export interface StateMove {
  readonly decay: Float64Array;
  readonly growth: Float64Array;
  /** state·ports + port */
  readonly gains: Float64Array;
}
