/** Fields of cell temperatures to reduced states and back, and the jump to what repeats. @module */
import { dot } from "../../../basics/linear/vectors.ts";
import { latentContent, lumpsIn, potentialAt, temperatureAt } from "../../../soil/mod.ts";
import type { ConductionOperator } from "../../ground/operator.ts";
import { type BandedFactor, factorShifted } from "./banded_cholesky.ts";
import { BLOCK } from "./sums/mod.ts";
import { slicePorts } from "./ports.ts";
import type { ReducedSlice } from "./slice.ts";
import { LeftOut } from "./steady.ts";

/** Latent content of every zone for a field of potentials, J/m. */
function zoneContents({ zones, curve }: ReducedSlice, field: Float64Array): number[] {
  const { latent, range } = lumpsIn(curve, zones);
  return zones.map(({ cells, weights }, z) => {
    const mean = cells.reduce((sum, cell, k) => sum + weights[k]! * field[cell]!, 0);
    return latentContent(latent[z]!, range[z]!, mean);
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
  const { states, shapes, operator, curve } = slice;
  const field = cellTemperatures.map((value) => potentialAt(curve, value));
  const heat = operator.capacity.map((value, c) => value * field[c]!);
  const size = heat.length;
  const one = Float64Array.from(
    { length: states },
    (_, k) => dot(shapes.subarray(k * size, (k + 1) * size), heat),
  );
  const padded = Math.ceil(lanes / BLOCK) * BLOCK;
  const zones = slice.zones.length;
  const state = new Float64Array(padded * states + 2 * lanes * zones);
  for (let k = 0; k < padded * states; k++) state[k] = one[Math.floor(k / BLOCK) % states]!;
  const ice = zoneContents(slice, field);
  for (let lane = 0; lane < lanes; lane++) state.set(ice, padded * states + lane * zones);
  return state;
}

/** State of an engine with a field of cell temperatures of its own in each lane, degC. */
export function reducedStates(slice: ReducedSlice, fields: readonly Float64Array[]): Float64Array {
  const { states } = slice;
  const lanes = fields.length;
  const all = reducedState(slice, lanes, fields[0]!);
  const zones = slice.zones.length;
  const ice = all.length - 2 * lanes * zones;
  fields.forEach((field, lane) => {
    const one = reducedState(slice, 1, field);
    const place = Math.floor(lane / BLOCK) * states * BLOCK + lane % BLOCK;
    for (let k = 0; k < states; k++) all[place + k * BLOCK] = one[k * BLOCK]!;
    all.set(one.subarray(BLOCK * states, BLOCK * states + zones), ice + lane * zones);
  });
  return all;
}

/** Values of one lane out of a block: every fourth from a place on. */
export function everyFourth(values: Float64Array, start: number, count: number): Float64Array {
  return Float64Array.from({ length: count }, (_, k) => values[start + BLOCK * k]!);
}

/** Slices factored without shift, for the fields of those whose cells were asked for. */
const factored = new WeakMap<ConductionOperator, BandedFactor>();

function atRest(operator: ConductionOperator): BandedFactor {
  const known = factored.get(operator) ?? factorShifted(operator, 0);
  factored.set(operator, known);
  return known;
}

/**
 * Temperatures of all cells from the states and inputs of one lane, degC. What the left-out states
 * add is solved for, which costs less than to hold it for every port.
 */
export function cellField(
  slice: ReducedSlice,
  state: Float64Array,
  input: Float64Array,
): Float64Array {
  const { shapes, operator, zones } = slice;
  const ports = slicePorts(operator, zones);
  const field = new LeftOut(operator, ports, slice, atRest(operator)).field(shapes, input);
  state.forEach((value, k) => {
    const from = k * field.length;
    for (let c = 0; c < field.length; c++) field[c]! += value * shapes[from + c]!;
  });
  return field.map((value) => temperatureAt(slice.curve, value));
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
