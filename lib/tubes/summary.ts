/** What a reader may quote of the tubes besides the figures. @module */
import { effectivenessByLength, type TubeLengthRow } from "./effectiveness_by_length.ts";
import { type TubeSpread, tubeSpread } from "./spread.ts";
import type { TubesResult } from "./types.ts";

/** Tables and sums of the tubes. */
export interface TubesSummary {
  /** effectiveness and pressure for lengths up to twice the study's */
  readonly byLength: readonly TubeLengthRow[];
  /** ends of the published spread of film and friction */
  readonly spread: TubeSpread;
}

/** Result of the tubes chapter with its summary. */
export interface SummarisedTubes extends TubesResult {
  /** tables and sums a reader may quote */
  readonly summary: TubesSummary;
}

/**
 * Adds the tables and sums of a study's tubes.
 *
 * @param result of the tubes chapter
 */
export function summariseTubes(result: TubesResult): SummarisedTubes {
  const summary = { byLength: effectivenessByLength(result), spread: tubeSpread(result) };
  return { ...result, summary };
}
