/** The slice reduced to a few dozen states that see and answer like the full mesh. @module */
import { Matrix } from "ml-matrix";
import { krylovBasis, project } from "./krylov.ts";
import type { ConductionOperator } from "../../ground/operator.ts";
import { portVectors } from "./ports.ts";
import { keptDirections, weightedInputs } from "./truncation.ts";
import { dot, eigen } from "../../../basics/linear/vectors.ts";

/**
 * The slice in modal form: dx/dt = −λ∘x + Bᵀu, port value y = B·x + D·u. Ports: each tube
 * (W/m in, block temperature out), then floor, surface outside and deep end (K in, Σ g·T out).
 */
export interface ReducedSlice {
  readonly states: number;
  readonly tubes: number;
  readonly ports: number;
  /** 1/s */
  readonly rates: Float64Array;
  /** port·states + state */
  readonly gains: Float64Array;
  /** port·ports + port: what the left-out fast states would add at once */
  readonly direct: Float64Array;
  /** W/(m K): sum of conductances of floor, outdoor, deep */
  readonly conductances: readonly [number, number, number];
  /** heat content over 0 °C by state, J/m */
  readonly content: Float64Array;
  /** temperature between the tubes by state */
  readonly store: Float64Array;
  /** temperature between the tubes by port: part of the left-out fast states */
  readonly storeDirect: Float64Array;
  /** cell·states + state: temperature of each cell by state */
  readonly shapes: Float64Array;
  /** cell·ports + port: what the left-out fast states add to each cell at once */
  readonly directShapes: Float64Array;
  readonly capacity: Float64Array;
}

/**
 * States kept in production: so many that more change the year's heat by less than a thousandth
 * (docs/store.md).
 *
 * @param tubes modelled tubes of a slice
 */
export function productionStates(tubes: number): number {
  return Math.min(128, Math.round(26 + 2.2 * tubes));
}

/**
 * Reduces a slice: rational Krylov space at nine shifts, then balanced truncation. The system is
 * symmetric with inputs = outputs, so both Gramians are one and the projection keeps stability;
 * the constant field is kept exactly, so the heat ledger closes. What is left out is added as its
 * steady value, so steady answers are exact.
 *
 * Source: Antoulas 2005, "Approximation of Large-Scale Dynamical Systems", ch. 7 and 11 (from
 * memory); the weighting of the inputs is our own.
 *
 * @param operator slice
 * @param states how many to keep
 */
export function reduceSlice(
  operator: ConductionOperator,
  states: number = productionStates(operator.tubes.length),
): ReducedSlice {
  const { capacity } = operator;
  const size = capacity.length;
  const root = capacity.map(Math.sqrt);
  const ports = portVectors(operator);
  const { basis, steady } = krylovBasis(operator, ports, root);
  const full = eigen(project(operator, basis, root));
  const rotate = (vector: Float64Array, vectors: Matrix, count: number) =>
    Float64Array.from({ length: count }, (_, j) => {
      let sum = 0;
      for (let i = 0; i < vector.length; i++) sum += vector[i]! * vectors.get(i, j);
      return sum;
    });
  const inBasis = (field: Float64Array) => Float64Array.from(basis, (vector) => dot(vector, field));
  const count = basis.length;
  const gains = Matrix.zeros(ports.length, count);
  ports.forEach((port, p) => {
    rotate(inBasis(port.map((value, c) => value / root[c]!)), full.vectors, count)
      .forEach((value, j) => gains.set(p, j, value));
  });
  const content = rotate(inBasis(root), full.vectors, count);
  const kept = keptDirections({
    rates: full.values,
    gains,
    content,
    inputs: weightedInputs(operator),
    states: Math.min(states, count),
  });
  const small = Matrix.zeros(kept.length, kept.length);
  kept.forEach((a, i) =>
    kept.forEach((b, j) => {
      let sum = 0;
      for (let k = 0; k < count; k++) sum += a[k]! * full.values[k]! * b[k]!;
      small.set(i, j, sum);
    })
  );
  const modal = eigen(small);
  // cell shapes: T = M^(−1/2) · basis · fullVectors · kept · modalVectors · x
  const toBasis = kept.map((direction) =>
    Float64Array.from({ length: count }, (_, i) => {
      let sum = 0;
      for (let j = 0; j < count; j++) sum += full.vectors.get(i, j) * direction[j]!;
      return sum;
    })
  );
  const r = kept.length;
  const shapes = new Float64Array(size * r);
  for (let k = 0; k < r; k++) {
    const weights = new Float64Array(count);
    for (let d = 0; d < r; d++) {
      const factor = modal.vectors.get(d, k);
      for (let i = 0; i < count; i++) weights[i]! += factor * toBasis[d]![i]!;
    }
    for (let i = 0; i < count; i++) {
      const vector = basis[i]!;
      const weight = weights[i]!;
      for (let c = 0; c < size; c++) shapes[c * r + k]! += weight * vector[c]!;
    }
  }
  for (let c = 0; c < size; c++) {
    for (let k = 0; k < r; k++) shapes[c * r + k]! /= root[c]!;
  }
  return assemble({ operator, ports, steady, shapes, rates: Float64Array.from(modal.values) });
}

/** Port gains, direct part, content and thermometer from the shapes. */
function assemble(given: {
  readonly operator: ConductionOperator;
  readonly ports: readonly Float64Array[];
  readonly steady: readonly Float64Array[];
  readonly shapes: Float64Array;
  readonly rates: Float64Array;
}): ReducedSlice {
  const { operator, ports, steady, shapes, rates } = given;
  const r = rates.length;
  const size = operator.capacity.length;
  const seen = (weights: Float64Array) => {
    const result = new Float64Array(r);
    for (let c = 0; c < size; c++) {
      const weight = weights[c]!;
      if (weight === 0) continue;
      for (let k = 0; k < r; k++) result[k]! += weight * shapes[c * r + k]!;
    }
    return result;
  };
  const gains = new Float64Array(ports.length * r);
  ports.forEach((port, p) => gains.set(seen(port), p * r));
  const direct = new Float64Array(ports.length ** 2);
  ports.forEach((port, p) =>
    steady.forEach((field, q) => {
      let slow = 0;
      for (let k = 0; k < r; k++) slow += gains[p * r + k]! * gains[q * r + k]! / rates[k]!;
      direct[p * ports.length + q] = dot(port, field) - slow;
    })
  );
  const directShapes = new Float64Array(size * ports.length);
  for (let c = 0; c < size; c++) {
    for (let p = 0; p < ports.length; p++) {
      let slow = 0;
      for (let k = 0; k < r; k++) slow += shapes[c * r + k]! * gains[p * r + k]! / rates[k]!;
      directShapes[c * ports.length + p] = steady[p]![c]! - slow;
    }
  }
  const thermometer = new Float64Array(size);
  operator.store.cells.forEach((cell, k) => thermometer[cell] = operator.store.weights[k]!);
  const sum = (values: Float64Array) => values.reduce((total, value) => total + value, 0);
  return {
    states: r,
    tubes: operator.tubes.length,
    ports: ports.length,
    rates,
    gains,
    direct,
    conductances: [
      sum(operator.floor.conductances),
      sum(operator.outdoor.conductances),
      sum(operator.deep.conductances),
    ],
    content: seen(operator.capacity),
    store: seen(thermometer),
    storeDirect: Float64Array.from(ports, (_, p) => {
      let value = 0;
      for (let c = 0; c < size; c++) {
        value += thermometer[c]! * directShapes[c * ports.length + p]!;
      }
      return value;
    }),
    shapes,
    directShapes,
    capacity: operator.capacity,
  };
}
