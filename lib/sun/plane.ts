/** Radiation on a tilted plane. @module */
import { DEGREE } from "../basics/mod.ts";
import { type Horizon, horizonBlocks, horizonSkyShare } from "./horizon.ts";
import { incidencePath, positiveMean } from "./sun_path.ts";
import type { HourlySun, Plane, PlaneRadiation, RadiationYear, SkyModel } from "./types.ts";

/** Smallest cosine of the zenith the beam ratio divides by: 89°. */
const LOWEST_COS_ZENITH = 0.01745;

/** One moment of diffuse sky radiation and what is needed to turn it onto a plane. */
export interface SkyMoment {
  /** W/m² */
  readonly diffuseHorizontal: number;
  /** W/m² */
  readonly directNormal: number;
  /** W/m² */
  readonly extraterrestrialNormal: number;
  /** cosine of the incidence angle on the plane, negative or 0 where the sun is behind it */
  readonly cosIncidence: number;
  /** cosine of the sun's zenith angle */
  readonly cosZenith: number;
  /** tilt of the plane, degrees */
  readonly tilt: number;
}

/** Sky radiation on a plane in its two parts, W/m². */
export interface SkyParts {
  /** from the evenly bright sky */
  readonly even: number;
  /** from the bright disc around the sun */
  readonly circumsolar: number;
}

/**
 * Diffuse sky radiation on a tilted plane.
 *
 * Isotropic: G = D (1 + cos β) / 2. Hay–Davies: with the anisotropy index A = B / E0,
 * G = D (1 - A) (1 + cos β) / 2 + D A cos θ / max(cos θz, cos 89°).
 *
 * Source: Liu & Jordan 1963 [liu-jordan-1963]; Hay & Davies 1980 [hay-davies-1980]. Valid for open
 * sky without a horizon of hills.
 *
 * @param moment radiation and angles
 * @param model how the sky is spread
 * @returns both parts
 */
export function skyOnPlane(moment: SkyMoment, model: SkyModel): SkyParts {
  const seen = (1 + Math.cos(moment.tilt * DEGREE)) / 2;
  if (model === "isotropic") return { even: moment.diffuseHorizontal * seen, circumsolar: 0 };
  const anisotropy = moment.extraterrestrialNormal > 0
    ? Math.min(1, Math.max(0, moment.directNormal / moment.extraterrestrialNormal))
    : 0;
  const ratio = Math.max(0, moment.cosIncidence) / Math.max(moment.cosZenith, LOWEST_COS_ZENITH);
  return {
    even: moment.diffuseHorizontal * (1 - anisotropy) * seen,
    circumsolar: moment.diffuseHorizontal * anisotropy * ratio,
  };
}

/**
 * Radiation reflected by level ground onto a plane: G ρ (1 - cos β) / 2.
 *
 * Source: Liu & Jordan 1963 [liu-jordan-1963].
 *
 * @param globalHorizontal W/m²
 * @param albedo 0 to 1
 * @param tilt degrees
 * @returns W/m² of the plane
 */
export function groundOnPlane(globalHorizontal: number, albedo: number, tilt: number): number {
  return globalHorizontal * albedo * (1 - Math.cos(tilt * DEGREE)) / 2;
}

/** What {@link planeRadiation} needs. */
export interface PlaneRadiationInputs {
  /** radiation of the year */
  readonly climate: RadiationYear;
  /** sun of the same place */
  readonly sun: HourlySun;
  /** orientation */
  readonly plane: Plane;
  /** albedo of the ground, one value or one for each hour; 0.2 where not given */
  readonly albedo?: number | Float64Array;
  /** hay-davies where not given */
  readonly model?: SkyModel;
  /** hills, trees and buildings around; open where not given */
  readonly horizon?: Horizon;
}

/**
 * Hourly radiation on a tilted plane: beam, sky and ground apart.
 *
 * The beam is direct radiation times the mean cosine of incidence over the time the sun is up in the
 * hour; the sky follows {@link skyOnPlane}, the ground {@link groundOnPlane}. A horizon takes away
 * beam and circumsolar light by the share of the hour the sun stands behind it, and the even sky by
 * the share of the plane's sky it covers.
 *
 * @param inputs year, sun, plane and ground
 * @returns series of the length of the sun's
 */
export function planeRadiation(inputs: PlaneRadiationInputs): PlaneRadiation {
  const { climate, sun, plane, horizon } = inputs;
  const model = inputs.model ?? "hay-davies";
  const albedo = inputs.albedo ?? 0.2;
  const openSky = horizon === undefined ? 1 : horizonSkyShare(horizon, plane);
  const hours = sun.cosZenith.length;
  const series = () => new Float64Array(hours);
  const [beam, skyDiffuse, groundReflected] = [series(), series(), series()];
  const cosIncidence = incidenceOf(sun, plane);
  for (let hour = 0; hour < hours; hour++) {
    if (isDark(climate, hour)) continue;
    const share = sun.upShare[hour]!;
    const cosine = cosIncidence[hour]!;
    const free = horizon === undefined || share === 0 ? 1 : 1 - horizonBlocks(horizon, sun, hour);
    const sky = skyOnPlane({
      diffuseHorizontal: climate.diffuseHorizontal[hour]!,
      directNormal: climate.directNormal[hour]!,
      extraterrestrialNormal: share > 0 ? sun.extraterrestrialNormal[hour]! : 0,
      cosIncidence: cosine,
      cosZenith: share > 0 ? sun.cosZenith[hour]! / share : 0,
      tilt: plane.tilt,
    }, model);
    beam[hour] = climate.directNormal[hour]! * cosine * free;
    skyDiffuse[hour] = sky.even * openSky + sky.circumsolar * free;
    groundReflected[hour] = groundOnPlane(
      climate.globalHorizontal[hour]!,
      typeof albedo === "number" ? albedo : albedo[hour]!,
      plane.tilt,
    );
  }
  return { beam, skyDiffuse, groundReflected, cosIncidence: cosIncidence.slice() };
}

function isDark(climate: RadiationYear, hour: number): boolean {
  return climate.directNormal[hour] === 0 && climate.diffuseHorizontal[hour] === 0 &&
    climate.globalHorizontal[hour] === 0;
}

/** W/m² on a plane by hour: beam, sky and ground together. */
export function planeTotal({ beam, skyDiffuse, groundReflected }: PlaneRadiation): Float64Array {
  return beam.map((direct, hour) => direct + skyDiffuse[hour]! + groundReflected[hour]!);
}

/** Mean cosines of incidence by hour, of the planes that a sun has been asked for. */
const incidences = new WeakMap<HourlySun, Map<string, Float64Array>>();

/** Mean cosine of incidence over the time the sun is up in each hour; 0 where it is not. */
function incidenceOf(sun: HourlySun, plane: Plane): Float64Array {
  const known = incidences.get(sun) ?? new Map<string, Float64Array>();
  incidences.set(sun, known);
  const name = `${plane.tilt} ${plane.azimuth}`;
  const found = known.get(name) ??
    sun.upShare.map((share, hour) => share > 0 ? meanIncidence(sun, plane, hour) : 0);
  known.set(name, found);
  return found;
}

function meanIncidence(sun: HourlySun, plane: Plane, hour: number): number {
  const path = incidencePath(plane, sun.latitude, sun.declination[hour]!);
  const from = sun.hourAngleStart[hour]! * DEGREE;
  return positiveMean(path, from, sun.hourAngleEnd[hour]! * DEGREE).mean;
}
