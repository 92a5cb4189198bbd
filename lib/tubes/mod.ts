/** Tubes: friction, heat transfer, pressure, layout. @module */
export type { FieldLayout, FloorSize, TubePosition } from "./positions.ts";
export { floorExtents, tubePositions, tubesByLayer } from "./positions.ts";
export type { TubeFlow, TubeLoss } from "./pressure.ts";
export {
  crossSection,
  EXIT_LOSS,
  FLUSH_INLET_LOSS,
  tubeLoss,
  velocityPressure,
} from "./pressure.ts";
export type { Conduit } from "./friction.ts";
export {
  conduitOf,
  frictionColebrook,
  frictionFactor,
  frictionFromManning,
  frictionHaaland,
  frictionLaminar,
  LAMINAR_LIMIT,
  TURBULENT_LIMIT,
} from "./friction.ts";
export {
  effectiveness,
  filmCoefficient,
  frictionPetukhov,
  nusseltGnielinski,
  nusseltTube,
  reynoldsNumber,
  transferUnits,
} from "./film.ts";
export { findTube, readTubes, TUBES } from "./products.ts";
export type { TubesSurroundings } from "./compute.ts";
export { tubesChapter } from "./compute.ts";
export type { TubeProduct, TubesInputs, TubesResult } from "./types.ts";
export type { MoistAir, TubeMarch, WallExchange, WallPiece, WetTube } from "./wet.ts";
export { marchTube, wallExchange } from "./wet.ts";
export type { ComplexValue, PeriodicResponse, PeriodicTube, TubeSoil } from "./periodic.ts";
export { dailyHeatPerMetre, periodicResponse, soilAdmittance, soilRadius } from "./periodic.ts";
export type { Filling, FouledTube, FreeSection, Sag, StandingWater } from "./fouling.ts";
export { fouledTube, freeSection, standingWater } from "./fouling.ts";
export { airChangeFlow, flowLedCount, heatLedCount } from "./rule_of_thumb_count.ts";
export type { LengthQuestion, LengthRow } from "./marginal.ts";
export { kneeLength, marginalHeat, tubeHeat } from "./marginal.ts";
export type { FloorLimits } from "./floor_fit.ts";
export { depthBesideFooting, floorFit } from "./floor_fit.ts";
export { allowance } from "./allowances.ts";
export type { Pit, PitContents } from "./pit.ts";
export { pitRound, pitVolume } from "./pit.ts";
export type { FootingLine, Footings } from "./footing.ts";
export { footingAtRisk, footingLine, footingRemark, footingWarning } from "./footing.ts";
export type {
  DugField,
  FieldCandidate,
  PitOf,
  SearchChoices,
  SearchLimits,
  SearchPrices,
  SearchResult,
  SearchSetting,
} from "./search.ts";
export { paretoFront, searchFields } from "./search.ts";
export { DEMO_SEARCH_PRICES, readSearchPrices } from "./search_prices.ts";
export type { SearchAround, SearchSurroundings } from "./search_around.ts";
export { limitsAround, searchAround } from "./search_around.ts";
export { tubes } from "./chapter.ts";
export { type DesignAir, designAir } from "./design_air.ts";
export type { AlongQuestion, AlongRow, TubeAlong } from "./along.ts";
export { tubeAlong } from "./along.ts";
export type { TubeLengthRow } from "./effectiveness_by_length.ts";
export { effectivenessByLength } from "./effectiveness_by_length.ts";
export type { HeatedTubes } from "./exchanged_flow.ts";
export { exchangedFlow } from "./exchanged_flow.ts";
export type { HeatByLength, HeatLengthRow, TubesInSoil } from "./heat_by_length.ts";
export { heatByLength, INLET_SWING } from "./heat_by_length.ts";
export type { MaterialRow } from "./materials.ts";
export { materialRows } from "./materials.ts";
export type { FieldPick } from "./search_picks.ts";
export { costClasses, fieldPicks } from "./search_picks.ts";
export type { TubeSpread } from "./spread.ts";
export { tubeSpread } from "./spread.ts";
export type { TubesVariants } from "./variants.ts";
export { tubesAtCounts, tubesAtFlows, tubesVariants } from "./variants.ts";
export type { FouledRow } from "./water.ts";
export { fouledTubes } from "./water.ts";
export type { SummarisedTubes, TubesSummary } from "./summary.ts";
export { summariseTubes } from "./summary.ts";
