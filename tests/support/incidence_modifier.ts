/** The single-sheet law of incidence, for comparison with the stack of sheets. @module */
import { type GlazingOptics, surfaceReflection } from "../../lib/sun/mod.ts";

const DEGREE = Math.PI / 180;

/**
 * Light that enters a single covering sheet at an angle, relative to normal incidence:
 * exp(-K L / cos θ2) (1 - (r⊥ + r∥)/2) over the same at 0°.
 *
 * Source: De Soto, Klein & Beckman 2006 [de-soto-2006], eq. 13 to 15.
 *
 * @param optics refractive index, extinction and thickness are used
 * @param incidence degrees, 0 to 90
 * @returns a ratio: 1 at normal incidence, 0 at grazing
 */
export function incidenceModifier(optics: GlazingOptics, incidence: number): number {
  return entering(optics, incidence) / entering(optics, 0);
}

function entering(optics: GlazingOptics, incidence: number): number {
  const surface = surfaceReflection(optics.refractiveIndex, incidence);
  const path = optics.extinction * optics.thickness / Math.cos(surface.refraction * DEGREE);
  return Math.exp(-path) * (1 - (surface.perpendicular + surface.parallel) / 2);
}
