/** Other uses of a house: a cover over the crop, a lower set point, a shorter house. @module */
import { showBoth, showSi } from "../units/mod.ts";
import type { HouseMeasure } from "./measures.ts";
import { houseGeometry } from "./skin/geometry.ts";
import type { HouseInputs } from "./types.ts";

/** A house used otherwise; it does not do the same service, so it is no step of a ladder. */
export interface HouseUse extends HouseMeasure {
  /** K by which the crop is warmer than the house air on cold nights */
  readonly cropWarmer: number;
}

/** K that a row cover keeps the crop above the air of the house at night: common practice, no source. */
const UNDER_COVER = 2;
/** K by which the set point is lowered. */
const LOWER = 2;
/** Share of the length that is left of a smaller house. */
const LEFT = 0.75;

/**
 * The house used otherwise, one thing at a time.
 *
 * @param inputs the house as it is
 */
export function houseUses(inputs: HouseInputs): readonly HouseUse[] {
  const { floorArea } = houseGeometry(inputs);
  const { heatSetPoint, heatSetPointDay, length } = inputs;
  const kelvin = (value: number) => showBoth(value, "temperatureDifference");
  const floor = (share: number) => ({ amount: share * floorArea, unit: "m²" as const });
  return [
    {
      id: "row-cover",
      name: "row cover over the crop",
      change:
        `drawn over at night, ${kelvin(UNDER_COVER)} warmer under it; the night's set point ` +
        "as much lower",
      work: floor(1),
      cropWarmer: UNDER_COVER,
      inputs: { ...inputs, heatSetPoint: heatSetPoint - UNDER_COVER },
    },
    {
      id: "lower-setting",
      name: "lower set point",
      change: `${kelvin(LOWER)} lower by day and night`,
      work: floor(1),
      cropWarmer: 0,
      inputs: {
        ...inputs,
        heatSetPoint: heatSetPoint - LOWER,
        heatSetPointDay: heatSetPointDay - LOWER,
      },
    },
    {
      id: "smaller-house",
      name: "smaller house",
      change: `${showSi(LEFT, "share")} of the length`,
      work: floor(1 - LEFT),
      cropWarmer: 0,
      inputs: { ...inputs, length: LEFT * length },
    },
  ];
}
