/** The fast engine: a few dozen modal states for each slice, exact between steps. @module */
import { floorConductance, tubeCross, tubeResponse } from "./answers.ts";
import {
  addInputs,
  addInputsTwice,
  allSilent,
  BLOCK,
  type InputRun,
  moveStates,
  readStates,
  readStatesTwice,
} from "./kernel.ts";
import { LaneStates, SURFACES } from "./lane_states.ts";
import {
  conductionPotential,
  type FreezingCurve,
  potentialAt,
  potentialLead,
} from "../../../soil/mod.ts";
import type { StepPlan } from "./plan.ts";
import type { ReducedEngine, ReducedSlice } from "./slice.ts";
export type { ReducedEngine } from "./slice.ts";

/** The two halves of a step. */
class ReducedModel extends LaneStates implements ReducedEngine {
  readonly tubeResponse: readonly Float64Array[];
  readonly tubeCross: readonly Float64Array[];
  readonly floorConductance: readonly number[];
  /** mean of the surface ports from the states alone, (block·3 + surface)·4 + lane */
  readonly #free: Float64Array;
  /** K by which the potential leads on the face of the floor, by lane */
  readonly #floorLead: Float64Array;
  readonly #four = new Float64Array(BLOCK);
  readonly #eight = new Float64Array(2 * BLOCK);

  constructor(
    slice: ReducedSlice,
    lanes: number,
    steps: readonly number[],
    thermometer: boolean,
  ) {
    super(slice, lanes, steps, thermometer);
    this.#free = new Float64Array(this.blocks * BLOCK * SURFACES);
    this.#floorLead = new Float64Array(lanes);
    this.tubeResponse = this.plans.map((plan) => tubeResponse(slice, plan));
    this.tubeCross = this.plans.map((plan) => tubeCross(slice, plan));
    this.floorConductance = this.plans.map((plan) => floorConductance(slice, plan));
  }

  predict(step: number, outdoor: Float64Array, deep: Float64Array, running: boolean): void {
    const plan = this.plans[step]!;
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

  /** Block temperatures without tube heat, two tubes at a time; freezing goes on as it did. */
  #predictTubes(plan: StepPlan, block: number): void {
    const { states, tubes, ports } = this.slice;
    const { mean, response } = plan;
    const run = this.runOf(block, false);
    const x = block * states * BLOCK;
    const known = block * ports * BLOCK;
    const count = this.lanesOf(block);
    const paired = tubes - tubes % 2;
    const take = (at: number, tube: number, lane: number, value: number) =>
      this.blockTemperature[at] = this.#blockOf(plan, tube, value, known + tube * BLOCK + lane);
    const [four, eight] = [this.#four, this.#eight];
    for (let p = 0; p < paired; p += 2) {
      readStatesTwice(mean, p * states, (p + 1) * states, states, this.x, x, eight, count);
      addInputsTwice(response, p, p + 1, run, this.input, known, eight, count);
      for (let l = 0; l < count; l++) {
        const at = (block * BLOCK + l) * tubes + p;
        take(at, p, l, eight[l]!);
        take(at + 1, p + 1, l, eight[BLOCK + l]!);
      }
    }
    if (paired === tubes) return;
    readStates(mean, paired * states, states, this.x, x, four, count);
    addInputs(response, paired, run, this.input, known, four, count);
    for (let l = 0; l < count; l++) {
      take((block * BLOCK + l) * tubes + paired, paired, l, four[l]!);
    }
  }

  /**
   * Temperature of a block from its potential: the lead is that of the last step's heat, so that air
   * that goes on as before finds the wall where it is.
   */
  #blockOf(plan: StepPlan, tube: number, potential: number, input: number): number {
    const { curve, ports } = this.slice;
    if (curve === null) return potential;
    const felt = potential + plan.response[tube * ports + tube]! * this.input[input]!;
    return felt >= 0 ? potential : potential - potentialLead(curve, felt);
  }

  #predictSurfaces(plan: StepPlan, block: number): void {
    const { states, tubes } = this.slice;
    const four = this.#four;
    const x = block * states * BLOCK;
    const count = this.lanesOf(block);
    for (let s = 0; s < this.surfaces; s++) {
      readStates(plan.mean, (tubes + s) * states, states, this.x, x, four, count);
      this.#free.set(four, (block * SURFACES + s) * BLOCK);
    }
  }

  /** What the floor gives up at 0 °C: the port's mean less what the last driving would add. */
  #predictFloor(plan: StepPlan, block: number): void {
    const { tubes, ports } = this.slice;
    const four = this.#four;
    const known = block * ports * BLOCK;
    for (let l = 0; l < BLOCK; l++) four[l] = this.#free[block * SURFACES * BLOCK + l]!;
    const count = this.lanesOf(block);
    addInputs(plan.response, tubes, this.runOf(block, true), this.input, known, four, count);
    const own = plan.response[tubes * ports + tubes]!;
    const { curve, conductances } = this.slice;
    for (let l = 0; l < count; l++) {
      const lane = block * BLOCK + l;
      if (curve !== null) this.#floorLead[lane] = this.#leadOf(curve, lane);
      this.floorPull[lane] = four[l]! - own * this.input[known + tubes * BLOCK + l]! -
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
    const plan = this.plans[step]!;
    const move = { decay: plan.decay, growth: plan.growth, gains: this.gains };
    const run = running ? this.all : this.onSurfaces;
    const { states, ports } = this.slice;
    for (let block = 0; block < this.blocks; block++) {
      const known = block * ports * BLOCK;
      this.#placeHeat(block, tubeHeat, floorDriving, running);
      const heard = allSilent(this.input, known, run) ? this.none : run;
      const x = block * states * BLOCK;
      moveStates(move, heard, this.input, known, this.x, x, this.lanesOf(block));
      this.latent?.settle(step, block, run, { x: this.x, input: this.input });
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
  #settleSurfaces(plan: StepPlan, block: number, run: InputRun): void {
    const { tubes, ports, conductances } = this.slice;
    const four = this.#four;
    const known = block * ports * BLOCK;
    const count = this.lanesOf(block);
    for (let s = 0; s < this.surfaces; s++) {
      for (let l = 0; l < BLOCK; l++) four[l] = this.#free[(block * SURFACES + s) * BLOCK + l]!;
      addInputs(plan.response, tubes + s, run, this.input, known, four, count);
      const heat = s === 0 ? this.floorHeat : s === 1 ? this.outdoorHeat : this.deepHeat;
      for (let l = 0; l < count; l++) {
        const driving = this.input[known + (tubes + s) * BLOCK + l]!;
        heat[block * BLOCK + l] = conductances[s]! * driving - four[l]!;
      }
    }
  }
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
 */
export function reducedEngine(
  slice: ReducedSlice,
  lanes: number,
  steps: readonly number[],
  thermometer = true,
): ReducedEngine {
  return new ReducedModel(slice, lanes, steps, thermometer);
}
