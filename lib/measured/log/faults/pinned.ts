/** Humidity pinned at saturation: a wick that has dried, a sensor that is wet. @module */
import type { Channel, Log } from "../types.ts";
import { type Checked, type Fault, meanOf, readings } from "./fault.ts";

/** Share from which on humidity counts as saturated, and below which a neighbour is not. */
const SATURATED = 0.98;
const DRY_NEIGHBOUR = 0.93;
/** K between dry and wet bulb below which the wick is dry. */
const SAME_BULB = 0.25;
/** s: least run where a neighbour tells, and where only the air's temperature does. */
const WITH_NEIGHBOUR = 12 * 3600;
const ALONE = 36 * 3600;
/** K by which the air must have warmed and cooled in a run with no neighbour. */
const SWING = 8;

/**
 * Runs in which humidity stays at saturation (or the wet bulb at the dry one) although a neighbour
 * is dry or the air warmed by 8 K, which no damp air survives.
 *
 * @param log with gaps, spikes and stuck values flagged
 */
export function pinned(log: Log): Checked {
  const faults: Fault[] = [];
  for (const channel of log.channels) {
    const { sensor } = channel;
    const humidity = sensor.quantity === "relativeHumidity";
    if (!humidity && sensor.quantity !== "wetBulbTemperature") continue;
    const own = readings(channel);
    const air = near(log, channel, "airTemperature") ?? near(log, channel, "outsideTemperature");
    const saturated = humidity
      ? (step: number) => own[step]! >= SATURATED
      : (step: number) => air !== null && Math.abs(air[step]! - own[step]!) < SAME_BULB;
    const others = log.channels.filter((one) =>
      one !== channel && one.sensor.quantity === "relativeHumidity" &&
      sameAir(one.sensor.zone, sensor.zone)
    ).map(readings);
    for (const [from, to] of runs(log.count, saturated, (step) => Number.isNaN(own[step]!))) {
      const time = (to - from) * log.step;
      const theirs = others.flatMap((one) => [...one.subarray(from, to)])
        .filter((one) => !Number.isNaN(one));
      const byNeighbour = time >= WITH_NEIGHBOUR && theirs.length > 0 &&
        meanOf(theirs) < DRY_NEIGHBOUR;
      const bySwing = time >= ALONE && air !== null && swing(air.subarray(from, to)) >= SWING;
      if (!byNeighbour && !bySwing) continue;
      faults.push({
        kind: "pinned",
        flag: "pinned",
        channels: [sensor.name],
        channel: sensor.name,
        from,
        to,
        message: `"${sensor.name}" is pinned at saturation for ${Math.round(time / 3600)} h ` +
          (byNeighbour
            ? `while its neighbour shows ${Math.round(100 * meanOf(theirs))} %`
            : "through warm and cold hours") +
          (humidity
            ? ": a wet sensor, or a psychrometer whose wick has dried"
            : ": its wick has dried") +
          "; dry or wet it, and check it in salt air",
      });
    }
  }
  return { faults, untested: [] };
}

/** The house's air is one as far as saturation goes: the intake draws it. */
function sameAir(one: string, other: string): boolean {
  const house = ["inside", "intake", "ridge"];
  return one === other || (house.includes(one) && house.includes(other));
}

function near(log: Log, { sensor }: Channel, quantity: string): Float64Array | null {
  const found = log.channels.find((one) =>
    one.sensor.quantity === quantity && one.sensor.zone === sensor.zone
  );
  return found === undefined ? null : readings(found);
}

function swing(values: Float64Array): number {
  let [low, high] = [Infinity, -Infinity];
  for (const value of values) {
    if (value < low) low = value;
    if (value > high) high = value;
  }
  return high - low;
}

/** Runs of steps that hold; missing steps neither make nor break one. */
export function runs(
  count: number,
  holds: (step: number) => boolean,
  missing: (step: number) => boolean,
): [number, number][] {
  const found: [number, number][] = [];
  let [from, last] = [-1, -1];
  for (let step = 0; step < count; step++) {
    if (missing(step)) continue;
    if (holds(step)) {
      if (from === -1) from = step;
      last = step;
    } else if (from !== -1) {
      found.push([from, last + 1]);
      from = -1;
    }
  }
  if (from !== -1) found.push([from, last + 1]);
  return found;
}
