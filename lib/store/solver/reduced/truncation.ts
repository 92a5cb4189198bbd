/** Which directions of the Krylov space are worth keeping. @module */
import { Matrix } from "ml-matrix";
import type { ConductionOperator } from "../../ground/operator.ts";
import type { FreezingZone } from "../../ground/zones.ts";
import { layersOf, tubesIn, wavesAcross } from "./ports.ts";
import { dot, eigen, subtract } from "../../../basics/linear/vectors.ts";

/** Inputs the states are weighted for. */
const LAYER_HEAT = 60;
const TILT_SHARE = 0.2;
const SINGLE_SHARE = 0.03;
const FLOOR_SWING = 10;
const OUTDOOR_SWING = 15;
/** 1/s: inputs are taken as noise that is white below this, 3 h */
const COLOUR = 1 / 10800;
/** 1/s: the same for outdoor and deep ground, which follow the annual wave */
const SLOW_COLOUR = 1e-6;

/** An input the states are weighted for: its size at each port, and how fast it may change, 1/s. */
export interface WeightedInput {
  readonly ports: readonly number[];
  readonly colour: number;
}

/** Weighted input columns over the ports. */
export function weightedInputs(operator: ConductionOperator): WeightedInput[] {
  const tubes = operator.tubes.length;
  const extend = (pattern: number[], factor: number) => [
    ...pattern.map((value) => value * factor),
    0,
    0,
    0,
  ];
  const columns = [
    ...layersOf(operator).flatMap((layer) =>
      wavesAcross(operator, layer, 2).map((pattern, wave) =>
        extend(pattern, wave === 0 ? LAYER_HEAT : TILT_SHARE * LAYER_HEAT)
      )
    ),
    ...operator.tubes.map((_, tube) =>
      extend(
        operator.tubes.map((__, k) => k === tube ? tubesIn(operator, tube) : 0),
        SINGLE_SHARE * LAYER_HEAT,
      )
    ),
  ];
  const none = new Array<number>(tubes).fill(0);
  return [
    ...[...columns, [...none, FLOOR_SWING, 0, 0]].map((ports) => ({ ports, colour: COLOUR })),
    { ports: [...none, 0, OUTDOOR_SWING, 0], colour: SLOW_COLOUR },
    { ports: [...none, 0, 0, FLOOR_SWING], colour: SLOW_COLOUR },
  ];
}

/** Zones freeze at most in this time, s, or by this flow, W/m over the root of m² of slice. */
const FREEZING_TIME = 3600;
const FREEZING_FLOW = 360;
/** Weight of the zones: more of it takes states from tubes and floor, which matter more. */
const ZONE_SHARE = 0.1;

/**
 * One weighted input for each freezing zone.
 *
 * @param zones of the slice
 * @param before ports that come before the zones'
 */
export function zoneInputs(zones: readonly FreezingZone[], before: number): WeightedInput[] {
  return zones.map((zone, k) => {
    const most = Math.min(zone.latent / FREEZING_TIME, FREEZING_FLOW * Math.sqrt(zone.area));
    return { ports: [...new Array<number>(before + k).fill(0), ZONE_SHARE * most], colour: COLOUR };
  });
}

/** Share of what is weighted that the states kept may leave out, and most states that are kept for it. */
const LEFT_OUT = 2.8e-5;
const MOST_STATES = 128;

/** How many directions, the best first, leave out no more than {@link LEFT_OUT}. */
function enoughStates(sorted: readonly number[]): number {
  const total = sorted.reduce((sum, value) => sum + Math.max(0, value), 0);
  let left = total;
  const place = sorted.findIndex((value) => {
    if (left <= LEFT_OUT * total) return true;
    left -= Math.max(0, value);
    return false;
  });
  return place < 0 ? sorted.length : place;
}

/** The directions kept: the heat content first, then the best seen and reached. */
export function keptDirections(given: {
  readonly rates: readonly number[];
  readonly gains: Matrix;
  readonly content: Float64Array;
  readonly inputs: readonly WeightedInput[];
  /** how many at least */
  readonly states: number;
  /** true: that many and no more; false: more where they would leave out too much */
  readonly exactly: boolean;
}): Float64Array[] {
  const { rates, gains, content, inputs } = given;
  const count = rates.length;
  const driven = inputs.map(({ ports, colour }) => ({
    colour,
    reached: Float64Array.from(
      { length: count },
      (_, i) => ports.reduce((sum, factor, port) => sum + factor * gains.get(port, i), 0),
    ),
  }));
  const gramian = Matrix.zeros(count, count);
  for (let i = 0; i < count; i++) {
    for (let j = 0; j <= i; j++) {
      const [li, lj] = [rates[i]!, rates[j]!];
      let value = 0;
      for (const { reached, colour } of driven) {
        value += reached[i]! * reached[j]! / (li + lj) *
          (1 / (li + colour) + 1 / (lj + colour)) * colour / 2;
      }
      gramian.set(i, j, value);
      gramian.set(j, i, value);
    }
  }
  const { values, vectors } = eigen(gramian);
  const rank = values.map((value, k) => ({ value, k })).sort((a, b) => b.value - a.value);
  const enough = Math.min(MOST_STATES, enoughStates(rank.map(({ value }) => value)));
  const states = given.exactly ? given.states : Math.max(given.states, enough);
  const kept: Float64Array[] = [];
  const append = (vector: Float64Array): void => {
    for (let pass = 0; pass < 2; pass++) {
      for (const other of kept) subtract(vector, dot(vector, other), other);
    }
    const length = Math.sqrt(dot(vector, vector));
    if (length > 1e-8) kept.push(vector.map((value) => value / length));
  };
  append(content.slice());
  for (const { k } of rank) {
    if (kept.length >= states) break;
    append(Float64Array.from({ length: count }, (_, i) => vectors.get(i, k)));
  }
  return kept;
}
