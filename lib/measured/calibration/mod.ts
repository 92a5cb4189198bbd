/** Calibration of a built house and store from its log, stage by stage. @module */
export type { Estimate, Stage } from "./estimate.ts";
export { type TracerDecay, tracerDecay } from "./tracer_decay.ts";
export { leakageLaw, type LeakageNight } from "./leakage_law.ts";
export { type PressureTest, pressureTest } from "./pressure_test.ts";
export { type HouseRecord, type QuietHours, quietHours, type QuietRule } from "./quiet_hours.ts";
export { quietNights, type QuietQuestion } from "./quiet_nights.ts";
export {
  fanSpeedOf,
  flowFromMeter,
  flowFromPressure,
  flowFromSpeeds,
  type FlowReadings,
  type PressureDrop,
  type SpeedTraverse,
} from "./air_flow.ts";
export { conductivityOf, type SoilPair, soilPair } from "./soil_pair.ts";
export {
  type HeatEquationStage,
  soilHeatEquation,
  type SoilProfile,
} from "./soil_heat_equation.ts";
export { tubeFilm, type TubeRecord } from "./tube_film.ts";
export { type HumidityHouse, type HumidityRecord, leafAreaOf } from "./leaf_area.ts";
export {
  agreementOn,
  type HeldWeeks,
  heldWeeks,
  type JudgedAgreement,
  type Misses,
  missesOn,
  type Sides,
} from "./hold_out.ts";
export {
  type FittedKey,
  type FittedStudy,
  fittedStudy,
  type LeftKey,
  type Prior,
} from "./fitted_study.ts";
export { jointFit, type JointParameter, type JointStage, type Unidentified } from "./joint.ts";
