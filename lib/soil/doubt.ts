/** How far the undisturbed ground may be off, from its scores at measured stations. @module */
import scoresText from "../../data/soils/station_scores.csv" with { type: "text" };
import { type DataRow, readDataTable } from "../basics/mod.ts";
import type { SoilResult } from "./types.ts";

/** Computed less measured over the stations. */
export interface Doubt {
  /** mean error */
  readonly bias: number;
  /** standard deviation of one station's error about it */
  readonly spread: number;
}

/** Doubt at one depth, K. */
export interface DepthDoubt {
  /** m */
  readonly depth: number;
  /** of the mean of the year */
  readonly mean: Doubt;
  /** of the lowest day */
  readonly lowest: Doubt;
  /** of the highest day */
  readonly highest: Doubt;
}

/** What is known of the column's errors before anything is measured at a site. */
export interface GroundPrior {
  /** stations scored */
  readonly stations: number;
  /** from the top down */
  readonly depths: readonly DepthDoubt[];
  /** of the frost depth, as shares of the computed one */
  readonly frostDepth: Doubt;
}

/** Low and high end, between which the true value lies at 95 of 100 places. */
export type Range = readonly [low: number, high: number];

/** 95 % ranges of the ground's figures. */
export interface GroundRanges {
  /** degC, mean of the year */
  readonly mean: Range;
  /** degC, lowest day at the depth of the tubes */
  readonly lowest: Range;
  /** degC, highest day at the depth of the tubes */
  readonly highest: Range;
  /** m; null where the computed ground does not freeze */
  readonly frostDepth: Range | null;
}

const FILE = "data/soils/station_scores.csv";
const COLUMNS = {
  station: "station",
  depth: "depth (m)",
  mean: "mean_error (K)",
  lowest: "lowest_error (K)",
  highest: "highest_error (K)",
  frostMeasured: "frost_measured (m)",
  frostComputed: "frost_computed (m)",
} as const;

/** The scores, one row for each station and depth. */
export const STATION_SCORES: readonly DataRow[] = readDataTable(
  scoresText,
  FILE,
  Object.values(COLUMNS),
);

/** The prior of {@link STATION_SCORES}. */
export const GROUND_PRIOR: GroundPrior = groundPrior(STATION_SCORES);

/**
 * Mean error and spread of the column over stations.
 *
 * @param rows scores; every station at the same depths
 */
export function groundPrior(rows: readonly DataRow[]): GroundPrior {
  const depths = [...new Set(rows.map((row) => row.number(COLUMNS.depth)))].sort((a, b) => a - b);
  const at = (depth: number) => rows.filter((row) => row.number(COLUMNS.depth) === depth);
  const lowestRows = at(depths.at(-1)!);
  return {
    stations: lowestRows.length,
    depths: depths.map((depth) => {
      const errors = (column: string) => at(depth).map((row) => row.number(column));
      return {
        depth,
        mean: doubtOf(errors(COLUMNS.mean)),
        lowest: doubtOf(errors(COLUMNS.lowest)),
        highest: doubtOf(errors(COLUMNS.highest)),
      };
    }),
    frostDepth: doubtOf(
      lowestRows.map((row) =>
        1 - row.number(COLUMNS.frostMeasured) / row.number(COLUMNS.frostComputed)
      ),
    ),
  };
}

function doubtOf(errors: readonly number[]): Doubt {
  const bias = errors.reduce((sum, error) => sum + error, 0) / errors.length;
  const squares = errors.reduce((sum, error) => sum + (error - bias) ** 2, 0);
  return { bias, spread: Math.sqrt(squares / (errors.length - 1)) };
}

/**
 * Student's t that 97.5 % stay below, for 1 to 10 degrees of freedom.
 *
 * Source: Abramowitz & Stegun 1964 [abramowitz-stegun-1964], table 26.10, from memory; tests integrate
 * the density.
 */
export const STUDENT_975: readonly number[] = [
  12.706,
  4.303,
  3.182,
  2.776,
  2.571,
  2.447,
  2.365,
  2.306,
  2.262,
  2.228,
];

/** Standard deviations between a new place and the mean of the stations that 95 % of places keep. */
function factor(stations: number): number {
  return STUDENT_975[Math.min(stations - 1, STUDENT_975.length) - 1]! * Math.sqrt(1 + 1 / stations);
}

/** Range of the true value where one is computed. */
function rangeOf(computed: number, { bias, spread }: Doubt, stations: number): Range {
  const reach = factor(stations) * spread;
  return [computed - bias - reach, computed - bias + reach];
}

/** Straight between the depths scored; above the first and below the last as there. */
function doubtAt(
  { depths }: GroundPrior,
  depth: number,
  which: "mean" | "lowest" | "highest",
): Doubt {
  const below = depths.findIndex((one) => one.depth >= depth);
  if (below === 0) return depths[0]![which];
  if (below === -1) return depths.at(-1)![which];
  const [upper, lower] = [depths[below - 1]!, depths[below]!];
  const share = (depth - upper.depth) / (lower.depth - upper.depth);
  const between = (key: keyof Doubt) =>
    upper[which][key] + share * (lower[which][key] - upper[which][key]);
  return { bias: between("bias"), spread: between("spread") };
}

/**
 * Ranges in which the ground of 95 of 100 places like the stations lies, given what was computed for
 * it: a new place's error is that of the stations, known from as few as they are (Student's t).
 *
 * The year of the climate is taken as it is: other years scatter besides. Below 1 m the doubt of 1 m
 * stands. Stations whose lowest sensor froze count with its depth, so that the upper end of the frost
 * depth is rather low.
 *
 * @param result what the column gave: mean, extremes at the tubes, frost depth
 * @param prior errors of the column
 */
export function groundRanges(
  result: Pick<
    SoilResult,
    | "wave"
    | "tubeDepth"
    | "temperatureAtTubeDepthMin"
    | "temperatureAtTubeDepthMax"
    | "frostDepth"
  >,
  prior: GroundPrior = GROUND_PRIOR,
): GroundRanges {
  const { tubeDepth, frostDepth } = result;
  const { stations } = prior;
  const at = (computed: number, which: "lowest" | "highest") =>
    rangeOf(computed, doubtAt(prior, tubeDepth, which), stations);
  const [low, high] = rangeOf(1, prior.frostDepth, stations);
  return {
    mean: rangeOf(result.wave.mean, prior.depths.at(-1)!.mean, stations),
    lowest: at(result.temperatureAtTubeDepthMin, "lowest"),
    highest: at(result.temperatureAtTubeDepthMax, "highest"),
    frostDepth: frostDepth > 0 ? [Math.max(0, low) * frostDepth, high * frostDepth] : null,
  };
}
