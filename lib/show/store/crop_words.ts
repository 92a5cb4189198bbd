/** The crop's limits in words, with the store and with the fan always off. @module */
import { type CropYear, NO_CROP } from "../../house/mod.ts";
import type { StoreResult } from "../../store/types.ts";
import { shown, shownBoth } from "../kit/reader.ts";
import type { MarkedLimit } from "../kit/duration.ts";

export { NO_CROP };

/** The limits of a crop as lines of a picture; none for empty beds. */
export function cropLimits({ killing, damage }: CropYear): readonly MarkedLimit[] {
  if (killing.limit <= NO_CROP) return [];
  return [
    { limit: killing.limit, name: "plants die" },
    { limit: damage.limit, name: "plants are damaged" },
  ];
}

/** "0 h instead of 80 h below the crop's killing limit of …"; that nothing grows, for empty beds. */
export function killingText({ crop, cropNoFan }: Pick<StoreResult, "crop" | "cropNoFan">): string {
  const { killing } = crop;
  return killing.limit <= NO_CROP
    ? "no crop is named"
    : `${shown(killing.hours, "hours")} instead of ${
      shown(cropNoFan.killing.hours, "hours")
    } below the crop's killing limit of ${shownBoth(killing.limit, "temperature")}`;
}

/** The back-up heat that the store saves, in all and for each kWh of fan electricity. */
export function savedText(
  result: Pick<StoreResult, "savedHeat" | "savedHeatPerFanEnergy">,
): string {
  const { savedHeat, savedHeatPerFanEnergy } = result;
  return savedHeat > 0 && savedHeatPerFanEnergy !== null
    ? `the store saves ${shownBoth(savedHeat, "energy")} of back-up heat a year, ${
      shown(savedHeatPerFanEnergy, "ratio", 1)
    } kWh for each kWh of fan electricity`
    : "the store saves no back-up heat";
}
