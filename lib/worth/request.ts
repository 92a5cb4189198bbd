/** What the worth chapter is computed from. @module */
import type { PricedMeasure } from "./alternatives.ts";
import type { WorthInputs } from "./fields.ts";
import type { TakeOffInputs } from "./quantities/types.ts";

/** Yearly energy of the house, kWh. */
export interface YearlyEnergy {
  /** kWh of back-up heat with the store */
  readonly backupHeat: number;
  /** kWh with the fan always off */
  readonly backupHeatNoFan: number;
  /** kWh of the fans' electricity in the year of that back-up heat */
  readonly fanEnergy: number;
}

/** What the chapter is computed from. */
export interface WorthRequest {
  /** `worth` section of the study */
  readonly inputs: WorthInputs;
  /** geometry and equipment to take quantities from */
  readonly field: TakeOffInputs;
  /** kWh a year, of the store chapter */
  readonly energy: YearlyEnergy;
  /** faults of the design, in a few words each */
  readonly faults: readonly string[];
  /** measures still to be taken on the house, each alone */
  readonly measures: readonly PricedMeasure[];
  /** K that the coldest hour gains by the store */
  readonly coldestHourGain: number;
  /** h a year below the crop's killing limit that the store avoids */
  readonly cropHoursAvoided: number;
  /** true where the study's house has no heater of its own */
  readonly runsFree: boolean;
}
