/** Conductivity of moist soil, frozen and unfrozen, after two published models. @module */
import type { SoilGrain } from "./table.ts";

/** State of the soil water. */
export type WaterState = "unfrozen" | "frozen";

/** What Johansen's model needs. */
export interface JohansenSoil {
  /** kg/m³ */
  readonly dryDensity: number;
  /** share of the pores, 0 to 1 */
  readonly porosity: number;
  /** share of the pores filled with water, 0 to 1 */
  readonly saturation: number;
  /** share of the solids, 0 to 1 */
  readonly quartz: number;
  /** picks the Kersten number */
  readonly grain: Exclude<SoilGrain, "organic">;
  /** of the soil water */
  readonly state: WaterState;
}

/**
 * Conductivity of mineral solids, k = 7.7^q · k_o^(1−q).
 *
 * Source: Johansen 1975 [johansen-1975] (quartz 7.7; other minerals 2.0, or 3.0 in coarse soils
 * with at most 20 % quartz).
 *
 * @param quartz share of the solids, 0 to 1
 * @returns W/(m K)
 */
export function solidConductivity(quartz: number): number {
  const otherMinerals = quartz > 0.2 ? 2.0 : 3.0;
  return 7.7 ** quartz * otherMinerals ** (1 - quartz);
}

/**
 * Johansen's share of the way from dry to saturated conductivity (Kersten number), 0 to 1.
 *
 * Coarse 0.7 log₁₀ S + 1, fine log₁₀ S + 1, frozen S. Source: Johansen 1975 [johansen-1975]. Valid
 * for S above 0.05 (coarse) and 0.1 (fine); below, never less than 0.
 */
function kerstenNumber(
  saturation: number,
  grain: Exclude<SoilGrain, "organic">,
  state: WaterState,
): number {
  if (state === "frozen") return saturation;
  const slope = grain === "coarse" ? 0.7 : 1;
  return Math.max(0, slope * Math.log10(saturation) + 1);
}

/**
 * Soil conductivity after Johansen, k = (k_sat − k_dry) Ke + k_dry.
 *
 * Source: Johansen 1975 [johansen-1975]; k_dry = (0.135 ρ + 64.7)/(2700 − 0.947 ρ), water 0.57, ice
 * 2.2 W/(m K). Mineral soils only.
 *
 * @param soil dry density in kg/m³, porosity, saturation above 0.05 (coarse) or 0.1 (fine), quartz
 *   share
 * @returns W/(m K)
 */
export function johansenConductivity(soil: JohansenSoil): number {
  const dry = (0.135 * soil.dryDensity + 64.7) / (2700 - 0.947 * soil.dryDensity);
  const water = soil.state === "frozen" ? 2.2 : 0.57;
  const saturated = solidConductivity(soil.quartz) ** (1 - soil.porosity) * water ** soil.porosity;
  return (saturated - dry) * kerstenNumber(soil.saturation, soil.grain, soil.state) + dry;
}

/** What the Côté–Konrad model needs. */
export interface CoteKonradSoil {
  /** share of the soil that is pores, 0 to 1 */
  readonly porosity: number;
  /** share of the pores filled with water, 0 to 1 */
  readonly saturation: number;
  /** W/(m K) of the solids */
  readonly solidConductivity: number;
  /** κ of the texture in the given state of the water, dimensionless */
  readonly ratio: number;
  /** χ, W/(m K) */
  readonly dryFactor: number;
  /** η, dimensionless */
  readonly dryExponent: number;
  /** of the soil water */
  readonly state: WaterState;
}

/**
 * Soil conductivity after Côté and Konrad, k = (k_sat − k_dry) κS/(1 + (κ−1)S) + k_dry.
 *
 * Source: Côté & Konrad 2005 [cote-konrad-2005]; k_dry = χ·10^(−ηn), k_sat = k_s^(1−n) k_w^n, water
 * 0.6, ice 2.24 W/(m K). Gravel to peat, dry to saturated.
 *
 * @param soil porosity and saturation, 0 to 1, and the constants of its texture
 * @returns W/(m K)
 */
export function coteKonradConductivity(soil: CoteKonradSoil): number {
  const dry = soil.dryFactor * 10 ** (-soil.dryExponent * soil.porosity);
  const water = soil.state === "frozen" ? 2.24 : 0.6;
  const saturated = soil.solidConductivity ** (1 - soil.porosity) * water ** soil.porosity;
  const wet = (soil.ratio * soil.saturation) / (1 + (soil.ratio - 1) * soil.saturation);
  return (saturated - dry) * wet + dry;
}
