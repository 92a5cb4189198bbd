/** Films inside and outside, and what they make of a published heat transmittance. @module */
import { STEFAN_BOLTZMANN, ZERO_CELSIUS } from "../../basics/mod.ts";

/**
 * Wind of the winter design heat transmittances, m/s (15 miles an hour). ASHRAE Fundamentals
 * [ashrae-2017] ch. 26.
 */
const DESIGN_WIND = 6.7;
/** Long-wave emissivity of glazings and walls. */
export const EMISSIVITY = 0.9;
/** W/(m² K): convection on the inside of a glazing (common practice 3 to 4, no source). */
export const INSIDE_CONVECTION = 3.3;
/** W/(m² K): radiation between inside surfaces near 5 degC, 4·ε·σ·T³. */
const INSIDE_RADIATION = 4 * EMISSIVITY * STEFAN_BOLTZMANN * (ZERO_CELSIUS + 5) ** 3;
/**
 * W/(m² K) of the floor: convection 3 and radiation 5 (ISO 6946 [iso-6946-2017] inside surface,
 * resistance 0.17 to 0.10: 5.9 to 10).
 */
export const FLOOR_FILM = 8;
/** W/(m² K): radiation of a black surface near 0 degC, 4·σ·T³. */
export const BLACK_RADIATION = 4 * STEFAN_BOLTZMANN * ZERO_CELSIUS ** 3;
/**
 * Lewis number of water vapour in air to the 2/3, 0.865^(2/3): diffusivities 22.5e-6 and 0.26e-4
 * m²/s of Incropera & DeWitt 2002 [incropera-dewitt-2002], tables A.4 and A.8.
 */
export const LEWIS_POWER = 0.91;

/**
 * Outside film of a wall or roof. h = 2.8 + 3.0·v + 4·ε·σ·T³ at 0 degC.
 *
 * Source: convection Watmuff, Charters & Proctor 1977 [watmuff-1977], in Duffie & Beckman 2013
 * [duffie-beckman-2013] §3.15, plus linear radiation.
 *
 * @param wind m/s
 * @returns W/(m² K)
 */
export function outsideFilm(wind: number): number {
  return 2.8 + 3.0 * wind + EMISSIVITY * BLACK_RADIATION;
}

/** A glazing's heat transmittance taken apart. */
export interface GlazingFilms {
  /** m² K/W from the house air to the outer surface */
  readonly innerResistance: number;
  /** W/(m² K) from the house air to the inner surface */
  readonly insideFilm: number;
}

/**
 * Takes a published heat transmittance apart: the part that long-wave transparency carries straight
 * to the sky (τ·4σT³ near 0 degC) comes off first, then the outside film at the design wind.
 *
 * @param heatTransmittance W/(m² K) in the design wind
 * @param longWaveTransmittance 0 to 1
 */
export function splitGlazing(
  heatTransmittance: number,
  longWaveTransmittance: number,
): GlazingFilms {
  const indirect = Math.max(0.1, heatTransmittance - longWaveTransmittance * BLACK_RADIATION);
  const innerResistance = Math.max(0.02, 1 / indirect - 1 / outsideFilm(DESIGN_WIND));
  const film = INSIDE_CONVECTION + (1 - longWaveTransmittance) * INSIDE_RADIATION;
  return { innerResistance, insideFilm: Math.min(film, 1 / innerResistance) };
}
