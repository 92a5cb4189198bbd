/**
 * Heat transfer between air and a dry tube wall.
 *
 * @module
 */
import type { AirProperties } from "../air/mod.ts";
import { requireInRange } from "../basics/mod.ts";
import { LAMINAR_LIMIT, TURBULENT_LIMIT } from "./friction.ts";

/** Nusselt number of laminar flow far from the inlet, wall at one temperature. Exact (Graetz). */
const NUSSELT_LAMINAR = 3.66;

/**
 * Friction factor of a smooth tube as Gnielinski's formula wants it. f = (0.790·ln Re − 1.64)^−2.
 *
 * Source: Petukhov 1970 [petukhov-1970]. Valid for: 3000 ≤ Re ≤ 5e6.
 *
 * @param reynolds Reynolds number
 * @returns Darcy factor
 */
export function frictionPetukhov(reynolds: number): number {
  return (0.790 * Math.log(reynolds) - 1.64) ** -2;
}

/**
 * Nusselt number of turbulent flow.
 *
 * Nu = (f/8)(Re − 1000)Pr / [1 + 12.7·√(f/8)·(Pr^(2/3) − 1)].
 *
 * Source: Gnielinski 1976 [gnielinski-1976]. Valid for: 2300 ≤ Re ≤ 5e6, 0.5 ≤ Pr ≤ 2000 and for
 * `friction` of a *smooth* tube: with the friction factor of a corrugated one it gives 2.5 times
 * too much (see {@link nusseltTube}).
 *
 * @param reynolds Reynolds number
 * @param prandtl Prandtl number
 * @param friction Darcy factor of the smooth tube
 * @returns Nusselt number
 * @throws {OutOfRangeError} outside the range of validity
 */
export function nusseltGnielinski(
  reynolds: number,
  prandtl: number,
  friction: number = frictionPetukhov(reynolds),
): number {
  requireInRange("Reynolds number", reynolds, LAMINAR_LIMIT, 5e6, "(2300 to 5e6)");
  requireInRange("Prandtl number", prandtl, 0.5, 2000, "(0.5 to 2000)");
  const eighth = friction / 8;
  return eighth * (reynolds - 1000) * prandtl /
    (1 + 12.7 * Math.sqrt(eighth) * (prandtl ** (2 / 3) - 1));
}

/**
 * Nusselt number of air in a drain tube, smooth or corrugated, over the whole range.
 *
 * Laminar 3.66 up to Re 2300, {@link nusseltGnielinski} with smooth-tube friction from Re 4000,
 * between both a straight line in Re.
 *
 * Source: the line Gnielinski 2013 [gnielinski-2013]. Corrugated tube as smooth: Sibley & Raghavan
 * 1984 [sibley-raghavan-1984], who found the coefficients of 10.2 and 15.2 cm corrugated drain tube
 * similar in magnitude to smooth pipe of the same nominal diameter.
 *
 * @param reynolds Reynolds number, 0 or more
 * @param prandtl Prandtl number
 * @returns Nusselt number
 */
export function nusseltTube(reynolds: number, prandtl: number): number {
  if (reynolds <= LAMINAR_LIMIT) return NUSSELT_LAMINAR;
  if (reynolds >= TURBULENT_LIMIT) return nusseltGnielinski(reynolds, prandtl);
  const share = (reynolds - LAMINAR_LIMIT) / (TURBULENT_LIMIT - LAMINAR_LIMIT);
  return (1 - share) * NUSSELT_LAMINAR + share * nusseltGnielinski(TURBULENT_LIMIT, prandtl);
}

/**
 * Reynolds number of a round tube. Re = ρ·v·D/μ.
 *
 * @param airSpeed m/s, of either sign
 * @param diameter m
 * @param air properties of the air
 * @returns Reynolds number, 0 or more
 */
export function reynoldsNumber(airSpeed: number, diameter: number, air: AirProperties): number {
  return air.density * Math.abs(airSpeed) * diameter / air.viscosity;
}

/**
 * Film coefficient between air and a dry tube wall. h = Nu·k/D.
 *
 * Source: exact, definition of the Nusselt number.
 *
 * @example Air of 20 °C at 2 m/s in a 4-inch tube
 * ```ts
 * import { filmCoefficient } from "./film.ts";
 * import { airProperties } from "../air/mod.ts";
 * import assert from "node:assert/strict";
 *
 * const film = filmCoefficient(2, 0.102, airProperties(20, 101325));
 * assert.equal(film.toFixed(1), "9.6"); // W/(m² K)
 * ```
 *
 * @param airSpeed m/s
 * @param diameter inside, m
 * @param air properties of the air
 * @returns W/(m² K)
 */
export function filmCoefficient(airSpeed: number, diameter: number, air: AirProperties): number {
  const reynolds = reynoldsNumber(airSpeed, diameter, air);
  return nusseltTube(reynolds, air.prandtl) * air.conductivity / diameter;
}

/**
 * Number of transfer units of a tube. NTU = h·π·D·L/(ρ·Q·c).
 *
 * Source: exact, definition of the number of transfer units.
 *
 * @param tube film coefficient W/(m² K), diameter m, length m, air flow m³/s and air properties
 * @returns number of transfer units
 */
export function transferUnits(
  tube: {
    readonly filmCoefficient: number;
    readonly diameter: number;
    readonly length: number;
    readonly airFlow: number;
    readonly air: AirProperties;
  },
): number {
  const surface = Math.PI * tube.diameter * tube.length;
  return tube.filmCoefficient * surface /
    (tube.air.density * Math.abs(tube.airFlow) * tube.air.heatCapacity);
}

/**
 * Effectiveness of a tube whose wall has one temperature: (inlet − outlet)/(inlet − wall).
 *
 * ε = 1 − exp(−NTU). Source: exact.
 *
 * @param units number of transfer units
 * @returns 0 to 1
 */
export function effectiveness(units: number): number {
  return -Math.expm1(-units);
}
