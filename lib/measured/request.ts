/** What the measured chapter is given. @module */
import type { StoreBody } from "./balance.ts";
import type { SeasonSetting } from "./logged_season.ts";
import type { PlannedYear } from "./plan_beside_log.ts";
import type { MeasuredInputs } from "./types.ts";

/** What the chapter is given. */
export interface MeasuredRequest {
  /** section of the study */
  readonly inputs: MeasuredInputs;
  /** place and fan */
  readonly setting: SeasonSetting;
  /** the plan; null where there are no logs */
  readonly plan: PlannedYear | null;
  /** the soil of the store; null where there are no logs */
  readonly body: StoreBody | null;
}
