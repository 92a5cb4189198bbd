/** Fields a slice is likely to take: the rational Krylov space of its ports. @module */
import { dot } from "../../../basics/linear/vectors.ts";
import type { ConductionOperator } from "../../ground/operator.ts";
import { type BandedFactor, factorShifted, solveBandedMany } from "./banded_cholesky.ts";
import { balancedInputs, layerPatterns, type Port, spreadInputs, tubePatterns } from "./ports.ts";

/** 1/s; bracket the year (2e-7) and reach down to minutes. */
const SHIFTS = [0, 1e-8, 1e-7, 1e-6, 6e-6, 3e-5, 1.2e-4, 5e-4, 2e-3];
/** Shifts up to this reach over the tube spacing: there layers act as one. */
const SMOOTH_BELOW = 2e-6;
/** Waves across a layer there. */
const SMOOTH_WAVES = 6;

/** A field of the space, (K + σM)·T = inputs at the ports, times √M and of length 1. */
export interface KrylovField {
  readonly values: Float64Array;
  readonly shift: number;
  /** by port, of the field as scaled */
  readonly inputs: Float64Array;
}

/** Inputs at the ports, three surfaces after the tubes: patterns over the tubes, and each surface. */
function inputColumns(ports: readonly Port[], patterns: readonly number[][]): Float64Array[] {
  const tubes = patterns[0]?.length ?? 0;
  const columns = [...patterns, ...[0, 1, 2].map((s) => [...new Array(tubes + s).fill(0), 1])];
  return columns.map((column) => Float64Array.from(ports, (_, p) => column[p] ?? 0));
}

/** The constant field, which one kelvin at every surface keeps up. */
function constantField(root: Float64Array, tubes: number, ports: readonly Port[]): KrylovField {
  const length = Math.sqrt(dot(root, root));
  return {
    values: root.map((value) => value / length),
    shift: 0,
    inputs: Float64Array.from(ports, (_, p) => p >= tubes && p < tubes + 3 ? 1 / length : 0),
  };
}

/**
 * Fields that span the rational Krylov space: the constant one first, then (K + σM)⁻¹B for every
 * shift. They are not orthogonal.
 *
 * @param operator slice
 * @param ports of it; those after the surfaces add no direction of their own
 * @param weights of each port, summed
 * @param atRest the slice factored without shift
 */
export function krylovFields(
  operator: ConductionOperator,
  ports: readonly Port[],
  weights: readonly number[],
  atRest: BandedFactor,
): KrylovField[] {
  const root = operator.capacity.map(Math.sqrt);
  const tubes = operator.tubes.length;
  const smooth = inputColumns(ports, layerPatterns(operator, SMOOTH_WAVES));
  const single = inputColumns(ports, tubePatterns(operator));
  const fields = [constantField(root, tubes, ports)];
  for (const shift of SHIFTS) {
    const factor = shift === 0 ? atRest : factorShifted(operator, shift);
    const columns = (shift <= SMOOTH_BELOW ? smooth : single)
      .map((inputs) => shift === 0 ? balancedInputs(tubes, weights, inputs) : inputs);
    const heats = columns.map((inputs) => spreadInputs(root.length, ports, inputs));
    solveBandedMany(factor, heats).forEach((field, k) => {
      const values = field.map((value, c) => value * root[c]!);
      const length = Math.sqrt(dot(values, values));
      if (length === 0) return;
      for (let c = 0; c < values.length; c++) values[c]! /= length;
      fields.push({ values, shift, inputs: columns[k]!.map((input) => input / length) });
    });
  }
  return fields;
}
