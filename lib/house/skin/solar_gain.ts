/** Sun that comes in through every plane, and where it ends. @module */
import { sum } from "d3-array";
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
import type { HouseGeometry, HouseInputs } from "../types.ts";
import type { PaneSnow } from "./pane_snow.ts";
import { lightSurfaces } from "./light_inside.ts";
import { byCosine, type LetIn, lightEnds } from "./sun_shares.ts";

/** Hourly radiation outside and inside the house, W. */
export interface SolarGain {
  /** on all glazing, outside */
  readonly outside: Float64Array;
  readonly floor: Float64Array;
  readonly crop: Float64Array;
  readonly mass: Float64Array;
  /** what solid walls and roofs take up and pass to the air */
  readonly air: Float64Array;
  /** of that, what rises with warm air along walls and under the roof */
  readonly rising: Float64Array;
  /** let in through the glazing, bars and dirt taken off */
  readonly letIn: Float64Array;
  /** of that, out again through and into the glazing */
  readonly out: Float64Array;
  /** of that, through solid walls and roofs outwards */
  readonly throughSolid: Float64Array;
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
  /** snow on each part of the geometry; absent where it is left out */
  readonly snow?: readonly (PaneSnow | null)[] | null;
}

/** Light let in through each glazed part, and on all of them outside, W. */
function letThrough(
  given: SolarGainInputs,
  optics: GlazingOptics,
): { parts: LetIn[]; outside: Float64Array } {
  const { geometry, glazing, sun } = given;
  const beamThrough = byCosine((incidence) => beamTransmittance(optics, incidence));
  const diffuseThrough = diffuseTransmittance(optics) * glazing.lightFactor;
  const hours = sun.cosZenith.length;
  const outside = new Float64Array(hours);
  const parts: LetIn[] = [];
  geometry.parts.forEach((part, index) => {
    if (part.kind !== "glazed") return;
    const radiation = given.series(part.plane);
    const beam = new Float64Array(hours);
    const diffuse = new Float64Array(hours);
    const past = given.snow?.[index]?.light;
    for (let hour = 0; hour < hours; hour++) {
      const spread = radiation.skyDiffuse[hour]! + radiation.groundReflected[hour]!;
      const direct = radiation.beam[hour]!;
      outside[hour] = outside[hour]! + part.area * (direct + spread);
      const clear = past === undefined ? 1 : past[hour]!;
      diffuse[hour] = part.area * spread * diffuseThrough * clear;
      if (direct <= 0) continue;
      const through = beamThrough(radiation.cosIncidence[hour]!);
      beam[hour] = part.area * direct * through * glazing.lightFactor * clear;
    }
    parts.push({ part: index, beam, diffuse });
  });
  return { parts, outside };
}

/**
 * Sun that comes in through every glazed plane and where it ends, by the geometry of the house and
 * the place of the sun ({@link lightEnds}).
 *
 * What floor and crop take up is shared between crop (1 − exp(−k·L)) and floor. Barrels and masonry
 * stand before a solid back wall and take its light by their share of it; what has no room there
 * shares with the floor. `lightToAir` sets the share that goes to the air at once instead.
 */
export function solarGain(given: SolarGainInputs): SolarGain {
  const { geometry, glazing, inputs } = given;
  const optics = glazingOptics(glazing);
  const { parts, outside } = letThrough(given, optics);
  const surfaces = lightSurfaces(geometry, optics, glazing.lightFactor, inputs.wallAbsorptance);
  const ends = lightEnds({
    geometry,
    optics,
    lightFactor: glazing.lightFactor,
    surfaces,
    sun: given.sun,
    letIn: parts,
  });
  const toCrop = given.leafArea.map((leaves) => 1 - Math.exp(-given.crop.lightExtinction * leaves));
  const mass = massShares(inputs, geometry);
  const hours = ends.length;
  const make = () => new Float64Array(hours);
  const gain = {
    outside,
    floor: make(),
    crop: make(),
    mass: make(),
    air: make(),
    rising: make(),
    letIn: make(),
    out: make(),
    throughSolid: make(),
  };
  ends.forEach((light, hour) => {
    const kept = light.floor + light.backWall + light.otherSolid;
    const byGeometry = light.otherSolid + (1 - mass.ofBackWall) * light.backWall;
    const air = inputs.lightToAir === null || byGeometry >= kept
      ? byGeometry
      : inputs.lightToAir * kept;
    const rest = byGeometry < kept ? (kept - air) / (kept - byGeometry) : 0;
    const floor = rest * light.floor;
    const onMass = floor * (1 - toCrop[hour]!) * mass.ofFloor;
    gain.air[hour] = air;
    gain.rising[hour] = byGeometry > 0
      ? light.rising * air / (light.backWall + light.otherSolid)
      : 0;
    gain.crop[hour] = floor * toCrop[hour]!;
    gain.floor[hour] = floor * (1 - toCrop[hour]!) - onMass;
    gain.mass[hour] = onMass + rest * mass.ofBackWall * light.backWall;
    gain.out[hour] = light.glazing;
    gain.throughSolid[hour] = light.throughSolid;
    for (const { beam, diffuse } of parts) {
      gain.letIn[hour] = gain.letIn[hour]! + beam[hour]! + diffuse[hour]!;
    }
  });
  return gain;
}

/** Shares of the back wall's and of the floor's light that barrels and masonry take. */
function massShares(
  inputs: HouseInputs,
  geometry: HouseGeometry,
): { ofBackWall: number; ofFloor: number } {
  const water = inputs.waterVolume > 0 ? inputs.waterSurface : 0;
  const masonry = inputs.masonryVolume > 0 ? inputs.masonrySurface : 0;
  const seen = (water + masonry) * inputs.massSunView;
  const wall = sum(
    geometry.parts,
    ({ side, element, kind, area }) =>
      side === "back" && element === "wall" && kind === "opaque" ? area : 0,
  );
  const before = Math.min(seen, wall);
  return {
    ofBackWall: wall > 0 ? before / wall : 0,
    ofFloor: (seen - before) / (seen - before + geometry.floorArea),
  };
}
