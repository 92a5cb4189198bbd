/** The store chapter: tubes, soil and house together over days, seasons and years. @module */
export { ridgeExcess, type TwoLayers, upperExcess, wallPlume } from "./air/stratification.ts";
export type * from "./types.ts";
export { storeChapter } from "./compute.ts";
export {
  type PlateAir,
  type PlateCollector,
  plateEfficiency,
  type PlateHoles,
  type PlateTransfer,
  plateTransfer,
  USUAL_SUCTION,
  usualCollector,
} from "./air/collector.ts";
export {
  type HouseAlone,
  type HouseWay,
  houseWays,
  type KnownYear,
  type KnownYears,
  waysCompared,
} from "./variants/ways.ts";
export { PITCH_RATIO } from "./air/collector.ts";
export { suctionFault } from "./air/collector_year.ts";
export { HOUSE_BAND, INTAKE_BAND, NEAR_FREEZING, STORE_BAND } from "./control.ts";
export type { StoreRequest } from "./site.ts";
export {
  type ComparedVariant,
  STORE_VARIANTS,
  type StoreVariant,
  storeVariants,
  type VariantRow,
  variantsCompared,
} from "./variants/variants.ts";
export { store } from "./chapter.ts";
export { coarseRequest, type StoreEarlier, storeRequest, type StoreStudy } from "./takes.ts";
export { type HouseWinter, type PairedWinter, type WinterSet, winterSteps } from "./winters/mod.ts";
export { chargeByQuarter, type QuarterCharge } from "./charge_by_quarter.ts";
export { type Condensate, condensateOfYear } from "./condensate.ts";
export { fanByMonth, fanHoursPerDay, type FanMonth, type FanYear } from "./fan_by_month.ts";
export { type FieldSearch, fieldSearch, type FieldSearchQuestion } from "./field_search.ts";
export { type FirstQuarter, firstQuarter, type ReturnedPart } from "./first_quarter.ts";
export { type FirstStep, firstSteps, type FirstStepsQuestion } from "./first_steps.ts";
export { type FirstYear, firstYears } from "./first_years.ts";
export { goodDay, winterDays } from "./good_days.ts";
export { heatByDay, type HeatDay } from "./heat_by_day.ts";
export { heatByMonth, type HeatMonth } from "./heat_by_month.ts";
export { type HeaterPeaks, heaterPeaks } from "./heater_peaks.ts";
export { yearFlows } from "./ledger/year_flows.ts";
export { type RankedKnown, type RankedMeasure, type RankedYear, rankMeasures } from "./ranking.ts";
export { type CutCourse, type CutWay, type PowerCut, powerCut } from "./power_cut.ts";
export type { CutStart, CutState, CutStates } from "./cut_states.ts";
export {
  type SolarFan,
  solarFan,
  type SolarFanGiven,
  type SolarMonth,
  type SolarPanel,
} from "./solar_fan.ts";
export { existingHouse } from "./existing_house.ts";
export {
  type BedDepth,
  bedTemperatures,
  type BedYear,
  type RootZone,
  rootZone,
} from "./root_zone.ts";
export { recoveryByDay, type SeasonRecovery } from "./recovery_by_day.ts";
export { type Fineness } from "./request.ts";
export type { MeshSettings } from "./ground/mesh.ts";
export { type Refinement, REFINEMENTS } from "./fineness.ts";
export {
  type ComputedSize,
  type ResolutionRow,
  RESOLVED,
  RESOLVED_HEATS,
  type ResolvedFigures,
  type ResolvedHeat,
  type StoreResolution,
  storeResolution,
} from "./resolution.ts";
export { type RunningTotals, runningTotals } from "./running_totals.ts";
export {
  type DailyTemperatures,
  type HoursBelow,
  type StoreSummary,
  type SummarisedStore,
  summariseStore,
} from "./summary.ts";
export {
  type StrongestHour,
  strongestHour,
  type StrongestHourQuestion,
  tubeAtStrongestHour,
} from "./tube_along.ts";
export {
  NIGHT_HOURS,
  type TubeCountQuestion,
  type TubeCountRow,
  type TubeCounts,
  tubeCounts,
} from "./tube_count.ts";
export { type StoreDay, type StoreWeek, storeWeek } from "./week.ts";
