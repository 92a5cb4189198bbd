/**
 * Vapour between air and a wet wall, from the film that carries the heat.
 *
 * @module
 */
import { STANDARD_PRESSURE, ZERO_CELSIUS } from "../basics/mod.ts";
import { DRY_AIR_HEAT_CAPACITY } from "./moist_air.ts";
import { airProperties } from "./properties.ts";

/**
 * Diffusivity of water vapour in air. D = 0.2178e-4·(101325/p)·(T/273.15)^1.81.
 *
 * Source: Massman 1998 [massman-1998].
 *
 * @param temperature degC
 * @param pressure Pa
 * @returns m²/s
 */
export function vapourDiffusivity(temperature: number, pressure: number): number {
  return 0.2178e-4 * STANDARD_PRESSURE / pressure *
    ((temperature + ZERO_CELSIUS) / ZERO_CELSIUS) ** 1.81;
}

/**
 * Lewis number of water vapour in air, thermal over mass diffusivity. Le = k/(ρ·c·D).
 *
 * @param temperature degC
 * @param pressure Pa
 * @returns a ratio, about 0.85
 */
export function lewisNumber(temperature: number, pressure: number): number {
  const air = airProperties(temperature, pressure);
  return air.conductivity / (air.density * air.heatCapacity) /
    vapourDiffusivity(temperature, pressure);
}

/**
 * Mass transfer coefficient from the film coefficient: the one Lewis rule of tubes and store.
 * g = h/(c·Le^(2/3)).
 *
 * Source: Chilton & Colburn 1934 [chilton-colburn-1934] (analogy of heat and mass transfer). Valid
 * for: turbulent flow, small vapour content, which air below 40 degC has.
 *
 * @param filmCoefficient dry, W/(m² K)
 * @param temperature degC of the film
 * @param pressure Pa
 * @returns kg/(m² s) for a difference of 1 kg/kg in humidity ratio
 */
export function massTransferCoefficient(
  filmCoefficient: number,
  temperature: number,
  pressure: number,
): number {
  return filmCoefficient /
    (DRY_AIR_HEAT_CAPACITY * lewisNumber(temperature, pressure) ** (2 / 3));
}
