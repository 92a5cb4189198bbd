/** Spikes and stuck readings of one logger, found on its own interval before any means. @module */
import { findSpikes, type Span } from "./faults/spikes.ts";
import { findStuck } from "./faults/stuck.ts";
import type { LoggerSeries } from "./logger_series.ts";
import { logQuantity } from "./quantities.ts";
import { type Finding, LOG_FLAGS, type Sensor } from "./types.ts";

/** Readings of one logger with flags. */
export interface ScreenedSeries extends LoggerSeries {
  /** bits of LOG_FLAGS by sensor and reading */
  readonly flags: readonly Uint8Array[];
}

/**
 * Flags spikes and stuck readings.
 *
 * @param series of one logger
 */
export function screenSeries(series: LoggerSeries): ScreenedSeries {
  const { interval } = series;
  const findings: Finding[] = [...series.findings];
  const flags = series.sensors.map((sensor, s) => {
    const values = series.values[s]!;
    const bits = new Uint8Array(values.length);
    const rule = logQuantity(sensor.quantity);
    const mark = (kind: "spike" | "stuck", spans: readonly Span[]) => {
      for (const { from, to } of spans) {
        for (let i = from; i < to; i++) bits[i]! |= LOG_FLAGS[kind];
        findings.push({
          kind,
          channel: sensor.name,
          from: series.times[from]!,
          to: series.times[to - 1]! + interval,
          message: words(kind, sensor, values[from]!),
        });
      }
    };
    if (rule.stuck !== null) {
      mark("stuck", findStuck(values, { least: rule.stuck, interval, mayRest: resting(sensor) }));
    }
    if (rule.spike !== null) mark("spike", findSpikes(values, rule.spike));
    return bits;
  });
  return { ...series, flags, findings };
}

/** Values that a working sensor may keep: 0 where it rests, saturation of humidity (looked at apart). */
function resting({ quantity }: Sensor): (value: number) => boolean {
  if (quantity === "relativeHumidity") return (value) => value >= 0.98;
  if (quantity === "globalRadiation") return (value) => value < 20;
  if (quantity === "windSpeed") return (value) => value < 0.6;
  return logQuantity(quantity).rests ? (value) => value === 0 : () => false;
}

function words(kind: "spike" | "stuck", { name, quantity }: Sensor, value: number): string {
  const { unit, words: what } = logQuantity(quantity);
  const shown = `${Number(value.toPrecision(4))} ${unit}`.trim();
  return kind === "spike"
    ? `"${name}": a lone ${what} of ${shown} far from those before and after; left out of the means`
    : `"${name}": ${what} stuck at ${shown}, far longer than it ever stays; look at sensor, cable ` +
      "and logger";
}
