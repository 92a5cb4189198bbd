/** What curtain and light make of the glazing: open, shut, and by the study's schedule. @module */
import { STEFAN_BOLTZMANN, ZERO_CELSIUS } from "../../basics/mod.ts";
import type { ClimateYear } from "../../climate/types.ts";
import type { HouseInputs, HouseModel } from "../types.ts";
import { curtainSchedule, darkHours } from "./curtain.ts";

/** Series of a house that the curtain changes. */
export type CurtainedSkin = NonNullable<HouseModel["shut"]>;

/** The skin with the curtain as scheduled, the schedule, and the skin shut in every dark hour. */
export type ScheduledSkin =
  & CurtainedSkin
  & Pick<HouseModel, "curtainClosed">
  & { readonly shut?: CurtainedSkin };

/** W that skin and sun leave at the set point. */
function balance(skin: CurtainedSkin, hour: number, inside: number): number {
  const sun = skin.solarFloor[hour]! + skin.solarCrop[hour]! + skin.solarMass[hour]! +
    skin.solarAir[hour]!;
  const radiated = STEFAN_BOLTZMANN * (inside + ZERO_CELSIUS) ** 4 - skin.filmLongwave[hour]!;
  return sun - skin.glazingConductance[hour]! * (inside - skin.glazingDriving[hour]!) -
    skin.filmArea[hour]! * radiated;
}

/**
 * The skin by the study's curtain.
 *
 * @param inputs house section of the study
 * @param climate one year of weather
 * @param setPoint degC that the heater holds, hour by hour: the house that `balance` reckons with
 * @param skinWith the skin for a schedule of the curtain
 */
export function scheduledSkin(
  inputs: HouseInputs,
  climate: ClimateYear,
  setPoint: Float64Array,
  skinWith: (closed: Uint8Array) => CurtainedSkin,
): ScheduledSkin {
  const always = (closed: number) => skinWith(new Uint8Array(setPoint.length).fill(closed));
  const curtainClosed = curtainSchedule(inputs, climate, () => {
    const [open, shut] = [always(0), always(1)];
    return setPoint.map((inside, hour) =>
      balance(shut, hour, inside) - balance(open, hour, inside)
    );
  });
  const { curtain } = inputs;
  const scheduled = { curtainClosed, ...skinWith(curtainClosed) };
  if (curtain?.closeBelowInside === undefined) return scheduled;
  const dark = darkHours(curtain, climate);
  return { ...scheduled, shut: skinWith(dark.map((is, hour) => is | curtainClosed[hour]!)) };
}
