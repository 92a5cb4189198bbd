/** Fields of cell temperatures to reduced states and back, and the jump to what repeats. @module */
import { BLOCK } from "./kernel.ts";
import type { ReducedSlice } from "./slice.ts";

/** Reduced states of every lane for a field of cell temperatures: x = shapesᵀ·M·T. */
export function reducedState(
  slice: ReducedSlice,
  lanes: number,
  cellTemperatures: Float64Array,
): Float64Array {
  const { states, shapes, capacity } = slice;
  const one = new Float64Array(states);
  for (let c = 0; c < capacity.length; c++) {
    const heat = capacity[c]! * cellTemperatures[c]!;
    for (let k = 0; k < states; k++) one[k]! += shapes[c * states + k]! * heat;
  }
  const padded = Math.ceil(lanes / BLOCK) * BLOCK;
  return Float64Array.from(
    { length: padded * states },
    (_, k) => one[Math.floor(k / BLOCK) % states]!,
  );
}

/** Values of one lane out of a block: every fourth from a place on. */
export function everyFourth(values: Float64Array, start: number, count: number): Float64Array {
  return Float64Array.from({ length: count }, (_, k) => values[start + BLOCK * k]!);
}

/** Temperatures of all cells from the states and inputs of one lane, degC. */
export function cellField(
  slice: ReducedSlice,
  state: Float64Array,
  input: Float64Array,
): Float64Array {
  const { states, ports, shapes, directShapes } = slice;
  return Float64Array.from(slice.capacity, (_, c) => {
    let value = 0;
    for (let k = 0; k < states; k++) value += shapes[c * states + k]! * state[k]!;
    for (let q = 0; q < ports; q++) value += directShapes[c * ports + q]! * input[q]!;
    return value;
  });
}

/**
 * Adds a/(1 − a) of the change since a period ago to each state, a = e^(−λ·period).
 *
 * @param slice reduced slice
 * @param x states of all lanes, changed in place
 * @param start the same a period ago
 * @param seconds length of the period
 */
export function jumpStates(
  slice: ReducedSlice,
  x: Float64Array,
  start: Float64Array,
  seconds: number,
): void {
  for (let k = 0; k < x.length; k++) {
    const rate = slice.rates[Math.floor(k / BLOCK) % slice.states]!;
    x[k]! += (x[k]! - start[k]!) / Math.expm1(rate * seconds);
  }
}
