/** Spikes and stuck readings of one logger, found on its own interval before any means. @module */
import { findSpikes, type Span } from "./faults/spikes.ts";
import { findStuck } from "./faults/stuck.ts";
import type { LoggerSeries } from "./logger_series.ts";
import { logQuantity } from "./quantities.ts";
import { type Finding, LOG_FLAGS, type Sensor } from "./types.ts";
import { showFigures, showUs } from "../../units/mod.ts";

/** Readings of one logger with flags. */
export interface ScreenedSeries extends LoggerSeries {
  /** bits of LOG_FLAGS by sensor and reading */
  readonly flags: readonly Uint8Array[];
}

/**
 * Flags spikes and stuck readings. A peak that a second sensor in the same air shows too is weather,
 * and no spike.
 *
 * @param series of one logger
 * @param others all other loggers
 */
export function screenSeries(
  series: LoggerSeries,
  others: readonly LoggerSeries[] = [],
): ScreenedSeries {
  const { interval } = series;
  const real = (sensor: Sensor, values: Float64Array, { from, to }: Span) =>
    [series, ...others].some((one) =>
      one.sensors.some((other, k) =>
        other !== sensor && other.quantity === sensor.quantity &&
        sameAir(other.zone, sensor.zone) &&
        peaksToo(one, one.values[k]!, {
          from: series.times[from]!,
          to: series.times[to - 1]! + interval,
          height: values[from]! - (values[from - 1]! + values[to]!) / 2,
        })
      )
    );
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
    if (rule.spike !== null && !isSwitched(sensor)) {
      mark("spike", findSpikes(values, rule.spike).filter((span) => !real(sensor, values, span)));
    }
    return bits;
  });
  return { ...series, flags, findings };
}

/** Humidity in ducts: where the fan starts and stops, lone peaks are part of the job. */
function isSwitched({ quantity, zone }: Sensor): boolean {
  return quantity === "relativeHumidity" && /^(intake|outlet|duct|tube)/.test(zone);
}

/** Zones whose air is one, as the intake draws the house's. */
function sameAir(one: string, other: string): boolean {
  const house = ["inside", "intake", "ridge"];
  return one === other || (house.includes(one) && house.includes(other));
}

/** True where readings stand off their fellows by a like height at the same time. */
function peaksToo(
  { times, interval }: LoggerSeries,
  values: Float64Array,
  peak: { readonly from: number; readonly to: number; readonly height: number },
): boolean {
  for (let i = firstAfter(times, peak.from - interval); i + 1 < times.length; i++) {
    if (times[i]! >= peak.to) return false;
    if (i === 0) continue;
    const height = values[i]! - (values[i - 1]! + values[i + 1]!) / 2;
    const ratio = height / peak.height;
    if (ratio > 0.5 && ratio < 2) return true;
  }
  return false;
}

/** Place of the first time after one. */
function firstAfter(times: Float64Array, time: number): number {
  let [low, high] = [0, times.length];
  while (low < high) {
    const half = (low + high) >> 1;
    if (times[half]! > time) high = half;
    else low = half + 1;
  }
  return low;
}

/** degC about 0 at which a probe in soil that freezes or thaws may stay for weeks; common practice, no source. */
const FREEZING = 0.3;

/** Values that a working sensor may keep: 0 where it rests, saturation of humidity (looked at apart). */
function resting({ quantity }: Sensor): (value: number) => boolean {
  if (quantity === "relativeHumidity") return (value) => value >= 0.98;
  if (quantity === "globalRadiation") return (value) => value < 20;
  if (quantity === "soilTemperature") return (value) => Math.abs(value) <= FREEZING;
  if (quantity === "windSpeed") return (value) => value < 0.6;
  return logQuantity(quantity).rests ? (value) => value === 0 : () => false;
}

function words(kind: "spike" | "stuck", { name, quantity }: Sensor, value: number): string {
  const { unit, words: what } = logQuantity(quantity);
  const us = unit === "degC" ? ` (${showUs(value, "temperature")})` : "";
  const shown = `${showFigures(value, 4)} ${unit}${us}`.trim();
  return kind === "spike"
    ? `"${name}": a lone ${what} of ${shown} far from those before and after; left out of the means`
    : `"${name}": ${what} stuck at ${shown}, far longer than it ever stays; look at sensor, cable ` +
      "and logger";
}
