/** What the ladder takes and gives. @module */
import type { houseMeasures } from "../house/mod.ts";
import type { HouseInputs } from "../house/types.ts";
import type { StoreRequest } from "../store/site.ts";
import type { Alternative } from "./alternatives.ts";
import type { WorthRequest } from "./request.ts";

/** A year of a house on the ladder. */
export interface LadderYear {
  /** kWh to hold the set point */
  readonly heat: number;
  /** kWh of the fans' electricity in the same year */
  readonly fanEnergy: number;
  /** h below the crop's killing limit without a heater; null where they were not counted */
  readonly hoursBelowCropLimit: number | null;
}

/** What the ladder is built from. */
export interface LadderQuestion {
  /** the store as planned; every year of the ladder is run in as many slices */
  readonly request: StoreRequest;
  /** what the worth chapter is computed from: prices, terms and the field's quantities */
  readonly worth: WorthRequest;
  /** the store chapter's own year with the store; it is run where not given */
  readonly withStore?: LadderYear;
  /** measures offered on a house; the usual ones where not given */
  readonly offered?: typeof houseMeasures;
}

/** One step; money in the currency of the prices. */
export interface LadderRung extends Pick<Alternative, "name" | "kind" | "change"> {
  /** first cost of this step, money */
  readonly capital: number;
  /** first cost of this step and those before, money */
  readonly capitalSoFar: number;
  /** kWh a year that this step saves on the house with those before */
  readonly saved: number;
  /** kWh a year that it and those before save */
  readonly savedSoFar: number;
  /** levelised cost of a kWh that this step saves, money */
  readonly costOfHeat: number;
  /** present value that this step saves, money; above 0 */
  readonly netSavings: number;
  /** present value that it and those before save, money */
  readonly netSavingsSoFar: number;
  /** h a year below the crop's killing limit that it avoids without a heater */
  readonly cropHoursAvoided: number;
  /** the year with it */
  readonly after: LadderYear;
}

/** What is left when no step pays any more. */
export interface LadderRest extends Pick<Alternative, "name" | "kind" | "change" | "capital"> {
  /** kWh a year that it would still save; null where it was not run */
  readonly saved: number | null;
  /** levelised cost of a kWh that it would still save, money; null where open */
  readonly costOfHeat: number | null;
  /** why it is no step */
  readonly why: "no price" | "costs more than it saves" | "costs more than all heat still needed";
}

/** The plan that is built step by step. */
export interface MeasureLadder {
  /** the house as it is */
  readonly asItIs: LadderYear;
  /** steps in the order they are built; empty where none pays */
  readonly rungs: readonly LadderRung[];
  /** the house with all its steps */
  readonly house: HouseInputs;
  /** true where the store is one of the steps */
  readonly withStore: boolean;
  /** currency of the prices */
  readonly currency: string;
  /** measures and store that are no step, on the house with all steps */
  readonly rest: readonly LadderRest[];
}
