/** What the house chapter takes and gives, and the contract between house and store. @module */
import type { Notice } from "../basics/mod.ts";
import type { Plane } from "../sun/types.ts";
import type { HouseInputs } from "./fields.ts";

export type { CurtainInputs, HouseInputs, HouseShape } from "./fields.ts";

/** One surface of the skin. */
export interface SkinPart {
  /** name for the reader */
  readonly name: string;
  /** lets light through or not */
  readonly kind: "glazed" | "opaque";
  /** m² */
  readonly area: number;
  /** orientation of the surface */
  readonly plane: Plane;
  /** W/(m² K), curtain open */
  readonly transmittanceHeat: number;
}

/** Geometry worked out from the inputs. */
export interface HouseGeometry {
  /** surfaces of the skin */
  readonly parts: readonly SkinPart[];
  /** m² */
  readonly floorArea: number;
  /** m³ */
  readonly volume: number;
  /** m around the floor */
  readonly perimeter: number;
}

/**
 * State of the house between steps. The floor soil is not in it: it belongs to whoever owns the
 * soil (the house chapter's own column, or the store's slices).
 */
export interface HouseState {
  /** degC */
  airTemperature: number;
  /** kg/kg */
  humidityRatio: number;
  /** degC of water barrels and other mass */
  massTemperature: number;
  /** W/m² K-free helper state a model may add, e.g. vents open 0..1 */
  ventOpening: number;
}

/**
 * What the owner of soil and tubes tells the house for one step of `stepSeconds`.
 *
 * Floor: heat into the soil q = floorConductance·(floorDriving − floorTemperature), W, where
 * floorDriving is the air-side driving temperature of the floor surface (film coefficient
 * `HouseModel.floorFilm`, convection + radiation) and floorTemperature the temperature the soil
 * would show without this step's flux: both already hold the soil's implicit response.
 *
 * Tubes: sensible heat to the house air = storeHeat + storeSlope·(airTemperature − storeReference),
 * W, positive warms the house, storeSlope ≤ 0; storeVapour is water vapour to the house, kg/s.
 */
export interface HouseBoundary {
  /** W/K, see above */
  readonly floorConductance: number;
  /** degC, see above */
  readonly floorTemperature: number;
  /** W, see above */
  readonly storeHeat: number;
  /** W/K, see above */
  readonly storeSlope: number;
  /** degC, see above */
  readonly storeReference: number;
  /** kg/s, see above */
  readonly storeVapour: number;
}

/** Heat flows of one step, W, mean over the step; positive warms the house air or surfaces. */
export interface HouseFlows {
  /** solar absorbed inside, all surfaces */
  solar: number;
  /** through glazing, incl. sky radiation and curtain, less the heat of condensation that comes back */
  glazing: number;
  /** through walls and roofs that let no light in */
  opaque: number;
  /** 0 in `stepHouse`: the edge loss belongs to whoever owns the soil */
  edge: number;
  /** with air through the cracks */
  leakage: number;
  /** with air through the vents */
  vent: number;
  /** from the back-up heater */
  heater: number;
  /** into the floor soil (negative when the floor warms the house) */
  floor: number;
  /** sensible from the tubes */
  store: number;
  /** sensible turned into vapour by crop and floor (negative) */
  evaporation: number;
  /** given up by the mass: minus what it stores (sun on it counts in `solar`) */
  mass: number;
  /** stored in the air */
  air: number;
  /** kg/s: crop and soil evaporation, condensation on the cover, carried out by leakage and vents */
  evaporated: number;
  /** condensed on the cover */
  condensed: number;
  /** carried out with leakage and vents */
  ventedVapour: number;
}

/** Heat per kelvin of the mass in its three ranges; any one unit, such as J/K or W/K of a step. */
export interface MassStore {
  /** above 0 degC */
  readonly thawed: number;
  /** while freezing, latent heat spread over the range */
  readonly freezing: number;
  /** below the freezing range */
  readonly frozen: number;
}

/** Outcome of one step. */
export interface HouseStep {
  /** state after the step */
  readonly state: HouseState;
  /** mean heat flows of the step */
  readonly flows: HouseFlows;
  /** driving temperature of the floor surface used with floorConductance, degC */
  readonly floorDriving: number;
}

/**
 * Everything that is constant, and hourly arrays worked out once. Plain data. `inputs` are read at
 * every step, so `{ ...model, inputs: { ...model.inputs, heaterPower: Infinity } }` is a house with
 * an unlimited heater; anything else that changes needs a new `houseModel`.
 */
export interface HouseModel {
  /** house section of the study */
  readonly inputs: HouseInputs;
  /** geometry worked out from the inputs */
  readonly geometry: HouseGeometry;
  /** W/(m² K), constant film of the floor surface towards air and surroundings */
  readonly floorFilm: number;
  /** hourly solar absorbed by floor, crop, mass and air, W */
  readonly solarFloor: Float64Array;
  /** W taken up by the crop */
  readonly solarCrop: Float64Array;
  /** W taken up by the mass */
  readonly solarMass: Float64Array;
  /** W that warms the air at once */
  readonly solarAir: Float64Array;
  /** degC the heater holds in each hour */
  readonly setPoint: Float64Array;
  /** radiation on all glazing outside and what comes in through it before losses back out, W */
  readonly solarOutside: Float64Array;
  /** 1 where the curtain is closed */
  readonly curtainClosed: Uint8Array;
  /** W/K of all glazing, films by wind, curtain as scheduled; driving temperature outside, degC */
  readonly glazingConductance: Float64Array;
  /** degC, hourly, outside driving temperature of the glazing */
  readonly glazingDriving: Float64Array;
  /** W/K and degC of the opaque parts */
  readonly opaqueConductance: Float64Array;
  /** degC, hourly, outside driving temperature of the opaque parts */
  readonly opaqueDriving: Float64Array;
  /** m² of glazing through which the inside radiates straight to the sky, long-wave transparency counted */
  readonly filmArea: Float64Array;
  /** W/m² that comes back through it */
  readonly filmLongwave: Float64Array;
  /** degC, kg/kg outside */
  readonly outsideTemperature: Float64Array;
  /** kg/kg, hourly, outdoor humidity ratio */
  readonly outsideRatio: Float64Array;
  /** m/s */
  readonly windSpeed: Float64Array;
  /** Pa, mean of the year */
  readonly pressure: number;
  /** kg of dry air in the house */
  readonly dryAirMass: number;
  /** J/K of air, plants and light structure */
  readonly airCapacity: number;
  /** J/K of barrels and masonry: above 0 degC, while the water freezes, below */
  readonly massStore: MassStore;
  /** W/K between barrels and air */
  readonly massConductance: number;
  /** m² of glazing on which vapour condenses; W/(m² K) inside film of the glazing */
  readonly coverArea: number;
  /** W/(m² K), inside film of the cover */
  readonly coverFilm: number;
  /** kg/s per unit of humidity ratio: wet floor to air */
  readonly floorVapour: number;
  /** leaf area over floor area */
  readonly leafArea: number;
  /** m */
  readonly leafLength: number;
}

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
  /** degC */
  readonly massTemperature: Float64Array;
  /** into the floor */
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

/** What the study's own heater can do in the house without a store. */
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

/** Result of the house chapter. */
export interface HouseResult {
  /** geometry worked out from the inputs */
  readonly geometry: HouseGeometry;
  /** W/K by part: steady, night, curtain as the inputs say */
  readonly lossParts: readonly { readonly name: string; readonly conductance: number }[];
  /** W/K, sum of the parts */
  readonly lossCoefficient: number;
  /** W at the 99.6 % design hour and the heating set point */
  readonly peakHeatLoss: number;
  /** kWh a year to hold the heating set point, unlimited heater */
  readonly heatDemand: number;
  /** the year with the study's own heater, no store; null where there is none */
  readonly ownHeater: OwnHeater | null;
  /** degC, free running, no store */
  readonly coldestHourNoStore: number;
  /** h a year */
  readonly hoursBelowFreezingNoStore: number;
  /** hour index of the first hour below 0 degC after 1 July, null where it never freezes */
  readonly firstFreezeNoStore: number | null;
  /** free running without a store */
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
  /** hour indices: last before and first after 1 July below 0 degC, below the crop's killing limit */
  readonly lastFreezeNoStore: number | null;
  /** hour index after 1 July, null where the crop lives */
  readonly firstCropKillNoStore: number | null;
  /** hour index before 1 July, null where the crop lives */
  readonly lastCropKillNoStore: number | null;
  /** h a year */
  readonly hoursBelowCropLimitNoStore: number;
  /** first hour of the 168 with the lowest mean outside temperature */
  readonly coldestWeekStart: number;
  /** edge loss, W/(m K) of perimeter */
  readonly edgeLossFactor: number;
  /** messages for the reader */
  readonly notices: readonly Notice[];
}
