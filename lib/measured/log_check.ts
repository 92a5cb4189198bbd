/** Honest scores: parts of the log predicted with parameters fitted on the others. @module */
import { DAY } from "../basics/mod.ts";
import { mean } from "d3-array";
import { fitLog, type LogScore, scoreLog } from "./log_fit.ts";
import { type LogMeans, logMeans } from "./log_means.ts";
import { cutLog, type LogPrediction, replayLog } from "./log_replay.ts";
import type { LogParameters } from "./log_parameters.ts";
import type { GreenhouseLog } from "./log_table.ts";
import { type ScoreRow, scoreRows } from "./score_table.ts";

/** Fit on one half of the log, scores on both. */
export interface LogCheck {
  /** what was fitted */
  readonly parameters: LogParameters;
  /** score on the half fitted on */
  readonly fitted: LogScore;
  /** score on the other half */
  readonly unseen: LogScore;
  /** score on the other half of the mean of the fitted half as the prediction */
  readonly baseline: LogScore;
  /** the other half, and its prediction */
  readonly log: GreenhouseLog;
  /** predicted with the parameters of the half fitted on */
  readonly prediction: LogPrediction;
  /** hourly and daily means of both */
  readonly means: LogMeans;
}

/** Either half predicted from the other. */
export interface LogHalves {
  /** first half fitted, second predicted */
  readonly forward: LogCheck;
  /** second half fitted, first predicted */
  readonly backward: LogCheck;
  /** scores of both, row by row */
  readonly scores: readonly ScoreRow[];
}

/**
 * Fits on each half of the log and predicts the other, which that fit has not seen.
 *
 * @param log the whole log
 * @returns parameters of both fits; errors in K and as shares of relative humidity
 */
export function checkLog(log: GreenhouseLog): LogHalves {
  const count = log.airTemperature.length;
  const half = Math.floor(count / 2);
  const [first, second] = [cutLog(log, 0, half), cutLog(log, half, count)];
  const halves = { forward: checkHalf(first, second), backward: checkHalf(second, first) };
  return { ...halves, scores: scoreRows(halves) };
}

function checkHalf(known: GreenhouseLog, other: GreenhouseLog): LogCheck {
  const parameters = fitLog(known);
  const prediction = replayLog(other, parameters);
  const constant = (series: Float64Array) =>
    new Float64Array(other.airTemperature.length)
      .fill(mean(series)!);
  return {
    parameters,
    fitted: scoreLog(known, replayLog(known, parameters)),
    unseen: scoreLog(other, prediction),
    baseline: scoreLog(other, {
      airTemperature: constant(known.airTemperature),
      relativeHumidity: constant(known.airHumidity),
    }),
    log: other,
    prediction,
    means: logMeans(other, prediction),
  };
}

/**
 * Cross-validation by blocks of days: each block is predicted with parameters fitted on all other
 * days, and all blocks are scored together. The prediction runs free through the whole log, so it
 * never sees a measured indoor value but the first.
 *
 * @param log the whole log
 * @param days length of one block in days
 * @returns errors of all blocks together, K and shares of relative humidity
 */
export function checkLogByBlocks(log: GreenhouseLog, days: number): LogScore {
  const count = log.airTemperature.length;
  const block = Math.round(days * DAY / log.stepSeconds);
  const airTemperature = new Float64Array(count);
  const relativeHumidity = new Float64Array(count);
  for (let from = 0; from < count; from += block) {
    const to = Math.min(count, from + block);
    const prediction = replayLog(log, fitLog(log, { from, to }));
    airTemperature.set(prediction.airTemperature.subarray(from, to), from);
    relativeHumidity.set(prediction.relativeHumidity.subarray(from, to), from);
  }
  return scoreLog(log, { airTemperature, relativeHumidity });
}
