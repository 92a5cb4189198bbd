/** What notebooks show: tables, answers, cautions, exercises, and the run they belong to. @module */
export { type DisplayItem as ShownItem, show } from "./kit/show.ts";
export { currentRun } from "./kit/current_run.ts";
export { answer, type AnswerWords, type Light } from "./kit/answer.ts";
export { type NamedNumber, numbers, paragraph, table } from "./kit/table.ts";
export { type Caution, caution, CAUTIONS, cautionsOf, notices } from "./kit/caution.ts";
export {
  type Exercise,
  exerciseItem,
  judge,
  type UsualSlip,
  type Verdict,
} from "./kit/exercise.ts";
export { exercise, EXERCISES } from "./exercise_list.ts";
export { figuresTable, figureTexts } from "./kit/figures_table.ts";
export { type InputRow, inputRows, inputs, type InputSection, siteInputs } from "./kit/inputs.ts";
export { drawing, type SheetName } from "./kit/drawing.ts";
export { tubesAtCounts, tubesAtFlows } from "./kit/variant.ts";
export { climateAnswer, coldSpellTable } from "./climate/answer.ts";
export { cropLimitTable, designTable, qualityTable, shortDayTable } from "./climate/tables.ts";
export { estimatesTable, groundWaterTable, soilLayerTable } from "./soil/tables.ts";
export {
  penetrationTable,
  soilAnswer,
  soilPropertyTable,
  soilSensitivityTable,
} from "./soil/answer.ts";
export {
  frostTable,
  geometryTable,
  houseAnswer,
  houseLedgerTable,
  measuresTable,
  skinTable,
} from "./house/answer.ts";
export {
  greenhouseLog,
  greenhouseLogItems,
  LOG_VARIABLE,
  RECORDED_SCORES,
  type ScoreRow,
  scoreRows,
} from "./measured/greenhouse_log.ts";
export {
  tubeCountEffects,
  tubeCountTable,
  type TubeCountWords,
  tubesAnswer,
  tubeTable,
} from "./tubes/answer.ts";
export {
  fieldSearchTable,
  fouledTable,
  type MaterialRow,
  materialRows,
  materialTable,
} from "./tubes/choice_tables.ts";
export { fanHoursPerDay, fieldSearch, type SearchSources } from "./tubes/field_search.ts";
export { type AlongRow, type TubeAlong, tubeAlong } from "./tubes/tube_along.ts";
export { type FouledRow, fouledTubes, slopeThatDrains } from "./tubes/tube_water.ts";
export {
  balanceTable,
  blockedTable,
  drillingTable,
  wantedHeaderTable,
} from "./headers/choice_tables.ts";
export { elevationTable, fanChoiceTable, fanPointWords } from "./fan/choice_tables.ts";
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
} from "./fan/fan_variants.ts";
export { headersAnswer, headerSizeTable, workmanshipTable } from "./headers/answer.ts";
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
} from "./headers/header_variants.ts";
export { INLET_SWING, type LengthStudy, tubeHeatByLength } from "./tubes/tube_variants.ts";
export { fanAnswer, fanSpeedTable, fanTable } from "./fan/answer.ts";
export {
  earlyYearTable,
  emptyingTable,
  freezingTable,
  quartersTable,
  seasonTable,
  storeAnswer,
  storeTable,
  withWithoutTable,
} from "./store/answer.ts";
export {
  controlTable,
  heaterTable,
  quartersWords,
  recoveryTable,
  variantsTable,
  waysTable,
  waysWords,
} from "./store/tables.ts";
export { firstSteps, type FirstStepSources, firstStepsWords } from "./study/first_steps.ts";
export { defaultsTable, studyAnswer } from "./study/answer.ts";
