/** The calibration of a study from its logs, and its grade where the truth is known. @module */
export { calibrate } from "./calibration.ts";
export {
  type Grade,
  type GradedFault,
  type GradedValue,
  gradeMine,
  type KnownValue,
  type LearnersValue,
} from "./grade.ts";
export type {
  Believed,
  Calibration,
  CalibrationRequest,
  HeldOutScore,
  ModelFactors,
  ReplayedDay,
  StageRow,
  StageSetting,
} from "./types.ts";
export { type AheadHour, lookAhead, type Tomorrow, type TomorrowRequest } from "./tomorrow.ts";
