/** Logs of a built house, read, replayed, fitted and scored; fits and uncertainty. @module */
export * from "./ahead/mod.ts";
export * from "./calibrated/mod.ts";
export * from "./calibration/mod.ts";
export { checkLog, checkLogByBlocks, type LogCheck, type LogHalves } from "./log_check.ts";
export { fitLog, type HeldOut, LOG_START, type LogScore, scoreLog } from "./log_fit.ts";
export {
  chooseForm,
  type FormScore,
  judgeByHalves,
  judgeForm,
  type Stretch,
  STRETCHES,
} from "./log_choice.ts";
export { CHOSEN_FORM, FIRST_FORM, type LogForm, neighbourForms } from "./log_form.ts";
export { glassLight } from "./log_light.ts";
export { cutLog, type LogPrediction, replayLog } from "./log_replay.ts";
export type { LogParameters } from "./log_parameters.ts";
export { type GreenhouseLog, readGreenhouseLog } from "./log_table.ts";
export { type LogMean, type LogMeans, logMeans } from "./log_means.ts";
export { type HalfScores, RECORDED_SCORES, type ScoreRow, scoreRows } from "./score_table.ts";
export { type Agreement, agreement, AGREEMENT_LIMITS } from "./fit/agreement.ts";
export type { Certainty } from "./fit/certainty.ts";
export { type Fit, fitLeastSquares } from "./fit/least_squares.ts";
export {
  type Estimates,
  estimates,
  meansOfReadings,
  propagate,
  type Uncertain,
} from "./uncertainty/propagate.ts";
export type {
  Banded,
  ChannelSummary,
  HeatSums,
  HourlyHeat,
  Lift,
  LoggedBalance,
  LoggedDay,
  LoggedFlow,
  LoggedNight,
  LoggedSeason,
  LogText,
  LogTexts,
  MeasuredInputs,
  MeasuredResult,
  PlanAgreement,
  PlanBesideLog,
  PlannedAndMeasured,
  TestedDifference,
} from "./types.ts";
export { AIR_READINGS, type AirHeat, airHeat } from "./flows/air_heat.ts";
export {
  type Channel,
  type Finding,
  type FindingKind,
  type Log,
  LOG_FLAGS,
  type LogFile,
  type LogFlag,
  type NamedRows,
  type Quantity,
  type Sensor,
} from "./log/types.ts";
export { LOG_QUANTITIES, logQuantity, type LogQuantityRule } from "./log/quantities.ts";
export { channelsOf, soundValues } from "./log/channels.ts";
export { type LogOptions, type LogSource, readLog } from "./log/read_log.ts";
export type { LoggerMap, LogMap, SensorColumn } from "./log/map.ts";
export { parseLogMap } from "./log/map_file.ts";
export { findFaults } from "./log/find_faults.ts";
export {
  type ListedSensor,
  parseSensorList,
  type SensorListTable,
  writeSensorList,
} from "./log/sensor_list.ts";
export {
  type BlockedLimits,
  blockedLimits,
  type BlockedQuestion,
  type BlockedState,
} from "./plan/blocked.ts";
export { type BlockedRequest, type BlockedTubes, blockedTubes } from "./plan/blocked_tubes.ts";
export { type BlockedCheck, type BlockedDay, findBlocked } from "./plan/find_blocked.ts";
export {
  type Commissioning,
  commissioning,
  type CommissioningRow,
  type CommissioningStep,
  type CommissioningVerdict,
  judgeCommissioning,
} from "./plan/commissioning.ts";
export { findSensorKind, SENSOR_KINDS, type SensorKind } from "./plan/sensor_kinds.ts";
export {
  type PlannedSensor,
  type SensorPlan,
  sensorPlan,
  type SensorPlanRequest,
} from "./plan/sensor_plan.ts";
export {
  type CalibrationRow,
  type CertaintyRequest,
  type CertaintyRow,
  type PlanCertainty,
  planCertainty,
} from "./plan/certainty.ts";
export {
  type CalendarMonth,
  type CalendarRequest,
  type CalendarTask,
  maintenanceCalendar,
} from "./plan/calendar.ts";
export {
  type MonitoredField,
  type MonitoringPlan,
  monitoringPlan,
  type MonitoringRequest,
  monitoringTables,
} from "./plan/monitoring_plan.ts";
