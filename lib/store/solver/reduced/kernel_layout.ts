/** How the reduced kernel holds states, inputs and coefficients. @module */

/** Lanes advanced together, so that each coefficient is loaded once for four. */
export const BLOCK = 4;

/**
 * Inputs that a sum goes over: a run from port `from` up to port `to`, then the first `count` ports that
 * are listed; `ports` of them in a row of coefficients.
 */
export interface InputRun {
  readonly ports: number;
  readonly from: number;
  readonly to: number;
  readonly listed: Int32Array;
  count: number;
}

/** A run of ports, and room for those that are listed; none yet. */
export function inputRun(
  ports: number,
  from: number,
  to: number,
  listed: Int32Array = new Int32Array(0),
): InputRun {
  return { ports, from, to, listed, count: 0 };
}

/** How the states of a step move: what is left of each, and what a unit of input adds. */
export interface StateMove {
  readonly decay: Float64Array;
  readonly growth: Float64Array;
  /** state·ports + port */
  readonly gains: Float64Array;
}
