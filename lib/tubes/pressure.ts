/**
 * Pressure loss of one tube from header to header.
 *
 * @module
 */
import type { AirProperties } from "../air/mod.ts";
import { conduitOf, frictionFactor } from "./friction.ts";
import { reynoldsNumber } from "./film.ts";
import type { TubeProduct } from "./types.ts";

/**
 * Velocity heads lost at a sharp inlet flush with the wall. Idelchik [idelchik-1994]; Crane TP-410
 * [crane-tp410-2009].
 */
export const FLUSH_INLET_LOSS = 0.5;
/** Velocity heads lost where a turbulent jet leaves the tube. Exact: all of it. */
export const EXIT_LOSS = 1;

/**
 * Cross-section of a round tube. A = π·D²/4.
 *
 * @param diameter m
 * @returns m²
 */
export function crossSection(diameter: number): number {
  return Math.PI * diameter ** 2 / 4;
}

/**
 * Velocity pressure of moving air. p = ½·ρ·v².
 *
 * @param density kg/m³
 * @param airSpeed m/s
 * @returns Pa
 */
export function velocityPressure(density: number, airSpeed: number): number {
  return density * airSpeed ** 2 / 2;
}

/** One tube and the air in it. */
export interface TubeFlow {
  /** row of data/tubes */
  readonly product: TubeProduct;
  /** m between the headers */
  readonly length: number;
  /** m³/s in this tube */
  readonly airFlow: number;
  /** velocity heads of elbows, screens and the like, besides inlet and exit */
  readonly extraLosses: number;
  /** velocity heads of the inlet; a flush sharp one where not given */
  readonly inletLoss?: number;
  /** properties of the air */
  readonly air: AirProperties;
}

/** Pressure loss of a tube and its parts. */
export interface TubeLoss {
  /** m/s */
  readonly airSpeed: number;
  /** Reynolds number */
  readonly reynolds: number;
  /** friction factor after Darcy, dimensionless */
  readonly frictionFactor: number;
  /** velocity heads: f·L/D + inlet + exit + extra */
  readonly lossCoefficient: number;
  /** Pa */
  readonly pressureDrop: number;
}

/**
 * Pressure loss of one tube. Δp = (f·L/D + K_inlet + K_exit + K_extra)·½ρv².
 *
 * Source: exact, Darcy's formula with loss coefficients.
 *
 * @param tube the tube and its air
 * @returns loss and its parts
 */
export function tubeLoss(tube: TubeFlow): TubeLoss {
  const { product, air } = tube;
  const airSpeed = tube.airFlow / crossSection(product.insideDiameter);
  const reynolds = reynoldsNumber(airSpeed, product.insideDiameter, air);
  const friction = reynolds > 0 ? frictionFactor(conduitOf(product), reynolds) : 0;
  const lossCoefficient = friction * tube.length / product.insideDiameter +
    (tube.inletLoss ?? FLUSH_INLET_LOSS) + EXIT_LOSS + tube.extraLosses;
  return {
    airSpeed,
    reynolds,
    frictionFactor: friction,
    lossCoefficient,
    pressureDrop: lossCoefficient * velocityPressure(air.density, airSpeed),
  };
}
