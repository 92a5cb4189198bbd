/**
 * Winters made from monthly normals: as many as one likes, each from its own key, from 1 July to 30
 * June without a break.
 *
 * @module
 */
import { standardPressure } from "../../air/mod.ts";
import { HOURS_PER_YEAR, monthlyMeans, monthOfHour } from "../../basics/mod.ts";
import { type HourlySun, hourlySun } from "../../sun/mod.ts";
import {
  clearnessByMonth,
  type ClearnessDistribution,
  dailyClearness,
  meetMonthlySums,
  outsideLight,
  splitGlobal,
  spreadOverHours,
} from "../normals/radiation.ts";
import { normalProbability } from "../normals/normal_distribution.ts";
import { humidityFromNormals } from "../normals/humidity.ts";
import type { ClimateYear, MonthlyNormals, Place } from "../types.ts";
import { dailyMemory, slowShareFor, USUAL_SLOW_SHARE } from "./memory.ts";
import { calendarDay, DAYS, inCalendarOrder } from "./order.ts";
import { normalDraws } from "./streams.ts";
import {
  type TemperatureClimate,
  temperatureClimate,
  type TemperatureDraws,
  winterTemperature,
} from "./temperature.ts";

/** Day-to-day memory of the clearness. Graham, Hollands & Unny 1988 [graham-1988]. */
const CLEARNESS_PERSISTENCE = 0.29;
/** Hour-to-hour memory of the wind. Common practice, no source. */
const WIND_PERSISTENCE = 0.9;
/** Mean of a Weibull distribution of shape 2 over its scale, √π/2. */
const WEIBULL_MEAN = Math.sqrt(Math.PI) / 2;
/**
 * Correlation of clearness with the departure of temperature in the middle of January and of July:
 * clear winter days are cold, clear summer days warm. Fitted to eight typical years (docs/climate.md).
 */
const CLEAR_AND_WARM = { january: -0.4, july: 0.3 } as const;
/** Winters by which the scale of the daily swing is set, and their seed. */
const SAMPLES = 8;
const SAMPLE_SEED = -1;

/** What all winters of a place share. */
export interface WinterClimate {
  /** where */
  readonly place: Place;
  /** monthly normals */
  readonly normals: MonthlyNormals;
  /** hourly sun of the place */
  readonly sun: HourlySun;
  /** light outside the atmosphere on the horizontal, W/m² by hour */
  readonly outside: Float64Array;
  /** how clear the days of each month are */
  readonly clearness: readonly ClearnessDistribution[];
  /** what temperatures follow */
  readonly temperature: TemperatureClimate;
  /** share of the slow part in the day-to-day memory, 0 to 1 */
  readonly slowShare: number;
}

/** Picks a winter. */
export interface WinterKey {
  /** whole number of the study */
  readonly seed: number;
  /** place of the winter, from 0 */
  readonly winter: number;
}

/**
 * Works out what all winters of a place share. Their months vary as those of real winters do.
 *
 * @param normals monthly normals
 * @param place where
 */
export function winterClimate(normals: MonthlyNormals, place: Place): WinterClimate {
  const keys = Array.from({ length: SAMPLES }, (_, winter) => ({ seed: SAMPLE_SEED, winter }));
  return sharedClimate(normals, place, { keepsMonths: false, keys });
}

/**
 * Works out what one winter needs that has the months of the normals.
 *
 * @param normals monthly normals
 * @param place where
 * @param key of the winter
 */
export function typicalClimate(
  normals: MonthlyNormals,
  place: Place,
  key: WinterKey,
): WinterClimate {
  return sharedClimate(normals, place, { keepsMonths: true, keys: [key] });
}

function sharedClimate(
  normals: MonthlyNormals,
  place: Place,
  { keepsMonths, keys }: { readonly keepsMonths: boolean; readonly keys: readonly WinterKey[] },
): WinterClimate {
  const sun = hourlySun(place);
  const outside = outsideLight(sun);
  const slowShare = slowShareOf(normals);
  const samples = keys.map((key) => drawDays(key, slowShare));
  return {
    place,
    normals,
    sun,
    outside,
    clearness: clearnessByMonth(normals.globalRadiation, outside),
    temperature: temperatureClimate(normals, { slowShare, keepsMonths }, samples),
    slowShare,
  };
}

/** Slow part from the published deviations of monthly means, mean of the months; or the usual. */
function slowShareOf({ monthToMonthSpread, dayToDaySpread }: MonthlyNormals): number {
  if (monthToMonthSpread === undefined) return USUAL_SLOW_SHARE;
  const shares = monthToMonthSpread.map((spread, month) =>
    slowShareFor(spread, dayToDaySpread[month]!)
  );
  return shares.reduce((sum, share) => sum + share, 0) / shares.length;
}

/** Draws of each day of a winter, from 1 July. */
export function drawDays(key: WinterKey, slowShare: number): TemperatureDraws {
  const draw = (quantity: Parameters<typeof normalDraws>[0]["quantity"]) =>
    normalDraws({ ...key, quantity });
  const departure = dailyMemory(slowShare, { fast: draw("temperature"), slow: draw("slow") });
  const range = draw("range");
  return {
    departure,
    range: Float64Array.from({ length: DAYS }, () => range()),
    clearness: linkedClearness(departure, draw("clearness")),
  };
}

/** Clearness with a memory of its own, linked with the departure of temperature by season. */
function linkedClearness(departure: Float64Array, draw: () => number): Float64Array {
  const { january, july } = CLEAR_AND_WARM;
  const innovation = Math.sqrt(1 - CLEARNESS_PERSISTENCE ** 2);
  let own = draw();
  return Float64Array.from({ length: DAYS }, (_, day) => {
    own = day === 0 ? own : CLEARNESS_PERSISTENCE * own + innovation * draw();
    const winter = Math.cos(2 * Math.PI * (calendarDay(day) - 15) / DAYS);
    const link = winter > 0 ? january * winter : -july * winter;
    return link * departure[day + 1]! + Math.sqrt(1 - link ** 2) * own;
  });
}

/**
 * One winter of hourly weather, in calendar order: January to June belong to the year after July to
 * December, and the break lies between 30 June and 1 July. The same key gives the same winter
 * whatever others are made.
 *
 * Temperature: the season of the normals, departures with a fast and a slow memory, a daily wave whose
 * swing scatters. Clearness: linked with temperature, mapped through the distribution of the month's
 * days. Months are not forced to the normals: their means vary from winter to winter as those of
 * real ones do, and meet the normals on the mean of many. Humidity and the mean of the wind follow
 * the normals.
 *
 * @param climate what all winters of the place share
 * @param key of the winter
 */
export function makeWinter(climate: WinterClimate, key: WinterKey): ClimateYear {
  const { place, normals, sun, outside } = climate;
  const days = drawDays(key, climate.slowShare);
  const dryBulb = winterTemperature(climate.temperature, days);
  const clearness = dailyClearness(climate.clearness, inCalendarOrder(days.clearness, 1));
  const noise = normalDraws({ ...key, quantity: "hours" });
  const global = spreadOverHours(clearness, outside, sun, noise);
  const wind = inCalendarOrder(windOf(normals.windSpeed, key), 24);
  if (climate.temperature.keepsMonths) {
    meetMonthlySums(global, normals.globalRadiation, outside);
    meetMonthlyMeans(wind, normals.windSpeed);
  }
  return {
    place,
    source: `winter ${key.winter + 1} made from monthly normals, seed ${key.seed}`,
    layout: "normals",
    dryBulb,
    relativeHumidity: humidityFromNormals(normals.relativeHumidity, dryBulb),
    ...splitGlobal(global, outside, sun),
    windSpeed: wind,
    pressure: new Float64Array(HOURS_PER_YEAR).fill(standardPressure(place.elevation)),
    skyLongwave: null,
    albedo: null,
    derivedMonths: Array.from({ length: 12 }, (_, month) => month + 1),
    notices: [],
  };
}

/** Wind from 1 July: a Weibull distribution of shape 2 about the month's mean, with memory. */
function windOf(means: readonly number[], key: WinterKey): Float64Array {
  const draw = normalDraws({ ...key, quantity: "wind" });
  const innovation = Math.sqrt(1 - WIND_PERSISTENCE ** 2);
  let value = draw();
  return Float64Array.from({ length: HOURS_PER_YEAR }, (_, hour) => {
    value = hour === 0 ? value : WIND_PERSISTENCE * value + innovation * draw();
    const calendarHour = 24 * calendarDay(Math.floor(hour / 24)) + hour % 24;
    const shape = Math.sqrt(-Math.log(1 - normalProbability(value)));
    return means[monthOfHour(calendarHour)]! * shape / WEIBULL_MEAN;
  });
}

/** Scales each month to its mean, in place. */
function meetMonthlyMeans(series: Float64Array, means: readonly number[]): void {
  const have = monthlyMeans(series);
  series.forEach((value, hour) => {
    const month = monthOfHour(hour);
    series[hour] = value * means[month]! / have[month]!;
  });
}
