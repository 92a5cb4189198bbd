/** What a reader may quote of the ground besides the figures. @module */
import { type GroundRanges, groundRanges } from "./doubt.ts";
import { type FrostDay, frostDays } from "./frost_days.ts";
import { type SoilLayerRow, soilLayerRows } from "./layer_table.ts";
import { type Penetration, penetration } from "./penetration.ts";
import { type PlausibleGround, plausibleGround } from "./plausible_range.ts";
import { type EstimateMonth, twoEstimates } from "./two_estimates.ts";
import type { SoilInputs, SoilResult } from "./types.ts";

/** Tables and sums of the ground. */
export interface SoilSummary {
  /** how deep waves of a day, ten days and a year reach */
  readonly penetration: readonly Penetration[];
  /** soils from the surface down */
  readonly layers: readonly SoilLayerRow[];
  /** m from the middle of the tubes down to the highest groundwater, below 0 where the tubes stand in it; null where it is not known */
  readonly aboveWater: number | null;
  /** frozen ground of each day */
  readonly frost: readonly FrostDay[];
  /** days a year on which some of the ground is frozen */
  readonly frozenDays: number;
  /** m, deepest snow of the year */
  readonly deepestSnow: number;
  /** column and wave at tube depth by month */
  readonly estimates: readonly EstimateMonth[];
  /** from where to where the ground may lie with another soil */
  readonly range: PlausibleGround;
  /** from where to where it lies in 95 of 100 places, by the errors at measured stations */
  readonly stations: GroundRanges;
}

/** Result of the soil chapter with its summary. */
export interface SummarisedSoil extends SoilResult {
  /** tables and sums a reader may quote */
  readonly summary: SoilSummary;
}

/**
 * Adds the tables and sums of the ground of a study.
 *
 * @param inputs `soil` section of the study
 * @param result of the soil chapter
 */
export function summariseSoil(inputs: SoilInputs, result: SoilResult): SummarisedSoil {
  const frost = frostDays(result.field);
  const water = inputs.waterTableDepth;
  return {
    ...result,
    summary: {
      penetration: penetration(result.properties.diffusivity),
      layers: soilLayerRows(inputs),
      aboveWater: water === null ? null : water - result.tubeDepth,
      frost,
      frozenDays: frost.filter(({ frozen }) => frozen).length,
      deepestSnow: Math.max(...result.snowDepth),
      estimates: twoEstimates(result),
      range: plausibleGround(result.sensitivity),
      stations: groundRanges(result),
    },
  };
}
