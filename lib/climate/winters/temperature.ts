/** Temperatures of a winter. @module */
import { solveTridiagonal } from "../../basics/linear/tridiagonal.ts";
import { HOURS_PER_YEAR, monthOfHour } from "../../basics/mod.ts";
import { curveOfMeans, toMonthlyMeans } from "../normals/monthly_curve.ts";
import { dailyShape, meanDailySwing } from "../normals/daily_swing.ts";
import type { MonthlyNormals } from "../types.ts";
import { shareBetweenMonths } from "./memory.ts";
import { calendarDay, DAYS, inCalendarOrder } from "./order.ts";

/** Scatter of the daily swing, as the exponent's deviation, and its link with clearness. */
const SWING_SCATTER = 0.3;
const SWING_BY_CLEARNESS = 0.1;
const SWING_MEAN = (SWING_SCATTER ** 2 + SWING_BY_CLEARNESS ** 2) / 2;
const SWING_LIMITS = [0.25, 2] as const;
/** The swing's scale is set until it is met to this, K, in at most so many rounds. */
const SWING_KEPT = 0.02;
const ROUNDS = 20;
/** Means of departures that leave the months to the season. */
const NOUGHT: readonly number[] = Array(12).fill(0);

/** What the temperatures of a place follow; all in calendar order. */
export interface TemperatureClimate {
  /** degC by hour, the mean of all winters without the daily wave */
  readonly season: Float64Array;
  /** K by day, standard deviation of daily means of all winters about the season */
  readonly spread: Float64Array;
  /** K by month, swing of the daily wave; a winter's departures add to it */
  readonly swing: readonly number[];
  /** true where every month of every winter has the season's mean */
  readonly keepsMonths: boolean;
}

/** Standard normal values of each day from 1 July, the day before and the day after included. */
export interface TemperatureDraws {
  /** of the daily mean, 367 values */
  readonly departure: Float64Array;
  /** of the daily swing, 365 values */
  readonly range: Float64Array;
  /** of the clearness, 365 values */
  readonly clearness: Float64Array;
}

/**
 * Works out what the temperatures of a place follow.
 *
 * The spread within months w that the normals give is that of one month of one year; all winters
 * together spread by w/√((1 − v)·31/30), v the share between months.
 *
 * @param normals monthly normals
 * @param memory share of the slow part in the day-to-day memory, and whether months keep their means
 * @param samples draws of some winters, by which the swing's scale is set
 */
export function temperatureClimate(
  normals: MonthlyNormals,
  { slowShare, keepsMonths }: { readonly slowShare: number; readonly keepsMonths: boolean },
  samples: readonly TemperatureDraws[],
): TemperatureClimate {
  const shown = Math.sqrt((1 - shareBetweenMonths(slowShare)) * 31 / 30);
  const byHour = curveOfMeans(normals.dayToDaySpread.map((spread) => spread / shown));
  const climate = {
    season: curveOfMeans(normals.meanTemperature),
    spread: Float64Array.from({ length: DAYS }, (_, day) => Math.max(0, byHour[24 * day + 12]!)),
    keepsMonths,
  };
  const wanted = normals.meanDailyMaximum.map((high, month) =>
    high - normals.meanDailyMinimum[month]!
  );
  let swing = wanted;
  for (let round = 0; round < ROUNDS; round++) {
    const made = samples.map((draws) =>
      meanDailySwing(winterTemperature({ ...climate, swing }, draws))
    );
    const short = wanted.map((value, month) =>
      value - made.reduce((sum, one) => sum + one[month]!, 0) / made.length
    );
    if (short.every((value) => Math.abs(value) < SWING_KEPT)) break;
    swing = swing.map((value, month) => Math.max(0, value + short[month]!));
  }
  return { ...climate, swing };
}

/**
 * Hourly temperatures of a winter.
 *
 * @param climate what they follow
 * @param draws of this winter
 * @returns degC in calendar order, the break between 30 June and 1 July
 */
export function winterTemperature(
  climate: TemperatureClimate,
  draws: TemperatureDraws,
): Float64Array {
  const free = inCalendarOrder(hourlyDepartures(climate, draws.departure), 24);
  const departures = climate.keepsMonths ? toMonthlyMeans(free, NOUGHT) : free;
  const factors = inCalendarOrder(swingFactors(draws), 1);
  return climate.season.map((season, hour) =>
    season + departures[hour]! +
    climate.swing[monthOfHour(hour)]! * factors[Math.floor(hour / 24)]! * SHAPE[hour % 24]!
  );
}

const SHAPE = Array.from({ length: 24 }, (_, hour) => dailyShape(hour));

function swingFactors({ range, clearness }: TemperatureDraws): Float64Array {
  const [least, most] = SWING_LIMITS;
  return range.map((value, day) => {
    const exponent = SWING_SCATTER * value + SWING_BY_CLEARNESS * clearness[day]! - SWING_MEAN;
    return Math.min(most, Math.max(least, Math.exp(exponent)));
  });
}

/**
 * Departures by hour, straight between noons, from 1 July. The noons are solved so that the mean of
 * each day, 1/8, 3/4 and 1/8 of the noons about it, is the daily departure: interpolation then takes
 * nothing from spread and memory.
 */
function hourlyDepartures({ spread }: TemperatureClimate, variate: Float64Array): Float64Array {
  const count = DAYS + 2;
  const side = new Float64Array(count).fill(1 / 8);
  const middle = new Float64Array(count).fill(3 / 4);
  middle[0] = middle[count - 1] = 7 / 8;
  const noons = solveTridiagonal({
    lower: side,
    middle,
    upper: side,
    right: variate.map((value, place) =>
      value * spread[calendarDay(Math.min(DAYS - 1, Math.max(0, place - 1)))]!
    ),
  });
  return Float64Array.from({ length: HOURS_PER_YEAR }, (_, hour) => {
    const at = (hour + 0.5) / 24 + 0.5;
    const day = Math.floor(at);
    const share = at - day;
    return (1 - share) * noons[day]! + share * noons[day + 1]!;
  });
}
