/** From the Krylov basis to the modes that are kept, and what each looks like cell by cell. @module */
import { Matrix } from "ml-matrix";
import { project } from "./krylov.ts";
import type { ConductionOperator } from "../../ground/operator.ts";
import { dot, eigen } from "../../../basics/linear/vectors.ts";

/** Modes of the whole basis. */
export interface FullModes {
  /** 1/s */
  readonly rates: readonly number[];
  /** columns: modes in the basis */
  readonly vectors: Matrix;
  /** port by mode */
  readonly gains: Matrix;
  /** heat content by mode */
  readonly content: Float64Array;
}

/** Σᵢ vector[i]·vectors[i, j] for every mode j. */
function inModes(vector: Float64Array, vectors: Matrix): Float64Array {
  return Float64Array.from({ length: vectors.columns }, (_, j) => {
    let sum = 0;
    for (let i = 0; i < vector.length; i++) sum += vector[i]! * vectors.get(i, j);
    return sum;
  });
}

/** Modes of the projected slice, with gains of the ports and heat content. */
export function fullModes(
  operator: ConductionOperator,
  given: {
    readonly basis: readonly Float64Array[];
    readonly root: Float64Array;
    readonly ports: readonly Float64Array[];
  },
): FullModes {
  const { basis, root, ports } = given;
  const { values, vectors } = eigen(project(operator, basis, root));
  const inBasis = (field: Float64Array) => Float64Array.from(basis, (vector) => dot(vector, field));
  const gains = Matrix.zeros(ports.length, basis.length);
  ports.forEach((port, p) => {
    inModes(inBasis(port.map((value, c) => value / root[c]!)), vectors)
      .forEach((value, j) => gains.set(p, j, value));
  });
  return { rates: values, vectors, gains, content: inModes(inBasis(root), vectors) };
}

/** Modes of what is kept: eigenvectors of the conduction among the kept directions. */
export function keptModes(
  full: FullModes,
  kept: readonly Float64Array[],
): { readonly values: readonly number[]; readonly vectors: Matrix } {
  const small = Matrix.zeros(kept.length, kept.length);
  kept.forEach((a, i) =>
    kept.forEach((b, j) => {
      let sum = 0;
      for (let k = 0; k < a.length; k++) sum += a[k]! * full.rates[k]! * b[k]!;
      small.set(i, j, sum);
    })
  );
  return eigen(small);
}

/** A kept direction as factors of the basis. */
function toBasis(full: FullModes, direction: Float64Array): Float64Array {
  const count = direction.length;
  return Float64Array.from({ length: count }, (_, i) => {
    let sum = 0;
    for (let j = 0; j < count; j++) sum += full.vectors.get(i, j) * direction[j]!;
    return sum;
  });
}

/**
 * Temperature of each cell by state, cell·states + state:
 * T = M^(−1/2) · basis · full vectors · kept · modal vectors · x. 2·cells·basis·states flops.
 */
export function cellShapes(given: {
  readonly full: FullModes;
  readonly kept: readonly Float64Array[];
  readonly modal: { readonly vectors: Matrix };
  readonly basis: readonly Float64Array[];
  readonly root: Float64Array;
}): Float64Array {
  const { full, kept, modal, basis, root } = given;
  const directions = kept.map((direction) => toBasis(full, direction));
  const states = kept.length;
  const shapes = new Float64Array(root.length * states);
  for (let k = 0; k < states; k++) {
    const weights = new Float64Array(basis.length);
    directions.forEach((direction, d) => {
      const factor = modal.vectors.get(d, k);
      for (let i = 0; i < weights.length; i++) weights[i]! += factor * direction[i]!;
    });
    basis.forEach((vector, i) => {
      const weight = weights[i]!;
      for (let c = 0; c < vector.length; c++) shapes[c * states + k]! += weight * vector[c]!;
    });
  }
  for (let c = 0; c < root.length; c++) {
    for (let k = 0; k < states; k++) shapes[c * states + k]! /= root[c]!;
  }
  return shapes;
}
