/** Temperature sensors that the sun heats: warmer than a neighbour by day, not by night. @module */
import { middle } from "../numbers.ts";
import type { Log } from "../types.ts";
import {
  areNeighbours,
  type Checked,
  type Fault,
  meanOf,
  readings,
  solarDays,
  sunOf,
} from "./fault.ts";
import { showBoth } from "../../../units/mod.ts";

/** W/m² from which on a sensor is looked at, and up to which it is night. */
const SUNNY = 300;
const NIGHT = 5;
/** K, day over night, from which on a sensor is hit. */
const EXCESS = 1.5;
/** Hit days that make a finding, their share of the sunny days from the first to the last. */
const DAYS = 3;
const SHARE = 0.5;
/** s, least time in the sun and at night of a day that is looked at */
const LEAST = 3600;

/**
 * Sun-hit sensors. On each sunny day the excess over the neighbours (their median) in the sun is
 * set against that of the same day's night; a sensor hit on three days or more, and on half of
 * the sunny days between them, is told. Needs a
 * neighbour and global radiation.
 *
 * @param log with gaps, spikes and stuck values flagged
 */
export function sunHit(log: Log): Checked {
  const sun = sunOf(log);
  const faults: Fault[] = [];
  const untested: string[] = [];
  const days = solarDays(log, sun);
  for (const channel of log.channels) {
    const { sensor } = channel;
    if (sensor.quantity !== "airTemperature" && sensor.quantity !== "outsideTemperature") continue;
    if (sensor.zone === "intake" || sensor.zone === "outlet") continue;
    const others = log.channels.filter((one) => areNeighbours(one.sensor, sensor));
    if (others.length === 0 || sun === null) {
      untested.push(
        `Sun on "${sensor.name}": needs ${
          sun === null ? "global radiation" : `a second ${sensor.zone} sensor`
        }`,
      );
      continue;
    }
    const own = readings(channel);
    const theirs = others.map(readings);
    const excess = (step: number) =>
      own[step]! - middle(theirs.map((one) => one[step]!).filter((one) => !Number.isNaN(one)));
    const sunny: number[] = [];
    const hit: { readonly from: number; readonly to: number; readonly size: number }[] = [];
    for (let d = 0; d + 1 < days.length; d++) {
      const [bright, dark]: [number[], number[]] = [[], []];
      for (let step = days[d]!; step < days[d + 1]!; step++) {
        const value = excess(step);
        if (Number.isNaN(value)) continue;
        if (sun[step]! > SUNNY) bright.push(value);
        else if (sun[step]! < NIGHT) dark.push(value);
      }
      if (bright.length * log.step < LEAST || dark.length * log.step < LEAST) continue;
      sunny.push(days[d]!);
      const size = meanOf(bright) - meanOf(dark);
      if (size > EXCESS) hit.push({ from: days[d]!, to: days[d + 1]!, size });
    }
    if (hit.length < DAYS) continue;
    const between = sunny.filter((day) => day >= hit[0]!.from && day < hit.at(-1)!.to);
    if (hit.length < SHARE * between.length) continue;
    faults.push({
      kind: "sunHit",
      flag: "sunHit",
      channels: [sensor.name],
      channel: sensor.name,
      from: hit[0]!.from,
      to: hit.at(-1)!.to,
      only: (step) => !(sun[step]! < NIGHT),
      message: `"${sensor.name}" is hit by the sun: on ${hit.length} sunny days warmer than ` +
        `${others.map((one) => `"${one.sensor.name}"`).join(", ")} by ` +
        `${
          showBoth(meanOf(hit.map(({ size }) => size)), "temperatureDifference")
        } more than at night; give it a ` +
        "ventilated shield, and use its values at night only",
    });
  }
  return { faults, untested };
}
