/** What a log says by itself, before any model is set beside it. @module */
import { DAY, HOUR } from "../basics/mod.ts";
import { seasonDays } from "../units/mod.ts";
import { heatReadings, type Reading, readingOf } from "./flows/readings.ts";
import { type HourlyHeat, hourlyHeat } from "./flows/hourly_heat.ts";
import { hourlyMeans, type LocalHour, localHour } from "./flows/local_hours.ts";
import { type Lift, liftOf, type LoggedNight, loggedNights } from "./flows/nights.ts";
import { type HeatSums, heatSums } from "./flows/sums.ts";
import { logQuantity } from "./log/quantities.ts";
import { type Channel, type Finding, type Log, LOG_FLAGS } from "./log/types.ts";

/** What the sums need to know besides the log. */
export interface SeasonSetting {
  /** Pa, mean of the place */
  readonly pressure: number;
  /** hours east of UTC, standard time */
  readonly timeZone: number;
  /** s, step at which the heat is worked out */
  readonly step: number;
  /** true where the fan stands between the probes, so that its heat goes into the store */
  readonly fanHeats: boolean;
  /** span of days on which the fan is kept off for the test, as `readSeason` writes it */
  readonly fanOff: string;
}

/** One channel of the log, for the reader. */
export interface ChannelSummary {
  /** of the sensor */
  readonly name: string;
  /** what it measures, as a reader would say it */
  readonly words: string;
  /** where */
  readonly zone: string;
  /** share of the steps with a value, 0 to 1 */
  readonly there: number;
  /** share of the steps that carry a flag other than a gap, 0 to 1 */
  readonly flagged: number;
}

/** A day of the log. */
export interface LoggedDay extends HeatSums {
  /** ISO day, local standard time */
  readonly day: string;
  /** degC between the tubes, mean of the probes; null where none was there */
  readonly store: number | null;
  /** degC inside, mean; null where it was not logged */
  readonly inside: number | null;
}

/** Heat and temperatures of a log, hour by hour and summed. */
export interface LoggedSeason {
  /** s since 1970 UTC of the first hour */
  readonly start: number;
  /** hours east of UTC */
  readonly timeZone: number;
  /** by hour */
  readonly heat: HourlyHeat;
  /** of the errors that the readings of the heat share through the log, in their SI units */
  readonly covariance: readonly (readonly number[])[];
  /** degC inside by hour; NaN in gaps, here and below */
  readonly inside: Float64Array;
  /** standard uncertainty of the air inside, K */
  readonly insideUncertainty: number;
  /** degC outdoors by hour */
  readonly outside: Float64Array;
  /** degC between the tubes by hour, mean of the probes */
  readonly store: Float64Array;
  /** standard uncertainty of that mean, K */
  readonly storeUncertainty: number;
  /** by day */
  readonly days: readonly LoggedDay[];
  /** all hours together */
  readonly sums: HeatSums;
  /** nights */
  readonly nights: readonly LoggedNight[];
  /** what the store adds */
  readonly lift: Lift;
  /** channel by channel */
  readonly channels: readonly ChannelSummary[];
  /** faults that were found */
  readonly findings: readonly Finding[];
  /** checks that these channels do not allow */
  readonly untested: readonly string[];
  /** number of rows that were not read */
  readonly rowsLeftOut: number;
}

/** A season, or why there is none. */
export type SeasonOrReason = LoggedSeason | { readonly reason: string };

const NONE: Reading = { values: new Float64Array(0), uncertainty: NaN, batches: [] };

function summaryOf({ sensor, values, flags }: Channel): ChannelSummary {
  let [there, flagged] = [0, 0];
  values.forEach((value, k) => {
    if (!Number.isNaN(value)) there++;
    if ((flags[k]! & ~LOG_FLAGS.gap) !== 0) flagged++;
  });
  const { name, quantity, zone } = sensor;
  const { words } = logQuantity(quantity);
  const count = Math.max(1, values.length);
  return { name, words, zone, there: there / count, flagged: flagged / count };
}

function meanOrNull(series: Float64Array, hours: readonly number[]): number | null {
  const there = hours.map((hour) => series[hour]!).filter(Number.isFinite);
  return there.length === 0 ? null : there.reduce((sum, one) => sum + one, 0) / there.length;
}

/** A log cut so that it starts at a full hour of UTC. */
export function fromFullHour(log: Log): Log {
  const skip = Math.round((Math.ceil(log.start / HOUR) * HOUR - log.start) / log.step);
  if (skip === 0) return log;
  return {
    ...log,
    start: log.start + skip * log.step,
    count: log.count - skip,
    channels: log.channels.map((channel) => ({
      ...channel,
      values: channel.values.subarray(skip),
      flags: channel.flags.subarray(skip),
    })),
  };
}

/**
 * Heat, water, nights and sums of a log.
 *
 * @param whole the log
 * @param setting place, time and fan
 * @returns the season; or the reason where the heat cannot be told
 */
export function loggedSeason(whole: Log, setting: SeasonSetting): SeasonOrReason {
  const log = fromFullHour(whole);
  if (log.step > HOUR || HOUR % log.step !== 0) {
    return { reason: `the log's step of ${log.step} s does not divide the hour` };
  }
  if (log.count * log.step < DAY) return { reason: "the log is shorter than a day" };
  const picked = heatReadings(log);
  if ("missing" in picked) return { reason: `the logs hold no ${picked.missing.join(", no ")}` };
  const { pressure, fanHeats, timeZone } = setting;
  const heat = hourlyHeat({ readings: picked.readings, step: log.step, pressure, fanHeats });
  const hourly = (reading: Reading | null) => {
    const means = hourlyMeans((reading ?? NONE).values, log.step);
    return reading === null ? new Float64Array(heat.running.length).fill(NaN) : means;
  };
  const clock = Array.from(
    heat.running,
    (_, hour): LocalHour => localHour(log.start + hour * HOUR, timeZone),
  );
  const air = readingOf(log, "airTemperature", "inside");
  const inside = hourly(air);
  const outside = hourly(readingOf(log, "outsideTemperature"));
  const probes = readingOf(log, "soilTemperature", "store");
  const store = hourly(probes);
  const control = hourly(readingOf(log, "airTemperature", "control house"));
  const sun = hourly(readingOf(log, "globalRadiation"));
  const byDay = new Map<string, number[]>();
  clock.forEach(({ day }, hour) => byDay.set(day, [...byDay.get(day) ?? [], hour]));
  const nights = loggedNights({ inside, outside, control, sun }, clock, seasonDays(setting.fanOff));
  return {
    start: log.start,
    timeZone,
    heat,
    covariance: picked.covariance,
    inside,
    insideUncertainty: air?.uncertainty ?? NaN,
    outside,
    store,
    storeUncertainty: probes?.uncertainty ?? NaN,
    days: [...byDay].map(([day, hours]) => ({
      day,
      ...heatSums(heat, picked.covariance, hours),
      store: meanOrNull(store, hours),
      inside: meanOrNull(inside, hours),
    })),
    sums: heatSums(heat, picked.covariance, clock.map((_, hour) => hour)),
    nights,
    lift: liftOf(nights),
    channels: log.channels.map(summaryOf),
    findings: log.findings,
    untested: log.untested,
    rowsLeftOut: log.named.reduce((sum, { rows }) => sum + rows, 0),
  };
}
