/** Diffuse part of global radiation. @module */
import { DEGREE } from "../basics/mod.ts";

/**
 * Share of the global radiation that is diffuse, from the clearness index kt (global over
 * extraterrestrial on the horizontal).
 *
 * kt ≤ 0.22: 1 - 0.09 kt; kt ≤ 0.80: 0.9511 - 0.1604 kt + 4.388 kt² - 16.638 kt³ + 12.336 kt⁴;
 * above: 0.165.
 *
 * Source: Erbs, Klein & Duffie 1982 [erbs-1982]. Fitted to four stations of the United States and
 * one of Australia; single hours scatter by about ±0.15.
 *
 * @param clearness ratio to the extraterrestrial radiation, 0 to about 1
 * @returns a share, 0.165 to 1
 */
export function diffuseShare(clearness: number): number {
  const k = Math.max(0, clearness);
  if (k <= 0.22) return 1 - 0.09 * k;
  if (k > 0.8) return 0.165;
  return 0.9511 + k * (-0.1604 + k * (4.388 + k * (-16.638 + k * 12.336)));
}

/** Direct and diffuse radiation of one hour, W/m². */
export interface SplitRadiation {
  /** W/m², normal to the sun */
  readonly directNormal: number;
  /** W/m², on the horizontal */
  readonly diffuseHorizontal: number;
}

/** What {@link splitGlobal} needs of one hour. */
export interface SplitInputs {
  /** W/m² */
  readonly globalHorizontal: number;
  /** mean over the time the sun is up */
  readonly cosZenith: number;
  /** share of the hour the sun is up */
  readonly upShare: number;
  /** W/m² */
  readonly extraterrestrialNormal: number;
}

/**
 * Splits the global radiation of one hour into direct and diffuse; see {@link diffuseShare}.
 *
 * Direct radiation is held to the extraterrestrial value, and all light is diffuse while the sun is
 * lower than 2° on the mean of the hour, where the ratio of two small numbers means nothing.
 *
 * @param hour radiation and sun of the hour
 * @returns direct normal and diffuse horizontal, which close to the global
 */
export function splitGlobal(hour: SplitInputs): SplitRadiation {
  const outside = hour.extraterrestrialNormal * hour.cosZenith * hour.upShare;
  if (hour.cosZenith < LOWEST || outside <= 0) {
    return { directNormal: 0, diffuseHorizontal: hour.globalHorizontal };
  }
  const share = diffuseShare(hour.globalHorizontal / outside);
  const direct = Math.min(
    hour.globalHorizontal * (1 - share) / hour.cosZenith,
    hour.extraterrestrialNormal * hour.upShare,
  );
  return {
    directNormal: direct,
    diffuseHorizontal: hour.globalHorizontal - direct * hour.cosZenith,
  };
}

const LOWEST = Math.sin(2 * DEGREE);
