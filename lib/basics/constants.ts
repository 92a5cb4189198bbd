/**
 * Constants of nature and of the calendar.
 *
 * @module
 */

/** Standard gravity, m/s². CGPM 1901 [cgpm-1901]. */
export const GRAVITY = 9.80665;
/** Stefan–Boltzmann constant, W/(m² K⁴). CODATA 2018 [codata-2018]. */
export const STEFAN_BOLTZMANN = 5.670374419e-8;
/** 0 °C in kelvin. */
export const ZERO_CELSIUS = 273.15;
/** Standard atmosphere, Pa. */
export const STANDARD_PRESSURE = 101325;
/** Radians in a degree. */
export const DEGREE: number = Math.PI / 180;
/** Seconds in an hour. */
export const HOUR = 3600;
/** Seconds in a day. */
export const DAY = 86400;
/** Hours in the years this library works with: 365 days, 29 February left out. */
export const HOURS_PER_YEAR = 8760;
/** Seconds in such a year. */
export const YEAR = HOURS_PER_YEAR * HOUR;
/** Joule in a kilowatt-hour. */
export const KILOWATT_HOUR = 3.6e6;
/** Days in each month of a 365-day year. */
export const MONTH_DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;

/** kWh of an amount of energy in J. */
export function kilowattHours(joule: number): number {
  return joule / KILOWATT_HOUR;
}
