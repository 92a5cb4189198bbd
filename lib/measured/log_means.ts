/** Hourly and daily means of a log beside its prediction. @module */
import { mean } from "d3-array";
import { DAY, HOUR } from "../basics/mod.ts";
import type { LogPrediction } from "./log_replay.ts";
import type { GreenhouseLog } from "./log_table.ts";

/** Means over one hour or one day. */
export interface LogMean {
  /** days from the start of the log to the middle of the span */
  readonly day: number;
  /** degC measured */
  readonly temperature: number;
  /** degC predicted */
  readonly predictedTemperature: number;
  /** relative humidity measured, 0 to 1 */
  readonly humidity: number;
  /** relative humidity predicted, 0 to 1 */
  readonly predictedHumidity: number;
}

/** Means of a log and its prediction. */
export interface LogMeans {
  /** whole hours */
  readonly hours: readonly LogMean[];
  /** whole days */
  readonly days: readonly LogMean[];
}

/**
 * Means of a log and its prediction over whole hours and whole days; what is left over at the end
 * is left out.
 *
 * @param log measured
 * @param prediction of the same length
 */
export function logMeans(
  log: Pick<GreenhouseLog, "stepSeconds" | "airTemperature" | "airHumidity">,
  prediction: LogPrediction,
): LogMeans {
  return { hours: meansOver(HOUR, log, prediction), days: meansOver(DAY, log, prediction) };
}

function meansOver(
  seconds: number,
  log: Pick<GreenhouseLog, "stepSeconds" | "airTemperature" | "airHumidity">,
  prediction: LogPrediction,
): LogMean[] {
  const steps = Math.round(seconds / log.stepSeconds);
  const spans = Math.floor(log.airTemperature.length / steps);
  return Array.from({ length: spans }, (_, span) => {
    const of = (series: Float64Array) => mean(series.subarray(span * steps, (span + 1) * steps))!;
    return {
      day: (span + 0.5) * seconds / DAY,
      temperature: of(log.airTemperature),
      predictedTemperature: of(prediction.airTemperature),
      humidity: of(log.airHumidity),
      predictedHumidity: of(prediction.relativeHumidity),
    };
  });
}
