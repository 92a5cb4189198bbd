/** What a year of the store is run with, moves on and reports. @module */
import type { ClimateYear } from "../../climate/types.ts";
import type { HouseBoundary, HouseModel, HouseState, HouseStep } from "../../house/types.ts";
import type { AnnualWave } from "../../soil/types.ts";
import type { ControlState } from "../control.ts";
import type { SoilEngine } from "../solver/engine.ts";
import type { StoreSite } from "../site.ts";
import type { StoreInputs } from "../types.ts";

/** One step of the house; the house chapter's or a stand-in. */
export type HouseStepper = (
  model: HouseModel,
  state: HouseState,
  hour: number,
  stepSeconds: number,
  boundary: HouseBoundary,
) => HouseStep;

/** What does not change during the years. */
export interface YearSetting {
  readonly site: StoreSite;
  readonly inputs: StoreInputs;
  readonly climate: ClimateYear;
  readonly wave: AnnualWave;
  readonly house: HouseModel;
  readonly stepHouse: HouseStepper;
  /** false: the fan never runs */
  readonly fan: boolean;
  /** a year's fan modes by short step, recorded before, that replace the control */
  readonly schedule?: Int8Array | undefined;
  /** true: short steps in every hour, also while the fan rests, for checks of the step's own error */
  readonly shortSteps?: boolean | undefined;
  /** first hour and number of hours; the whole year unless given */
  readonly from?: number | undefined;
  readonly hours?: number | undefined;
}

/** What moves on from year to year. */
export interface YearState {
  readonly engine: SoilEngine;
  house: HouseState;
  readonly control: ControlState;
  /** kg on the wall of each segment */
  readonly water: Float64Array;
  /** J the house still owes to the tubes (or the other way) from the last step's wet walls */
  owed: number;
  /** kg of vapour owed likewise */
  vapourOwed: number;
}

/** State at the start: soil as loaded in the engine, everything else at rest. */
export function startState(site: StoreSite, engine: SoilEngine, house: HouseState): YearState {
  return {
    engine,
    house: { ...house },
    control: { mode: 0, lasted: Infinity },
    water: new Float64Array(site.slices * site.field.tubes),
    owed: 0,
    vapourOwed: 0,
  };
}

/** Goes on in another engine of the same slices, with other steps, where a state stopped. */
export function carryOn(from: YearState, to: YearState): void {
  to.engine.load(from.engine.save());
  to.house = from.house;
  Object.assign(to.control, from.control);
  to.water.set(from.water);
  to.owed = from.owed;
  to.vapourOwed = from.vapourOwed;
}
