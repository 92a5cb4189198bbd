/** Fields a slice is likely to take: the rational Krylov space of its ports. @module */
import { Matrix } from "ml-matrix";
import { surfaceConductance } from "../full/factors.ts";
import { factorShifted, solveBanded } from "./banded_cholesky.ts";
import type { ConductionOperator } from "../../ground/operator.ts";
import { combine, layerPatterns } from "./ports.ts";
import { dot, subtract } from "../../../basics/linear/vectors.ts";

/** 1/s; bracket the year (2e-7) and reach down to minutes. */
const SHIFTS = [0, 1e-8, 1e-7, 1e-6, 6e-6, 3e-5, 1.2e-4, 5e-4, 2e-3];
/** Shifts up to this reach over the tube spacing: there layers act as one. */
const SMOOTH_BELOW = 2e-6;

/**
 * Orthonormal basis (in √M·T) of the rational Krylov space: the constant field first, then
 * (K + σM)⁻¹B for every shift. Gram–Schmidt twice; what adds nothing is dropped. Steady fields are
 * given for `others` too, ports that add no direction of their own.
 */
export function krylovBasis(
  operator: ConductionOperator,
  ports: readonly Float64Array[],
  root: Float64Array,
  others: readonly Float64Array[] = [],
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
    if (shift === 0) {
      steady = [...ports, ...others].map((port) => solveBanded(factor, port));
    }
  }
  return { basis, steady };
}

/** Galerkin projection of M^(−1/2) K M^(−1/2), applied cell by cell. */
export function project(
  operator: ConductionOperator,
  basis: readonly Float64Array[],
  root: Float64Array,
): Matrix {
  const surface = surfaceConductance(operator);
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
