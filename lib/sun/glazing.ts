/** Light through clear sheets. @module */
import { DEGREE, requireInRange } from "../basics/mod.ts";

/** A stack of equal clear sheets with air between them. */
export interface GlazingOptics {
  /** refractive index: about 1.526 for glass, 1.49 to 1.6 for clear plastics */
  readonly refractiveIndex: number;
  /** absorption along the path in the sheet, 1/m */
  readonly extinction: number;
  /** thickness of one sheet, m */
  readonly thickness: number;
  /** number of sheets one behind the other; 2 for twin-wall */
  readonly sheets: number;
}

/** What happens to light that meets a stack of sheets; the three add up to 1. */
export interface GlazingShares {
  /** 0 to 1 */
  readonly transmitted: number;
  /** 0 to 1 */
  readonly reflected: number;
  /** 0 to 1 */
  readonly absorbed: number;
}

/** Reflection at one surface and the path behind it. */
export interface SurfaceReflection {
  /** light polarised across the plane of incidence, 0 to 1 */
  readonly perpendicular: number;
  /** light polarised in the plane of incidence, 0 to 1 */
  readonly parallel: number;
  /** angle of refraction, degrees */
  readonly refraction: number;
}

/**
 * Reflection of unpolarised light at one surface, in its two polarised halves.
 *
 * r⊥ = sin²(θ2 - θ1) / sin²(θ2 + θ1), r∥ = tan²(θ2 - θ1) / tan²(θ2 + θ1), sin θ1 = n sin θ2; at normal
 * incidence both are ((n - 1)/(n + 1))².
 *
 * Source: Fresnel's equations as in Duffie & Beckman 2013 [duffie-beckman-2013], eq. 5.1.1 to
 * 5.1.6.
 *
 * @param refractiveIndex refractive index of the sheet, against air
 * @param incidence degrees, 0 to 90
 * @returns shares reflected and the angle behind the surface
 * @throws {OutOfRangeError} for an angle outside 0 to 90 or an index outside 1 to 3
 */
export function surfaceReflection(refractiveIndex: number, incidence: number): SurfaceReflection {
  requireInRange("incidence angle", incidence, 0, 90, "degrees");
  requireInRange("refractive index", refractiveIndex, 1, 3, "");
  const first = incidence * DEGREE;
  const second = Math.asin(Math.sin(first) / refractiveIndex);
  const normal = ((refractiveIndex - 1) / (refractiveIndex + 1)) ** 2;
  const refraction = second / DEGREE;
  if (first < 1e-6) return { perpendicular: normal, parallel: normal, refraction };
  return {
    perpendicular: (Math.sin(second - first) / Math.sin(second + first)) ** 2,
    parallel: (Math.tan(second - first) / Math.tan(second + first)) ** 2,
    refraction,
  };
}

/**
 * Shares of beam light transmitted, reflected and absorbed by a stack of sheets.
 *
 * One sheet, each polarisation with surface reflection r and inner transmittance a = exp(-K L / cos
 * θ2): τ = a (1 - r)² / (1 - r² a²), ρ = r (1 + a τ). Sheets are added one by one:
 * τ12 = τ1 τ2 / (1 - ρ1 ρ2), ρ12 = ρ1 + τ1² ρ2 / (1 - ρ1 ρ2).
 *
 * Source: Fresnel, Bouguer; Duffie & Beckman 2013 [duffie-beckman-2013], eq. 5.3.1 to 5.3.4. Valid
 * for clear, parallel, wide sheets; light through the webs of twin-wall is not modelled.
 *
 * @param optics the stack
 * @param incidence degrees, 0 to 90
 * @returns the three shares
 * @throws {OutOfRangeError} for values without meaning
 */
export function glazingShares(optics: GlazingOptics, incidence: number): GlazingShares {
  requireInRange("extinction", optics.extinction, 0, 1e4, "1/m");
  requireInRange("sheet thickness", optics.thickness, 0, 0.1, "m");
  requireInRange("number of sheets", optics.sheets, 1, 10, "");
  const surface = surfaceReflection(optics.refractiveIndex, incidence);
  const path = optics.extinction * optics.thickness / Math.cos(surface.refraction * DEGREE);
  const inner = Math.exp(-path);
  const across = stack(surface.perpendicular, inner, optics.sheets);
  const along = stack(surface.parallel, inner, optics.sheets);
  const transmitted = (across[0] + along[0]) / 2;
  const reflected = (across[1] + along[1]) / 2;
  return { transmitted, reflected, absorbed: Math.max(0, 1 - transmitted - reflected) };
}

function stack(reflection: number, inner: number, sheets: number): [number, number] {
  const bounce = 1 - (reflection * inner) ** 2;
  const one = bounce === 0 ? 0 : inner * (1 - reflection) ** 2 / bounce;
  const back = reflection * (1 + inner * one);
  let [through, reflected] = [one, back];
  for (let sheet = 1; sheet < sheets; sheet++) {
    const between = 1 - reflected * back;
    const next = between === 0 ? 0 : through * one / between;
    reflected = between === 0 ? reflected : reflected + through ** 2 * back / between;
    through = next;
  }
  return [through, reflected];
}

/**
 * Share of beam light a stack of sheets lets through; see {@link glazingShares}.
 *
 * @example Single glass at 60° (Duffie & Beckman, example 5.3.1)
 * ```ts
 * import { beamTransmittance } from "./glazing.ts";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const glass = { refractiveIndex: 1.526, extinction: 32, thickness: 0.0023, sheets: 1 };
 * assertAlmostEquals(beamTransmittance(glass, 60), 0.7683, 5e-5);
 * ```
 *
 * @param optics the stack
 * @param incidence degrees, 0 to 90
 * @returns 0 to 1
 */
export function beamTransmittance(optics: GlazingOptics, incidence: number): number {
  return glazingShares(optics, incidence).transmitted;
}

/**
 * Share of evenly spread diffuse light a stack of sheets lets through: 2 ∫ τ(θ) sin θ cos θ dθ over
 * the half-sphere, midpoint rule in half degrees.
 *
 * Source: exact for light spread evenly over the half-sphere.
 *
 * @param optics the stack
 * @returns 0 to 1
 */
export function diffuseTransmittance(optics: GlazingOptics): number {
  const steps = 180;
  const width = Math.PI / 2 / steps;
  let [through, all] = [0, 0];
  for (let step = 0; step < steps; step++) {
    const angle = (step + 0.5) * width;
    const weight = Math.sin(angle) * Math.cos(angle);
    through += weight * beamTransmittance(optics, angle / DEGREE);
    all += weight;
  }
  return through / all;
}
