/** The soil chapter: properties, undisturbed temperature, frost. @module */
export type * from "./types.ts";
export { soilChapter } from "./compute.ts";
export { coteKonradConductivity, johansenConductivity, solidConductivity } from "./conductivity.ts";
export type { CoteKonradSoil, JohansenSoil, WaterState } from "./conductivity.ts";
export { conductivityEstimates, soilProperties } from "./properties.ts";
export type { ConductivityEstimates, SoilMake } from "./properties.ts";
export { findSoil, SOILS } from "./table.ts";
export type { SoilGrain, SoilRow } from "./table.ts";
export {
  annualHarmonic,
  dampingDepth,
  fitWave,
  undisturbedTemperature,
  waveFrostDepth,
} from "./wave.ts";
export type { Harmonic } from "./wave.ts";
export {
  buildColumn,
  columnHeat,
  columnStepper,
  frostFront,
  startColumn,
  temperatureAtDepth,
} from "./column.ts";
export type {
  ColumnEnd,
  ColumnFlow,
  ColumnMesh,
  ColumnState,
  SoilColumn,
  SoilLayer,
} from "./column.ts";
export { apparentCapacity, conductivityAt, heatContent, temperatureOf } from "./enthalpy.ts";
export { ANNUAL_MESH, groundAtDepth, undisturbedGround } from "./ground.ts";
export type { GroundLedger, GroundQuestion, GroundYear } from "./ground.ts";
export { fitWaveToGround, monthlyWave } from "./ground_wave.ts";
export { listedLayerAt, saturatedSoil, soilWithMoisture, studyLayers } from "./layers.ts";
export { snowCover, snowCoverOfDepth, typicalSnowDepth } from "./snow.ts";
export type { SnowCover } from "./snow.ts";
export { BARE_SOIL, GRASS, surfaceForcing } from "./surface.ts";
export type { GroundCover, SurfaceForcing } from "./surface.ts";
export { dailyWeather } from "./weather.ts";
export type { DailyWeather } from "./weather.ts";
export { GROUND_PRIOR, groundPrior, groundRanges, STATION_SCORES, STUDENT_975 } from "./doubt.ts";
export type { DepthDoubt, Doubt, GroundPrior, GroundRanges, Range } from "./doubt.ts";
export { soil } from "./chapter.ts";
export {
  conductionPotential,
  type FreezingCurve,
  potentialLead,
  temperatureOfPotential,
} from "./potential.ts";
export {
  commonCurve,
  type FrozenLump,
  lumpsIn,
  potentialAt,
  temperatureAt,
} from "./frozen_lumps.ts";
export { latentContent, settleLumps } from "./lumps.ts";
export type { FreezingLumps, LumpState, LumpStep } from "./lumps.ts";
export type { FrostDay } from "./frost_days.ts";
export { frostDays } from "./frost_days.ts";
export type { SoilLayerRow } from "./layer_table.ts";
export { soilLayerRows } from "./layer_table.ts";
export type { Penetration } from "./penetration.ts";
export { penetration } from "./penetration.ts";
export type { PlausibleGround, TriedRange } from "./plausible_range.ts";
export { plausibleGround } from "./plausible_range.ts";
export type { SoilSummary, SummarisedSoil } from "./summary.ts";
export { summariseSoil } from "./summary.ts";
export type { EstimateMonth } from "./two_estimates.ts";
export { twoEstimates } from "./two_estimates.ts";
