/** What freezes under the house in the year that counts. @module */
import { max, maxIndex, min } from "d3-array";
import { HOURS_PER_YEAR, hoursBelow, kilowattHours } from "../../basics/mod.ts";
import type { ReducedEngine } from "../solver/reduced/engine.ts";
import type { StoreSite } from "../site.ts";
import type { StepListener } from "../step_report.ts";
import type { FreezingYear } from "../types.ts";

/** A listener that follows the ice under the floor, and what it saw. */
export interface FreezingRecord {
  readonly listen: StepListener;
  /**
   * The year's freezing; null where nothing froze under the floor.
   *
   * @param between degC between the tubes by hour
   * @param latentHeat J/m³ of the study's soil
   */
  readonly result: (between: Float64Array, latentHeat: number) => FreezingYear | null;
}

/** Follows the heat that freezing soil under the floor has set free, at the end of each hour. */
export function freezingRecorder(site: StoreSite, engine: ReducedEngine): FreezingRecord {
  /** J by hour */
  const ice = new Float64Array(HOURS_PER_YEAR);
  return {
    listen: ({ hour }) => {
      ice[hour] = engine.ice().reduce((sum, heat, lane) => sum + heat * site.lengths[lane]!, 0);
    },
    result: (between, latentHeat) => {
      const most = max(ice)!;
      if (most <= 0) return null;
      return {
        coldest: min(between)!,
        hoursBelowFreezing: hoursBelow(between, 0),
        latentHeat: kilowattHours(most),
        frozenDepth: most / (latentHeat * site.floorArea),
        mostFrozen: maxIndex(ice),
        hoursFrozen: ice.filter((heat) => heat > 0).length,
      };
    },
  };
}
