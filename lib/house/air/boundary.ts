/** The contract of one step between the house and whoever owns soil and tubes. @module */
import type { HouseFlows, HouseState } from "./state.ts";

/**
 * What the owner of soil and tubes tells the house for one step of `stepSeconds`.
 *
 * Floor: heat into the soil q = floorConductance·(floorDriving − floorTemperature), W, where
 * floorDriving is the air-side driving temperature of the floor surface (`HouseModel.floorFilm`:
 * convection, radiation and what lies on the soil) and floorTemperature the temperature the soil would
 * show without this step's flux: both already hold the soil's implicit response.
 *
 * Tubes: sensible heat to the house air = storeHeat + storeSlope·(airTemperature − storeReference) +
 * tubes.heatByRatio·(humidityRatio − tubes.ratio), W, positive warms the house, storeSlope ≤ 0; water
 * vapour to the house = storeVapour + tubes.vapourByTemperature·(airTemperature − storeReference) +
 * tubes.vapourByRatio·(humidityRatio − tubes.ratio), kg/s.
 *
 * All temperatures and humidities are means over the step.
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
  /** how the tubes answer humidity; absent where they do not */
  readonly tubes?: TubesAnswer | undefined;
}

/** How heat and vapour of the tubes change with the house's air over a step. */
export interface TubesAnswer {
  /** kg/kg about which the slopes hold */
  readonly ratio: number;
  /** W for each kg/kg */
  readonly heatByRatio: number;
  /** kg/(s K) */
  readonly vapourByTemperature: number;
  /** kg/s for each kg/kg, 0 or less */
  readonly vapourByRatio: number;
}

/** Means of the house over a step; `ventOpening` is the one that held. */
export type HouseMean = Pick<
  HouseState,
  "airTemperature" | "humidityRatio" | "massTemperature" | "masonryTemperature" | "ventOpening"
>;

/** Outcome of one step. */
export interface HouseStep {
  /** state after the step */
  readonly state: HouseState;
  /** means over the step, which drive its flows */
  readonly mean: HouseMean;
  /** mean heat flows of the step */
  readonly flows: HouseFlows;
  /** driving temperature of the floor surface used with floorConductance, degC */
  readonly floorDriving: number;
}
