/** A fault in steps of a log, and what the checks of faults share. @module */
import type { FindingKind, Log, LogFlag, Sensor } from "../types.ts";
import { type Channel } from "../types.ts";
import { soundValues } from "../channels.ts";

/** A fault found on the common step. */
export interface Fault {
  /** what it is */
  readonly kind: FindingKind;
  /** bit that is set, in the channels and steps meant */
  readonly flag: LogFlag;
  /** names of the channels flagged */
  readonly channels: readonly string[];
  /** name told: a sensor or a logger */
  readonly channel: string;
  /** first step, from 0 */
  readonly from: number;
  /** step after the last */
  readonly to: number;
  /** only these steps between are flagged; all where undefined */
  readonly only?: (step: number) => boolean;
  /** for the reader */
  readonly message: string;
}

/** What a check gives. */
export interface Checked {
  /** what it found */
  readonly faults: readonly Fault[];
  /** what it could not look at, and what that would need */
  readonly untested: readonly string[];
}

/** Two probes that stand where the other ought to, from a step up to another. */
export function swapFault(
  one: Channel,
  other: Channel,
  span: { readonly from: number; readonly to: number },
  why: string,
): Fault {
  const [first, second] = [one.sensor.name, other.sensor.name];
  return {
    kind: "swapped",
    flag: "swapped",
    channels: [first, second],
    channel: first,
    ...span,
    message: `"${first}" and "${second}" look swapped: ${why}`,
  };
}

/** Readings free of gaps, spikes and stuck values. */
export function readings(channel: Channel): Float64Array {
  return soundValues(channel, ["sunHit", "swapped", "pinned", "drift", "clock"]);
}

/** True for two sensors that ought to agree: one quantity, one zone, and for soil one place. */
export function areNeighbours(one: Sensor, other: Sensor): boolean {
  if (one === other || one.quantity !== other.quantity || one.zone !== other.zone) return false;
  if (one.quantity === "soilMoisture") return false;
  if (one.quantity !== "soilTemperature") return true;
  const near = (a: number | undefined, b: number | undefined) =>
    a !== undefined && b !== undefined && Math.abs(a - b) <= 0.02;
  return near(one.depth, other.depth) && near(one.x, other.x) && near(one.y, other.y);
}

/** The sun on the steps of a log: global radiation, of the outdoor channel where there is one. */
export function sunOf(log: Log): Float64Array | null {
  const suns = log.channels.filter(({ sensor }) => sensor.quantity === "globalRadiation");
  const sun = suns.find(({ sensor }) => sensor.zone === "outside") ?? suns[0];
  return sun === undefined ? null : readings(sun);
}

/**
 * Days from solar midnight to solar midnight, so that each holds one whole day of sun.
 *
 * @param log for its step
 * @param sun W/m² by step; null for days by UTC
 * @returns first step of each day, and the number of steps as the last entry
 */
export function solarDays(log: Log, sun: Float64Array | null): number[] {
  const perDay = 86400 / log.step;
  let [east, north] = [0, 0];
  sun?.forEach((value, i) => {
    if (!(value > 0)) return;
    const angle = 2 * Math.PI * ((log.start + (i + 0.5) * log.step) / 86400);
    east += value * Math.cos(angle);
    north += value * Math.sin(angle);
  });
  const noon = sun === null ? 0.5 : Math.atan2(north, east) / (2 * Math.PI);
  const first = (((noon - 0.5 - log.start / 86400) % 1 + 1) % 1) * perDay;
  const starts = [0];
  for (let at = first; at < log.count; at += perDay) {
    const step = Math.round(at);
    if (step > 0 && step < log.count) starts.push(step);
  }
  return [...starts, log.count];
}

/** Mean of the finite values; NaN of none. */
export function meanOf(values: readonly number[]): number {
  return values.length === 0 ? NaN : values.reduce((sum, one) => sum + one, 0) / values.length;
}
