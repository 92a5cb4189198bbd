/** A reduced slice put together from the shapes of its states. @module */
import type { ConductionOperator } from "../../ground/operator.ts";
import type { FreezingZone } from "../../ground/zones.ts";
import type { BandedFactor } from "./banded_cholesky.ts";
import { type Port, seenBy, slicePorts, weightOf } from "./ports.ts";
import type { ReducedSlice } from "./slice.ts";
import { LeftOut } from "./steady.ts";
import { commonCurve } from "../../../soil/mod.ts";

/** What a reduced slice is made of. */
export interface SliceParts {
  readonly operator: ConductionOperator;
  readonly zones: readonly FreezingZone[];
  /** the slice factored without shift */
  readonly atRest: BandedFactor;
  /** temperature by cell, one a state */
  readonly shapes: readonly Float64Array[];
  /** 1/s */
  readonly rates: Float64Array;
}

/** What ports see of each state, port·states + state. */
function gainsOf(ports: readonly Port[], shapes: readonly Float64Array[]): Float64Array {
  return Float64Array.from(
    ports.flatMap((port) => shapes.map((shape) => seenBy(port, shape))),
  );
}

/** Every cell with its heat capacity: sees the heat content. */
function allCells(operator: ConductionOperator): Port {
  return {
    cells: Int32Array.from(operator.capacity, (_, c) => c),
    weights: operator.capacity,
  };
}

/** The mean of a matrix and its transpose, row by row. */
function symmetric(values: Float64Array, size: number): Float64Array {
  return values.map((value, k) => (value + values[(k % size) * size + Math.floor(k / size)]!) / 2);
}

/** Port gains, direct part, content and thermometer from the shapes. */
export function assembleSlice(parts: SliceParts): ReducedSlice {
  const { operator, zones, shapes, rates, atRest } = parts;
  const ports = slicePorts(operator, zones);
  const seers = [...ports, operator.store];
  const allGains = gainsOf(seers, shapes);
  const gains = allGains.slice(0, ports.length * rates.length);
  const left = new LeftOut(operator, ports, { rates, gains }, atRest).seen(seers, allGains);
  const size = operator.capacity.length;
  const flat = new Float64Array(size * rates.length);
  shapes.forEach((shape, k) => flat.set(shape, k * size));
  return {
    states: rates.length,
    tubes: operator.tubes.length,
    ports: ports.length,
    operator,
    zones,
    curve: commonCurve(zones),
    floorInSoil: operator.floor.inSoil ?? 1,
    rates,
    gains,
    direct: symmetric(left.slice(0, ports.length ** 2), ports.length),
    conductances: [
      weightOf(ports[operator.tubes.length]!),
      weightOf(ports[operator.tubes.length + 1]!),
      weightOf(ports[operator.tubes.length + 2]!),
    ],
    content: gainsOf([allCells(operator)], shapes),
    store: allGains.slice(ports.length * rates.length),
    storeDirect: left.slice(ports.length ** 2),
    shapes: flat,
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
    curve: null,
    gains: slice.gains.slice(0, kept * states),
    direct: firstPorts(slice.direct.subarray(0, kept * ports), ports, kept),
    storeDirect: slice.storeDirect.slice(0, kept),
  };
}
