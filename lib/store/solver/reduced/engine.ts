/** The fast engine: a few dozen modal states for each slice, exact between steps. @module */
import { LaneResults } from "../engine.ts";
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
import { cellField, everyFourth, jumpStates } from "./fields.ts";
import { byState, planStep, type StepPlan } from "./plan.ts";
import type { ReducedEngine, ReducedSlice } from "./slice.ts";
export type { ReducedEngine } from "./slice.ts";

/** Surfaces a slice can have: floor, outside, deep end. */
const SURFACES = 3;

/** All states of all lanes, four lanes side by side. */
class ReducedModel extends LaneResults implements ReducedEngine {
  readonly slice: ReducedSlice;
  readonly tubeResponse: readonly Float64Array[];
  readonly tubeCross: readonly Float64Array[];
  readonly floorConductance: readonly number[];
  readonly #plans: readonly StepPlan[];
  readonly #gains: Float64Array;
  readonly #thermometer: boolean;
  readonly #blocks: number;
  /** surfaces that can carry anything: the deep end only where it is held */
  readonly #surfaces: number;
  /** runs of ports: all, those of the surfaces */
  readonly #all: InputRun;
  readonly #onSurfaces: InputRun;
  readonly #none: InputRun;
  readonly #x: Float64Array;
  /** tube heat, floor driving, outdoor and deep temperature of the step */
  readonly #input: Float64Array;
  /** mean of the surface ports from the states alone, (block·3 + surface)·4 + lane */
  readonly #free: Float64Array;
  readonly #four = new Float64Array(BLOCK);
  readonly #eight = new Float64Array(2 * BLOCK);

  constructor(
    slice: ReducedSlice,
    lanes: number,
    steps: readonly number[],
    thermometer: boolean,
  ) {
    super(lanes, slice.tubes, steps);
    const { states, tubes, ports, conductances } = slice;
    this.slice = slice;
    this.#plans = steps.map((seconds) => planStep(slice, seconds));
    this.#gains = byState(slice);
    this.#thermometer = thermometer;
    this.#blocks = Math.ceil(lanes / BLOCK);
    this.#surfaces = conductances[2] > 0 ? SURFACES : SURFACES - 1;
    const to = tubes + this.#surfaces;
    this.#all = { ports, from: 0, to };
    this.#onSurfaces = { ports, from: tubes, to };
    this.#none = { ports, from: to, to };
    this.#x = new Float64Array(this.#blocks * BLOCK * states);
    this.#input = new Float64Array(this.#blocks * BLOCK * ports);
    this.#free = new Float64Array(this.#blocks * BLOCK * SURFACES);
    this.tubeResponse = this.#plans.map((plan) => tubeResponse(slice, plan));
    this.tubeCross = this.#plans.map((plan) => tubeCross(slice, plan));
    this.floorConductance = this.#plans.map((plan) => floorConductance(slice, plan));
  }

  /** Lanes of a block that are not there to fill it up. */
  #lanesOf(block: number): number {
    return Math.min(BLOCK, this.lanes - block * BLOCK);
  }

  predict(step: number, outdoor: Float64Array, deep: Float64Array, running: boolean): void {
    const plan = this.#plans[step]!;
    for (let block = 0; block < this.#blocks; block++) {
      this.#placeOutside(block, outdoor, deep);
      if (running) this.#predictTubes(plan, block);
      this.#predictSurfaces(plan, block);
      this.#predictFloor(plan, block);
    }
  }

  #placeOutside(block: number, outdoor: Float64Array, deep: Float64Array): void {
    const { tubes, ports } = this.slice;
    const known = (block * ports + tubes) * BLOCK;
    const count = this.#lanesOf(block);
    for (let l = 0; l < count; l++) {
      this.#input[known + BLOCK + l] = outdoor[block * BLOCK + l]!;
      this.#input[known + 2 * BLOCK + l] = deep[block * BLOCK + l]!;
    }
  }

  /** Block temperatures without tube heat, two tubes at a time. */
  #predictTubes(plan: StepPlan, block: number): void {
    const { states, tubes, ports } = this.slice;
    const { mean, response } = plan;
    const x = block * states * BLOCK;
    const known = block * ports * BLOCK;
    const count = this.#lanesOf(block);
    const paired = tubes - tubes % 2;
    const [four, eight] = [this.#four, this.#eight];
    for (let p = 0; p < paired; p += 2) {
      readStatesTwice(mean, p * states, states, this.#x, x, eight);
      addInputsTwice(response, p, this.#onSurfaces, this.#input, known, eight);
      for (let l = 0; l < count; l++) {
        const at = (block * BLOCK + l) * tubes + p;
        this.blockTemperature[at] = eight[l]!;
        this.blockTemperature[at + 1] = eight[BLOCK + l]!;
      }
    }
    if (paired === tubes) return;
    readStates(mean, paired * states, states, this.#x, x, four);
    addInputs(response, paired, this.#onSurfaces, this.#input, known, four);
    for (let l = 0; l < count; l++) {
      this.blockTemperature[(block * BLOCK + l) * tubes + paired] = four[l]!;
    }
  }

  #predictSurfaces(plan: StepPlan, block: number): void {
    const { states, tubes } = this.slice;
    const four = this.#four;
    for (let s = 0; s < this.#surfaces; s++) {
      readStates(plan.mean, (tubes + s) * states, states, this.#x, block * states * BLOCK, four);
      this.#free.set(four, (block * SURFACES + s) * BLOCK);
    }
  }

  /** What the floor gives up at 0 °C: the port's mean less what the last driving would add. */
  #predictFloor(plan: StepPlan, block: number): void {
    const { tubes, ports } = this.slice;
    const four = this.#four;
    const known = block * ports * BLOCK;
    for (let l = 0; l < BLOCK; l++) four[l] = this.#free[block * SURFACES * BLOCK + l]!;
    addInputs(plan.response, tubes, this.#all, this.#input, known, four);
    const own = plan.response[tubes * ports + tubes]!;
    const count = this.#lanesOf(block);
    for (let l = 0; l < count; l++) {
      this.floorPull[block * BLOCK + l] = four[l]! - own * this.#input[known + tubes * BLOCK + l]!;
    }
  }

  finish(
    step: number,
    tubeHeat: Float64Array,
    floorDriving: Float64Array,
    running: boolean,
  ): void {
    const plan = this.#plans[step]!;
    const move = { decay: plan.decay, growth: plan.growth, gains: this.#gains };
    const run = running ? this.#all : this.#onSurfaces;
    const { states, ports } = this.slice;
    for (let block = 0; block < this.#blocks; block++) {
      const known = block * ports * BLOCK;
      this.#placeHeat(block, tubeHeat, floorDriving, running);
      this.#settleSurfaces(plan, block, run);
      const heard = allSilent(this.#input, known, run) ? this.#none : run;
      moveStates(move, heard, this.#input, known, this.#x, block * states * BLOCK);
    }
    this.#refresh();
  }

  #placeHeat(
    block: number,
    tubeHeat: Float64Array,
    floorDriving: Float64Array,
    running: boolean,
  ): void {
    const { tubes, ports } = this.slice;
    const known = block * ports * BLOCK;
    const count = this.#lanesOf(block);
    for (let l = 0; l < count; l++) {
      const lane = block * BLOCK + l;
      for (let q = 0; q < tubes; q++) {
        this.#input[known + q * BLOCK + l] = running ? tubeHeat[lane * tubes + q]! : 0;
      }
      this.#input[known + tubes * BLOCK + l] = floorDriving[lane]!;
    }
  }

  /** Heat of the step through each surface. */
  #settleSurfaces(plan: StepPlan, block: number, run: InputRun): void {
    const { tubes, ports, conductances } = this.slice;
    const four = this.#four;
    const known = block * ports * BLOCK;
    const count = this.#lanesOf(block);
    for (let s = 0; s < this.#surfaces; s++) {
      for (let l = 0; l < BLOCK; l++) four[l] = this.#free[(block * SURFACES + s) * BLOCK + l]!;
      addInputs(plan.response, tubes + s, run, this.#input, known, four);
      const heat = s === 0 ? this.floorHeat : s === 1 ? this.outdoorHeat : this.deepHeat;
      for (let l = 0; l < count; l++) {
        const driving = this.#input[known + (tubes + s) * BLOCK + l]!;
        heat[block * BLOCK + l] = conductances[s]! * driving - four[l]!;
      }
    }
  }

  /** The thermometer is a port like any other: weights of states and of inputs. */
  #refresh(): void {
    if (!this.#thermometer) return;
    const { states, ports, store, storeDirect } = this.slice;
    const four = this.#four;
    for (let block = 0; block < this.#blocks; block++) {
      readStates(store, 0, states, this.#x, block * states * BLOCK, four);
      addInputs(storeDirect, 0, this.#all, this.#input, block * ports * BLOCK, four);
      const count = this.#lanesOf(block);
      for (let l = 0; l < count; l++) this.storeTemperature[block * BLOCK + l] = four[l]!;
    }
  }

  /** Index of a lane's first state; the next ones follow every four. */
  #place(lane: number): number {
    return Math.floor(lane / BLOCK) * BLOCK * this.slice.states + (lane % BLOCK);
  }

  content(): Float64Array {
    const { states, content } = this.slice;
    return Float64Array.from({ length: this.lanes }, (_, lane) => {
      let sum = 0;
      const at = this.#place(lane);
      for (let k = 0; k < states; k++) sum += content[k]! * this.#x[at + BLOCK * k]!;
      return sum;
    });
  }

  save(): Float64Array {
    return this.#x.slice();
  }

  load(state: Float64Array): void {
    this.#x.set(state);
    this.#clearFilling();
    this.#refresh();
  }

  /**
   * Lanes that only fill the last block up start at 0: with no input they would fade into numbers
   * too small for the processor's fast path and double the time of a year.
   */
  #clearFilling(): void {
    for (let lane = this.lanes; lane < this.#blocks * BLOCK; lane++) {
      const at = this.#place(lane);
      for (let k = 0; k < this.slice.states; k++) this.#x[at + BLOCK * k] = 0;
    }
  }

  jump(start: Float64Array, seconds: number): void {
    jumpStates(this.slice, this.#x, start, seconds);
    this.#refresh();
  }

  merge(to: number, from: number, count: number): void {
    const x = this.#x;
    for (let lane = 0; lane < count; lane++) {
      const [target, source] = [this.#place(to + lane), this.#place(from + lane)];
      for (let k = 0; k < this.slice.states * BLOCK; k += BLOCK) {
        x[target + k]! += x[source + k]!;
        x[source + k] = 0;
      }
    }
    this.#refresh();
  }

  cells(lane: number): Float64Array {
    const { ports } = this.slice;
    const input = Math.floor(lane / BLOCK) * ports * BLOCK + (lane % BLOCK);
    return cellField(
      this.slice,
      everyFourth(this.#x, this.#place(lane), this.slice.states),
      everyFourth(this.#input, input, ports),
    );
  }
}

/**
 * Engine of `lanes` reduced slices. Inputs are held over a step and the states move exactly
 * (zero-order hold), so the soil adds no error of time.
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
