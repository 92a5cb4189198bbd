/** What the stages of a log are asked from. @module */
import type { HouseInputs } from "../../house/types.ts";
import type { StoreRequest } from "../../store/mod.ts";
import type { LoggedHouse } from "./logged_house.ts";
import type { StageSetting } from "./types.ts";

/** Log and study of the stages. */
export interface StagesQuestion {
  /** log */
  readonly house: LoggedHouse;
  /** study */
  readonly setting: StageSetting;
  /** house section of the study */
  readonly inputs: HouseInputs;
  /** the study's store, with its weather */
  readonly plan: StoreRequest;
}
