/** What tubes and floor add to a step of four slices, solved together where they reach. @module */
import { type AdiFactors, portResponse } from "./factors.ts";
import { LANES } from "./kernel.ts";
import type { ConductionOperator } from "../../ground/operator.ts";

/** The part of a slice that sources reach within one step, and the rows they lie in. */
export interface SourceReach {
  readonly columns: number;
  readonly from: number;
  /** first column and row beyond */
  readonly to: number;
  readonly end: number;
  /** 1 where a row holds sources */
  readonly holds: Uint8Array;
  /** first row that does */
  readonly top: number;
}

/**
 * Finds how far sources reach.
 *
 * @param operator slice
 * @param factors of the step length
 * @param cells where sources may lie
 */
export function sourceReach(
  operator: ConductionOperator,
  factors: AdiFactors,
  cells: readonly number[],
): SourceReach {
  const { columns, rows } = operator;
  const source = new Float64Array(columns * rows);
  const holds = new Uint8Array(rows);
  for (const cell of cells) {
    source[cell] = 1;
    holds[Math.floor(cell / columns)] = 1;
  }
  const felt = portResponse(operator, factors, source).cells;
  const across = felt.map((cell) => cell % columns);
  return {
    columns,
    from: across.reduce((least, column) => Math.min(least, column), columns),
    to: 1 + across.reduce((most, column) => Math.max(most, column), 0),
    end: felt.length === 0 ? 0 : 1 + Math.floor(felt.at(-1)! / columns),
    holds,
    top: Math.max(0, holds.indexOf(1)),
  };
}

/**
 * Adds to four slices what one step makes of sources that last for it.
 *
 * @param factors of the step length
 * @param reach of the sources
 * @param sources W/m, four values for each cell
 * @param field degC; four values for each cell, starting at `start`
 * @param start index of the first value of these four slices
 * @param work scratch of 4·cells values
 */
export function addSources(
  factors: AdiFactors,
  reach: SourceReach,
  sources: Float64Array,
  field: Float64Array,
  start: number,
  work: Float64Array,
): void {
  const { columns, from, to, end, holds, top } = reach;
  for (let row = top; row < end; row++) {
    const first = LANES * (row * columns + from);
    const last = LANES * (row * columns + to - 1);
    const up = row > top ? LANES * columns : 0;
    if (holds[row] === 1) {
      eliminateSources(factors, sources, work, first, last);
      solveSources(factors.along, work, { first, last, up });
    } else carryDown(factors.along, work, { first, last, up });
  }
  addUpwards(factors.columnNext, reach, field, start, work);
}

/** First half step along a row that holds sources. */
function eliminateSources(
  factors: AdiFactors,
  sources: Float64Array,
  work: Float64Array,
  first: number,
  last: number,
): void {
  const { across, rowPivot } = factors;
  let p0 = 0, p1 = 0, p2 = 0, p3 = 0;
  for (let c = first; c <= last; c += LANES) {
    const left = across[c + 3]!;
    const pivot = rowPivot[c / LANES]!;
    p0 = pivot * sources[c]! + left * p0;
    p1 = pivot * sources[c + 1]! + left * p1;
    p2 = pivot * sources[c + 2]! + left * p2;
    p3 = pivot * sources[c + 3]! + left * p3;
    work[c] = p0;
    work[c + 1] = p1;
    work[c + 2] = p2;
    work[c + 3] = p3;
  }
}

/** First and last value of a row, and how far back the row above lies (0: there is none). */
interface RowSpan {
  readonly first: number;
  readonly last: number;
  readonly up: number;
}

/** (m − X) T* + s = 2m T*, so the second half step needs the sources no more. */
function solveSources(along: Float64Array, work: Float64Array, span: RowSpan): void {
  const { first, last, up } = span;
  let t0 = 0, t1 = 0, t2 = 0, t3 = 0;
  for (let c = last; c >= first; c -= LANES) {
    const middle = along[c]!;
    const above = up === 0 ? 0 : along[c + 2]!;
    const next = along[c + 3]!;
    const u = c - up;
    t0 = work[c]! + next * t0;
    t1 = work[c + 1]! + next * t1;
    t2 = work[c + 2]! + next * t2;
    t3 = work[c + 3]! + next * t3;
    work[c] = middle * t0 + above * work[u]!;
    work[c + 1] = middle * t1 + above * work[u + 1]!;
    work[c + 2] = middle * t2 + above * work[u + 2]!;
    work[c + 3] = middle * t3 + above * work[u + 3]!;
  }
}

/** A row without sources. */
function carryDown(along: Float64Array, work: Float64Array, span: RowSpan): void {
  const { first, last, up } = span;
  for (let c = first; c <= last; c += LANES) {
    const above = along[c + 2]!;
    const u = c - up;
    work[c] = above * work[u]!;
    work[c + 1] = above * work[u + 1]!;
    work[c + 2] = above * work[u + 2]!;
    work[c + 3] = above * work[u + 3]!;
  }
}

/** Solves the columns from below, above the sources too, and adds what comes out. */
function addUpwards(
  columnNext: Float64Array,
  reach: SourceReach,
  field: Float64Array,
  start: number,
  work: Float64Array,
): void {
  const { columns, from, to, end, top } = reach;
  const stride = LANES * columns;
  for (let row = end - 1; row >= 0; row--) {
    const bottom = row + 1 === end;
    for (let column = from; column < to; column++) {
      const cell = row * columns + column;
      const next = bottom ? 0 : columnNext[cell]!;
      const c = LANES * cell;
      const d = bottom ? c : c + stride;
      const here = row < top ? 0 : 1;
      const v0 = here * work[c]! + next * work[d]!;
      const v1 = here * work[c + 1]! + next * work[d + 1]!;
      const v2 = here * work[c + 2]! + next * work[d + 2]!;
      const v3 = here * work[c + 3]! + next * work[d + 3]!;
      work[c] = v0;
      work[c + 1] = v1;
      work[c + 2] = v2;
      work[c + 3] = v3;
      const f = start + c;
      field[f] = field[f]! + v0;
      field[f + 1] = field[f + 1]! + v1;
      field[f + 2] = field[f + 2]! + v2;
      field[f + 3] = field[f + 3]! + v3;
    }
  }
}
