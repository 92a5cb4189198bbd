/** What a reduced slice does in a step of one length. @module */
import type { ReducedSlice } from "./slice.ts";

/** Constants of one step length. */
export interface StepPlan {
  readonly seconds: number;
  /** e^(−λΔt) and (1 − e^(−λΔt))/λ */
  readonly decay: Float64Array;
  readonly growth: Float64Array;
  /** port·states + state: mean over the step of the port value for the state at its start */
  readonly mean: Float64Array;
  /** port·ports + port: mean port value for each unit of input held over the step */
  readonly response: Float64Array;
}

/** Below this the first terms of a series are more accurate than the difference. */
const SMALL = 1e-4;

/** (1 − (1 − e^(−λΔt))/(λΔt))/λ: the mean over a step of what a unit of input has added, over gain². */
function meanAdded(rate: number, seconds: number): number {
  const x = rate * seconds;
  if (x < SMALL) return seconds * (1 / 2 - x / 6 + x * x / 24);
  return (1 + Math.expm1(-x) / x) / rate;
}

/** Works the constants out. */
export function planStep(slice: ReducedSlice, seconds: number): StepPlan {
  const { states, ports, rates, gains, direct } = slice;
  const decay = rates.map((rate) => Math.exp(-rate * seconds));
  const growth = rates.map((rate) => -Math.expm1(-rate * seconds) / rate);
  const mean = new Float64Array(ports * states);
  const added = rates.map((rate) => meanAdded(rate, seconds));
  const response = direct.slice();
  for (let p = 0; p < ports; p++) {
    for (let k = 0; k < states; k++) {
      mean[p * states + k] = gains[p * states + k]! * growth[k]! / seconds;
    }
    for (let q = 0; q < ports; q++) {
      let sum = 0;
      for (let k = 0; k < states; k++) {
        sum += gains[p * states + k]! * gains[q * states + k]! * added[k]!;
      }
      response[p * ports + q]! += sum;
    }
  }
  return { seconds, decay, growth, mean, response };
}

/** Transposed gains: state·ports + port. */
export function byState(slice: ReducedSlice): Float64Array {
  const { states, ports, gains } = slice;
  return Float64Array.from(
    { length: states * ports },
    (_, k) => gains[(k % ports) * states + Math.floor(k / ports)]!,
  );
}
