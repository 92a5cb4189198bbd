/** How the reduced step holds states, inputs and coefficients, and which sums it takes. @module */
import type { PlacedArrays } from "../../../../basics/mod.ts";

/** Lanes advanced together, so that each coefficient is loaded once for four. */
export const BLOCK = 4;

/**
 * Values that a sum goes over: from `from` up to `to`, then the first `count` of those listed; `width` of
 * them in a row of coefficients.
 */
export interface Run {
  readonly width: number;
  readonly from: number;
  readonly to: number;
  readonly listed: Int32Array;
  count: number;
}

/** A run of values, and room for those that are listed; none yet. */
export function runOver(
  width: number,
  from: number,
  to: number,
  listed: Int32Array = new Int32Array(0),
): Run {
  return { width, from, to, listed, count: 0 };
}

/** Rows of coefficients: the first `count` of those listed, row·width + value. */
export interface Rows {
  readonly matrix: Float64Array;
  readonly listed: Int32Array;
  count: number;
}

/** How the states of a step move: what is left of each, and what a unit of input adds. */
export interface StateMove {
  readonly decay: Float64Array;
  readonly growth: Float64Array;
}

/**
 * The sums of a step over the four lanes of a block: value k of a lane at 4·k + lane. Arrays must have
 * been placed by {@link Sums.place}. Where a block holds one lane (`lanes` 1) the places of the others are
 * left as they are.
 */
export interface Sums {
  /** Puts arrays where the sums reach them: zeros, or what is given. Once for each of these. */
  place<Wanted extends PlacedArrays>(wanted: Wanted): Wanted;
  /** out[i] ← out[i] + Σ matrix[rows[i]][q]·vector[q] over a run, from `start` and `outStart` on. */
  addRows(
    rows: Rows,
    run: Run,
    vector: Float64Array,
    start: number,
    out: Float64Array,
    outStart: number,
    lanes: number,
  ): void;
  /** x[k] ← decay[k]·x[k] + growth[k]·added[k], x from `start` on. */
  advance(
    move: StateMove,
    added: Float64Array,
    x: Float64Array,
    start: number,
    lanes: number,
  ): void;
}
