/** Sun that comes in through every plane, and where it ends. @module */
import { DEGREE } from "../../basics/mod.ts";
import { type ClimateYear, groundAlbedo } from "../../climate/mod.ts";
import {
  beamTransmittance,
  diffuseTransmittance,
  type HourlySun,
  planeRadiation,
} from "../../sun/mod.ts";
import type { GlazingOptics, Plane, PlaneRadiation } from "../../sun/mod.ts";
import type { Crop } from "../crop/crop_table.ts";
import type { Glazing } from "./glazing_table.ts";
import type { HouseGeometry, HouseInputs, SkinPart } from "../types.ts";

/** Absorptance of soil, leaves and walls for the light that comes in (from memory: soil 0.8, leaves 0.75). */
const INSIDE_ABSORPTANCE = 0.75;
/** Share of the light that frame, walls and benches turn into warm air at once (common practice, no source). */
const LIGHT_TO_AIR = 0.1;

/** Hourly radiation outside and inside the house, W. */
export interface SolarGain {
  /** on all glazing, outside */
  readonly outside: Float64Array;
  readonly floor: Float64Array;
  readonly crop: Float64Array;
  readonly mass: Float64Array;
  readonly air: Float64Array;
}

/** Optics of a row of the glazing table. */
export function glazingOptics(glazing: Glazing): GlazingOptics {
  return {
    refractiveIndex: glazing.refractiveIndex,
    extinction: glazing.extinction,
    thickness: glazing.sheetThickness,
    sheets: glazing.sheets,
  };
}

/** Mean of the past 30 days, running through the year's end. */
export function pastMonthMean(series: Float64Array): Float64Array {
  const hours = series.length;
  const window = Math.min(720, hours);
  const result = new Float64Array(hours);
  let sum = 0;
  for (let i = hours - window; i < hours; i++) sum += series[i]!;
  for (let i = 0; i < hours; i++) {
    sum += series[i]! - series[(i - window + hours) % hours]!;
    result[i] = sum / window;
  }
  return result;
}

/** Radiation on planes of one year; walls in one plane share their series. */
export type PlaneSeries = (plane: Plane) => PlaneRadiation;

/**
 * Remembers the radiation of each plane asked for, ground white in the cold months, behind the
 * skyline of the place where it has one.
 */
export function planeSeries(climate: ClimateYear, sun: HourlySun): PlaneSeries {
  const albedo = groundAlbedo(climate);
  const { horizon } = climate.place;
  const skyline = horizon === undefined || horizon.length === 0 ? {} : { horizon };
  const known = new Map<string, PlaneRadiation>();
  return (plane) => {
    const key = `${plane.tilt} ${plane.azimuth}`;
    const found = known.get(key) ?? planeRadiation({ climate, sun, plane, albedo, ...skyline });
    known.set(key, found);
    return found;
  };
}

/** Cosine between the sun and the outward normal; negative behind the plane. */
export function sunCosine(part: SkinPart, sun: HourlySun, hour: number): number {
  const elevation = sun.elevation[hour]! * DEGREE;
  const turn = (sun.azimuth[hour]! - part.plane.azimuth) * DEGREE;
  const tilt = part.plane.tilt * DEGREE;
  return Math.sin(elevation) * Math.cos(tilt) +
    Math.cos(elevation) * Math.sin(tilt) * Math.cos(turn);
}

/**
 * Share of the beam inside the house that meets glazing from within and goes straight out again.
 *
 * A closed convex space shows the sun the same projected area in front and behind, so the beam is
 * spread over floor and far surfaces by area times cosine of incidence.
 */
function beamLost(
  geometry: HouseGeometry,
  sun: HourlySun,
  hour: number,
  transmittance: (cosine: number) => number,
): number {
  const elevation = sun.elevation[hour]!;
  if (elevation <= 0) return 0;
  let [behind, out] = [geometry.floorArea * Math.sin(elevation * DEGREE), 0];
  for (const part of geometry.parts) {
    const cosine = -sunCosine(part, sun, hour);
    if (cosine <= 0) continue;
    behind += part.area * cosine;
    if (part.kind === "glazed") out += part.area * cosine * transmittance(cosine);
  }
  return behind > 0 ? out / behind : 0;
}

/**
 * Share of the light inside that is absorbed before it finds its way out.
 * α' = α/(α + (1 − α)·τ_d·A_g/A_i).
 *
 * Source: Duffie & Beckman 2013 [duffie-beckman-2013] §5.11 (from memory).
 *
 * @param glazed glazing area, m²
 * @param inside area of floor and solid walls, m²
 * @param diffuse transmittance for diffuse light from inside
 */
export function roomAbsorptance(glazed: number, inside: number, diffuse: number): number {
  const alpha = INSIDE_ABSORPTANCE;
  return alpha / (alpha + (1 - alpha) * diffuse * glazed / inside);
}

/** What {@link solarGain} needs. */
export interface SolarGainInputs {
  readonly inputs: HouseInputs;
  readonly geometry: HouseGeometry;
  readonly glazing: Glazing;
  readonly crop: Crop;
  /** ratio of leaf area to floor area, hourly */
  readonly leafArea: Float64Array;
  readonly sun: HourlySun;
  /** radiation on a plane */
  readonly series: PlaneSeries;
}

function transmittanceByCosine(optics: GlazingOptics): (cosine: number) => number {
  const steps = 500;
  const values = Float64Array.from(
    { length: steps + 1 },
    (_, i) => beamTransmittance(optics, Math.acos(i / steps) / DEGREE),
  );
  return (cosine) => {
    const at = Math.min(steps - 1e-9, Math.max(0, cosine * steps));
    const low = Math.floor(at);
    return values[low]! + (at - low) * (values[low + 1]! - values[low]!);
  };
}

/**
 * Sun that comes in through every glazed plane, less what goes straight out again, shared between
 * crop (1 − exp(−k·L)), barrels, floor and air.
 */
export function solarGain(given: SolarGainInputs): SolarGain {
  const { geometry, glazing, sun } = given;
  const optics = glazingOptics(glazing);
  const beamThrough = transmittanceByCosine(optics);
  const diffuseThrough = diffuseTransmittance(optics);
  const hours = sun.cosZenith.length;
  const glazed = geometry.parts.filter((part) => part.kind === "glazed");
  const outside = new Float64Array(hours);
  const beam = new Float64Array(hours);
  const diffuse = new Float64Array(hours);
  for (const part of glazed) {
    const radiation = given.series(part.plane);
    for (let hour = 0; hour < hours; hour++) {
      const spread = radiation.skyDiffuse[hour]! + radiation.groundReflected[hour]!;
      const direct = radiation.beam[hour]!;
      outside[hour] = outside[hour]! + part.area * (direct + spread);
      diffuse[hour] = diffuse[hour]! + part.area * spread * diffuseThrough;
      if (direct <= 0) continue;
      const cosine = radiation.cosIncidence[hour]!;
      beam[hour] = beam[hour]! + part.area * direct * beamThrough(cosine);
    }
  }
  const glazedArea = glazed.reduce((sum, part) => sum + part.area, 0);
  const solidArea = geometry.parts.reduce((sum, part) => sum + part.area, 0) - glazedArea +
    geometry.floorArea;
  const kept = roomAbsorptance(glazedArea, solidArea, diffuseThrough) * glazing.lightFactor;
  const inside = beam.map((direct, hour) => {
    const lost = direct > 0 ? beamLost(geometry, sun, hour, beamThrough) : 0;
    return kept * (direct * (1 - lost) + diffuse[hour]!);
  });
  const toAir = LIGHT_TO_AIR;
  const toCrop = given.leafArea.map((leaves) =>
    (1 - toAir) * (1 - Math.exp(-given.crop.lightExtinction * leaves))
  );
  const rest = toCrop.map((share) => 1 - toAir - share);
  const mass = massShare(given.inputs, geometry);
  return {
    outside,
    crop: inside.map((heat, hour) => heat * toCrop[hour]!),
    mass: inside.map((heat, hour) => heat * (rest[hour]! * mass)),
    air: inside.map((heat) => heat * toAir),
    floor: inside.map((heat, hour) => heat * (rest[hour]! - rest[hour]! * mass)),
  };
}

/** The sunlit part of barrels and masonry, next to the floor. */
function massShare(inputs: HouseInputs, geometry: HouseGeometry): number {
  const water = inputs.waterVolume > 0 ? inputs.waterSurface : 0;
  const masonry = inputs.masonryVolume > 0 ? inputs.masonrySurface : 0;
  const seen = (water + masonry) * inputs.massSunView;
  return seen / (seen + geometry.floorArea);
}
