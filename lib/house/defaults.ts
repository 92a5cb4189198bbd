/** Defaults of the house section that follow from its other keys. @module */
import { COLD_ABOVE_SET_POINT } from "./skin/curtain.ts";
import { leafAreaOfCrop } from "./crop/leaf_area.ts";
import { DRUM_VOLUME, drumSurface } from "./barrels_and_masonry.ts";
import { type NoteDefault, roundTo } from "../basics/mod.ts";
import type { SoilInputs } from "../soil/mod.ts";
import type { HouseGiven, HouseInputs } from "./fields.ts";

/** Fills what the section leaves open from the rest of it. */
export function completeHouse(
  given: HouseGiven,
  before: { readonly soil: Pick<SoilInputs, "snowDepth"> },
  note: NoteDefault,
): HouseInputs {
  const run = given.shape === "lean-to" ? given.width : given.width / 2;
  const { curtain } = given;
  return {
    ...given,
    ridgeHeight: note(
      "house.ridgeHeight",
      given.ridgeHeight,
      () => roundTo(given.eaveHeight + run * Math.tan(Math.PI / 6), 0.01),
    ),
    snowDepth: note("house.snowDepth", given.snowDepth, () => before.soil.snowDepth),
    waterSurface: note(
      "house.waterSurface",
      given.waterSurface,
      () => roundTo(drumSurface(given.waterVolume / DRUM_VOLUME, given.length), 0.1),
    ),
    leafArea: note("house.leafArea", given.leafArea, () => leafAreaOfCrop(given.crop)),
    heatSetPointDay: note(
      "house.heatSetPointDay",
      given.heatSetPointDay,
      () => given.heatSetPoint,
    ),
    curtain: curtain === null ? null : {
      ...curtain,
      closeBelowOutside: note(
        "house.curtain.closeBelowOutside",
        curtain.closeBelowOutside,
        () => given.heatSetPoint + COLD_ABOVE_SET_POINT,
      ),
    },
  };
}
