/** Probes that stand where another ought to. @module */
import { middle } from "../numbers.ts";
import type { Channel, Log } from "../types.ts";
import { type Checked, type Fault, meanOf, readings, swapFault } from "./fault.ts";
import { swappedDepths } from "./swapped_depths.ts";

/** K by which intake and outlet must differ in their distance from the house's air. */
const CLEAR = 0.5;
/** Share of the fan's greatest power or flow from which on it runs. */
const RUNNING = 0.2;
/** Days of one mind that make a finding, and steps of a day that give it a mind, s. */
const DAYS = 3;
const LEAST = 2 * 3600;

/**
 * Swapped probes: intake and outlet by which of them follows the house's air while the fan runs,
 * soil probes by their depths.
 *
 * @param log with gaps, spikes and stuck values flagged
 */
export function swapped(log: Log): Checked {
  const ends = swappedEnds(log);
  const depths = swappedDepths(log);
  return {
    faults: [...ends.faults, ...depths.faults],
    untested: [...ends.untested, ...depths.untested],
  };
}

/** Steps in which the fan runs, by its power or air flow; null where neither is logged. */
export function fanRuns(log: Log): ((step: number) => boolean) | null {
  for (const quantity of ["airFlow", "power", "airSpeed", "pressure"] as const) {
    const channel = log.channels.find(({ sensor }) => sensor.quantity === quantity);
    if (channel === undefined) continue;
    const values = readings(channel);
    let most = 0;
    for (const value of values) if (value > most) most = value;
    return (step) => values[step]! > RUNNING * most;
  }
  return null;
}

function swappedEnds(log: Log): Checked {
  const at = (zone: string): Channel | undefined =>
    log.channels.find(({ sensor }) => sensor.quantity === "airTemperature" && sensor.zone === zone);
  const [intake, outlet] = [at("intake"), at("outlet")];
  if (intake === undefined || outlet === undefined) return { faults: [], untested: [] };
  const names = `"${intake.sensor.name}" and "${outlet.sensor.name}"`;
  const house = log.channels.filter(({ sensor }) =>
    sensor.quantity === "airTemperature" && sensor.zone === (at("ridge") ? "ridge" : "inside")
  ).map(readings);
  const runs = fanRuns(log);
  if (house.length === 0 || runs === null) {
    const needs = house.length === 0 ? "the house's air temperature" : "fan power or air flow";
    return { faults: [], untested: [`Whether ${names} are swapped: needs ${needs}`] };
  }
  const [a, b] = [readings(intake), readings(outlet)];
  const perDay = Math.max(1, Math.round(86400 / log.step));
  const minds: { readonly from: number; readonly to: number; readonly swapped: boolean }[] = [];
  for (let from = 0; from < log.count; from += perDay) {
    const to = Math.min(log.count, from + perDay);
    const nearer: number[] = [];
    for (let step = from; step < to; step++) {
      const air = middle(house.map((one) => one[step]!).filter((one) => !Number.isNaN(one)));
      const difference = Math.abs(b[step]! - air) - Math.abs(a[step]! - air);
      if (runs(step) && !Number.isNaN(difference)) nearer.push(difference);
    }
    if (nearer.length * log.step < LEAST) continue;
    const size = meanOf(nearer);
    if (Math.abs(size) > CLEAR) minds.push({ from, to, swapped: size < 0 });
  }
  return { faults: stretches(minds, (from, to) => fault(intake, outlet, from, to)), untested: [] };
}

/** Stretches of days of one mind, swapped. */
function stretches(
  minds: readonly { readonly from: number; readonly to: number; readonly swapped: boolean }[],
  make: (from: number, to: number) => Fault,
): Fault[] {
  const runs: { readonly from: number; readonly to: number; readonly days: number }[] = [];
  let open = false;
  for (const { from, to, swapped } of minds) {
    if (swapped) {
      const last = open ? runs.pop()! : { from, days: 0 };
      runs.push({ from: last.from, to, days: last.days + 1 });
    }
    open = swapped;
  }
  return runs.filter(({ days }) => days >= DAYS).map(({ from, to }) => make(from, to));
}

function fault(intake: Channel, outlet: Channel, from: number, to: number): Fault {
  return swapFault(
    intake,
    outlet,
    { from, to },
    "while the fan runs, the outlet follows the air of the house and the intake does not; exchange " +
      "their columns in the log map, or look whether the fan turns backwards",
  );
}
