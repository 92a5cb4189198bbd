/** Other uses of a house: a cover over the crop, a lower set point, a shorter house. @module */
import { showBoth, showSi } from "../units/mod.ts";
import type { HouseMeasure } from "./measures.ts";
import { houseGeometry } from "./skin/geometry.ts";
import type { HouseInputs } from "./types.ts";

/** A house used otherwise; it does not do the same service, so it is no step of a ladder. */
export interface HouseUse extends HouseMeasure {
  /** K by which the crop is warmer than the house air on cold nights */
  readonly cropWarmer: number;
  /** days on which there is a crop, as `readSeason` writes them */
  readonly cropSeason: string;
}

const ALL_YEAR = "all year";
/** K that a row cover keeps the crop above the air of the house at night: common practice, no source. */
const UNDER_COVER = 2;
/** K by which the set point is lowered. */
const LOWER = 2;
/** Share of the length that is left of a smaller house. */
const LEFT = 0.75;
/** Days with crop and heat where the beds are left empty in winter, and its months from January. */
const WITHOUT_WINTER = "1 Mar to 30 Nov";
const WINTER_MONTHS = [0, 1, 11];

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
      cropSeason: ALL_YEAR,
      cropWarmer: UNDER_COVER,
      inputs: { ...inputs, heatSetPoint: heatSetPoint - UNDER_COVER },
    },
    {
      id: "lower-setting",
      name: "lower set point",
      change: `${kelvin(LOWER)} lower by day and night`,
      work: floor(1),
      cropSeason: ALL_YEAR,
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
      cropSeason: ALL_YEAR,
      cropWarmer: 0,
      inputs: { ...inputs, length: LEFT * length },
    },
    ...emptyInWinter(inputs, floor(1)),
  ];
}

/** Another calendar: neither crop nor heat in winter; nothing where that is so already. */
function emptyInWinter(inputs: HouseInputs, work: HouseUse["work"]): readonly HouseUse[] {
  const { leafArea, heatSeason = ALL_YEAR } = inputs;
  const months = Array.from(
    { length: 12 },
    (_, month) => typeof leafArea === "number" ? leafArea : leafArea[month]!,
  );
  if (heatSeason !== ALL_YEAR || inputs.crop === "bare") return [];
  return [{
    id: "crop-calendar",
    name: "beds empty in winter",
    change: `crop and heat from ${WITHOUT_WINTER} only; hours count while there is a crop`,
    work,
    cropSeason: WITHOUT_WINTER,
    cropWarmer: 0,
    inputs: {
      ...inputs,
      leafArea: months.map((leaves, month) => WINTER_MONTHS.includes(month) ? 0 : leaves),
      heatSeason: WITHOUT_WINTER,
    },
  }];
}
