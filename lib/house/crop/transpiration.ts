/** Water given off by a crop under glass. @module */
import { AIR_HEAT_BY_VOLUME, saturationPressureOverWater } from "../../air/mod.ts";

/** Psychrometric constant over pressure, 1/K. FAO-56 [fao56-1998] eq. 8. */
export const PSYCHROMETRIC_FACTOR = 0.665e-3;
/** W/m² of sun per leaf area and air movement of 0.1 m/s in a closed house (common practice, no source) */
const AIR_MOVEMENT = 0.1;

/** ppm by volume of carbon dioxide of outside air (about 2020). */
export const CARBON_DIOXIDE = 420;
/** K assumed between leaf and air in the leaf's film. */
export const LEAF_DIFFERENCE = 1;

/** What the stomata answer to. */
export interface StomataState {
  /** sun on the crop over twice the leaf area index, W/m² */
  readonly lightPerLeaf: number;
  /** degC */
  readonly leafTemperature: number;
  /** kPa */
  readonly vapourDeficit: number;
  /** ppm by volume of carbon dioxide */
  readonly carbonDioxide: number;
}

/**
 * Resistance of the leaf's stomata.
 * r_i = 82·f_I·f_T·f_C·f_D with f_I = (I + 4.30)/(I + 0.54), f_T = 1 + 0.023·(T − 24.5)²,
 * f_D = 1 + 4.3·D² below 0.8 kPa, 3.8 above, f_C = 1 + 6.1e-7·(C − 200)² in light, 1 in the dark.
 *
 * Source: Stanghellini 1987 [stanghellini-1987] (from memory). Measured on tomato; f_T is held at
 * its value 20 K away from the optimum. In the dark f_I is 8: stomata all but shut, as measured by
 * night (Caird, Richards & Hsiao 2007 [caird-2007]: 3 to 33 % of the rate by day).
 *
 * @param state light, leaf temperature, deficit, carbon dioxide
 * @returns s/m
 * @example
 * ```ts
 * import { stomatalResistance } from "winterground/house/mod.ts";
 * const state = { lightPerLeaf: 100, leafTemperature: 24.5, vapourDeficit: 0.5, carbonDioxide: 400 };
 * if (Math.abs(stomatalResistance(state) - 180.8) > 0.05) throw new Error("formula changed");
 * ```
 */
export function stomatalResistance(state: StomataState): number {
  const light = Math.max(0, state.lightPerLeaf);
  const deficit = Math.max(0, state.vapourDeficit);
  const away = Math.min(20, Math.abs(state.leafTemperature - 24.5));
  const byLight = (light + 4.3) / (light + 0.54);
  const byTemperature = 1 + 0.023 * away * away;
  const byDeficit = deficit < 0.8 ? 1 + 4.3 * deficit * deficit : 3.8;
  const byCarbon = light <= 0
    ? 1
    : state.carbonDioxide < 1100
    ? 1 + 6.1e-7 * (state.carbonDioxide - 200) ** 2
    : 1.5;
  return 82 * byLight * byTemperature * byCarbon * byDeficit;
}

/**
 * degC of the leaf at and below which its stomata are shut, ice between its cells; and that from
 * which frost no longer holds them. Common practice, no source.
 */
const STOMATA_SHUT = 0;
const STOMATA_FREE = 2;

/**
 * Share of the stomata that frost leaves open: none at and below 0 degC, all from 2 degC.
 *
 * Own judgement: ice forms between the cells of frozen leaves and their stomata are shut. What still
 * passes the cuticle is left out.
 *
 * @param leafTemperature degC
 * @returns 0 to 1
 */
export function openStomata(leafTemperature: number): number {
  const share = (leafTemperature - STOMATA_SHUT) / (STOMATA_FREE - STOMATA_SHUT);
  return Math.min(1, Math.max(0, share));
}

/**
 * Resistance of the air film of leaves.
 * r_e = 1174·√l / (l·|T_l − T_a| + 207·u²)^0.25.
 *
 * Source: Stanghellini 1987 [stanghellini-1987] (from memory).
 *
 * @param leafLength m
 * @param temperatureDifference K between leaf and air
 * @param airMovement m/s
 * @returns s/m
 */
export function leafFilmResistance(
  leafLength: number,
  temperatureDifference: number,
  airMovement: number = AIR_MOVEMENT,
): number {
  return 1174 * Math.sqrt(leafLength) /
    (leafLength * Math.abs(temperatureDifference) + 207 * airMovement * airMovement) ** 0.25;
}

/**
 * Slope of the saturation pressure over water. Δ = 4098·e/(T + 237.3)².
 *
 * Source: FAO-56 [fao56-1998] eq. 13.
 *
 * @param temperature degC
 * @returns Pa/K
 */
function saturationSlope(temperature: number): number {
  return 4098 * saturationPressureOverWater(temperature) / (temperature + 237.3) ** 2;
}

/** Canopy and air for {@link canopyTranspiration}. */
export interface CanopyState {
  /** radiation the canopy takes up, W per m² of floor */
  readonly absorbedRadiation: number;
  /** m² of leaf per m² of floor */
  readonly leafArea: number;
  /** degC */
  readonly airTemperature: number;
  /** Pa */
  readonly vapourPressure: number;
  /** Pa */
  readonly pressure: number;
  /** s/m */
  readonly filmResistance: number;
  /** s/m */
  readonly stomatalResistance: number;
}

/**
 * Transpiration of a canopy with both leaf sides active, the leaf temperature eliminated.
 * λE = (Δ·R + 2·L·ρc·(e_s − e)/r_e) / (Δ + γ·(1 + r_i/r_e)), not below 0.
 *
 * Source: combination equation in the form of Stanghellini 1987 [stanghellini-1987] (from memory).
 *
 * @param state canopy and air
 * @returns W per m² of floor
 */
export function canopyTranspiration(state: CanopyState): number {
  if (state.leafArea <= 0) return 0;
  const slope = saturationSlope(state.airTemperature);
  const deficit = saturationPressureOverWater(state.airTemperature) - state.vapourPressure;
  const gamma = PSYCHROMETRIC_FACTOR * state.pressure;
  const film = 2 * state.leafArea * AIR_HEAT_BY_VOLUME / state.filmResistance;
  const heat = (slope * state.absorbedRadiation + film * deficit) /
    (slope + gamma * (1 + state.stomatalResistance / state.filmResistance));
  return Math.max(0, heat);
}
