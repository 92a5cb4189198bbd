/** Weight of the end of a step in its mean. @module */

/** Below this many time constants the series is nearer than the formula. */
const SHORT = 1e-3;

/**
 * Weight θ of the end in the mean over a step of what nears its equilibrium exponentially: mean =
 * θ·end + (1 − θ)·start, θ = 1/(1 − e^(−x)) − 1/x; ½ for short steps, 1 for long ones.
 *
 * @param constants x, the step over the time constant
 */
export function endWeight(constants: number): number {
  if (constants < SHORT) return 0.5 + constants / 12;
  return -1 / Math.expm1(-constants) - 1 / constants;
}
