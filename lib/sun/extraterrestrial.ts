/** Radiation outside the atmosphere. @module */
import { DAY } from "../basics/mod.ts";

/** Solar constant, W/m². ASTM E490-00 [astm-e490-2000]. */
const SOLAR_CONSTANT = 1366.1;

/**
 * Extraterrestrial radiation on a plane normal to the sun.
 *
 * G = Gsc (1.00011 + 0.034221 cos B + 0.00128 sin B + 0.000719 cos 2B + 0.000077 sin 2B) with
 * B = 2π (n - 1) / 365.
 *
 * Source: Spencer 1971 [spencer-1971]. Valid within 0.01 % of the true distance.
 *
 * @param dayOfYear day, 1 on 1 January
 * @param solarConstant W/m²
 * @returns W/m²
 */
export function extraterrestrialNormal(
  dayOfYear: number,
  solarConstant: number = SOLAR_CONSTANT,
): number {
  const angle = 2 * Math.PI * (dayOfYear - 1) / 365;
  return solarConstant * (1.00011 + 0.034221 * Math.cos(angle) + 0.00128 * Math.sin(angle) +
    0.000719 * Math.cos(2 * angle) + 0.000077 * Math.sin(2 * angle));
}

/** Daily radiation outside the atmosphere and day length. */
export interface DailySun {
  /** inverse square of the relative distance to the sun */
  readonly inverseDistanceSquared: number;
  /** rad */
  readonly declination: number;
  /** rad */
  readonly sunsetHourAngle: number;
  /** extraterrestrial radiation on the horizontal over the day, J/m² */
  readonly radiation: number;
  /** time from sunrise to sunset of the sun's centre, s */
  readonly daylight: number;
}

/**
 * Extraterrestrial radiation on the horizontal and length of a day, by the short daily formulas.
 *
 * Ra = (86400/π) Gsc dr (ωs sin φ sin δ + cos φ cos δ sin ωs), N = 86400 ωs / π.
 *
 * Source: FAO-56 (1998) [fao56-1998], eq. 21 to 25 and 34, with its solar constant of 0.0820 MJ/(m²
 * min). Stated between the polar circles; beyond them the sunset hour angle is held to 0 (polar night)
 * and π (polar day), for which Ra and N hold as well.
 *
 * @param latitude degrees, north positive
 * @param dayOfYear day, 1 on 1 January
 * @returns sums over the day
 */
export function dailySun(latitude: number, dayOfYear: number): DailySun {
  const phi = latitude * Math.PI / 180;
  const angle = 2 * Math.PI * dayOfYear / 365;
  const inverseDistanceSquared = 1 + 0.033 * Math.cos(angle);
  const declination = 0.409 * Math.sin(angle - 1.39);
  const sunset = Math.acos(clamp(-Math.tan(phi) * Math.tan(declination)));
  const shape = sunset * Math.sin(phi) * Math.sin(declination) +
    Math.cos(phi) * Math.cos(declination) * Math.sin(sunset);
  return {
    inverseDistanceSquared,
    declination,
    sunsetHourAngle: sunset,
    radiation: 0.0820e6 * 1440 / Math.PI * inverseDistanceSquared * shape,
    daylight: DAY * sunset / Math.PI,
  };
}

/** Days of the year on which the day is shorter than a limit; leaf crops hardly grow below 10 h. */
export interface ShortDays {
  /** number of such days */
  readonly count: number;
  /** first of them in the season, 1 to 365; null where there is none */
  readonly first: number | null;
  /** last of them in the season, 1 to 365; null where there is none */
  readonly last: number | null;
}

/**
 * The season of short days at a latitude, by {@link dailySun}; in the north it runs over the new year.
 *
 * @param latitude degrees, north positive
 * @param daylight s
 * @returns its days
 */
export function shortDays(latitude: number, daylight: number): ShortDays {
  const short = Array.from(
    { length: 365 },
    (_, day) => dailySun(latitude, day + 1).daylight < daylight,
  );
  const first = short.findIndex((is, day) => is && !short[(day + 364) % 365]);
  const last = short.findIndex((is, day) => is && !short[(day + 1) % 365]);
  return {
    count: short.filter((is) => is).length,
    first: first === -1 ? null : first + 1,
    last: last === -1 ? null : last + 1,
  };
}

/**
 * Clear-sky global radiation as a share of the extraterrestrial: 0.75 + 2·10⁻⁵ z.
 *
 * Source: FAO-56 (1998) [fao56-1998], eq. 37.
 *
 * @param elevation m above sea level
 * @returns a share, 0.75 to about 0.85
 */
export function clearSkyShare(elevation: number): number {
  return 0.75 + 2e-5 * elevation;
}

function clamp(cosine: number): number {
  return Math.min(1, Math.max(-1, cosine));
}
