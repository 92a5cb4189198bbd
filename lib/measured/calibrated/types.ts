/** What the calibration of a study takes and gives. @module */
import type { HouseInputs } from "../../house/types.ts";
import type { StoreRequest } from "../../store/mod.ts";
import type { Estimate, Stage } from "../calibration/estimate.ts";
import type { Prior } from "../calibration/fitted_study.ts";
import type { JudgedAgreement, Misses, Sides } from "../calibration/hold_out.ts";
import type { JointStage } from "../calibration/joint.ts";
import type { LogTexts } from "../fields.ts";
import type { SeasonSetting } from "../logged_season.ts";

/** A value that the study had before the log. */
export interface Believed extends Prior {
  /** key of the study, such as "house.leakage" */
  readonly key: string;
  /** value of the study, in the unit of the estimate */
  readonly value: number;
}

/** What the stages need of the study. */
export interface StageSetting extends SeasonSetting {
  /** days that no fit may see, or `never` */
  readonly holdOut: string;
  /** m³/s that the fans were to move while charging and while discharging */
  readonly plannedFlow: { readonly charge: number; readonly discharge: number };
  /** the study's `fan.speed`, a ratio */
  readonly fanSpeed: number;
  /** J/(m³ K) of the study's soil */
  readonly heatCapacity: number;
  /** W/(m K) of the study's soil */
  readonly conductivity: number;
}

/** What the calibration is computed from. */
export interface CalibrationRequest {
  /** map and logs; null where the study names none, and then nothing else is there */
  readonly texts: LogTexts | null;
  /** what the stages need besides; null without logs */
  readonly setting: StageSetting | null;
  /** the study's store on few slices; null without logs */
  readonly plan: StoreRequest | null;
  /** the same whole; null without logs */
  readonly whole: StoreRequest | null;
  /** house section of the study; null without logs */
  readonly house: HouseInputs | null;
}

/** A stage of a log, or why it is not there. */
export interface StageRow {
  /** stage, for the reader */
  readonly name: string;
  /** what was found; null where these logs do not allow it */
  readonly stage: Stage | null;
  /** why it is not there, or what it would need; null where it is */
  readonly reason: string | null;
}

/** How well a model meets the log where the fit has seen it and where not. */
export interface HeldOutScore {
  /** plan or fitted model; both on the logged weather, where the chapter's plan is on the study's */
  readonly name: string;
  /** number of parameters that were fitted, taken off the count where the fit has seen the log */
  readonly parameters: number;
  /** heat moved by the air, hour by hour */
  readonly heat: Sides<JudgedAgreement>;
  /** the same by day */
  readonly heatByDay: Sides<JudgedAgreement>;
  /** K, air in the house by hour; null where it was not logged */
  readonly inside: Sides<Misses> | null;
  /** K, between the tubes by hour; null where it was not logged */
  readonly store: Sides<Misses> | null;
}

/** One day of the hold-out chart. */
export interface ReplayedDay {
  /** ISO day */
  readonly day: string;
  /** true where no fit has seen it */
  readonly held: boolean;
  /** kWh moved by the air in either direction, as logged */
  readonly measured: number;
  /** kWh in the same hours by the plan's model */
  readonly planned: number;
  /** kWh in the same hours by the fitted model */
  readonly fitted: number;
}

/** A calibration. */
export interface Calibration {
  /** why there is none; null where there is */
  readonly reason: string | null;
  /** stage by stage, in the order in which a builder would take them */
  readonly stages: readonly StageRow[];
  /** what the study believed of each key that a stage may give */
  readonly believed: readonly Believed[];
  /** all that counts together on the model of house and store; null where logs do not allow it */
  readonly joint: JointStage | null;
  /** estimates that go into the study: for each key the narrower of stage and joint fit */
  readonly chosen: readonly Estimate[];
  /** days held out, in words; null where none are */
  readonly heldWords: string | null;
  /** plan and fitted model on the logged weather; empty without a replay */
  readonly scores: readonly HeldOutScore[];
  /** day by day */
  readonly days: readonly ReplayedDay[];
  /** K, logged less fitted house air of night hours held out, for the band of the day ahead */
  readonly nightResiduals: readonly number[];
  /** ratios to the plan with which the fitted model ran */
  readonly factors: ModelFactors;
  /** share of the replayed hours whose weather was logged, 0 to 1 */
  readonly weatherLogged: number;
}

/** Ratios of the model to the study. */
export interface ModelFactors {
  /** ratio of the soil's conductivity, its heat capacity kept */
  readonly diffusivity: number;
  /** ratio of the leakage at rest and with wind */
  readonly leakage: number;
  /** ratio of the air flow of the fans */
  readonly airFlow: number;
  /** ratio of the film coefficient in the tubes */
  readonly film: number;
}
