/** The night curtain: when it closes, how much it covers, what it saves. @module */
import type { ClimateYear } from "../../climate/types.ts";
import type { CurtainInputs, HouseInputs } from "../fields.ts";

/** K above the heating set point below which it counts as cold outside; common practice, no source. */
export const COLD_ABOVE_SET_POINT = 5;

/**
 * The curtain that is tried where a study has none: the one whose values data/studies/fields.csv gives
 * a curtain by default. Common practice, no source.
 *
 * @param heatSetPoint degC
 */
export function usualCurtain(heatSetPoint: number): CurtainInputs {
  return {
    resistance: 0.35,
    coverage: 0.9,
    edgeLeak: 0.1,
    closeBelow: 20,
    closeBelowOutside: heatSetPoint + COLD_ABOVE_SET_POINT,
  };
}

/**
 * The curtain's rule: closed in an hour that is dark and cold. Dark is global radiation below
 * `closeBelow`; cold is air outside below `closeBelowOutside`.
 *
 * @param inputs house section of the study
 * @param climate one year of weather
 * @returns 1 for each hour in which the curtain is closed, else 0
 */
export function curtainSchedule(inputs: HouseInputs, climate: ClimateYear): Uint8Array {
  const curtain = inputs.curtain;
  const closed = new Uint8Array(climate.dryBulb.length);
  if (curtain === null) return closed;
  for (let hour = 0; hour < closed.length; hour++) {
    const dark = climate.globalHorizontal[hour]! < curtain.closeBelow;
    closed[hour] = dark && climate.dryBulb[hour]! < curtain.closeBelowOutside ? 1 : 0;
  }
  return closed;
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
