/** Cold outdoors against the limits of the crop and the set point. @module */
import { degreeHoursBelow, hoursBelow } from "../../basics/mod.ts";
import type { Crop } from "./crop_table.ts";

/** One limit and the cold outdoors below it. */
export interface OutdoorLimit {
  /** what it is the limit of */
  readonly name: string;
  /** degC */
  readonly limit: number;
  /** h a year outdoors below it */
  readonly hours: number;
  /** K h a year outdoors below it */
  readonly degreeHours: number;
}

/**
 * Hours and degree-hours outdoors below what the crop bears, below freezing, below the heating set
 * point and below 5 degC; rising, none twice.
 *
 * @param outdoors hourly, degC
 * @param crop with its limits, degC
 * @param heatSetPoint degC
 */
export function limitsOutdoors(
  outdoors: Float64Array,
  crop: Pick<Crop, "name" | "killingLimit" | "damageLimit" | "growthLimit">,
  heatSetPoint: number,
): OutdoorLimit[] {
  const limits = [
    [`${crop.name}: plants die below`, crop.killingLimit],
    [`${crop.name}: plants are damaged below`, crop.damageLimit],
    [`${crop.name}: growth stops below`, crop.growthLimit],
    ["freezing", 0],
    ["heating set point of the study", heatSetPoint],
    ["5 degC", 5],
  ] as const;
  return limits.filter(([, limit], index) =>
    limits.findIndex(([, other]) => other === limit) === index
  ).sort(([, a], [, b]) => a - b).map(([name, limit]) => ({
    name,
    limit,
    hours: hoursBelow(outdoors, limit),
    degreeHours: degreeHoursBelow(outdoors, limit),
  }));
}
