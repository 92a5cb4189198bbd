/** Saturation pressures from a table, for the thousands of trials of an hourly year. @module */
import {
  MOLAR_MASS_RATIO,
  saturationPressure,
  saturationPressureOverWater,
} from "../../air/mod.ts";

const LOWEST = -90;
const HIGHEST = 150;
/** entries per kelvin; straight lines between them err by less than 2e-6 of the value */
const PER_KELVIN = 20;

function tabulate(pressure: (temperature: number) => number): Float64Array {
  const count = (HIGHEST - LOWEST) * PER_KELVIN + 1;
  return Float64Array.from({ length: count }, (_, i) => pressure(LOWEST + i / PER_KELVIN));
}

let water: Float64Array | undefined;
let ice: Float64Array | undefined;

function look(table: Float64Array, temperature: number): number {
  const at = Math.min(table.length - 1.000001, Math.max(0, (temperature - LOWEST) * PER_KELVIN));
  const low = Math.floor(at);
  return table[low]! + (at - low) * (table[low + 1]! - table[low]!);
}

/** Over water, also below 0 degC, Pa; held at the ends outside -90 to 150 degC. */
export function quickSaturationOverWater(temperature: number): number {
  water ??= tabulate(saturationPressureOverWater);
  return look(water, temperature);
}

/** Over ice below 0 degC, over water above, Pa; held at the ends outside -90 to 150 degC. */
export function quickSaturation(temperature: number): number {
  ice ??= tabulate(saturationPressure);
  return look(ice, temperature);
}

/**
 * Humidity ratio of air saturated over ice or water.
 *
 * @param temperature degC
 * @param pressure Pa
 * @returns kg/kg
 */
export function saturatedRatio(temperature: number, pressure: number): number {
  const vapour = Math.min(0.9 * pressure, quickSaturation(temperature));
  return MOLAR_MASS_RATIO * vapour / (pressure - vapour);
}
