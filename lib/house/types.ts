/** What the house chapter gives. @module */
import type { CropYear } from "./crop/crop_year.ts";
import type { Notice } from "../basics/mod.ts";
import type { HouseGeometry } from "./skin/types.ts";
import type { SoilLayer, SoilResult } from "../soil/mod.ts";
import type { LossPart } from "./skin/losses.ts";

export type { CurtainInputs, DullDays, GlazingSnow, HouseInputs, HouseShape } from "./fields.ts";
export type { Monthly } from "../basics/fields.ts";
export type { HouseBoundary, HouseMean, HouseStep, TubesAnswer } from "./air/boundary.ts";
export type { HouseModel, MassStore } from "./air/house_model.ts";
export type { HouseFlows, HouseState } from "./air/state.ts";
export type { HouseGeometry, SkinPart } from "./skin/types.ts";

/** Heat taken to the year's end, kWh, by part; positive warms the house. */
export interface HouseLedger {
  /** from the sun */
  readonly solar: number;
  /** through the glazing */
  readonly glazing: number;
  /** through walls and roofs that let no light in */
  readonly opaque: number;
  /** with air through the cracks */
  readonly leakage: number;
  /** with air through the vents */
  readonly vent: number;
  /** from the back-up heater */
  readonly heater: number;
  /** floor soil as a whole, of which `edge` left sideways to the outside ground */
  readonly floor: number;
  /** through the edge of the floor */
  readonly edge: number;
  /** sensible turned into vapour (negative) */
  readonly evaporation: number;
  /** from the mass */
  readonly mass: number;
  /** stored in the air over the year */
  readonly air: number;
  /** sum of all over the sum of what went in */
  readonly residual: number;
}

/** Water taken to the year's end, kg. */
export interface HouseWater {
  /** water evaporated */
  readonly evaporated: number;
  /** condensed on the cover */
  readonly condensed: number;
  /** water carried out */
  readonly vented: number;
  /** change of content */
  readonly stored: number;
  /** what the balance leaves unexplained */
  readonly residual: number;
}

/** Hourly year of the house, 8760 each. */
export interface HouseYear {
  /** degC */
  readonly airTemperature: Float64Array;
  /** 0 to 1 */
  readonly relativeHumidity: Float64Array;
  /** W */
  readonly heater: Float64Array;
  /** from the sun */
  readonly solar: Float64Array;
  /** with air through the vents */
  readonly vent: Float64Array;
  /** 0 to 1 */
  readonly ventOpening: Float64Array;
  /** degC of the barrels; of the air where there are none */
  readonly massTemperature: Float64Array;
  /** degC of the masonry; of the air where there is none */
  readonly masonryTemperature: Float64Array;
  /** W from the floor soil; negative while it takes heat */
  readonly floor: Float64Array;
  /** through the glazing */
  readonly glazing: Float64Array;
  /** through walls and roofs that let no light in */
  readonly opaque: Float64Array;
  /** with air through the cracks */
  readonly leakage: Float64Array;
  /** sensible turned into vapour (negative) */
  readonly evaporation: Float64Array;
  /** kg/s */
  readonly condensed: Float64Array;
  /** water evaporated */
  readonly evaporated: Float64Array;
}

/** What the study's own heater can do in the screening year. */
export interface OwnHeater {
  /** W */
  readonly power: number;
  /** kWh a year it gives */
  readonly heat: number;
  /** degC */
  readonly coldestHour: number;
  /** h a year below 0 degC */
  readonly hoursBelowFreezing: number;
  /** h a year in which it runs flat out and the house still falls below the set point */
  readonly hoursTooSmall: number;
}

/**
 * Result of the house chapter. Its years are screening years: the floor soil is a set of separate
 * columns. What the study says of the house without a store comes from the store chapter's year with
 * the fan never on, where that chapter is run.
 */
export interface HouseResult {
  /** geometry worked out from the inputs */
  readonly geometry: HouseGeometry;
  /** W/K by part: steady, night, curtain as the inputs say */
  readonly lossParts: readonly LossPart[];
  /** W/K, sum of the parts */
  readonly lossCoefficient: number;
  /** W at the 99.6 % design hour and the heating set point */
  readonly peakHeatLoss: number;
  /** kWh to hold the heating set point through the screening year, unlimited heater */
  readonly heatDemand: number;
  /** the screening year with the study's own heater; null where there is none */
  readonly ownHeater: OwnHeater | null;
  /** degC, free-running screening year */
  readonly coldestHour: number;
  /** free-running screening year */
  readonly freeRunning: HouseYear;
  /** held at the heating set point by a heater without limit */
  readonly heated: HouseYear;
  /** heat balance of the free-running year */
  readonly freeRunningLedger: HouseLedger;
  /** heat balance of the year with heater */
  readonly heatedLedger: HouseLedger;
  /** water balance of the free-running year */
  readonly freeRunningWater: HouseWater;
  /** kWh of heat demand in each month */
  readonly heatDemandByMonth: readonly number[];
  /** kg of water condensed on the cover in each month, free running */
  readonly condensateByMonth: readonly number[];
  /** the free-running screening year against freezing and the crop's limits */
  readonly crop: CropYear;
  /** the same for the outdoor air */
  readonly cropOutdoors: CropYear;
  /** kWh a year that leave the floor soil sideways to the ground outside, free running */
  readonly edgeLoss: number;
  /** first hour of the 168 with the lowest mean outside temperature */
  readonly coldestWeekStart: number;
  /** edge loss, W/(m K) of perimeter */
  readonly edgeLossFactor: number;
  /** messages for the reader */
  readonly notices: readonly Notice[];
}

/** What the house takes of the ground. */
export interface HouseGround extends Pick<SoilResult, "properties" | "wave"> {
  /** soils from the surface down, whose water freezes under the floor; absent: nothing freezes */
  readonly layers?: readonly SoilLayer[] | undefined;
}
