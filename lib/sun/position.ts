/** Where the sun stands at one moment. @module */
import { DEGREE } from "../basics/mod.ts";
import { getSpa, SPA_ZA } from "nrel-spa";

/** Direction of the sun and its place in the equatorial frame. */
export interface SunPosition {
  /** degrees from the vertical */
  readonly zenith: number;
  /** degrees clockwise from north */
  readonly azimuth: number;
  /** degrees north of the equator, as seen from the place */
  readonly declination: number;
  /** degrees west of the meridian, -180 to 180, 0 at solar noon */
  readonly hourAngle: number;
}

/** What bends the light on its way; leave it out for the true direction without refraction. */
export interface Refraction {
  /** station pressure, Pa */
  readonly pressure: number;
  /** air temperature, degC */
  readonly temperature: number;
}

/** A moment and a spot for {@link sunPosition}. */
export interface SunPositionInputs {
  /** moment, UTC */
  readonly time: Date;
  /** degrees, north positive */
  readonly latitude: number;
  /** degrees, east positive */
  readonly longitude: number;
  /** m above sea level; 0 where not given */
  readonly elevation?: number;
  /** refraction is left out where not given */
  readonly refraction?: Refraction;
  /** terrestrial time minus UTC, s; 69 (the years about 2020) where not given */
  readonly deltaT?: number;
}

/**
 * Sun position by the Solar Position Algorithm.
 *
 * Zenith and azimuth come from the package `nrel-spa`; declination δ and hour angle H follow from
 * them and the latitude φ: sin δ = sin φ cos θz + cos φ sin θz cos A.
 *
 * Source: Reda & Andreas 2008 [reda-andreas-2008]. Valid for years -2000 to 6000, ±0.0003°.
 *
 * @example Golden, Colorado, on 17 October 2003 (the example of the source)
 * ```ts
 * import { sunPosition } from "./position.ts";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const { zenith, azimuth } = sunPosition({
 *   time: new Date("2003-10-17T19:30:30Z"),
 *   latitude: 39.742476,
 *   longitude: -105.1786,
 *   elevation: 1830.14,
 *   refraction: { pressure: 82000, temperature: 11 },
 *   deltaT: 67,
 * });
 * assertAlmostEquals(zenith, 50.11162, 1e-4);
 * assertAlmostEquals(azimuth, 194.34024, 1e-4);
 * ```
 *
 * @param inputs moment and spot
 * @returns angles in degrees
 */
export function sunPosition(inputs: SunPositionInputs): SunPosition {
  const { zenith, azimuth } = getSpa(inputs.time, inputs.latitude, inputs.longitude, 0, {
    elevation: inputs.elevation ?? 0,
    pressure: (inputs.refraction?.pressure ?? 0) / 100,
    temperature: inputs.refraction?.temperature ?? 15,
    delta_t: inputs.deltaT ?? 69,
    function: SPA_ZA,
  });
  const [sinLatitude, cosLatitude] = sinCos(inputs.latitude);
  const [sinZenith, cosZenith] = sinCos(zenith);
  const [sinAzimuth, cosAzimuth] = sinCos(azimuth);
  const sinDeclination = sinLatitude * cosZenith + cosLatitude * sinZenith * cosAzimuth;
  const east = -sinZenith * sinAzimuth;
  const north = cosZenith * cosLatitude - sinZenith * cosAzimuth * sinLatitude;
  return {
    zenith,
    azimuth,
    declination: Math.asin(sinDeclination) / DEGREE,
    hourAngle: Math.atan2(east, north) / DEGREE,
  };
}

function sinCos(degrees: number): [number, number] {
  return [Math.sin(degrees * DEGREE), Math.cos(degrees * DEGREE)];
}
