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

/** Outcome of one step. */
export interface HouseStep {
  /** state after the step */
  readonly state: HouseState;
  /** mean heat flows of the step */
  readonly flows: HouseFlows;
  /** driving temperature of the floor surface used with floorConductance, degC */
  readonly floorDriving: number;
}
