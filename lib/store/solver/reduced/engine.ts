/** The fast engine: a few dozen modal states for each slice, exact between steps. @module */
import { floorConductance, tubeCross, tubeResponse } from "./answers.ts";
import { LaneStates } from "./lane_states.ts";
import {
  conductionPotential,
  type FreezingCurve,
  potentialAt,
  potentialLead,
} from "../../../soil/mod.ts";
import type { ReducedEngine, ReducedSlice } from "./slice.ts";
import { type PlacedPlan, SURFACES } from "./step_buffers.ts";
import { BLOCK, type Run, type Sums } from "./sums/mod.ts";
export type { ReducedEngine } from "./slice.ts";

/** The two halves of a step. */
class ReducedModel extends LaneStates implements ReducedEngine {
  readonly tubeResponse: readonly Float64Array[];
  readonly tubeCross: readonly Float64Array[];
  readonly floorConductance: readonly number[];
  /** K by which the potential leads on the face of the floor, by lane */
  readonly #floorLead: Float64Array;

  constructor(
    slice: ReducedSlice,
    lanes: number,
    steps: readonly number[],
    thermometer: boolean,
    sums?: Sums,
  ) {
    super(slice, lanes, steps, thermometer, sums);
    this.#floorLead = new Float64Array(lanes);
    const { plans } = this.buffers;
    this.tubeResponse = plans.map((plan) => tubeResponse(slice, plan));
    this.tubeCross = plans.map((plan) => tubeCross(slice, plan));
    this.floorConductance = plans.map((plan) => floorConductance(slice, plan));
  }

  predict(step: number, outdoor: Float64Array, deep: Float64Array, running: boolean): void {
    const plan = this.buffers.plans[step]!;
    for (let block = 0; block < this.blocks; block++) {
      this.#placeOutside(block, outdoor, deep);
      if (running) this.#predictTubes(plan, block);
      this.#predictSurfaces(plan, block);
      this.#predictFloor(plan, block);
    }
  }

  #placeOutside(block: number, outdoor: Float64Array, deep: Float64Array): void {
    const { tubes, ports, curve } = this.slice;
    const known = (block * ports + tubes) * BLOCK;
    const count = this.lanesOf(block);
    for (let l = 0; l < count; l++) {
      this.input[known + BLOCK + l] = potentialAt(curve, outdoor[block * BLOCK + l]!);
      this.input[known + 2 * BLOCK + l] = potentialAt(curve, deep[block * BLOCK + l]!);
    }
  }

  /** Block temperatures without tube heat; freezing goes on as it did. */
  #predictTubes(plan: PlacedPlan, block: number): void {
    const { states, tubes, ports } = this.slice;
    const { sums, read, allStates } = this.buffers;
    const known = block * ports * BLOCK;
    const count = this.lanesOf(block);
    read.fill(0, 0, tubes * BLOCK);
    const x = block * states * BLOCK;
    sums.addRows(plan.tubeMeans, allStates, this.x, x, read, 0, count);
    const run = this.runOf(block, false);
    sums.addRows(plan.tubeResponses, run, this.input, known, read, 0, count);
    for (let p = 0; p < tubes; p++) {
      for (let l = 0; l < count; l++) {
        const at = p * BLOCK + l;
        this.blockTemperature[(block * BLOCK + l) * tubes + p] = this.#blockOf(
          plan,
          p,
          read[at]!,
          known + at,
        );
      }
    }
  }

  /**
   * Temperature of a block from its potential: the lead is that of the last step's heat, so that air
   * that goes on as before finds the wall where it is.
   */
  #blockOf(plan: PlacedPlan, tube: number, potential: number, input: number): number {
    const { curve, ports } = this.slice;
    if (curve === null) return potential;
    const felt = potential + plan.response[tube * ports + tube]! * this.input[input]!;
    return felt >= 0 ? potential : potential - potentialLead(curve, felt);
  }

  #predictSurfaces(plan: PlacedPlan, block: number): void {
    const { states } = this.slice;
    const { sums, free, allStates } = this.buffers;
    const at = block * SURFACES * BLOCK;
    free.fill(0, at, at + SURFACES * BLOCK);
    const x = block * states * BLOCK;
    sums.addRows(plan.surfaceMeans, allStates, this.x, x, free, at, this.lanesOf(block));
  }

  /** What the floor gives up at 0 °C: the port's mean less what the last driving would add. */
  #predictFloor(plan: PlacedPlan, block: number): void {
    const { tubes, ports } = this.slice;
    const { sums, read, free } = this.buffers;
    const known = block * ports * BLOCK;
    for (let l = 0; l < BLOCK; l++) read[l] = free[block * SURFACES * BLOCK + l]!;
    const count = this.lanesOf(block);
    const run = this.runOf(block, true);
    sums.addRows(plan.floorResponses, run, this.input, known, read, 0, count);
    const own = plan.response[tubes * ports + tubes]!;
    const { curve, conductances } = this.slice;
    for (let l = 0; l < count; l++) {
      const lane = block * BLOCK + l;
      if (curve !== null) this.#floorLead[lane] = this.#leadOf(curve, lane);
      this.floorPull[lane] = read[l]! - own * this.input[known + tubes * BLOCK + l]! -
        (conductances[0] - own) * this.#floorLead[lane]!;
    }
  }

  /** K by which the potential leads on the face of the floor, as the last step left it. */
  #leadOf(curve: FreezingCurve, lane: number): number {
    const { conductances, floorInSoil } = this.slice;
    const driving = this.lastDriving[lane]!;
    const across = conductances[0] > 0 ? this.floorHeat[lane]! / conductances[0] : 0;
    const face = driving - (1 - floorInSoil) * across;
    return face >= 0 ? 0 : conductionPotential(curve, face) - face;
  }

  finish(
    step: number,
    tubeHeat: Float64Array,
    floorDriving: Float64Array,
    running: boolean,
  ): void {
    const plan = this.buffers.plans[step]!;
    const run = running ? this.all : this.onSurfaces;
    const { states, ports } = this.slice;
    const { sums, added, stateGains } = this.buffers;
    for (let block = 0; block < this.blocks; block++) {
      const known = block * ports * BLOCK;
      this.#placeHeat(block, tubeHeat, floorDriving, running);
      const heard = allSilent(this.input, known, run) ? this.none : run;
      const count = this.lanesOf(block);
      added.fill(0);
      sums.addRows(stateGains, heard, this.input, known, added, 0, count);
      sums.advance(plan, added, this.x, block * states * BLOCK, count);
      this.latent?.settle(step, block, run);
      this.#settleSurfaces(plan, block, this.runOf(block, running));
    }
    this.refresh();
  }

  #placeHeat(
    block: number,
    tubeHeat: Float64Array,
    floorDriving: Float64Array,
    running: boolean,
  ): void {
    const { tubes, ports } = this.slice;
    const known = block * ports * BLOCK;
    const count = this.lanesOf(block);
    for (let l = 0; l < count; l++) {
      const lane = block * BLOCK + l;
      for (let q = 0; q < tubes; q++) {
        this.input[known + q * BLOCK + l] = running ? tubeHeat[lane * tubes + q]! : 0;
      }
      this.input[known + tubes * BLOCK + l] = floorDriving[lane]! + this.#floorLead[lane]!;
      this.lastDriving[lane] = floorDriving[lane]!;
    }
  }

  /** Heat of the step through each surface. */
  #settleSurfaces(plan: PlacedPlan, block: number, run: Run): void {
    const { tubes, ports, conductances } = this.slice;
    const { sums, read, free } = this.buffers;
    const surfaces = plan.surfaceResponses.count;
    const known = block * ports * BLOCK;
    const at = block * SURFACES * BLOCK;
    const count = this.lanesOf(block);
    for (let k = 0; k < surfaces * BLOCK; k++) read[k] = free[at + k]!;
    sums.addRows(plan.surfaceResponses, run, this.input, known, read, 0, count);
    for (let s = 0; s < surfaces; s++) {
      const heat = s === 0 ? this.floorHeat : s === 1 ? this.outdoorHeat : this.deepHeat;
      for (let l = 0; l < count; l++) {
        const driving = this.input[known + (tubes + s) * BLOCK + l]!;
        heat[block * BLOCK + l] = conductances[s]! * driving - read[s * BLOCK + l]!;
      }
    }
  }
}

/** True where all inputs of a block over a run of ports are 0, as in tagged fields at rest. */
function allSilent(input: Float64Array, start: number, run: Run): boolean {
  const end = start + run.to * BLOCK;
  for (let k = start + run.from * BLOCK; k < end; k++) if (input[k] !== 0) return false;
  return true;
}

/**
 * Engine of `lanes` reduced slices. Inputs are held over a step and the states move exactly
 * (zero-order hold), so the soil adds no error of time. Where the slice has zones their water
 * freezes: their latent power is an input of the step, found together with what it does.
 *
 * @param slice reduced slice
 * @param lanes copies
 * @param steps s
 * @param thermometer false: the temperature between the tubes is not followed
 * @param sums new; the quickest there are unless given
 */
export function reducedEngine(
  slice: ReducedSlice,
  lanes: number,
  steps: readonly number[],
  thermometer = true,
  sums?: Sums,
): ReducedEngine {
  return new ReducedModel(slice, lanes, steps, thermometer, sums);
}
