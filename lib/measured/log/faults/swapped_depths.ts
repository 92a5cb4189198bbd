/** Soil probes whose depths are swapped, from some day on or from the start. @module */
import { middle } from "../numbers.ts";
import type { Channel, Log } from "../types.ts";
import { type Checked, type Fault, readings, swapFault } from "./fault.ts";

/** m between two probes from which on their swings tell them apart. */
const APART = 0.1;
/** s of a window in which swings are compared. */
const WINDOW = 15 * 86400;
/** A swing tells where it is so many times the other, and so many times the noise. */
const CLEAR = 1.5;
const OVER_NOISE = 8;
/** K below which a swing tells nothing: the bend of the yearly wave is as large. */
const LEAST_SWING = 0.2;
/** K by which two probes must differ for an exchange of them to show. */
const DIFFERENCE = 0.6;

/**
 * Swapped depths, two ways. Two probes of one zone that exchange their readings from one step to
 * the next while their sum goes on; and a deeper probe that swings more over half a day, or over
 * five days, than a shallower one in window after window. Probes beside tubes ("store", "tube")
 * swing with the tubes and are looked at in the first way only; so is soil that freezes or thaws.
 *
 * @param log with gaps, spikes and stuck values flagged
 */
export function swappedDepths(log: Log): Checked {
  const probes = log.channels.filter(({ sensor }) => sensor.quantity === "soilTemperature");
  const faults: Fault[] = [];
  for (let i = 0; i < probes.length; i++) {
    for (let j = i + 1; j < probes.length; j++) {
      const [one, other] = [probes[i]!, probes[j]!];
      if (one.sensor.zone !== other.sensor.zone) continue;
      const exchanged = exchanges(log, one, other);
      faults.push(...exchanged);
      if (exchanged.length > 0 || /store|tube/i.test(one.sensor.zone)) continue;
      const [a, b] = [one.sensor.depth, other.sensor.depth];
      if (a === undefined || b === undefined || Math.abs(a - b) < APART) continue;
      faults.push(...(a < b ? wrongSwings(log, one, other) : wrongSwings(log, other, one)));
    }
  }
  return { faults: nearestPairs(faults), untested: [] };
}

/** Of pairs that share a probe and a time, the one with the clearest sign. */
function nearestPairs(faults: readonly Fault[]): Fault[] {
  const taken: Fault[] = [];
  for (const fault of faults.toSorted((a, b) => (b.to - b.from) - (a.to - a.from))) {
    const clash = taken.some((one) =>
      one.channels.some((name) => fault.channels.includes(name)) && one.from < fault.to &&
      fault.from < one.to
    );
    if (!clash) taken.push(fault);
  }
  return taken;
}

/** Times between which two probes show each other's readings. */
function exchanges(log: Log, one: Channel, other: Channel): Fault[] {
  const [a, b] = [readings(one), readings(other)];
  const places: number[] = [];
  for (let step = 0; step < log.count; step++) {
    if (!Number.isNaN(a[step]! - b[step]!)) places.push(step);
  }
  const turns: number[] = [];
  const errors = 4 * Math.hypot(one.sensor.accuracy, other.sensor.accuracy);
  for (let k = 1; k < places.length; k++) {
    const [before, now] = [places[k - 1]!, places[k]!];
    const [was, is] = [a[before]! - b[before]!, a[now]! - b[now]!];
    const size = Math.min(Math.abs(was), Math.abs(is));
    if (was * is >= 0 || size < DIFFERENCE) continue;
    const sum = Math.abs(a[now]! + b[now]! - a[before]! - b[before]!);
    // each column keeps the error of its own probe, so the difference is mirrored but for those
    const mirrored = Math.abs(was + is) < Math.min(0.8 * size, 0.25 * size + errors) &&
      sum < 0.25 * size;
    if (mirrored && staysApart(places, k, (step) => a[step]! - b[step]!)) turns.push(now);
  }
  const found: Fault[] = [];
  for (let k = 0; k < turns.length; k += 2) {
    found.push(
      fault(one, other, turns[k]!, turns[k + 1] ?? log.count, "from one step to the next"),
    );
  }
  return found;
}

/** True where the difference keeps its sign for a dozen readings on either side. */
function staysApart(
  places: readonly number[],
  k: number,
  difference: (step: number) => number,
): boolean {
  const before = places.slice(Math.max(0, k - 12), k).map(difference);
  const after = places.slice(k, k + 12).map(difference);
  const sign = Math.sign(middle(after));
  return after.length >= 3 && before.length >= 3 &&
    after.every((one) => Math.sign(one) === sign) &&
    before.every((one) => Math.sign(one) === -sign);
}

/** Windows in which the deeper probe swings more. */
function wrongSwings(log: Log, shallow: Channel, deep: Channel): Fault[] {
  const [a, b] = [readings(shallow), readings(deep)];
  const size = Math.max(1, Math.round(WINDOW / log.step));
  const noise = Math.max(noiseOf(a), noiseOf(b));
  const stretches: { readonly from: number; readonly to: number; readonly windows: number }[] = [];
  let open = false;
  for (let from = 0; from < log.count; from += size) {
    const to = Math.min(log.count, from + size);
    if (freezes(a, from, to) || freezes(b, from, to)) continue;
    const mind = mindOf(a, b, { from, to, step: log.step, noise });
    if (mind > 0) open = false;
    if (mind >= 0) continue;
    const last = open ? stretches.pop()! : { from, windows: 0 };
    stretches.push({ from: last.from, to, windows: last.windows + 1 });
    open = true;
  }
  // a single window can be a wetting or a hand's work
  return stretches.filter(({ windows }) => windows > 1 || log.count <= size)
    .map(({ from, to }) => fault(shallow, deep, from, to, "the deeper one swings more"));
}

/** K round 0 degC in which soil that freezes or thaws stands still. */
const STANDSTILL = 0.7;

/** True where a probe is near freezing for a tenth of a window: a shallow one may stand still there. */
function freezes(values: Float64Array, from: number, to: number): boolean {
  let near = 0;
  for (let step = from; step < to; step++) if (Math.abs(values[step]!) < STANDSTILL) near++;
  return near > 0.1 * (to - from);
}

/** 1 where the shallower swings more, -1 where the deeper does, 0 where neither is clear. */
function mindOf(
  shallow: Float64Array,
  deep: Float64Array,
  window: { from: number; to: number; step: number; noise: number },
): number {
  for (const lag of [43200, 5 * 86400]) {
    const [a, b] = [swing(shallow, lag, window), swing(deep, lag, window)];
    if (Math.max(a, b) < Math.max(OVER_NOISE * window.noise, LEAST_SWING)) continue;
    if (a > CLEAR * b) return 1;
    if (b > CLEAR * a) return -1;
  }
  return 0;
}

/** Root mean square, about its mean, of the change over a lag: the yearly wave's slope is left out. */
function swing(
  values: Float64Array,
  lag: number,
  { from, to, step }: { from: number; to: number; step: number },
): number {
  const by = Math.round(lag / step);
  let [sum, squares, count] = [0, 0, 0];
  for (let at = from; at + by < to; at++) {
    const change = values[at + by]! - values[at]!;
    if (Number.isNaN(change)) continue;
    sum += change;
    squares += change ** 2;
    count++;
  }
  return count < 12 ? 0 : Math.sqrt(Math.max(0, squares / count - (sum / count) ** 2));
}

/** Noise of single readings from how they stand off the middle of both their fellows. */
function noiseOf(values: Float64Array): number {
  const off: number[] = [];
  for (let i = 1; i + 1 < values.length; i++) {
    const one = Math.abs(values[i]! - (values[i - 1]! + values[i + 1]!) / 2);
    if (!Number.isNaN(one)) off.push(one);
  }
  return 1.4826 * middle(off) / Math.sqrt(1.5);
}

function fault(one: Channel, other: Channel, from: number, to: number, how: string): Fault {
  return swapFault(
    one,
    other,
    { from, to },
    `${how}; exchange their columns in the log map from that time on, or dig out which is which`,
  );
}
