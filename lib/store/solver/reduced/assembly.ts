/** A reduced slice put together from the shapes of its states. @module */
import type { ConductionOperator } from "../../ground/operator.ts";
import type { FreezingZone } from "../../ground/zones.ts";
import type { ReducedSlice } from "./slice.ts";
import { dot } from "../../../basics/linear/vectors.ts";

/** What a reduced slice is made of. */
export interface SliceParts {
  readonly operator: ConductionOperator;
  readonly zones: readonly FreezingZone[];
  /** of tubes, surfaces and zones */
  readonly ports: readonly Float64Array[];
  /** cell temperatures for a unit input at each port that lasts for ever */
  readonly steady: readonly Float64Array[];
  /** cell·states + state */
  readonly shapes: Float64Array;
  /** 1/s */
  readonly rates: Float64Array;
}

const total = (values: Float64Array) => values.reduce((sum, value) => sum + value, 0);

/** What weights over the cells see of each state. */
function seenByState({ shapes, rates }: SliceParts, weights: Float64Array): Float64Array {
  const states = rates.length;
  const seen = new Float64Array(states);
  for (let c = 0; c < weights.length; c++) {
    const weight = weights[c]!;
    if (weight === 0) continue;
    for (let k = 0; k < states; k++) seen[k]! += weight * shapes[c * states + k]!;
  }
  return seen;
}

/** port·states + state */
function portGains(parts: SliceParts): Float64Array {
  const states = parts.rates.length;
  const gains = new Float64Array(parts.ports.length * states);
  parts.ports.forEach((port, p) => gains.set(seenByState(parts, port), p * states));
  return gains;
}

/** port·ports + port: steady answers less what the states answer in the end. */
function directAnswers({ ports, steady, rates }: SliceParts, gains: Float64Array): Float64Array {
  const states = rates.length;
  const direct = new Float64Array(ports.length ** 2);
  ports.forEach((port, p) =>
    steady.forEach((field, q) => {
      let slow = 0;
      for (let k = 0; k < states; k++) {
        slow += gains[p * states + k]! * gains[q * states + k]! / rates[k]!;
      }
      direct[p * ports.length + q] = dot(port, field) - slow;
    })
  );
  return direct;
}

/** cell·ports + port: the same for every cell. */
function directShapes(
  { ports, steady, shapes, rates }: SliceParts,
  gains: Float64Array,
): Float64Array {
  const states = rates.length;
  const size = shapes.length / states;
  const direct = new Float64Array(size * ports.length);
  for (let c = 0; c < size; c++) {
    for (let p = 0; p < ports.length; p++) {
      let slow = 0;
      for (let k = 0; k < states; k++) {
        slow += shapes[c * states + k]! * gains[p * states + k]! / rates[k]!;
      }
      direct[c * ports.length + p] = steady[p]![c]! - slow;
    }
  }
  return direct;
}

/** Port gains, direct part, content and thermometer from the shapes. */
export function assembleSlice(parts: SliceParts): ReducedSlice {
  const { operator, ports, shapes, rates } = parts;
  const gains = portGains(parts);
  const atOnce = directShapes(parts, gains);
  const { cells, weights } = operator.store;
  const thermometer = new Float64Array(operator.capacity.length);
  cells.forEach((cell, k) => thermometer[cell] = weights[k]!);
  const storeDirect = Float64Array.from(ports, (_, p) => {
    let value = 0;
    for (let c = 0; c < thermometer.length; c++) {
      value += thermometer[c]! * atOnce[c * ports.length + p]!;
    }
    return value;
  });
  return {
    states: rates.length,
    tubes: operator.tubes.length,
    ports: ports.length,
    zones: parts.zones,
    rates,
    gains,
    direct: directAnswers(parts, gains),
    conductances: [
      total(operator.floor.conductances),
      total(operator.outdoor.conductances),
      total(operator.deep.conductances),
    ],
    content: seenByState(parts, operator.capacity),
    store: seenByState(parts, thermometer),
    storeDirect,
    shapes,
    directShapes: atOnce,
    capacity: operator.capacity,
  };
}

/** Rows and columns of the first ports alone. */
function firstPorts(direct: Float64Array, ports: number, kept: number): Float64Array {
  return Float64Array.from(
    { length: direct.length / ports * kept },
    (_, k) => direct[Math.floor(k / kept) * ports + (k % kept)]!,
  );
}

/** The same slice with nothing in it that freezes: the same states, tubes and surfaces alone. */
export function withoutZones(slice: ReducedSlice): ReducedSlice {
  const { ports, states } = slice;
  const kept = ports - slice.zones.length;
  return {
    ...slice,
    ports: kept,
    zones: [],
    gains: slice.gains.slice(0, kept * states),
    direct: firstPorts(slice.direct.subarray(0, kept * ports), ports, kept),
    storeDirect: slice.storeDirect.slice(0, kept),
    directShapes: firstPorts(slice.directShapes, ports, kept),
  };
}
