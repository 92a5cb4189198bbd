/** Light on a plane inside the house, such as a dark plate on its back wall. @module */
import { sum } from "d3-array";
import { DEGREE } from "../../basics/mod.ts";
import type { ClimateYear } from "../../climate/types.ts";
import {
  beamTransmittance,
  diffuseTransmittance,
  type HourlySun,
  hourlySun,
  type Plane,
} from "../../sun/mod.ts";
import type { HouseInputs, SkinPart } from "../types.ts";
import { houseGeometry } from "./geometry.ts";
import { findGlazing } from "./glazing_table.ts";
import { shading } from "./shading.ts";
import { glazingOptics, planeSeries } from "./solar_gain.ts";
import { sunCosine } from "./sun_shares.ts";

/** Share of the beam that reaches the inside: what the glazed parts let in of all that meets the house. */
function beamShare(
  parts: readonly SkinPart[],
  sun: HourlySun,
  hour: number,
  through: (incidence: number) => number,
): number {
  let [met, inside] = [0, 0];
  for (const part of parts) {
    const cosine = sunCosine(part, sun, hour);
    if (cosine <= 0) continue;
    met += part.area * cosine;
    if (part.kind !== "glazed") continue;
    inside += part.area * cosine * through(Math.acos(Math.min(1, cosine)) / DEGREE);
  }
  return met > 0 ? inside / met : 0;
}

/** Share of the sky's light that reaches the inside. */
function skyShare(parts: readonly SkinPart[], through: number): number {
  const seen = (part: SkinPart) => part.area * (1 + Math.cos(part.plane.tilt * DEGREE)) / 2;
  const glazed = sum(parts, (part) => part.kind === "glazed" ? seen(part) : 0);
  return through * glazed / sum(parts, seen);
}

/**
 * Light on a plane inside the house: beam and sky on the same plane outdoors, times the share of
 * each that walls, roof and glazing let in, bars, dirt, curtain and summer shade taken off. Light
 * that the floor throws back is left out. Never more than the sun on the plane outdoors times the
 * transmittance of the glazing.
 *
 * @param inputs house section of the study
 * @param climate one year of weather
 * @param plane tilt and azimuth, degrees
 * @param curtainClosed 1 for each hour with the curtain closed
 * @returns W/m², hour by hour
 */
export function planeInside(
  inputs: HouseInputs,
  climate: ClimateYear,
  plane: Plane,
  curtainClosed: Uint8Array,
): Float64Array {
  const { parts } = houseGeometry(inputs);
  const glazing = findGlazing(inputs.glazing);
  const optics = glazingOptics(glazing);
  const sun = hourlySun(climate.place);
  const { beam, skyDiffuse } = planeSeries(climate, sun)(plane);
  const sky = skyShare(parts, diffuseTransmittance(optics));
  const through = (incidence: number) => beamTransmittance(optics, incidence);
  const light = beam.map((direct, hour) =>
    glazing.lightFactor * (sky * skyDiffuse[hour]! +
      (direct > 0 ? direct * beamShare(parts, sun, hour, through) : 0))
  );
  return shading(inputs, climate, curtainClosed)(light);
}
