/** Headers: how the air shares itself over the tubes. @module */
export type { HeaderLine, HeaderNetwork, NetworkFlow, NetworkTube, Port } from "./network.ts";
export type { JunctionModel } from "./junctions.ts";
export { findJunctions, junctionRise } from "./junctions.ts";
export { inletLoss, reentrantInletLoss, roundedInletLoss, stubObstruction } from "./inlets.ts";
export { solveNetwork } from "./solve.ts";
export type { HeaderLayout, HeadersInputs, HeadersResult, TubeInlet } from "./types.ts";
export type { SystemPoint } from "./types.ts";
export type { HeaderGroup } from "./build.ts";
export { groupNetwork, splitGroups } from "./build.ts";
export type { Evenness } from "./evenness.ts";
export { evenness, heatFactor } from "./evenness.ts";
export { solveParallel } from "./parallel.ts";
export type { AirState } from "./compute.ts";
export { headerGroups, headersChapter } from "./compute.ts";
export type { Balance } from "./orifices.ts";
export { balancingOrifices, orificeDiameter, orificeLoss } from "./orifices.ts";
export { randomSource } from "./random.ts";
export type { Spread, Workmanship, WorkmanshipResult } from "./workmanship.ts";
export { FLANGED, scatterWorkmanship } from "./workmanship.ts";
export type { SizedHeaders } from "./sizing.ts";
export { headerDiameterFor, headersOfSize } from "./sizing.ts";
export type { Fitting } from "./fittings.ts";
export { findFitting, FITTINGS, screenLoss } from "./fittings.ts";
export { fouledGroup } from "./fouling.ts";
export type { BuriedField, BuriedHeaders, HeaderRow, TubeEnd } from "./in_ground.ts";
export {
  bendLoss,
  bendLosses,
  buryHeaders,
  fieldFall,
  fieldPit,
  headerLength,
  holeDiameter,
} from "./in_ground.ts";
export type { FieldGeometry, FieldInputs } from "./field_geometry.ts";
export { buriedField, fieldGeometry } from "./field_geometry.ts";
export type { Hole, HoleLayout } from "./holes.ts";
export { holeLayout, largestHoleLayout } from "./holes.ts";
export type { BuildFault } from "./buildable.ts";
export { buildDoubts, buildFaults, headerCover } from "./buildable.ts";
export type { HouseOverPit } from "./pit_notices.ts";
export { pitNotices } from "./pit_notices.ts";
export { headers } from "./chapter.ts";
export type { BalanceRow, BalanceStudy } from "./balancing_plates.ts";
export { balanceStudy } from "./balancing_plates.ts";
export type { WorkmanshipStudy } from "./careless_ends.ts";
export { carelessEnds, workmanshipStudies } from "./careless_ends.ts";
export type { HeadersQuestion } from "./first_group.ts";
export { firstGroup } from "./first_group.ts";
export type { BlockedRow } from "./flooded_tubes.ts";
export { blockedTubes } from "./flooded_tubes.ts";
export type { HeadersVariants, HeaderVariant, LayoutVariant, WantedHeader } from "./variants.ts";
export { headersVariants, headerVariants, layoutVariants, wantedHeaders } from "./variants.ts";
export type { HeadersSummary, SummarisedHeaders, TubeShare } from "./summary.ts";
export { summariseHeaders } from "./summary.ts";
