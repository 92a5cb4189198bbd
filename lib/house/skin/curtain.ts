/** The night curtain: when it closes, how much it covers, what it saves. @module */
import type { ClimateYear } from "../../climate/types.ts";
import { clockShares } from "../../units/mod.ts";
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

/** Hours of the day that count as dark by the clock; null where light decides. */
function darkByClock({ clock = "none" }: CurtainInputs): readonly boolean[] | null {
  return clock === "none" ? null : Array.from(clockShares(clock), (share) => share >= 0.5);
}

/** Hours of the year dark enough for the curtain: by light, or by the clock in local standard time. */
export function darkHours(curtain: CurtainInputs, climate: ClimateYear): Uint8Array {
  const byClock = darkByClock(curtain);
  return Uint8Array.from(
    climate.globalHorizontal,
    (light, hour) => (byClock?.[hour % 24] ?? light < curtain.closeBelow) ? 1 : 0,
  );
}

/**
 * The curtain's rule by weather and clock: closed in an hour that is dark and cold. Dark is global
 * radiation below `closeBelow`, or the hours of `clock`; cold is air outside below
 * `closeBelowOutside`. In the light it stays shut on dull days: with `limits` below `dullBelow` and
 * `dullBelowOutside`, with `balance` in cold hours in which that keeps heat.
 *
 * @param inputs house section of the study
 * @param climate one year of weather
 * @param keeps W that a shut curtain keeps more than the sun would bring, by hour; asked for with
 * `balance` alone
 * @returns 1 for each hour in which the curtain is closed, else 0
 */
export function curtainSchedule(
  inputs: HouseInputs,
  climate: ClimateYear,
  keeps: () => Float64Array,
): Uint8Array {
  const curtain = inputs.curtain;
  const closed = new Uint8Array(climate.dryBulb.length);
  if (curtain === null) return closed;
  const { dullDays = "open", dullBelow = 0, dullBelowOutside = 0, closeBelowOutside } = curtain;
  const dark = darkHours(curtain, climate);
  const kept = dullDays === "balance" ? keeps() : null;
  for (let hour = 0; hour < closed.length; hour++) {
    const outside = climate.dryBulb[hour]!;
    const cold = outside < closeBelowOutside;
    const dull = dullDays === "limits"
      ? climate.globalHorizontal[hour]! < dullBelow && outside < dullBelowOutside
      : kept !== null && cold && kept[hour]! > 0;
    closed[hour] = dark[hour] === 1 && cold || dull ? 1 : 0;
  }
  return closed;
}

/** Hours in which the curtain is closed although there is light above `closeBelow`. */
export function hoursShutInLight(
  { inputs, curtainClosed }: { readonly inputs: HouseInputs; readonly curtainClosed: Uint8Array },
  climate: ClimateYear,
): number {
  const { curtain } = inputs;
  if (curtain === null) return 0;
  return curtainClosed.reduce(
    (sum, closed, hour) =>
      sum + (climate.globalHorizontal[hour]! >= Math.max(1, curtain.closeBelow) ? closed : 0),
    0,
  );
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
