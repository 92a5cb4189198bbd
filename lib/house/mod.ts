/** The house chapter: geometry, hourly heat and moisture balance, what it loses without a store. @module */
export type * from "./types.ts";
export { LEAKAGE_DIFFERENCE, leakageRate } from "./balance.ts";
export { houseChapter, withHeater } from "./chapter.ts";
export { type Crop, CROPS, findCrop } from "./crop_table.ts";
export { type GroundSection, type SectionHeat, sectionHeat } from "./edge_loss.ts";
export { type GlazingFilms, outsideFilm, splitGlazing, withCurtain } from "./films.ts";
export {
  type ColumnStepper,
  columnStepper,
  type EdgeInputs,
  edgeLoss,
  type FloorColumn,
  floorColumn,
  type FloorColumnInputs,
} from "./floor_column.ts";
export { houseGeometry } from "./geometry.ts";
export { findGlazing, type Glazing, GLAZINGS } from "./glazing_table.ts";
export { checkLog, checkLogByBlocks, type LogCheck, type LogHalves } from "./log_check.ts";
export { fitLog, type HeldOut, LOG_START, type LogScore, scoreLog } from "./log_fit.ts";
export { cutLog, type LogParameters, type LogPrediction, replayLog } from "./log_replay.ts";
export { type GreenhouseLog, readGreenhouseLog } from "./log_table.ts";
export {
  type LossConditions,
  type LossPart,
  lossParts,
  nightConductance,
  nightTransmittance,
} from "./losses.ts";
export { MASS_FREEZING_RANGE, massContent, type MassStore } from "./mass.ts";
export { houseModel, initialHouseState } from "./model.ts";
export { type HouseMeasure, houseMeasures, type RankedMeasure, rankMeasures } from "./ranking.ts";
export {
  psychrometricConstant,
  type ReferenceDay,
  type ReferenceEvaporation,
  referenceEvaporationDay,
  referenceEvaporationHour,
  type ReferenceHour,
  windAtTwoMetres,
} from "./reference_evaporation.ts";
export { type Slab, slabHeat } from "./slab_loss.ts";
export { glazedPlaneMonths, type PlaneMonth, type PlaneMonths } from "./plane_months.ts";
export { glazingOptics, roomAbsorptance } from "./solar_gain.ts";
export {
  coldestRun,
  durationCurve,
  exceededIn,
  firstHourBelow,
  hoursBelow,
  lastHourBelow,
  monthlyHeat,
  monthlySums,
} from "./statistics.ts";
export { stepHouse } from "./step.ts";
export {
  type CanopyState,
  canopyTranspiration,
  leafFilmResistance,
  saturationSlope,
  stomatalResistance,
  type StomataState,
} from "./transpiration.ts";
export { runHouseYear, type YearRun } from "./year.ts";
export { emptyHouseYear, recordStep } from "./year_record.ts";
export {
  findWall,
  layerResistance,
  layersTransmittance,
  type Wall,
  WALL_FILMS,
  WALL_MATERIALS,
  type WallLayer,
  type WallMaterial,
  WALLS,
} from "./walls.ts";
