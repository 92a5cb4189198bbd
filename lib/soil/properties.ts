/** Thermal properties of one soil from texture, density and moisture. @module */
import { showSi } from "../units/mod.ts";
import {
  HEAT_OF_FUSION,
  ICE_HEAT_CAPACITY,
  InputError,
  requireInRange,
  WATER_DENSITY,
  WATER_HEAT_CAPACITY,
} from "../basics/mod.ts";
import { coteKonradConductivity, johansenConductivity, solidConductivity } from "./conductivity.ts";
import type { WaterState } from "./conductivity.ts";
import { findSoil } from "./table.ts";
import type { SoilRow } from "./table.ts";
import type { SoilInputs, SoilProperties } from "./types.ts";

/** Part of the soil inputs that fixes the properties; any layer has one. */
export type SoilMake = Pick<
  SoilInputs,
  | "texture"
  | "dryDensity"
  | "moisture"
  | "quartz"
  | "measuredConductivity"
  | "frozenConductivity"
>;

/**
 * W/(m K): scatter of the published models on the literature set, 0.176 (Lu et al. 2007 [lu-2007]),
 * rounded up.
 */
const MODEL_SCATTER = 0.2;
/** Scatter of a field needle probe, relative; from memory of ASTM D5334 [astm-d5334-2014]. */
const PROBE_SCATTER = 0.1;

/** Conductivity by each published model that applies; peat has the second alone. */
export interface ConductivityEstimates {
  /** W/(m K); null for organic soil */
  readonly johansen: number | null;
  /** W/(m K) */
  readonly coteKonrad: number;
}

/** Pores and their filling. */
function pores(soil: SoilMake, row: SoilRow): { porosity: number; saturation: number } {
  requireInRange("dry density of the soil", soil.dryDensity, 20, row.solidDensity - 100, "kg/m³");
  requireInRange("moisture of the soil", soil.moisture, 0, 1, "m³/m³");
  requireInRange("quartz share of the soil", soil.quartz, 0, 1, "");
  const porosity = 1 - soil.dryDensity / row.solidDensity;
  if (soil.moisture > porosity + 1e-9) {
    throw new InputError(
      `Cannot fit ${
        showSi(soil.moisture, "sharePrecise")
      } by volume of water in ${row.texture} of ${soil.dryDensity} kg/m³: ` +
        `its pores are ${
          showSi(porosity, "sharePrecise")
        } of its volume; lower soil.moisture or soil.dryDensity`,
    );
  }
  return { porosity, saturation: Math.min(1, soil.moisture / porosity) };
}

/**
 * Conductivity by the published models, for one state of the water.
 *
 * @param soil texture, dry density in kg/m³, moisture in m³/m³, quartz share
 * @param state of the water, frozen or not
 * @returns W/(m K) of each model
 * @throws {InputError} where the water does not fit into the pores
 */
export function conductivityEstimates(soil: SoilMake, state: WaterState): ConductivityEstimates {
  const row = findSoil(soil.texture);
  const { porosity, saturation } = pores(soil, row);
  const johansen = row.grain === "organic" ? null : johansenConductivity({
    dryDensity: soil.dryDensity,
    porosity,
    saturation,
    quartz: soil.quartz,
    grain: row.grain,
    state,
  });
  const coteKonrad = coteKonradConductivity({
    porosity,
    saturation,
    solidConductivity: row.solidConductivity ?? solidConductivity(soil.quartz),
    ratio: state === "frozen" ? row.ratioFrozen : row.ratioUnfrozen,
    dryFactor: row.dryFactor,
    dryExponent: row.dryExponent,
    state,
  });
  return { johansen, coteKonrad };
}

function middle(estimates: ConductivityEstimates): number {
  return estimates.johansen === null
    ? estimates.coteKonrad
    : (estimates.johansen + estimates.coteKonrad) / 2;
}

function estimateRange(estimates: ConductivityEstimates): [number, number] {
  const value = middle(estimates);
  const models = [estimates.coteKonrad, estimates.johansen ?? estimates.coteKonrad];
  return [
    Math.max(value / 2, Math.min(value - MODEL_SCATTER, ...models)),
    Math.max(value + MODEL_SCATTER, ...models),
  ];
}

/**
 * Thermal properties of a soil.
 *
 * Conductivity: mean of Johansen 1975 [johansen-1975] and Côté & Konrad 2005 [cote-konrad-2005]
 * (peat: the second alone), range ±0.2 W/(m K) (scatter 0.176 of both, Lu et al. 2007 [lu-2007])
 * widened to hold both models; a measured value overrides, range ±10 %. Heat capacity: solids (de
 * Vries 1963 [de-vries-1963]) + water or ice. Latent heat: all water freezes.
 *
 * @param soil texture, density, moisture, quartz, measured conductivity
 * @returns conductivity in W/(m K) with its range, heat capacity in J/(m³ K), diffusivity in m²/s,
 *   latent heat in J/m³
 * @throws {InputError} where the water does not fit into the pores or the texture is unknown
 * @example A moist loam
 * ```ts
 * import { soilProperties } from "winterground/soil/mod.ts";
 * const loam = soilProperties({
 *   texture: "loam",
 *   dryDensity: 1450,
 *   moisture: 0.25,
 *   quartz: 0.4,
 *   measuredConductivity: null,
 * });
 * if (!(loam.conductivity > 1 && loam.conductivity < 1.3)) throw new Error("not a moist loam");
 * ```
 */
export function soilProperties(soil: SoilMake): SoilProperties {
  const { measuredConductivity: measured } = soil;
  if (measured !== null) requireInRange("measured conductivity", measured, 0.05, 10, "W/(m K)");
  return withConductivity(soil, measured);
}

/**
 * The properties of a soil with a conductivity that was measured, or follows from one.
 *
 * @param soil texture, density, moisture, quartz
 * @param measured W/(m K); null takes the models' estimate
 */
export function withConductivity(soil: SoilMake, measured: number | null): SoilProperties {
  const row = findSoil(soil.texture);
  const { porosity, saturation } = pores(soil, row);
  const unfrozen = conductivityEstimates(soil, "unfrozen");
  const frozenRatio = soil.frozenConductivity === "as unfrozen"
    ? 1
    : middle(conductivityEstimates(soil, "frozen")) / middle(unfrozen);
  const conductivity = measured ?? middle(unfrozen);
  const solids = (1 - porosity) * row.solidHeatCapacity;
  const water = soil.moisture * WATER_DENSITY;
  const heatCapacity = solids + water * WATER_HEAT_CAPACITY;
  return {
    conductivity,
    frozenConductivity: conductivity * frozenRatio,
    heatCapacity,
    frozenHeatCapacity: solids + water * ICE_HEAT_CAPACITY,
    diffusivity: conductivity / heatCapacity,
    latentHeat: water * HEAT_OF_FUSION,
    conductivityRange: measured === null
      ? estimateRange(unfrozen)
      : [measured * (1 - PROBE_SCATTER), measured * (1 + PROBE_SCATTER)],
    porosity,
    saturation,
    freezingRange: row.freezingRange,
  };
}
