/** Heat content of freezing soil as a function of temperature, and back. @module */
import type { SoilProperties } from "./types.ts";

/**
 * Heat content above 0 °C unfrozen,
 * H = C_u T above 0; C_f T + L T/ΔT down to −ΔT; C_f T − L below.
 *
 * Source: enthalpy method, Voller & Cross 1981 [voller-cross-1981]; all the water freezes evenly
 * over ΔT.
 *
 * @param soil properties of the layer
 * @param temperature degC
 * @returns J/m³
 */
export function heatContent(soil: SoilProperties, temperature: number): number {
  if (temperature >= 0) return soil.heatCapacity * temperature;
  return soil.frozenHeatCapacity * temperature - soil.latentHeat * frozenShare(soil, temperature);
}

/** Share of the soil water that is ice, 0 to 1. */
function frozenShare(soil: SoilProperties, temperature: number): number {
  if (temperature >= 0) return 0;
  return temperature <= -soil.freezingRange ? 1 : -temperature / soil.freezingRange;
}

/** Slope dH/dT of {@link heatContent}, J/(m³ K). */
export function apparentCapacity(soil: SoilProperties, temperature: number): number {
  if (temperature >= 0) return soil.heatCapacity;
  const latent = temperature > -soil.freezingRange ? soil.latentHeat / soil.freezingRange : 0;
  return soil.frozenHeatCapacity + latent;
}

/** Inverse of {@link heatContent}: temperature that goes with a heat content, degC. */
export function temperatureOf(soil: SoilProperties, content: number): number {
  if (content >= 0) return content / soil.heatCapacity;
  const slush = soil.frozenHeatCapacity + soil.latentHeat / soil.freezingRange;
  if (content >= -slush * soil.freezingRange) return content / slush;
  return (content + soil.latentHeat) / soil.frozenHeatCapacity;
}

/** Conductivity between the frozen and the unfrozen value by the share of ice, W/(m K). */
export function conductivityAt(soil: SoilProperties, temperature: number): number {
  const ice = frozenShare(soil, temperature);
  return soil.conductivity + ice * (soil.frozenConductivity - soil.conductivity);
}
