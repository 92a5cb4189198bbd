/** The sun in every hour of a year. @module */
import { DEGREE, HOURS_PER_YEAR } from "../basics/mod.ts";
import { extraterrestrialNormal } from "./extraterrestrial.ts";
import { sunPosition } from "./position.ts";
import { incidencePath, positiveMean } from "./sun_path.ts";
import type { HourlySun, SunPlace } from "./types.ts";

/** A year whose equinox falls near the middle of the leap cycle; typical years have no one year. */
const REFERENCE_YEAR = 2010;
const DAYS = 365;
const HORIZONTAL = { tilt: 0, azimuth: 180 };

/**
 * Sun for each hour of a 365-day year in local standard time, averaged over the hour.
 *
 * Declination and equation of time come from the Solar Position Algorithm once a day and are
 * interpolated linearly between (error below 0.001° and 1 s). Within the hour the declination stands
 * still, so the mean of max(0, cos θz) = sin φ sin δ + cos φ cos δ cos H is an exact integral over
 * the hour angle from sunrise to sunset. Refraction is left out.
 *
 * Source: Reda & Andreas 2008 [reda-andreas-2008].
 *
 * @param place latitude, longitude and the time zone of the standard time
 * @returns series of 8760 entries, the same ones for the same place; entry i covers the hour that starts i hours after 1 January 00:00
 */
export function hourlySun(place: SunPlace): HourlySun {
  const key = JSON.stringify(place);
  if (last?.key !== key) last = { key, sun: workedOut(place) };
  return last.sun;
}

/** The place asked for last: houses and winters of one study share its sun. */
let last: { readonly key: string; readonly sun: HourlySun } | undefined;

function workedOut(place: SunPlace): HourlySun {
  const days = dailyFrame(place);
  const series = () => new Float64Array(HOURS_PER_YEAR);
  const sun = {
    cosZenith: series(),
    elevation: series(),
    azimuth: series(),
    extraterrestrialNormal: series(),
    upShare: series(),
    declination: series(),
    hourAngleStart: series(),
    hourAngleEnd: series(),
    latitude: place.latitude,
  };
  for (let hour = 0; hour < HOURS_PER_YEAR; hour++) fillHour(sun, hour, days);
  return sun;
}

interface DailyFrame {
  /** degrees, at local 00:00 of day i, i = 0 to 365 */
  readonly declination: Float64Array;
  /** hour angle at local 00:00, degrees, near -180 */
  readonly hourAngle: Float64Array;
}

function dailyFrame(place: SunPlace): DailyFrame {
  const declination = new Float64Array(DAYS + 1);
  const hourAngle = new Float64Array(DAYS + 1);
  const start = Date.UTC(REFERENCE_YEAR, 0, 1) - place.timeZone * 3.6e6;
  for (let day = 0; day <= DAYS; day++) {
    const time = new Date(start + day * 8.64e7);
    const position = sunPosition({ ...place, time });
    declination[day] = position.declination;
    hourAngle[day] = position.hourAngle > 0 ? position.hourAngle - 360 : position.hourAngle;
  }
  return { declination, hourAngle };
}

type MutableSun = { -readonly [key in keyof HourlySun]: HourlySun[key] };

function fillHour(sun: MutableSun, hour: number, days: DailyFrame): void {
  const day = Math.floor(hour / 24);
  const share = (hour % 24 + 0.5) / 24;
  const between = (values: Float64Array) =>
    values[day]! + share * (values[day + 1]! - values[day]!);
  const declination = between(days.declination);
  const middle = between(days.hourAngle) + 360 * share;
  const path = incidencePath(HORIZONTAL, sun.latitude, declination);
  const mean = positiveMean(path, (middle - 7.5) * DEGREE, (middle + 7.5) * DEGREE);
  sun.cosZenith[hour] = mean.mean;
  sun.upShare[hour] = mean.share;
  sun.declination[hour] = declination;
  sun.hourAngleStart[hour] = mean.from / DEGREE;
  sun.hourAngleEnd[hour] = mean.to / DEGREE;
  sun.extraterrestrialNormal[hour] = extraterrestrialNormal(day + 1);
  const [elevation, azimuth] = direction(sun.latitude, declination, (mean.from + mean.to) / 2);
  sun.elevation[hour] = elevation;
  sun.azimuth[hour] = azimuth;
}

/**
 * Hour angle at the start of a day, degrees: from an hour in which the sun is up all through or not
 * at all, as the others hold sunrise or sunset.
 *
 * @param sun hourly sun
 * @param day days since 1 January, 0 to 364
 * @returns degrees, near -180
 */
export function hourAngleAtMidnight(sun: HourlySun, day: number): number {
  const start = day * 24;
  const whole = (hour: number) => sun.upShare[hour] === 0 || sun.upShare[hour] === 1;
  let hour = start + 12;
  while (hour > start && !whole(hour)) hour--;
  return sun.hourAngleStart[hour]! - 15 * (hour - start);
}

/**
 * Elevation and azimuth in degrees from latitude and declination in degrees, hour angle in rad.
 *
 * @param latitude degree, north positive
 * @param declination degree
 * @param hourAngle rad, 0 at solar noon
 * @returns elevation and azimuth, degree; azimuth clockwise from north
 */
export function direction(
  latitude: number,
  declination: number,
  hourAngle: number,
): [elevation: number, azimuth: number] {
  const phi = latitude * DEGREE;
  const delta = declination * DEGREE;
  const up = Math.sin(phi) * Math.sin(delta) +
    Math.cos(phi) * Math.cos(delta) * Math.cos(hourAngle);
  const south = Math.sin(phi) * Math.cos(delta) * Math.cos(hourAngle) -
    Math.cos(phi) * Math.sin(delta);
  const west = Math.cos(delta) * Math.sin(hourAngle);
  const azimuth = Math.atan2(west, south) / DEGREE + 180;
  return [Math.asin(Math.min(1, Math.max(-1, up))) / DEGREE, azimuth % 360];
}
