/** State of the house and the flows that change it. @module */

/**
 * State of the house between steps. The floor soil is not in it: it belongs to whoever owns the
 * soil (the house chapter's own column, or the store's slices).
 */
export interface HouseState {
  /** degC */
  airTemperature: number;
  /** kg/kg */
  humidityRatio: number;
  /** degC of the barrels */
  massTemperature: number;
  /** degC of the masonry */
  masonryTemperature: number;
  /** share of the vents open at the end of the step, 0 to 1 */
  ventOpening: number;
  /**
   * W that floor and crop gave the air in the last step, what evaporated and what the soil kept taken
   * off; absent at the start
   */
  fromBelow?: number | undefined;
  /** whether the curtain is shut for the cold inside; absent where it does not close for that */
  curtainShut?: boolean;
}

/**
 * Flows of one step, mean over the step: heat in W, water in kg/s.
 *
 * Sign of every heat flow of the house, here, in {@link HouseYear} and in {@link HouseLedger}:
 * positive warms the house. Flows of the soil, as the store and the floor's column give them, are
 * positive into the soil, so that the same heat has the other sign there.
 */
export interface HouseFlows {
  /** solar absorbed inside, all surfaces */
  solar: number;
  /** through glazing, incl. sky radiation and curtain, less the heat of condensation that comes back */
  glazing: number;
  /** through walls and roofs that let no light in */
  opaque: number;
  /** with air through the cracks */
  leakage: number;
  /** with air through the vents */
  vent: number;
  /** from the back-up heater */
  heater: number;
  /** from the floor soil; negative while the floor takes heat */
  floor: number;
  /** sensible, from the tubes */
  store: number;
  /** sensible heat turned into vapour by crop and floor; negative */
  evaporation: number;
  /** given up by the mass: minus what it stores (sun on it counts in `solar`) */
  mass: number;
  /** what the air and light things took up: the sum of the flows above */
  air: number;
  /** kg/s given off by crop and wet floor */
  evaporated: number;
  /** kg/s condensed on the cover or as mist */
  condensed: number;
  /** kg/s carried out by leakage and vents */
  ventedVapour: number;
}
