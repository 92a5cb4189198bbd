/**
 * Which unknown input moves a figure most: variance-based sensitivity.
 *
 * @module
 */
import { mean } from "d3-array";
import { latinHypercube } from "./sampling.ts";

/** Points of two samples and of the mixed ones that the indices need. */
export interface SensitivityPoints {
  /** first sample, row by row shares from 0 to 1 */
  readonly first: readonly (readonly number[])[];
  /** second sample, as many rows */
  readonly second: readonly (readonly number[])[];
  /** by input: the first sample with that input's column from the second */
  readonly mixed: readonly (readonly (readonly number[])[])[];
}

/** A figure at all points. */
export interface SensitivityValues {
  /** at the first sample, in the unit of the figure */
  readonly first: readonly number[];
  /** at the second sample, in the same unit */
  readonly second: readonly number[];
  /** by input, at the mixed samples, in the same unit */
  readonly mixed: readonly (readonly number[])[];
}

/** Share of a figure's variance that an input accounts for. */
export interface SensitivityIndex {
  /** alone, share; noise can carry it a little below 0 */
  readonly first: number;
  /** with all that it does together with others, share */
  readonly total: number;
}

/**
 * Points for first-order and total indices: (2 + inputs) times the count.
 *
 * Source: Saltelli et al. 2010 [saltelli-2010], from memory.
 *
 * @param count number of rows of each sample
 * @param inputs number of inputs
 * @param seed whole number; the same seed gives the same points
 */
export function sensitivityPoints(count: number, inputs: number, seed: number): SensitivityPoints {
  const both = latinHypercube(count, 2 * inputs, seed);
  const first = both.map((row) => row.slice(0, inputs));
  const second = both.map((row) => row.slice(inputs));
  const mixed = Array.from(
    { length: inputs },
    (_, input) =>
      first.map((row, place) =>
        row.map((value, column) => column === input ? second[place]![column]! : value)
      ),
  );
  return { first, second, mixed };
}

/**
 * First-order and total indices of each input.
 *
 * S = mean(f_B (f_AB − f_A))/V, S_T = mean((f_A − f_AB)²)/(2V), V the variance of f_A and f_B together,
 * f less its mean
 *
 * Source: Saltelli et al. 2010 [saltelli-2010] for the first order, Jansen 1999 [jansen-1999] for the
 * total, from memory.
 *
 * @param values of one figure at all points
 * @returns by input; 0 for a figure that does not vary
 */
export function sensitivityIndices(values: SensitivityValues): readonly SensitivityIndex[] {
  const all = [...values.first, ...values.second];
  const middle = mean(all)!;
  const variance = mean(all, (value) => (value - middle) ** 2)!;
  if (variance === 0) return values.mixed.map(() => ({ first: 0, total: 0 }));
  const [first, second] = [values.first, values.second].map((list) =>
    list.map((value) => value - middle)
  ) as [number[], number[]];
  return values.mixed.map((list) => {
    const mixed = list.map((value) => value - middle);
    return {
      first: mean(second, (value, place) => value * (mixed[place]! - first[place]!))! / variance,
      total: mean(first, (value, place) => (value - mixed[place]!) ** 2)! / (2 * variance),
    };
  });
}
