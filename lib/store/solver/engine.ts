/** What a soil engine offers, whatever it is inside: full mesh or reduced states. @module */

/**
 * Advances many copies ("lanes") of the same slice by one step, in two halves: first with no tube
 * heat and a floor driving temperature of 0 °C, then, once the air side knows its answer, with the
 * heat added. All heat flows are per metre of slice and means over the step, W/m. Lane-wise
 * arrays have one entry for each lane; tube-wise arrays lane·tubes + tube.
 *
 * A step that lasts `steps[k]` seconds is chosen by its index k.
 */
export interface SoilEngine {
  readonly lanes: number;
  readonly tubes: number;
  /** s, lengths of the steps the engine was built for */
  readonly steps: readonly number[];
  /**
   * K per W/m: rise of a tube block's mean temperature over the step for each W/m put into it,
   * `tubeResponse[k][tube]`
   */
  readonly tubeResponse: readonly Float64Array[];
  /**
   * the same between different tubes of a lane, tube·tubes + other, 0 on the diagonal; null where
   * tubes do not feel each other within a step
   */
  readonly tubeCross: readonly (Float64Array | null)[];
  /** W/(m K): heat into the floor for each K of driving temperature over the step */
  readonly floorConductance: readonly number[];
  /** mean temperature of each tube block over the step with no tube heat, degC, set by predict */
  readonly blockTemperature: Float64Array;
  /** W/m that the floor would give up at a driving temperature of 0 °C, set by predict */
  readonly floorPull: Float64Array;
  /** heat of the step into the soil through floor, outdoor surface and deep end, set by finish */
  readonly floorHeat: Float64Array;
  readonly outdoorHeat: Float64Array;
  readonly deepHeat: Float64Array;
  /** temperature between the tubes at the end of the step, degC */
  readonly storeTemperature: Float64Array;
  /**
   * First half of a step: surfaces outside and deep end at the given temperatures by lane;
   * `running` false where the fan rests and the tubes need no answer.
   */
  predict(step: number, outdoor: Float64Array, deep: Float64Array, running: boolean): void;
  /** Second half: tube heat in W/m by lane and tube, floor driving temperature by lane. */
  finish(
    step: number,
    tubeHeat: Float64Array,
    floorDriving: Float64Array,
    running: boolean,
  ): void;
  /** Heat content of each lane over 0 °C, J/m. */
  content(): Float64Array;
  /** Copies the state out and in, for spin-up and for tagged fields. */
  save(): Float64Array;
  load(state: Float64Array): void;
}

/** The series every engine fills, lane by lane; engines extend it by what they are inside. */
export class LaneResults {
  readonly lanes: number;
  readonly tubes: number;
  readonly steps: readonly number[];
  readonly blockTemperature: Float64Array;
  readonly floorPull: Float64Array;
  readonly floorHeat: Float64Array;
  readonly outdoorHeat: Float64Array;
  readonly deepHeat: Float64Array;
  readonly storeTemperature: Float64Array;

  constructor(lanes: number, tubes: number, steps: readonly number[]) {
    const byLane = () => new Float64Array(lanes);
    this.lanes = lanes;
    this.tubes = tubes;
    this.steps = steps;
    this.blockTemperature = new Float64Array(lanes * tubes);
    this.floorPull = byLane();
    this.floorHeat = byLane();
    this.outdoorHeat = byLane();
    this.deepHeat = byLane();
    this.storeTemperature = byLane();
  }
}

/**
 * Splits what tubes do to each other into each tube's own response and that of the others.
 *
 * @param response K per W/m, felt·tubes + heated
 * @param tubes number of them
 * @param least K per W/m: without a cross term above it there is none
 */
export function ownAndCross(
  response: Float64Array,
  tubes: number,
  least: number,
): { readonly own: Float64Array; readonly cross: Float64Array | null } {
  const own = Float64Array.from({ length: tubes }, (_, tube) => response[tube * tubes + tube]!);
  const cross = response.map((value, k) => k % (tubes + 1) === 0 ? 0 : value);
  return { own, cross: cross.some((value) => Math.abs(value) > least) ? cross : null };
}
