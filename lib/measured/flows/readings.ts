/** Which channels of a log tell the heat that the air leaves in a store, and how surely. @module */
import { channelsOf, soundValues } from "../log/channels.ts";
import type { Log, Quantity } from "../log/types.ts";

/** The readings that the heat hangs on, in the order of every list of six here. */
export const HEAT_READINGS = [
  "intakeTemperature",
  "intakeHumidity",
  "outletTemperature",
  "outletHumidity",
  "airFlow",
  "fanPower",
] as const;

/** Correlation of the errors of probes that were calibrated together; common practice, no source. */
export const SHARED_ERROR = 0.8;

/** One reading over the steps of a log: the mean of the sensors that measure it. */
export interface Reading {
  /** SI, temperatures in degC, by step; NaN in a gap or where a fault was found */
  readonly values: Float64Array;
  /** standard uncertainty that all its values share, in its SI unit */
  readonly uncertainty: number;
  /** names of the batches its sensors were calibrated in */
  readonly batches: readonly string[];
}

/** Mean size of the values of a reading where it does not rest at 0. */
function typicalSize(values: Float64Array): number {
  let [sum, count] = [0, 0];
  for (const value of values) {
    if (Number.isNaN(value) || value === 0) continue;
    sum += Math.abs(value);
    count++;
  }
  return count === 0 ? 0 : sum / count;
}

/** The mean of all sound sensors of a quantity in a zone; null where there is none. */
export function readingOf(log: Log, quantity: Quantity, zone?: string): Reading | null {
  const channels = channelsOf(log, quantity, zone);
  if (channels.length === 0) return null;
  const sound = channels.map((channel) => soundValues(channel));
  const values = Float64Array.from({ length: log.count }, (_, step) => {
    let [sum, count] = [0, 0];
    for (const series of sound) {
      if (Number.isNaN(series[step]!)) continue;
      sum += series[step]!;
      count++;
    }
    return count > 0 ? sum / count : NaN;
  });
  const batches = channels.flatMap(({ sensor }) => sensor.correlatedWith ?? []);
  const together = batches.length === channels.length && new Set(batches).size === 1;
  const typical = typicalSize(values);
  const errors = channels.map(({ sensor }) =>
    Math.hypot(sensor.accuracy, (sensor.relativeAccuracy ?? 0) * typical)
  );
  const size = Math.hypot(...errors) / channels.length;
  const uncertainty = together ? size * Math.sqrt(1 + SHARED_ERROR * (channels.length - 1)) : size;
  return { values, uncertainty, batches };
}

/** The six readings with the covariance of their shared errors. */
export interface HeatReadings {
  /** in the order of `HEAT_READINGS` */
  readonly readings: readonly Reading[];
  /** of the errors that last through the log, in the readings' SI units */
  readonly covariance: readonly (readonly number[])[];
}

/** What must be logged, in the order of `HEAT_READINGS`, and how a reader calls it. */
const WANTED: readonly (readonly [Quantity, string | undefined, string])[] = [
  ["airTemperature", "intake", "air temperature at the intake"],
  ["relativeHumidity", "intake", "relative humidity at the intake"],
  ["airTemperature", "outlet", "air temperature at the outlet"],
  ["relativeHumidity", "outlet", "relative humidity at the outlet"],
  ["airFlow", undefined, "air flow"],
  ["power", undefined, "fan power"],
];

/**
 * Picks the readings of the heat flow.
 *
 * @returns the readings, or the names of those that are not in the log
 */
export function heatReadings(log: Log): HeatReadings | { readonly missing: readonly string[] } {
  const found = WANTED.map(([quantity, zone]) => readingOf(log, quantity, zone));
  const missing = WANTED.flatMap(([, , words], k) => found[k] === null ? [words] : []);
  if (missing.length > 0) return { missing };
  const readings = found as Reading[];
  const together = (a: Reading, b: Reading) => a.batches.some((one) => b.batches.includes(one));
  const covariance = readings.map((a, i) =>
    readings.map((b, j) =>
      a.uncertainty * b.uncertainty * (i === j ? 1 : together(a, b) ? SHARED_ERROR : 0)
    )
  );
  return { readings, covariance };
}
