/** What stays the same from step to step of a house. @module */
import type { HouseInputs } from "../fields.ts";
import type { HouseGeometry } from "../skin/types.ts";

/** Heat per kelvin of the mass in its three ranges; any one unit, such as J/K or W/K of a step. */
export interface MassStore {
  /** above 0 degC */
  readonly thawed: number;
  /** while freezing, latent heat spread over the range */
  readonly freezing: number;
  /** below the freezing range */
  readonly frozen: number;
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
  /** W/(m² K), constant, between what drives the floor and its soil: the film towards air and surroundings, and mulch or paving under it */
  readonly floorFilm: number;
  /** W/(m² K), film of the floor's top surface alone, without what lies on the soil */
  readonly surfaceFilm: number;
  /** share of the skin's view, hourly, that is floor with no leaves over it */
  readonly floorView: Float64Array;
  /** hourly solar absorbed by floor, crop, mass and air, W */
  readonly solarFloor: Float64Array;
  /** W taken up by the crop */
  readonly solarCrop: Float64Array;
  /** W taken up by barrels and masonry */
  readonly solarMass: Float64Array;
  /** W that warms the air at once */
  readonly solarAir: Float64Array;
  /** W of that which rises with warm air along walls and under the roof */
  readonly solarRising: Float64Array;
  /** degC the heater holds in each hour */
  readonly setPoint: Float64Array;
  /** 1 on the days of the year on which the heater may run, else 0; absent: all year */
  readonly heatedDays?: Uint8Array | undefined;
  /** W of radiation on all glazing, outside */
  readonly solarOutside: Float64Array;
  /**
   * the series that change where the curtain closes in the dark for the cold inside; absent where it
   * does not
   */
  readonly shut?:
    | Pick<
      HouseModel,
      | "solarFloor"
      | "solarCrop"
      | "solarMass"
      | "solarAir"
      | "solarRising"
      | "solarOutside"
      | "glazingConductance"
      | "glazingDriving"
      | "filmArea"
      | "filmLongwave"
    >
    | undefined;
  /** share of each hour that the curtain is closed: 0 or 1 */
  readonly curtainClosed: Uint8Array;
  /** W/K of all glazing, hourly: films by wind, curtain as scheduled */
  readonly glazingConductance: Float64Array;
  /** degC, hourly, outside driving temperature of the glazing */
  readonly glazingDriving: Float64Array;
  /** W/K of the opaque parts, hourly */
  readonly opaqueConductance: Float64Array;
  /** degC, hourly, outside driving temperature of the opaque parts */
  readonly opaqueDriving: Float64Array;
  /** m² of glazing through which the inside radiates straight to the sky, long-wave transparency counted */
  readonly filmArea: Float64Array;
  /** W/m² that comes back through it */
  readonly filmLongwave: Float64Array;
  /** degC, hourly, outside air */
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
  /** J/K of barrels: above 0 degC, while the water freezes, below */
  readonly massStore: MassStore;
  /** W/K between barrels and air */
  readonly massConductance: number;
  /** J/K of masonry */
  readonly masonryStore: number;
  /** W/K between the middle of the masonry and air */
  readonly masonryConductance: number;
  /** share of the sun on barrels and masonry that falls on masonry */
  readonly masonrySunShare: number;
  /** m² of glazing on which vapour condenses; W/(m² K) inside film of the glazing */
  readonly coverArea: number;
  /** W/(m² K), inside film of the cover */
  readonly coverFilm: number;
  /** kg/s per unit of humidity ratio: wet floor to air */
  readonly floorVapour: number;
  /** ratio of leaf area to floor area, hourly */
  readonly leafArea: Float64Array;
  /** m */
  readonly leafLength: number;
}
