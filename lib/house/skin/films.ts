/** Films inside and outside, and what they make of a published heat transmittance. @module */
import { STEFAN_BOLTZMANN, ZERO_CELSIUS } from "../../basics/mod.ts";

/**
 * Wind of the winter design heat transmittances, m/s (15 miles an hour). ASHRAE Fundamentals
 * [ashrae-2017] ch. 26.
 */
export const DESIGN_WIND = 6.7;
/** Long-wave emissivity of glazings and walls. */
export const EMISSIVITY = 0.9;
/** W/(m² K): convection on the inside of a glazing (common practice 3 to 4, no source). */
export const INSIDE_CONVECTION = 3.3;
/** W/(m² K): radiation between inside surfaces near 5 degC, 4·ε·σ·T³. */
export const INSIDE_RADIATION = 4 * EMISSIVITY * STEFAN_BOLTZMANN * (ZERO_CELSIUS + 5) ** 3;
/** W/(m² K): radiation of a black surface near 0 degC, 4·σ·T³. */
export const BLACK_RADIATION = 4 * STEFAN_BOLTZMANN * ZERO_CELSIUS ** 3;

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

/**
 * Heat transmittance with a closed curtain.
 * U' = c·((1 − l)/(1/U + R) + l·U) + (1 − c)·U.
 *
 * @param open W/(m² K) without the curtain
 * @param curtain resistance m² K/W, coverage and edge leak 0 to 1
 * @returns W/(m² K)
 */
export function withCurtain(
  open: number,
  curtain: { readonly resistance: number; readonly coverage: number; readonly edgeLeak: number },
): number {
  const closed = 1 / (1 / open + curtain.resistance);
  const share = closedShare(curtain);
  return share * closed + (1 - share) * open;
}

/** Share of the glazing that a closed curtain really covers, edge leaks taken off. */
export function closedShare(
  curtain: { readonly coverage: number; readonly edgeLeak: number },
): number {
  return curtain.coverage * (1 - curtain.edgeLeak);
}
