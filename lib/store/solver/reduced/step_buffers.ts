/** All arrays that the sums of a reduced step go over, made together. @module */
import { byState, planStep, type StepPlan } from "./plan.ts";
import type { ReducedSlice } from "./slice.ts";
import { bestSums, BLOCK, type Rows, type Run, runOver, type Sums } from "./sums/mod.ts";

/** Surfaces a slice can have: floor, outside, deep end. */
export const SURFACES = 3;

/** A step's constants with the rows that are read in it. */
export interface PlacedPlan extends StepPlan {
  /** rows of `mean` and of `response`: tubes; surfaces; the floor alone */
  readonly tubeMeans: Rows;
  readonly tubeResponses: Rows;
  readonly surfaceMeans: Rows;
  readonly surfaceResponses: Rows;
  readonly floorResponses: Rows;
}

/** Arrays of an engine and the sums over them. */
export interface StepBuffers {
  readonly sums: Sums;
  /** states, (block·states + state)·4 + lane */
  readonly x: Float64Array;
  /** tube heat, floor driving, outdoor and deep temperature, latent power: (block·ports + port)·4 + lane */
  readonly input: Float64Array;
  /** mean of the surface ports from the states alone, (block·3 + surface)·4 + lane */
  readonly free: Float64Array;
  /** what is read of rows, row·4 + lane, and what the inputs add to the states, state·4 + lane */
  readonly read: Float64Array;
  readonly added: Float64Array;
  /** decay of states that only take something up: 1 by state */
  readonly kept: Float64Array;
  readonly plans: readonly PlacedPlan[];
  /** surfaces that can carry anything: the deep end only where it is held */
  readonly surfaces: number;
  /** all states of a port; what the inputs do to each state */
  readonly allStates: Run;
  readonly stateGains: Rows;
  /** thermometer between the tubes, by state and by port */
  readonly store: Rows;
  readonly storeDirect: Rows;
  /** ports to be read, as the zones list them, by state and by port */
  readonly dueGains: Rows;
  readonly dueDirect: Rows;
  readonly due: Int32Array;
  /** by block: room for the ports of zones that freeze or thaw */
  readonly active: readonly Int32Array[];
}

const upTo = (count: number, from = 0) => Int32Array.from({ length: count }, (_, k) => from + k);

/**
 * Makes the arrays of an engine.
 *
 * @param slice reduced slice
 * @param lanes copies
 * @param steps s
 * @param sums that go over them, new
 */
export function stepBuffers(
  slice: ReducedSlice,
  lanes: number,
  steps: readonly number[],
  sums: Sums = bestSums(),
): StepBuffers {
  const { states, tubes, ports, zones, conductances } = slice;
  const blocks = Math.ceil(lanes / BLOCK);
  const surfaces = conductances[2] > 0 ? SURFACES : SURFACES - 1;
  const plans = steps.map((seconds) => planStep(slice, seconds));
  const numbered = <Value>(name: string, values: readonly Value[]) =>
    Object.fromEntries(values.map((value, k) => [`${name} ${k}`, value]));
  const arrays = sums.place<Record<string, Float64Array | Int32Array>>({
    x: new Float64Array(blocks * BLOCK * states),
    input: new Float64Array(blocks * BLOCK * ports),
    free: new Float64Array(blocks * BLOCK * SURFACES),
    read: new Float64Array(BLOCK * Math.max(tubes, SURFACES, zones.length)),
    added: new Float64Array(BLOCK * states),
    kept: new Float64Array(states).fill(1),
    byState: byState(slice),
    gains: slice.gains,
    direct: slice.direct,
    store: slice.store,
    storeDirect: slice.storeDirect,
    everyState: upTo(states),
    tubes: upTo(tubes),
    surfaces: upTo(surfaces, tubes),
    due: new Int32Array(zones.length),
    ...numbered("decay", plans.map(({ decay }) => decay)),
    ...numbered("growth", plans.map(({ growth }) => growth)),
    ...numbered("mean", plans.map(({ mean }) => mean)),
    ...numbered("response", plans.map(({ response }) => response)),
    ...numbered("active", Array.from({ length: blocks }, () => new Int32Array(zones.length))),
  });
  const values = (name: string) => arrays[name] as Float64Array;
  const list = (name: string) => arrays[name] as Int32Array;
  const rows = (matrix: string, listed: string, count = list(listed).length): Rows => ({
    matrix: values(matrix),
    listed: list(listed),
    count,
  });
  return {
    sums,
    surfaces,
    x: values("x"),
    input: values("input"),
    free: values("free"),
    read: values("read"),
    added: values("added"),
    kept: values("kept"),
    plans: plans.map(({ seconds }, k) => ({
      seconds,
      decay: values(`decay ${k}`),
      growth: values(`growth ${k}`),
      mean: values(`mean ${k}`),
      response: values(`response ${k}`),
      tubeMeans: rows(`mean ${k}`, "tubes"),
      tubeResponses: rows(`response ${k}`, "tubes"),
      surfaceMeans: rows(`mean ${k}`, "surfaces"),
      surfaceResponses: rows(`response ${k}`, "surfaces"),
      floorResponses: rows(`response ${k}`, "surfaces", 1),
    })),
    allStates: runOver(states, 0, states),
    stateGains: rows("byState", "everyState"),
    store: rows("store", "everyState", 1),
    storeDirect: rows("storeDirect", "everyState", 1),
    dueGains: rows("gains", "due", 0),
    dueDirect: rows("direct", "due", 0),
    due: list("due"),
    active: Array.from({ length: blocks }, (_, block) => list(`active ${block}`)),
  };
}
