/**
 * Friction of air in tubes. All factors are Darcy factors: Δp = f·(L/D)·½ρv².
 *
 * @module
 */
import { GRAVITY, NotConvergedError, requireInRange } from "../basics/mod.ts";
import type { TubeProduct } from "./types.ts";

/** Reynolds number up to which the flow is taken as laminar. */
export const LAMINAR_LIMIT = 2300;
/** Reynolds number from which the flow is taken as fully turbulent. */
export const TURBULENT_LIMIT = 4000;

/**
 * Friction factor of laminar flow. f = 64/Re.
 *
 * @param reynolds above 0
 * @returns Darcy factor
 */
export function frictionLaminar(reynolds: number): number {
  return 64 / reynolds;
}

/**
 * Friction factor of turbulent flow in a smooth to rough tube, explicit.
 *
 * 1/√f = −1.8·lg[((ε/D)/3.7)^1.11 + 6.9/Re].
 *
 * Source: Haaland 1983 [haaland-1983]. Valid for: 4000 ≤ Re ≤ 1e8, ε/D ≤ 0.05; within 1.5 % of
 * {@link frictionColebrook}.
 *
 * @param reynolds Reynolds number
 * @param relativeRoughness ε/D
 * @returns Darcy factor
 */
export function frictionHaaland(reynolds: number, relativeRoughness: number): number {
  return (-1.8 * Math.log10((relativeRoughness / 3.7) ** 1.11 + 6.9 / reynolds)) ** -2;
}

/**
 * Friction factor of turbulent flow, solved to rounding.
 *
 * 1/√f = −2·lg[(ε/D)/3.7 + 2.51/(Re·√f)], by Newton's method on x = 1/√f.
 *
 * Source: Colebrook 1939 [colebrook-1939]. Valid for: Re ≥ 4000, ε/D ≤ 0.05.
 *
 * @example
 * ```ts
 * import { frictionColebrook } from "./friction.ts";
 * import assert from "node:assert/strict";
 *
 * assert.equal(frictionColebrook(1e5, 1e-4).toFixed(7), "0.0185139");
 * ```
 *
 * @param reynolds Reynolds number
 * @param relativeRoughness ε/D
 * @returns Darcy factor
 * @throws {OutOfRangeError} where Re or ε/D makes no sense
 */
export function frictionColebrook(reynolds: number, relativeRoughness: number): number {
  requireInRange("Reynolds number", reynolds, 1, 1e12, "(1 to 1e12)");
  requireInRange("relative roughness", relativeRoughness, 0, 0.5, "(0 to 0.5)");
  const rough = relativeRoughness / 3.7;
  const smooth = 2.51 / reynolds;
  let x = 1 / Math.sqrt(frictionHaaland(reynolds, relativeRoughness));
  for (let iteration = 1; iteration <= 50; iteration++) {
    const inner = rough + smooth * x;
    const residual = x + 2 * Math.log10(inner);
    const slope = 1 + 2 * smooth / (inner * Math.LN10);
    const step = residual / slope;
    x -= step;
    if (Math.abs(step) <= 1e-14 * x) return 1 / (x * x);
  }
  throw new NotConvergedError("the friction factor", 50, Number.NaN);
}

/**
 * Friction factor of fully rough flow from Manning's n. f = 8·g·n²/(D/4)^(1/3).
 *
 * Source: exact, Manning's and Darcy's formulas set equal for a full round pipe. For air in
 * corrugated drain tube, which behaves as "very rough pipe": Carson, Watts & Desir 1980
 * [carson-1980], abstract. Valid for: turbulent flow.
 *
 * @param manning n, s/m^(1/3)
 * @param diameter inside, m
 * @returns Darcy factor
 */
export function frictionFromManning(manning: number, diameter: number): number {
  return 8 * GRAVITY * manning ** 2 / (diameter / 4) ** (1 / 3);
}

/** What decides the friction of a round conduit. */
export interface Conduit {
  /** inside diameter, m */
  readonly diameter: number;
  /** sand roughness, m; not used where Manning's n is given */
  readonly roughness: number;
  /** Manning n of a corrugated conduit, s/m^(1/3); null for another */
  readonly manning: number | null;
}

/**
 * Friction factor over the whole range: laminar, turbulent, and between Re 2300 and 4000 a straight
 * line between both, so that pressure and flow stay continuous.
 *
 * Source: Colebrook 1939 [colebrook-1939] or Manning's n above Re 4000; the straight line is a
 * convention of ours.
 *
 * @param conduit the conduit
 * @param reynolds Reynolds number, above 0
 * @returns Darcy factor
 */
export function frictionFactor(conduit: Conduit, reynolds: number): number {
  if (reynolds <= LAMINAR_LIMIT) return frictionLaminar(reynolds);
  const turbulent = (re: number): number =>
    conduit.manning === null
      ? frictionColebrook(re, conduit.roughness / conduit.diameter)
      : frictionFromManning(conduit.manning, conduit.diameter);
  if (reynolds >= TURBULENT_LIMIT) return turbulent(reynolds);
  const share = (reynolds - LAMINAR_LIMIT) / (TURBULENT_LIMIT - LAMINAR_LIMIT);
  return (1 - share) * frictionLaminar(LAMINAR_LIMIT) + share * turbulent(TURBULENT_LIMIT);
}

/**
 * The conduit that a tube of the table is.
 *
 * @param product a row of data/tubes
 * @returns its friction data
 */
export function conduitOf(product: TubeProduct): Conduit {
  return {
    diameter: product.insideDiameter,
    roughness: product.roughness ?? 0,
    manning: product.manning,
  };
}
