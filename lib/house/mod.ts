/** The house chapter: geometry, hourly heat and moisture balance, what it loses without a store. @module */
export type * from "./types.ts";
export { leakageRate } from "./skin/leakage.ts";
export {
  type AssumedHouse,
  type AssumedYear,
  assumedYears,
  usualAssumptions,
} from "./assumptions.ts";
export { houseChapter, withHeater } from "./compute.ts";
export { openSky } from "./crop/canopy_cover.ts";
export { leafAreaByHour, leafAreaOfCrop } from "./crop/leaf_area.ts";
export { type Crop, CROPS, findCrop, NO_CROP, type Sprouting } from "./crop/crop_table.ts";
export {
  type GroundSection,
  type SectionHeat,
  sectionHeat,
  sidewaysOf,
  WING_DEPTH,
} from "./floor/edge_loss.ts";
export { usualCurtain, withCurtain } from "./skin/curtain.ts";
export {
  EMISSIVITY,
  type GlazingFilms,
  INSIDE_CONVECTION,
  outsideFilm,
  splitGlazing,
} from "./skin/films.ts";
export { type PaneSnow, paneSnow, type PaneWeather } from "./skin/pane_snow.ts";
export { glazingSnow, type GlazingSnowInputs } from "./skin/glazing_snow.ts";
export { planeInside } from "./skin/plane_inside.ts";
export {
  type EdgeInputs,
  edgeLoss,
  type FloorColumn,
  floorColumn,
  type FloorColumnInputs,
  WALL_WIDTH,
} from "./floor/floor_column.ts";
export {
  findFloorCover,
  FLOOR_COVERS,
  floorCoupling,
  type FloorCover,
  floorEvaporation,
  type FloorInputs,
} from "./floor/floor_cover.ts";
export type { ConductingLayer } from "./floor/edge_loss.ts";
export { type FloorStepper, floorStepper } from "./floor/floor_stepper.ts";
export { FLOOR_FILM } from "./skin/films.ts";
export { houseGeometry } from "./skin/geometry.ts";
export { findGlazing, type Glazing, GLAZINGS } from "./skin/glazing_table.ts";
export {
  type LossConditions,
  type LossPart,
  lossParts,
  nightConductance,
  nightTransmittance,
} from "./skin/losses.ts";
export { MASS_FREEZING_RANGE, massContent } from "./barrels_and_masonry.ts";
export { houseModel, initialHouseState } from "./air/model.ts";
export { type HouseMeasure, houseMeasures, type MeasureWork } from "./measures.ts";
export { type HouseUse, houseUses } from "./uses.ts";
export { glazedPlaneMonths, type PlaneMonth, type PlaneMonths } from "./skin/plane_months.ts";
export { glazingOptics, planeSeries, solarGain } from "./skin/solar_gain.ts";
export {
  beamLanding,
  type RoomSurface,
  type SunDirection,
  sunDirection,
} from "./skin/beam_landing.ts";
export { diffuseEnds, endedLight, type LightEnds, lightSurfaces } from "./skin/light_inside.ts";
export type { Corner, Outline } from "./skin/outline.ts";
export { lightByMonth, type LightMonth } from "./skin/light_by_month.ts";
export { spotViewFactor, viewFactors } from "./skin/view_factors.ts";
export { stepHouse } from "./air/step.ts";
export {
  type CanopyState,
  canopyTranspiration,
  CARBON_DIOXIDE,
  LEAF_DIFFERENCE,
  leafFilmResistance,
  openStomata,
  stomatalResistance,
  type StomataState,
} from "./crop/transpiration.ts";
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
} from "./skin/walls.ts";
export { house } from "./chapter.ts";
export { noStoreFigures, SCREENING_YEAR, type YearWithoutStore } from "./figures.ts";
export { houseFields } from "./fields.ts";
export { type CropYear, cropYear } from "./crop/crop_year.ts";
export { DAMP, type DampHours, dampHours } from "./air/damp_hours.ts";
export type { DayRange, YearBelow } from "../basics/mod.ts";
export { type ColdDay, type ColdestWeek, coldestWeek, type WeekSeries } from "./coldest_week.ts";
export { limitsOutdoors, type OutdoorLimit } from "./crop/limits_outdoors.ts";
export { type FreezingRange, freezingRange } from "./freezing_range.ts";
export { heatByMonth, type HeatMonth } from "./heat_by_month.ts";
export { humidityByMonth, type HumidityMonth } from "./humidity_by_month.ts";
export {
  ANGLES,
  type GlazedPlanes,
  glazedPlanes,
  type GlazingAngles,
  glazingAngles,
  type GlazingLight,
  glazingLight,
  type PlaneLight,
} from "./skin/glazing_light.ts";
export {
  leakageRange,
  type LossRow,
  lossRows,
  type LossShare,
  lossShares,
  type SkinAreas,
  skinAreas,
} from "./skin/loss_table.ts";
export {
  type HoursBelow,
  type HouseSummary,
  type SummarisedHouse,
  summariseHouse,
} from "./summary.ts";
export { type TemperatureMonth, temperaturesByMonth } from "./temperatures_by_month.ts";
export { type AirYear, cropLimitTable } from "./result_tables.ts";
