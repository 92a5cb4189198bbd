/** The slice reduced to a few dozen states that see and answer like the full mesh. @module */
import { EigenvalueDecomposition, Matrix } from "ml-matrix";
import { factorShifted, solveBanded } from "./banded.ts";
import type { ConductionOperator } from "./operator.ts";

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

/** States kept in production: outlet within 0.03 K RMS of the full mesh (docs/store.md). */
export const PRODUCTION_STATES = 48;
/** 1/s; bracket the year (2e-7) and reach down to minutes. */
const SHIFTS = [0, 1e-8, 1e-7, 1e-6, 6e-6, 3e-5, 1.2e-4, 5e-4, 2e-3];
/** Inputs the states are weighted for. */
const LAYER_HEAT = 60;
const TILT_SHARE = 0.2;
const SINGLE_SHARE = 0.03;
const FLOOR_SWING = 10;
const OUTDOOR_SWING = 15;
/** 1/s: inputs are taken as noise that is white below this, 3 h */
const COLOUR = 1 / 10800;
/** Shifts up to this reach over the tube spacing: there layers act as one. */
const SMOOTH_BELOW = 2e-6;

/** Port vectors by cell. */
function portVectors(operator: ConductionOperator): Float64Array[] {
  const size = operator.capacity.length;
  const vectorOf = (cells: Int32Array, weights: Float64Array) => {
    const vector = new Float64Array(size);
    cells.forEach((cell, k) => vector[cell] = weights[k]!);
    return vector;
  };
  return [
    ...operator.tubes.map((tube) => vectorOf(tube.cells, tube.weights)),
    vectorOf(operator.floor.cells, operator.floor.conductances),
    vectorOf(operator.outdoor.cells, operator.outdoor.conductances),
    vectorOf(operator.deep.cells, operator.deep.conductances),
  ];
}

/** Tubes of one layer: tubes whose blocks lie in the same row of cells. */
function layersOf(operator: ConductionOperator): number[][] {
  const rows = operator.tubes.map((tube) => Math.floor(tube.cells[0]! / operator.columns));
  return [...new Set(rows)].map((row) => rows.flatMap((other, k) => other === row ? [k] : []));
}

/** Patterns over the tubes of a layer: all alike, and smooth waves across. */
function layerPatterns(operator: ConductionOperator, waves: number): number[][] {
  return layersOf(operator).flatMap((layer) =>
    Array.from({ length: Math.min(waves, layer.length) }, (_, wave) => {
      const pattern = new Array<number>(operator.tubes.length).fill(0);
      layer.forEach((tube, place) => {
        pattern[tube] = Math.cos(Math.PI * wave * (place + 0.5) / layer.length);
      });
      return pattern;
    })
  );
}

function combine(vectors: readonly Float64Array[], pattern: readonly number[]): Float64Array {
  const sum = new Float64Array(vectors[0]!.length);
  pattern.forEach((factor, k) => {
    if (factor !== 0) vectors[k]!.forEach((value, c) => sum[c]! += factor * value);
  });
  return sum;
}

function dot(a: Float64Array, b: Float64Array): number {
  let s0 = 0, s1 = 0, s2 = 0, s3 = 0;
  const whole = a.length & ~3;
  for (let k = 0; k < whole; k += 4) {
    s0 += a[k]! * b[k]!;
    s1 += a[k + 1]! * b[k + 1]!;
    s2 += a[k + 2]! * b[k + 2]!;
    s3 += a[k + 3]! * b[k + 3]!;
  }
  for (let k = whole; k < a.length; k++) s0 += a[k]! * b[k]!;
  return s0 + s1 + s2 + s3;
}

function subtract(target: Float64Array, factor: number, vector: Float64Array): void {
  for (let k = 0; k < target.length; k++) target[k]! -= factor * vector[k]!;
}

/**
 * Orthonormal basis (in √M·T) of the rational Krylov space: the constant field first, then
 * (K + σM)⁻¹B for every shift. Gram–Schmidt twice; what adds nothing is dropped.
 */
function krylovBasis(
  operator: ConductionOperator,
  ports: readonly Float64Array[],
  root: Float64Array,
): { basis: Float64Array[]; steady: Float64Array[] } {
  const basis: Float64Array[] = [];
  const append = (field: Float64Array): void => {
    const vector = field.map((value, c) => value * root[c]!);
    const before = Math.sqrt(dot(vector, vector));
    if (before === 0) return;
    for (let pass = 0; pass < 2; pass++) {
      for (const other of basis) subtract(vector, dot(vector, other), other);
    }
    const left = Math.sqrt(dot(vector, vector));
    if (left < 1e-7 * before) return;
    basis.push(vector.map((value) => value / left));
  };
  append(new Float64Array(root.length).fill(1));
  const tubes = operator.tubes.length;
  const smooth = [
    ...layerPatterns(operator, 6).map((pattern) => combine(ports, pattern)),
    ...ports.slice(tubes),
  ];
  let steady: Float64Array[] = [];
  for (const shift of SHIFTS) {
    const factor = factorShifted(operator, shift);
    const wanted = shift <= SMOOTH_BELOW ? smooth : ports;
    for (const port of wanted) append(solveBanded(factor, port));
    if (shift === 0) steady = ports.map((port) => solveBanded(factor, port));
  }
  return { basis, steady };
}

/** Galerkin projection of M^(−1/2) K M^(−1/2), applied cell by cell. */
function project(
  operator: ConductionOperator,
  basis: readonly Float64Array[],
  root: Float64Array,
  surface: Float64Array,
): Matrix {
  const { columns, sideways, downwards } = operator;
  const size = root.length;
  const applied = basis.map((vector) => {
    const field = vector.map((value, c) => value / root[c]!);
    const flow = new Float64Array(size);
    for (let c = 0; c < size; c++) {
      flow[c]! += surface[c]! * field[c]!;
      if (c % columns < columns - 1) {
        const heat = sideways[c]! * (field[c]! - field[c + 1]!);
        flow[c]! += heat;
        flow[c + 1]! -= heat;
      }
      if (c + columns < size) {
        const heat = downwards[c]! * (field[c]! - field[c + columns]!);
        flow[c]! += heat;
        flow[c + columns]! -= heat;
      }
    }
    return flow.map((value, c) => value / root[c]!);
  });
  const small = Matrix.zeros(basis.length, basis.length);
  for (let i = 0; i < basis.length; i++) {
    for (let j = 0; j <= i; j++) {
      const value = dot(basis[i]!, applied[j]!);
      small.set(i, j, value);
      small.set(j, i, value);
    }
  }
  return small;
}

/** Eigenvalues and vectors of a symmetric matrix, rising. */
function eigen(matrix: Matrix): { values: number[]; vectors: Matrix } {
  const result = new EigenvalueDecomposition(matrix, { assumeSymmetric: true });
  return { values: result.realEigenvalues, vectors: result.eigenvectorMatrix };
}

/** Weighted input columns over the ports. */
function weightedInputs(operator: ConductionOperator): number[][] {
  const tubes = operator.tubes.length;
  const extend = (pattern: number[], factor: number) => [
    ...pattern.map((value) => value * factor),
    0,
    0,
    0,
  ];
  const columns = [
    ...layersOf(operator).flatMap((_, layer) => {
      const patterns = layerPatterns(operator, 2);
      const perLayer = patterns.length / layersOf(operator).length;
      return patterns.slice(layer * perLayer, (layer + 1) * perLayer).map((pattern, wave) =>
        extend(pattern, wave === 0 ? LAYER_HEAT : TILT_SHARE * LAYER_HEAT)
      );
    }),
    ...operator.tubes.map((_, tube) =>
      extend(operator.tubes.map((__, k) => k === tube ? 1 : 0), SINGLE_SHARE * LAYER_HEAT)
    ),
  ];
  const none = new Array<number>(tubes).fill(0);
  return [...columns, [...none, FLOOR_SWING, 0, 0], [...none, 0, OUTDOOR_SWING, 0], [
    ...none,
    0,
    0,
    FLOOR_SWING,
  ]];
}

/** The directions kept: the heat content first, then the best seen and reached. */
function keptDirections(given: {
  readonly rates: readonly number[];
  readonly gains: Matrix;
  readonly content: Float64Array;
  readonly inputs: readonly (readonly number[])[];
  readonly states: number;
}): Float64Array[] {
  const { rates, gains, content, inputs, states } = given;
  const count = rates.length;
  const driven = inputs.map((input) =>
    Float64Array.from(
      { length: count },
      (_, i) => input.reduce((sum, factor, port) => sum + factor * gains.get(port, i), 0),
    )
  );
  const gramian = Matrix.zeros(count, count);
  for (let i = 0; i < count; i++) {
    for (let j = 0; j <= i; j++) {
      const both = driven.reduce((sum, column) => sum + column[i]! * column[j]!, 0);
      const li = rates[i]!;
      const lj = rates[j]!;
      const value = both / (li + lj) * (1 / (li + COLOUR) + 1 / (lj + COLOUR)) * COLOUR / 2;
      gramian.set(i, j, value);
      gramian.set(j, i, value);
    }
  }
  const { values, vectors } = eigen(gramian);
  const rank = values.map((value, k) => ({ value, k })).sort((a, b) => b.value - a.value);
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
  states = PRODUCTION_STATES,
): ReducedSlice {
  const { capacity } = operator;
  const size = capacity.length;
  const root = capacity.map(Math.sqrt);
  const ports = portVectors(operator);
  const { basis, steady } = krylovBasis(operator, ports, root);
  const full = eigen(project(operator, basis, root, surfaceOf(ports, operator)));
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

function surfaceOf(ports: readonly Float64Array[], operator: ConductionOperator): Float64Array {
  const surface = new Float64Array(operator.capacity.length);
  for (const port of ports.slice(operator.tubes.length)) {
    port.forEach((value, c) => surface[c]! += value);
  }
  return surface;
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
