/**
 * Reference evaporation of FAO-56 [fao56-1998], the yardstick for what a crop gives off. @module
 */
import { clearSkyShare, dailySun } from "../../lib/sun/mod.ts";

/** MJ/(m² K⁴ d) and MJ/(m² K⁴ h), as FAO-56 [fao56-1998] prints them (eq. 39). */
const STEFAN_DAY = 4.903e-9;
const STEFAN_HOUR = 2.043e-10;
const KELVIN = 273.16;
/** Albedo of the reference grass. */
const GRASS_ALBEDO = 0.23;

/**
 * Saturation pressure, kPa. e = 0.6108·exp(17.27·T/(T + 237.3)). Source: FAO-56 [fao56-1998] eq.
 * 11.
 */
export function saturationPressureFao56(temperature: number): number {
  return 0.6108 * Math.exp(17.27 * temperature / (temperature + 237.3));
}

/** Slope of the saturation pressure, kPa/K. Source: FAO-56 [fao56-1998] eq. 13. */
export function saturationSlopeFao56(temperature: number): number {
  return 4098 * saturationPressureFao56(temperature) / (temperature + 237.3) ** 2;
}

/** Air pressure at an elevation, kPa. Source: FAO-56 [fao56-1998] eq. 7. */
export function pressureFao56(elevation: number): number {
  return 101.3 * ((293 - 0.0065 * elevation) / 293) ** 5.26;
}

/** Psychrometric constant, kPa/K, from a pressure in kPa. Source: FAO-56 [fao56-1998] eq. 8. */
export function psychrometricConstant(pressure: number): number {
  return 0.665e-3 * pressure;
}

/** Wind at 2 m from wind at another height over grass. Source: FAO-56 [fao56-1998] eq. 47. */
export function windAtTwoMetres(wind: number, height: number): number {
  return wind * 4.87 / Math.log(67.8 * height - 5.42);
}

/**
 * Global radiation from hours of sunshine, in the unit of `extraterrestrial`. Source: FAO-56
 * [fao56-1998] eq. 35.
 */
export function globalFromSunshine(
  sunshine: number,
  dayLength: number,
  extraterrestrial: number,
): number {
  return (0.25 + 0.5 * sunshine / dayLength) * extraterrestrial;
}

/** A day or the mean day of a month. */
export interface ReferenceDay {
  /** degC */
  readonly maxTemperature: number;
  /** degC */
  readonly minTemperature: number;
  /** kPa */
  readonly vapourPressure: number;
  /** m/s at 2 m */
  readonly windSpeed: number;
  /** degrees, north positive */
  readonly latitude: number;
  /** m */
  readonly elevation: number;
  /** 1 to 365 */
  readonly dayOfYear: number;
  /** h of bright sunshine, or global radiation, MJ/(m² d) */
  readonly sunshine: { readonly hours: number } | { readonly global: number };
  /** MJ/(m² d) into the ground */
  readonly groundHeat: number;
}

/** Reference evaporation with what led to it, in FAO-56 [fao56-1998]'s units. */
export interface ReferenceEvaporation {
  /** kPa */
  readonly saturationPressure: number;
  /** kPa/K */
  readonly slope: number;
  /** kPa/K */
  readonly psychrometric: number;
  /** MJ/m² of the period: global, short-wave net, long-wave net, net */
  readonly global: number;
  /** MJ/m² */
  readonly clearSky: number;
  /** MJ/m² */
  readonly netShortwave: number;
  /** MJ/m² */
  readonly netLongwave: number;
  /** MJ/m² */
  readonly net: number;
  /** mm of the period */
  readonly evaporation: number;
}

/**
 * Reference evaporation of a day.
 * ET₀ = (0.408·Δ·(R_n − G) + γ·900/(T + 273)·u₂·(e_s − e_a)) / (Δ + γ·(1 + 0.34·u₂)).
 *
 * Source: FAO-56 (1998) [fao56-1998], eq. 6, 39.
 *
 * @param day weather of the day
 * @returns mm and its terms
 */
export function referenceEvaporationDay(day: ReferenceDay): ReferenceEvaporation {
  const sun = dailySun(day.latitude, day.dayOfYear);
  const extraterrestrial = sun.radiation / 1e6;
  const global = "global" in day.sunshine
    ? day.sunshine.global
    : globalFromSunshine(day.sunshine.hours, sun.daylight / 3600, extraterrestrial);
  const clearSky = clearSkyShare(day.elevation) * extraterrestrial;
  const [high, low] = [day.maxTemperature, day.minTemperature];
  const mean = (high + low) / 2;
  const saturation = (saturationPressureFao56(high) + saturationPressureFao56(low)) / 2;
  const emitted = STEFAN_DAY * ((high + KELVIN) ** 4 + (low + KELVIN) ** 4) / 2;
  const netLongwave = emitted * cloudAndVapour(day.vapourPressure, global / clearSky);
  const netShortwave = (1 - GRASS_ALBEDO) * global;
  const slope = saturationSlopeFao56(mean);
  const psychrometric = psychrometricConstant(pressureFao56(day.elevation));
  const net = netShortwave - netLongwave;
  const evaporation = (0.408 * slope * (net - day.groundHeat) +
    psychrometric * 900 / (mean + 273) * day.windSpeed * (saturation - day.vapourPressure)) /
    (slope + psychrometric * (1 + 0.34 * day.windSpeed));
  return {
    saturationPressure: saturation,
    slope,
    psychrometric,
    global,
    clearSky,
    netShortwave,
    netLongwave,
    net,
    evaporation,
  };
}

function cloudAndVapour(vapourPressure: number, clearness: number): number {
  return (0.34 - 0.14 * Math.sqrt(vapourPressure)) * (1.35 * Math.min(1, clearness) - 0.35);
}

/** One hour. */
export interface ReferenceHour {
  /** degC */
  readonly temperature: number;
  /** 0 to 1 */
  readonly relativeHumidity: number;
  /** m/s at 2 m */
  readonly windSpeed: number;
  /** MJ/(m² h) */
  readonly global: number;
  /** global over clear-sky radiation; at night that of the hours before sunset */
  readonly clearness: number;
  /** m */
  readonly elevation: number;
}

/**
 * Reference evaporation of an hour.
 * ET₀ = (0.408·Δ·(R_n − G) + γ·37/(T + 273)·u₂·(e° − e_a)) / (Δ + γ·(1 + 0.34·u₂)), with G 0.1·R_n
 * by day and 0.5·R_n by night.
 *
 * Source: FAO-56 [fao56-1998] eq. 53, 45, 46.
 *
 * @param hour weather of the hour
 * @returns mm and its terms
 */
export function referenceEvaporationHour(hour: ReferenceHour): ReferenceEvaporation {
  const { temperature, windSpeed, global } = hour;
  const saturation = saturationPressureFao56(temperature);
  const vapour = hour.relativeHumidity * saturation;
  const netLongwave = STEFAN_HOUR * (temperature + KELVIN) ** 4 *
    cloudAndVapour(vapour, hour.clearness);
  const netShortwave = (1 - GRASS_ALBEDO) * global;
  const net = netShortwave - netLongwave;
  const ground = (global > 0 ? 0.1 : 0.5) * net;
  const slope = saturationSlopeFao56(temperature);
  const psychrometric = psychrometricConstant(pressureFao56(hour.elevation));
  const evaporation = (0.408 * slope * (net - ground) +
    psychrometric * 37 / (temperature + 273) * windSpeed * (saturation - vapour)) /
    (slope + psychrometric * (1 + 0.34 * windSpeed));
  return {
    saturationPressure: saturation,
    slope,
    psychrometric,
    global,
    clearSky: global / hour.clearness,
    netShortwave,
    netLongwave,
    net,
    evaporation,
  };
}
