/** The nights of a log: house, outdoors and control house side by side. @module */
import type { LocalHour } from "./local_hours.ts";
import {
  type ComparedNight,
  fanDifference,
  pairedDifference,
  type TestedDifference,
} from "./saving.ts";

/** Means of one night. */
export interface LoggedNight {
  /** ISO day on which the night begins */
  readonly day: string;
  /** degC inside; NaN where too little was logged, here and below */
  readonly inside: number;
  /** degC outdoors */
  readonly outside: number;
  /** degC in the control house */
  readonly control: number;
  /** kWh/m² of sun on the horizontal in the day before */
  readonly sun: number;
  /** false where the fan was kept off for the test */
  readonly fan: boolean;
}

/** What the store adds in the night. */
export interface Lift {
  /** K warmer than the control house, and whether that is real; null without one */
  readonly control: TestedDifference | null;
  /** K warmer than in nights with the fan kept off, other things being equal; null without such nights */
  readonly fanOff: TestedDifference | null;
}

/** W/m² below which it is dark */
const DARK = 5;
/** h of the clock that count as night where no sun is logged */
const [EVENING, MORNING] = [20, 6];
/** fewest hours of a night or a day that make a mean */
const FEWEST_HOURS = 6;

/** Hourly series of a log; NaN in gaps. */
export interface HourlySeries {
  /** degC */
  readonly inside: Float64Array;
  /** degC */
  readonly outside: Float64Array;
  /** degC in the control house */
  readonly control: Float64Array;
  /** W/m² on the horizontal */
  readonly sun: Float64Array;
}

function meanOf(series: Float64Array, hours: readonly number[]): number {
  const there = hours.map((hour) => series[hour]!).filter(Number.isFinite);
  return there.length < FEWEST_HOURS
    ? NaN
    : there.reduce((sum, one) => sum + one, 0) / there.length;
}

/**
 * The nights of a log, by the day on which they begin.
 *
 * @param series by hour
 * @param clock of each hour
 * @param fanOff 1 for each of 365 days on which the fan is kept off for the test
 */
export function loggedNights(
  series: HourlySeries,
  clock: readonly LocalHour[],
  fanOff: Uint8Array,
): LoggedNight[] {
  const nights = new Map<string, number[]>();
  const suns = new Map<string, number[]>();
  let sunLogged = false;
  for (const value of series.sun) sunLogged ||= Number.isFinite(value);
  clock.forEach((local, hour) => {
    const dark = sunLogged
      ? series.sun[hour]! < DARK
      : local.clock >= EVENING || local.clock < MORNING;
    const noon = local.clock < 12 ? clock[Math.max(0, hour - 12)]!.day : local.day;
    if (dark) nights.set(noon, [...nights.get(noon) ?? [], hour]);
    else suns.set(local.day, [...suns.get(local.day) ?? [], hour]);
  });
  return [...nights].map(([day, hours]) => {
    const dayOfYear = Math.floor((clock[hours[0]!]!.hourOfYear ?? 0) / 24);
    const sun = (suns.get(day) ?? []).reduce((sum, hour) => sum + series.sun[hour]!, 0) / 1000;
    return {
      day,
      inside: meanOf(series.inside, hours),
      outside: meanOf(series.outside, hours),
      control: meanOf(series.control, hours),
      sun: sunLogged ? sun : 0,
      fan: fanOff[dayOfYear] === 0,
    };
  });
}

/** Tests what the store adds against the control house and against the nights with the fan off. */
export function liftOf(nights: readonly LoggedNight[]): Lift {
  const compared = nights.map(({ inside, outside, sun, fan }): ComparedNight => ({
    value: inside - outside,
    drivers: [outside, sun],
    fan,
  }));
  return {
    control: pairedDifference(
      nights.map(({ inside, control, fan }) => fan ? inside - control : NaN),
    ),
    fanOff: fanDifference(compared),
  };
}
