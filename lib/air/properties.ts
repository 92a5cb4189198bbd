/**
 * Transport properties of air.
 *
 * @module
 */
import { requireInRange, ZERO_CELSIUS } from "../basics/mod.ts";
import { airDensity, DRY_AIR_HEAT_CAPACITY } from "./moist_air.ts";

/** Properties of dry air at one state. */
export interface AirProperties {
  /** kg/m³ */
  readonly density: number;
  /** dynamic viscosity, Pa s */
  readonly viscosity: number;
  /** W/(m K) */
  readonly conductivity: number;
  /** J/(kg K) */
  readonly heatCapacity: number;
  /** Prandtl number */
  readonly prandtl: number;
}

/**
 * Dry-air properties by Sutherland's formulas.
 *
 * μ = 1.716e-5·(T/273)^1.5·(273 + 111)/(T + 111), k = 0.0241·(T/273)^1.5·(273 + 194)/(T + 194).
 *
 * Source: White 1991 [white-1991], tables 1-2 and 1-3 (constants as quoted in public code; the test
 * compares with the property table of Incropera & DeWitt [incropera-dewitt-2002]).
 *
 * @param temperature degC, -60 to 150
 * @param pressure Pa
 * @returns the properties
 * @throws {OutOfRangeError} outside the temperature range
 */
export function airProperties(temperature: number, pressure: number): AirProperties {
  requireInRange("air temperature", temperature, -60, 150, "degC");
  const kelvin = temperature + ZERO_CELSIUS;
  const power = (kelvin / 273) ** 1.5;
  const viscosity = 1.716e-5 * power * (273 + 111) / (kelvin + 111);
  const conductivity = 0.0241 * power * (273 + 194) / (kelvin + 194);
  const heatCapacity = DRY_AIR_HEAT_CAPACITY;
  return {
    density: airDensity(temperature, 0, pressure),
    viscosity,
    conductivity,
    heatCapacity,
    prandtl: viscosity * heatCapacity / conductivity,
  };
}
