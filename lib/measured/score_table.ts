/** Scores of a log as rows, and those found when the greenhouse log was at hand. @module */
import recordedText from "../../data/logs/greenhouse_scores.csv" with { type: "text" };
import { readDataTable } from "../basics/mod.ts";
import type { LogScore } from "./log_fit.ts";

/** One line of scores. */
export interface ScoreRow extends LogScore {
  /** what was predicted */
  readonly predicted: string;
  /** what the parameters were fitted on, or what stood in for the prediction */
  readonly fittedOn: string;
}

/** Scores found when the log was at hand, from `data/logs/greenhouse_scores.csv`. */
export const RECORDED_SCORES: readonly ScoreRow[] = readDataTable(
  recordedText,
  "data/logs/greenhouse_scores.csv",
  ["predicted", "fitted_on"],
).map((row) => ({
  predicted: row.text("predicted"),
  fittedOn: row.text("fitted_on"),
  temperatureError: row.number("temperature_error (K)"),
  temperatureBias: row.number("temperature_bias (K)"),
  humidityError: row.number("humidity_error (1)"),
  humidityBias: row.number("humidity_bias (1)"),
}));

/** Scores of one half predicted from the other. */
export interface HalfScores {
  /** on the half fitted on */
  readonly fitted: LogScore;
  /** on the other half */
  readonly unseen: LogScore;
  /** on the other half, the mean of the fitted half as the prediction */
  readonly baseline: LogScore;
}

/**
 * Scores of both halves in the rows of the recorded ones.
 *
 * @param halves first half fitted and second predicted (forward), and the other way round
 */
export function scoreRows(
  { forward, backward }: { readonly forward: HalfScores; readonly backward: HalfScores },
): ScoreRow[] {
  const half = (name: string, known: string, check: HalfScores): ScoreRow[] => [
    { predicted: known, fittedOn: `the ${known} itself`, ...check.fitted },
    { predicted: name, fittedOn: `the ${known}`, ...check.unseen },
    {
      predicted: name,
      fittedOn: `nothing: constant at the mean of the ${known}`,
      ...check.baseline,
    },
  ];
  return [
    ...half("second half", "first half", forward),
    ...half("first half", "second half", backward),
  ];
}
