/** What notebooks show: tables, answers, cautions, exercises, and the run they belong to. @module */
export { type DisplayItem as ShownItem, show } from "./show.ts";
export { currentRun } from "./current_run.ts";
export { answer, type AnswerWords, type Light } from "./answer.ts";
export { type NamedNumber, numbers, paragraph, table } from "./table.ts";
export { type Caution, caution, CAUTIONS, cautionsOf, notices } from "./caution.ts";
export { type Exercise, exerciseItem, judge, type UsualSlip, type Verdict } from "./exercise.ts";
export { exercise, EXERCISES } from "./exercise_list.ts";
export { figuresTable, figureTexts } from "./figures_table.ts";
export { type InputRow, inputRows, inputs, type InputSection, siteInputs } from "./inputs.ts";
export { drawing, type SheetName } from "./drawing.ts";
export { tubesAtCounts, tubesAtFlows } from "./variants.ts";
export { climateAnswer, coldSpellTable } from "./answers/climate.ts";
export {
  cropLimitTable,
  designTable,
  qualityTable,
  shortDayTable,
} from "./answers/climate_tables.ts";
export { estimatesTable, groundWaterTable, soilLayerTable } from "./answers/soil_tables.ts";
export {
  penetrationTable,
  soilAnswer,
  soilPropertyTable,
  soilSensitivityTable,
} from "./answers/soil.ts";
export {
  frostTable,
  geometryTable,
  houseAnswer,
  houseLedgerTable,
  measuresTable,
  skinTable,
} from "./answers/house.ts";
export {
  greenhouseLog,
  greenhouseLogItems,
  LOG_VARIABLE,
  RECORDED_SCORES,
  type ScoreRow,
  scoreRows,
} from "./greenhouse_log.ts";
export {
  tubeCountEffects,
  tubeCountTable,
  type TubeCountWords,
  tubesAnswer,
  tubeTable,
} from "./answers/tubes.ts";
export {
  fieldSearchTable,
  fouledTable,
  type MaterialRow,
  materialRows,
  materialTable,
} from "./answers/tube_choice.ts";
export { fanHoursPerDay, fieldSearch, type SearchSources } from "./field_search.ts";
export { type AlongRow, type TubeAlong, tubeAlong } from "./tube_along.ts";
export { type FouledRow, fouledTubes, slopeThatDrains } from "./tube_water.ts";
export {
  balanceTable,
  blockedTable,
  drillingTable,
  wantedHeaderTable,
} from "./answers/header_choice.ts";
export { elevationTable, fanChoiceTable, fanPointWords } from "./answers/fan_choice.ts";
export {
  type ElevationTrial,
  fanChoices,
  fanCounts,
  fanElevations,
  type FanMonth,
  fanMonths,
  type FanSources,
  fanSpeeds,
  type FanTrial,
  standbyEnergy,
} from "./fan_variants.ts";
export { headersAnswer, headerSizeTable, workmanshipTable } from "./answers/headers.ts";
export {
  type BalanceStudy,
  balanceStudy,
  type BlockedRow,
  blockedTubes,
  carelessEnds,
  type HeaderVariant,
  headerVariants,
  type LayoutVariant,
  layoutVariants,
  type WantedHeader,
  wantedHeaders,
  workmanshipStudies,
  type WorkmanshipStudy,
} from "./header_variants.ts";
export { INLET_SWING, type LengthStudy, tubeHeatByLength } from "./tube_variants.ts";
export { fanAnswer, fanSpeedTable, fanTable } from "./answers/fan.ts";
export {
  earlyYearTable,
  emptyingTable,
  freezingTable,
  quartersTable,
  seasonTable,
  storeAnswer,
  storeTable,
  withWithoutTable,
} from "./answers/store.ts";
export {
  controlTable,
  heaterTable,
  quartersWords,
  recoveryTable,
  variantsTable,
  waysTable,
  waysWords,
} from "./answers/store_more.ts";
export { firstSteps, type FirstStepSources, firstStepsWords } from "./first_steps.ts";
export { defaultsTable, studyAnswer } from "./answers/study.ts";
