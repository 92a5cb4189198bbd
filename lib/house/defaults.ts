/** Defaults of the house section that follow from its other keys. @module */
import { type NoteDefault, roundTo } from "../basics/mod.ts";
import type { HouseGiven, HouseInputs } from "./fields.ts";

/** m² of drum for each m³ of water: a 208 L drum, 0.57 m across and 0.85 m high, all round. */
const DRUM_SURFACE = (Math.PI * 0.57 * 0.85 + 0.5 * Math.PI * 0.57 ** 2) / 0.208;

/** Fills what the section leaves open from the rest of it. */
export function completeHouse(given: HouseGiven, _before: unknown, note: NoteDefault): HouseInputs {
  const run = given.shape === "lean-to" ? given.width : given.width / 2;
  const { curtain } = given;
  return {
    ...given,
    ridgeHeight: note(
      "house.ridgeHeight",
      given.ridgeHeight,
      () => roundTo(given.eaveHeight + run * Math.tan(Math.PI / 6), 0.01),
    ),
    waterSurface: note(
      "house.waterSurface",
      given.waterSurface,
      () => roundTo(given.waterVolume * DRUM_SURFACE, 0.1),
    ),
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
        () => given.heatSetPoint + 5,
      ),
    },
  };
}
