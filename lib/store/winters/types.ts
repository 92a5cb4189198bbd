/** What runs through many winters are asked and answer. @module */
import type { ClimateYear, MonthlyNormals, Place } from "../../climate/types.ts";
import type { CropYear } from "../../house/mod.ts";
import type { HouseState } from "../../house/types.ts";
import type { ControlState } from "../control.ts";
import type { ReducedStore } from "../runs.ts";

/** Winters to run: made, or measured as they are. */
export type WinterSet = MadeWinters | MeasuredWinters;

/** Measured winters. */
export interface MeasuredWinters {
  /** years that follow one another, the oldest first: one more than winters */
  readonly years: readonly ClimateYear[];
}

/** Winters to make. */
export interface MadeWinters {
  /** monthly normals, with what is known of the spread between years */
  readonly normals: MonthlyNormals;
  /** where */
  readonly place: Place;
  /** whole number that picks all of them */
  readonly seed: number;
}

/** House and ground on 1 July, the ground settled under the mean climate. */
export interface FirstOfJuly {
  /** states of the reduced soil */
  readonly soil: Float64Array;
  readonly house: HouseState;
  readonly control: ControlState;
  /** kg on the wall of each segment */
  readonly water: Float64Array;
  /** J and kg of vapour the house owes to the tubes */
  readonly owed: number;
  readonly vapourOwed: number;
  /** whether the fan ran in any of the years before */
  readonly fanRan: boolean;
}

/** Which start is wanted. */
export interface StartQuestion extends ReducedStore {
  /** whether the fan may run */
  readonly fan: boolean;
  /** true: a heater without limit holds the set point; false: the house runs free */
  readonly heated: boolean;
}

/** A store or its baseline with its two starts. */
export interface WinterWay {
  readonly store: ReducedStore;
  readonly free: FirstOfJuly;
  readonly held: FirstOfJuly;
}

/** Some winters, one after the other. */
export interface WintersQuestion {
  /** of measured ones, the years of this question alone */
  readonly set: WinterSet;
  /** place of the first winter, from 0, and how many */
  readonly from: number;
  readonly count: number;
  readonly withStore: WinterWay;
  readonly without: WinterWay;
}

/** A house through one winter, 1 July to 30 June. */
export interface HouseWinter {
  /** degC, coldest hour of the free-running house */
  readonly coldestHour: number;
  /** the free-running house against the limits of its crop */
  readonly crop: CropYear;
  /** kWh to hold the set point */
  readonly backupHeat: number;
  /** W, highest hour of the heater that holds it */
  readonly heaterPeak: number;
  /** kWh of the fans' electricity while the set point is held */
  readonly fanEnergy: number;
}

/** One winter with the store and without. */
export interface PairedWinter {
  /** place of the winter, from 0 */
  readonly winter: number;
  /** degC, coldest hour outdoors */
  readonly coldestOutdoors: number;
  /** with the store */
  readonly withStore: HouseWinter;
  /** without it */
  readonly without: HouseWinter;
}
