/** Shut tubes in a log, by pressure and air flow. @module */
import { channelsOf, soundValues } from "../log/channels.ts";
import { middle } from "../log/numbers.ts";
import type { Finding, Log } from "../log/types.ts";
import type { BlockedLimits } from "./blocked.ts";

/** What the log says of shut tubes. */
export interface BlockedCheck {
  /** day by day */
  readonly days: readonly BlockedDay[];
  /** stretches of days over the limit, as findings of the log */
  readonly findings: readonly (Omit<Finding, "kind"> & { readonly kind: "blocked" })[];
  /** why nothing could be looked at; null where it could */
  readonly untested: string | null;
}

/** Resistance of the field on one day. */
export interface BlockedDay {
  /** s since 1970 UTC, its start */
  readonly start: number;
  /** ratio to the days after commissioning; NaN where the fan ran too little */
  readonly resistance: number;
  /** number of shut tubes by which the field would show that; 0 below the limit */
  readonly shut: number;
}

/** s of running that give a day its resistance. */
const LEAST = 2 * 3600;
/** Days after the start that are the baseline, and days over the limit that are told. */
const BASELINE = 7;
const DAYS = 2;
/** Share of the greatest flow from which on the fan runs steadily. */
const RUNNING = 0.5;

/**
 * Days on which the resistance of the field stands over the limit: median of pressure over flow
 * squared while the fan runs, against the median of the first seven days with the fan, which
 * commissioning has shown to be clean. Needs a pressure channel of zone "supply header" (against
 * the return header) and an air flow.
 *
 * @param log of the house
 * @param limits from `blockedLimits`
 */
export function findBlocked(log: Log, limits: BlockedLimits): BlockedCheck {
  const pressure = channelsOf(log, "pressure", "supply header")[0];
  const flow = channelsOf(log, "airFlow")[0];
  if (pressure === undefined || flow === undefined) {
    const needs = pressure === undefined ? 'a pressure of zone "supply header"' : "an air flow";
    return { days: [], findings: [], untested: `Shut tubes: needs ${needs}` };
  }
  const [p, q] = [soundValues(pressure), soundValues(flow)];
  let most = 0;
  for (const value of q) if (value > most) most = value;
  const perDay = Math.max(1, Math.round(86400 / log.step));
  const raw: { readonly start: number; readonly value: number }[] = [];
  for (let from = 0; from < log.count; from += perDay) {
    const list: number[] = [];
    for (let step = from; step < Math.min(log.count, from + perDay); step++) {
      if (q[step]! > RUNNING * most && !Number.isNaN(p[step]!)) list.push(p[step]! / q[step]! ** 2);
    }
    const enough = list.length * log.step >= LEAST;
    raw.push({ start: log.start + from * log.step, value: enough ? middle(list) : NaN });
  }
  const there = raw.filter(({ value }) => !Number.isNaN(value));
  if (there.length <= BASELINE) {
    return {
      days: [],
      findings: [],
      untested: `Shut tubes: needs more than ${BASELINE} days on which the fan ran`,
    };
  }
  const clean = middle(there.slice(0, BASELINE).map(({ value }) => value));
  const days = raw.map(({ start, value }): BlockedDay => {
    const resistance = value / clean;
    return { start, resistance, shut: shutBy(resistance, limits) };
  });
  return { days, findings: stretches(days, pressure.sensor.name), untested: null };
}

/** Shut tubes of the state whose resistance is nearest; 0 below the limit. */
function shutBy(resistance: number, { limit, states }: BlockedLimits): number {
  if (!(resistance > limit)) return 0;
  const shut = states.filter((state) => state.shut > 0);
  const nearest = shut.reduce((best, one) =>
    Math.abs(one.resistance - resistance) < Math.abs(best.resistance - resistance) ? one : best
  );
  return nearest.shut;
}

function stretches(days: readonly BlockedDay[], channel: string): BlockedCheck["findings"] {
  const runs: BlockedDay[][] = [];
  let open = false;
  for (const day of days) {
    if (Number.isNaN(day.resistance)) continue;
    if (day.shut > 0) {
      if (open) runs.at(-1)!.push(day);
      else runs.push([day]);
    }
    open = day.shut > 0;
  }
  return runs.filter((run) => run.length >= DAYS).map((run) => {
    const ratio = middle(run.map(({ resistance }) => resistance));
    const shut = middle(run.map((day) => day.shut));
    return {
      kind: "blocked" as const,
      channel,
      from: run[0]!.start,
      to: run.at(-1)!.start + 86400,
      message: `The field resists ${Math.round(100 * (ratio - 1))} % more than after ` +
        `commissioning, as with about ${Math.round(shut)} tubes shut: water in a low spot, silt ` +
        "or an animal. Look into the sump, measure the air speed at every tube end; wear a " +
        "respirator, and do not work alone",
    };
  });
}
