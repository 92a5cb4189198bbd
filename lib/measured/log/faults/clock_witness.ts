/** What another logger says of a clock: the same air in both, moved until it fits. @module */
import type { LoggerSeries } from "../logger_series.ts";
import type { Sensor } from "../types.ts";

/** s over which slow changes are taken out before two channels are compared. */
const SLOW = 6 * 3600;
/** Correlation that a witness must have at its best. */
const FITS = 0.8;

/** Readings of one sensor by time. */
export interface Track {
  /** the sensor */
  readonly sensor: Sensor;
  /** s since 1970 UTC, rising */
  readonly times: Float64Array;
  /** fast changes: SI values less their running mean, NaN where there is none */
  readonly fast: Float64Array;
  /** s between readings */
  readonly interval: number;
}

/** Quantities that change fast enough to tell the time. */
const TELLING: readonly string[] = [
  "airTemperature",
  "outsideTemperature",
  "relativeHumidity",
  "globalRadiation",
  "windSpeed",
];

/** Zones whose air is one: the intake draws the house's. */
const HOUSE = ["inside", "intake", "ridge"];

/** Pairs of channels of two loggers that see the same. */
export function witnesses(
  one: readonly Track[],
  other: readonly Track[],
): (readonly [Track, Track])[] {
  return one.flatMap((a) =>
    other.filter((b) => seeTheSame(a.sensor, b.sensor)).map((b) => [a, b] as const)
  );
}

function seeTheSame(a: Sensor, b: Sensor): boolean {
  if (a.quantity !== b.quantity) return false;
  return a.zone === b.zone || (HOUSE.includes(a.zone) && HOUSE.includes(b.zone)) ||
    a.quantity === "globalRadiation";
}

/** The channels of a logger that can tell the time. */
export function telling({ sensors, times, values, interval }: LoggerSeries): Track[] {
  return sensors.flatMap((sensor, i): Track[] =>
    TELLING.includes(sensor.quantity)
      ? [{ sensor, times, fast: fastChanges(values[i]!, interval), interval }]
      : []
  );
}

/**
 * Correlation of fast changes of two channels where the first one's clock is taken to be ahead.
 *
 * @param one channel whose clock is in doubt
 * @param other witness
 * @param ahead s by which the first one's clock is taken to be ahead
 * @param between s since 1970, times of the first one that count
 * @returns -1 to 1; NaN of fewer than 24 readings
 */
export function agreementAt(
  one: Track,
  other: Track,
  ahead: number,
  between: readonly [from: number, to: number],
): number {
  const last = place(one.times, between[1]);
  const shift = (one.interval - other.interval) / 2 - ahead;
  const longest = 1.5 * other.interval;
  let first = place(one.times, between[0]);
  let next = place(other.times, one.times[first]! + shift);
  let [count, a1, b1, ab, aa, bb] = [0, 0, 0, 0, 0, 0];
  for (; first < last; first++) {
    const time = one.times[first]! + shift;
    while (next < other.times.length && other.times[next]! < time) next++;
    if (next === 0 || next >= other.times.length) continue;
    const before = other.times[next - 1]!;
    const width = other.times[next]! - before;
    if (width > longest) continue;
    const share = (time - before) / width;
    const b = other.fast[next - 1]! + share * (other.fast[next]! - other.fast[next - 1]!);
    const a = one.fast[first]!;
    if (Number.isNaN(a + b)) continue;
    count++;
    a1 += a;
    b1 += b;
    ab += a * b;
    aa += a * a;
    bb += b * b;
  }
  if (count < 24) return NaN;
  return (ab - a1 * b1 / count) / Math.sqrt((aa - a1 * a1 / count) * (bb - b1 * b1 / count));
}

/** Place of the first time at or after one. */
function place(times: Float64Array, time: number): number {
  let [low, high] = [0, times.length];
  while (low < high) {
    const half = (low + high) >> 1;
    if (times[half]! < time) low = half + 1;
    else high = half;
  }
  return low;
}

/** What is left of readings after their running mean. */
function fastChanges(values: Float64Array, interval: number): Float64Array {
  const width = Math.max(3, Math.round(SLOW / interval));
  const sums = new Float64Array(values.length + 1);
  const counts = new Float64Array(values.length + 1);
  values.forEach((value, i) => {
    const there = !Number.isNaN(value);
    sums[i + 1] = sums[i]! + (there ? value : 0);
    counts[i + 1] = counts[i]! + (there ? 1 : 0);
  });
  return values.map((value, i) => {
    const [from, to] = [Math.max(0, i - width), Math.min(values.length, i + width + 1)];
    return value - (sums[to]! - sums[from]!) / (counts[to]! - counts[from]!);
  });
}

/**
 * How far a logger's clock is ahead of a witness.
 *
 * @param one channel whose clock is in doubt
 * @param other witness
 * @param between s since 1970, times of the first one that count
 * @returns s ahead, and the correlation there and at no shift; null where they never fit
 */
export function aheadOf(
  one: Track,
  other: Track,
  between: readonly [from: number, to: number],
): { readonly ahead: number; readonly best: number; readonly atZero: number } | null {
  const step = Math.max(one.interval, other.interval) / 2;
  const reach = Math.max(4 * 3600, 4 * step);
  const count = Math.round(reach / step);
  const tried = Array.from({ length: 2 * count + 1 }, (_, k) => {
    const ahead = (k - count) * step;
    return { ahead, fit: agreementAt(one, other, ahead, between) };
  });
  const best = tried.reduce((top, next) =>
    next.fit > top.fit || Number.isNaN(top.fit) ? next : top
  );
  if (!(best.fit > FITS)) return null;
  const k = tried.indexOf(best);
  const [left, right] = [tried[k - 1]?.fit ?? NaN, tried[k + 1]?.fit ?? NaN];
  const bend = left - 2 * best.fit + right;
  const off = bend < 0 ? (left - right) / (2 * bend) : 0;
  return {
    ahead: best.ahead + (Number.isNaN(off) ? 0 : off * step),
    best: best.fit,
    atZero: tried[count]!.fit,
  };
}
