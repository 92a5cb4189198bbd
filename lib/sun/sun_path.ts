/** Integrals along the sun's daily path. @module */
import { DEGREE } from "../basics/mod.ts";
import type { Plane } from "./types.ts";

/** Cosine of an angle to the sun as A + B cos H + C sin H over the hour angle H. */
export interface SunPath {
  /** A */
  readonly constant: number;
  /** B */
  readonly cosine: number;
  /** C */
  readonly sine: number;
}

/** Mean of the positive part of a path over a span of hour angle. */
export interface PathMean {
  /** mean over the whole span of max(0, value) */
  readonly mean: number;
  /** share of the span where the value is positive */
  readonly share: number;
  /** start of the positive part, rad; the whole span where there is none */
  readonly from: number;
  /** end of the positive part, rad */
  readonly to: number;
}

/**
 * Mean of max(0, A + B cos H + C sin H) over a span of hour angle: an exact integral.
 *
 * The value equals A + R cos(H - ψ) with R² = B² + C²; it is positive while |H - ψ| < acos(-A/R).
 *
 * Source: exact.
 *
 * @param path the three constants
 * @param from start of the span, rad
 * @param to end of the span, rad; at most a quarter turn later
 * @returns mean, share and limits of the positive part
 */
export function positiveMean(path: SunPath, from: number, to: number): PathMean {
  const span = to - from;
  if (!(span > 0)) return { mean: 0, share: 0, from, to };
  const reach = Math.hypot(path.cosine, path.sine);
  const peak = Math.atan2(path.sine, path.cosine);
  const half = reach === 0
    ? (path.constant > 0 ? Math.PI : 0)
    : Math.acos(Math.min(1, Math.max(-1, -path.constant / reach)));
  let integral = 0;
  let length = 0;
  let first = NaN;
  let last = NaN;
  for (let turn = -1; turn <= 1; turn++) {
    const low = Math.max(from, peak - half + turn * 2 * Math.PI);
    const high = Math.min(to, peak + half + turn * 2 * Math.PI);
    if (!(high > low)) continue;
    integral += path.constant * (high - low) +
      reach * (Math.sin(high - peak) - Math.sin(low - peak));
    length += high - low;
    if (Number.isNaN(first)) first = low;
    last = high;
  }
  if (length === 0) return { mean: 0, share: 0, from, to };
  return {
    mean: Math.max(0, integral / span),
    share: Math.min(1, length / span),
    from: first,
    to: last,
  };
}

/**
 * Path of the incidence angle's cosine on a plane at a latitude and declination.
 *
 * Source: Duffie & Beckman 2013 [duffie-beckman-2013], eq. 1.6.2.
 *
 * @param plane tilt and azimuth, degrees
 * @param latitude degrees
 * @param declination degrees
 * @returns constants of the path
 */
export function incidencePath(plane: Plane, latitude: number, declination: number): SunPath {
  const [sinPhi, cosPhi] = sinCos(latitude);
  const [sinDelta, cosDelta] = sinCos(declination);
  const [sinTilt, cosTilt] = sinCos(plane.tilt);
  const [sinGamma, cosGamma] = sinCos(plane.azimuth - 180);
  return {
    constant: sinDelta * (sinPhi * cosTilt - cosPhi * sinTilt * cosGamma),
    cosine: cosDelta * (cosPhi * cosTilt + sinPhi * sinTilt * cosGamma),
    sine: cosDelta * sinTilt * sinGamma,
  };
}

function sinCos(degrees: number): [number, number] {
  return [Math.sin(degrees * DEGREE), Math.cos(degrees * DEGREE)];
}
