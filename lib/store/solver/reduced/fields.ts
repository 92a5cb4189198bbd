/** Fields of cell temperatures to reduced states and back, and the jump to what repeats. @module */
import { latentContent } from "../../../soil/mod.ts";
import { BLOCK } from "./kernel.ts";
import type { ReducedSlice } from "./slice.ts";

/** Latent content of every zone for a field of cell temperatures, J/m. */
function zoneContents(slice: ReducedSlice, cellTemperatures: Float64Array): number[] {
  return slice.zones.map(({ cells, weights, latent, range }) => {
    const mean = cells.reduce((sum, cell, k) => sum + weights[k]! * cellTemperatures[cell]!, 0);
    return latentContent(latent, range, mean);
  });
}

/**
 * State of an engine with every lane at the same field of cell temperatures: x = shapesᵀ·M·T, and
 * the ice that goes with it.
 */
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
  const zones = slice.zones.length;
  const state = new Float64Array(padded * states + 2 * lanes * zones);
  for (let k = 0; k < padded * states; k++) state[k] = one[Math.floor(k / BLOCK) % states]!;
  const ice = zoneContents(slice, cellTemperatures);
  for (let lane = 0; lane < lanes; lane++) state.set(ice, padded * states + lane * zones);
  return state;
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
