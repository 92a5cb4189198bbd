/** Sensors that walk away from their neighbours. @module */
import { middle } from "../numbers.ts";
import { logQuantity } from "../quantities.ts";
import { type Channel, type Log } from "../types.ts";
import { areNeighbours, type Checked, type Fault, readings, solarDays, sunOf } from "./fault.ts";
import { showBoth, showFigures, showSi } from "../../../units/mod.ts";

/** W/m² up to which a step is night: temperatures of the air are compared then only. */
const NIGHT = 5;
/** Least number of days compared, and the share of them at each end that is held together. */
const DAYS = 10;
const END_SHARE = 1 / 6;
/** A drift stands so many standard deviations over the scatter of the ends. */
const OVER_SCATTER = 5;

interface Daily {
  /** first step of each day that has values */
  readonly steps: readonly number[];
  /** median difference of each */
  readonly differences: readonly number[];
}

/**
 * Drift of a sensor against its neighbours: the middle of the differences in the last sixth of the
 * days against the first sixth. Of two sensors alone, the one is named that has walked further from
 * the steadiest of the log's other sensors of that quantity; where that is not clear it is said.
 *
 * @param log with gaps, spikes and stuck values flagged
 */
export function drift(log: Log): Checked {
  const sun = sunOf(log);
  const days = solarDays(log, sun);
  const faults: Fault[] = [];
  const untested: string[] = [];
  const daily = (one: Channel, other: Channel): Daily => {
    const [a, b] = [readings(one), readings(other)];
    const air = one.sensor.quantity !== "soilTemperature";
    const [steps, differences]: [number[], number[]] = [[], []];
    for (let d = 0; d + 1 < days.length; d++) {
      const list: number[] = [];
      for (let step = days[d]!; step < days[d + 1]!; step++) {
        const difference = a[step]! - b[step]!;
        if (Number.isNaN(difference) || (air && sun !== null && !(sun[step]! < NIGHT))) continue;
        list.push(difference);
      }
      if (list.length === 0) continue;
      steps.push(days[d]!);
      differences.push(middle(list));
    }
    return { steps, differences };
  };
  const done = new Set<string>();
  for (const channel of log.channels) {
    const { sensor } = channel;
    const least = logQuantity(sensor.quantity).drift;
    if (least === null || done.has(sensor.name)) continue;
    const others = log.channels.filter((one) => areNeighbours(sensor, one.sensor));
    if (others.length === 0) {
      if (sensor.quantity !== "soilTemperature") {
        untested.push(`Drift of "${sensor.name}": needs a second sensor beside it`);
      }
      continue;
    }
    const group = [channel, ...others];
    const walks = group.map((one) =>
      group.map((other) => one === other ? 0 : walk(daily(one, other), least))
    );
    group.forEach(({ sensor }) => done.add(sensor.name));
    for (const k of driftersOf(group, walks, () => walksFromOthers(log, group, daily))) {
      const one = group[k.place]!;
      const against = group.filter((_, j) => walks[k.place]![j] !== 0);
      const { steps, differences } = daily(one, against[0]!);
      const from = steps[startOf(differences, least)]!;
      const { unit } = logQuantity(sensor.quantity);
      const size = walks[k.place]!.reduce((far, w) => Math.abs(w) > Math.abs(far) ? w : far, 0);
      const shown = unit === "degC"
        ? showBoth(size, "temperatureDifference")
        : unit === ""
        ? showSi(size, "share")
        : `${showFigures(size, 2)} ${unit}`;
      faults.push({
        kind: "drift",
        flag: "drift",
        channels: [one.sensor.name],
        channel: one.sensor.name,
        from,
        to: log.count,
        message: `"${one.sensor.name}" has walked ${shown} from ` +
          `${against.map((other) => `"${other.sensor.name}"`).join(", ")}` +
          (k.sure ? "" : "; which of the two walked these data cannot say") +
          "; calibrate both in one bath",
      });
    }
  }
  return { faults, untested };
}

/** How far the end stands from the start, 0 where that is within the scatter or below the least. */
function walk({ differences }: Daily, least: number): number {
  const count = differences.length;
  if (count < DAYS) return 0;
  const end = Math.max(3, Math.round(count * END_SHARE));
  const [first, last] = [differences.slice(0, end), differences.slice(-end)];
  const size = middle(last) - middle(first);
  const scatter = (list: readonly number[]) => {
    const centre = middle(list);
    return 1.4826 * middle(list.map((one) => Math.abs(one - centre)));
  };
  const spread = Math.hypot(scatter(first), scatter(last)) / Math.sqrt(end);
  return Math.abs(size) > Math.max(least, OVER_SCATTER * spread) ? size : 0;
}

/** Which of a group drift. */
function driftersOf(
  group: readonly Channel[],
  walks: readonly (readonly number[])[],
  witnesses: () => readonly (readonly [number, number])[],
): { readonly place: number; readonly sure: boolean }[] {
  if (group.length > 2) {
    return group.flatMap((_, i) => {
      const from = walks[i]!.filter((walked) => walked !== 0).length;
      return from > (group.length - 1) / 2 ? [{ place: i, sure: true }] : [];
    });
  }
  if (walks[0]![1] === 0) return [];
  // the steadiest witness speaks: that from which one of the two has walked least
  const [one, other] = witnesses().toSorted((a, b) => Math.min(...a) - Math.min(...b))[0] ??
    [0, 0];
  const sure = Math.max(one, other) > 2 * Math.min(one, other);
  return [{ place: one >= other ? 0 : 1, sure }];
}

/** How far the two of a group have walked from each other sensor of their quantity elsewhere. */
function walksFromOthers(
  log: Log,
  group: readonly Channel[],
  daily: (one: Channel, other: Channel) => Daily,
): [number, number][] {
  return log.channels.filter((one) =>
    one.sensor.quantity === group[0]!.sensor.quantity && !group.includes(one)
  ).map((other) => [
    Math.abs(walk(daily(group[0]!, other), 0)),
    Math.abs(walk(daily(group[1]!, other), 0)),
  ]);
}

/** First day from which on the difference stays half the least drift or more from its start. */
function startOf(differences: readonly number[], least: number): number {
  const start = middle(
    differences.slice(0, Math.max(3, Math.round(differences.length * END_SHARE))),
  );
  let day = differences.length - 1;
  while (day > 0 && Math.abs(differences[day - 1]! - start) > least / 2) day--;
  return day;
}
