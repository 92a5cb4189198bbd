/** The everyday full model: every cell of every slice, alternating directions. @module */
import type { PortResponse } from "./factors.ts";
import { adiKernel, LANES } from "./kernel.ts";
import { FrozenConduction } from "./frozen_conduction.ts";
import { CellLatent } from "./latent.ts";
import { type AdiPlan, adiPlan } from "./plan.ts";
import { addSources } from "./sources.ts";
import { LaneResults, type SoilEngine } from "../engine.ts";
import type { ConductionOperator } from "../../ground/operator.ts";

const total = (values: Float64Array) => values.reduce((sum, value) => sum + value, 0);

/** Takes the sources of all four slices out of cells. */
function clearCells(sources: Float64Array, cells: Int32Array): void {
  for (let k = 0; k < cells.length; k++) {
    const at = LANES * cells[k]!;
    for (let l = 0; l < LANES; l++) sources[at + l] = 0;
  }
}

/** What every port sees at the start of a step, by lane (and tube). */
interface PortSight {
  readonly block: Float64Array;
  readonly floor: Float64Array;
  readonly outdoor: Float64Array;
  readonly deep: Float64Array;
}

/** All cells of all lanes, four lanes side by side; where frozen soil conducts better, as potentials. */
class FullModel extends LaneResults implements SoilEngine {
  readonly tubeResponse: readonly Float64Array[];
  readonly tubeCross: readonly (Float64Array | null)[];
  readonly floorConductance: readonly number[];
  readonly #operator: ConductionOperator;
  readonly #plans: readonly AdiPlan[];
  readonly #conductance: {
    readonly floor: number;
    readonly outdoor: number;
    readonly deep: number;
  };
  readonly #count: number;
  readonly #groups: number;
  readonly #field: Float64Array;
  readonly #work: Float64Array;
  readonly #sources: Float64Array;
  readonly #sizes = new Float64Array(LANES);
  readonly #before: PortSight;
  readonly #outdoor: Float64Array;
  readonly #deep: Float64Array;
  /** W/m of the last step, lane·tubes + tube, and degC that drove the floor, by lane */
  readonly #lastHeat: Float64Array;
  readonly #lastDriving: Float64Array;
  /** W/m by lane that floor and outdoor surface give for the potential's lead */
  readonly #floorLead: Float64Array;
  readonly #outdoorMore: Float64Array;
  /** null: the soil conducts and nothing in it freezes */
  readonly #latent: CellLatent | null;
  /** null: frozen soil conducts as unfrozen does, and the field is temperatures */
  readonly #frozen: FrozenConduction | null;

  constructor(
    operator: ConductionOperator,
    lanes: number,
    steps: readonly number[],
    freezes: boolean,
  ) {
    super(lanes, operator.tubes.length, steps);
    const count = operator.capacity.length;
    const byLane = () => new Float64Array(lanes);
    this.#operator = operator;
    this.#plans = steps.map((seconds) => adiPlan(operator, seconds));
    this.#conductance = {
      floor: total(operator.floor.conductances),
      outdoor: total(operator.outdoor.conductances),
      deep: total(operator.deep.conductances),
    };
    this.#count = count;
    this.#groups = Math.ceil(lanes / LANES);
    this.#field = new Float64Array(this.#groups * LANES * count);
    this.#work = new Float64Array(LANES * count);
    this.#sources = new Float64Array(LANES * count);
    this.#before = {
      block: new Float64Array(lanes * this.tubes),
      floor: byLane(),
      outdoor: byLane(),
      deep: byLane(),
    };
    this.#outdoor = byLane();
    this.#deep = byLane();
    this.#lastHeat = new Float64Array(lanes * this.tubes);
    this.#lastDriving = byLane();
    this.#floorLead = byLane();
    this.#outdoorMore = byLane();
    this.#latent = freezes && operator.freezing !== null
      ? new CellLatent(operator, operator.freezing, this.#groups, Math.max(...steps))
      : null;
    this.#frozen = freezes ? FrozenConduction.of(operator, lanes) : null;
    this.tubeResponse = this.#plans.map((plan) => plan.tubeResponse);
    this.tubeCross = this.#plans.map((plan) => plan.tubeCross);
    this.floorConductance = this.#plans.map((plan) => plan.floorConductance);
  }

  /** Weighted sum over cells of a lane. */
  #read(lane: number, cells: Int32Array, weights: Float64Array): number {
    const field = this.#field;
    const start = Math.floor(lane / LANES) * LANES * this.#count + (lane % LANES);
    let sum = 0;
    for (let k = 0; k < cells.length; k++) sum += weights[k]! * field[start + LANES * cells[k]!]!;
    return sum;
  }

  #floorSum(lane: number): number {
    const { cells, conductances } = this.#operator.floor;
    return this.#read(lane, cells, conductances);
  }

  #blockMean(lane: number, tube: number): number {
    const { cells, weights } = this.#operator.tubes[tube]!;
    return this.#read(lane, cells, weights);
  }

  /** Keeps what the ports see, for the means over the next step. */
  #remember(): void {
    const { outdoor, deep, store } = this.#operator;
    const before = this.#before;
    for (let lane = 0; lane < this.lanes; lane++) {
      for (let tube = 0; tube < this.tubes; tube++) {
        before.block[lane * this.tubes + tube] = this.#blockMean(lane, tube);
      }
      before.floor[lane] = this.#floorSum(lane);
      before.outdoor[lane] = this.#read(lane, outdoor.cells, outdoor.conductances);
      before.deep[lane] = this.#read(lane, deep.cells, deep.conductances);
      this.storeTemperature[lane] = this.#readTemperature(lane, store.cells, store.weights);
    }
  }

  /** Weighted sum of the temperatures of cells of a lane. */
  #readTemperature(lane: number, cells: Int32Array, weights: Float64Array): number {
    const frozen = this.#frozen;
    if (frozen === null) return this.#read(lane, cells, weights);
    const at = this.#cellsOf(lane);
    let sum = 0;
    for (let k = 0; k < cells.length; k++) {
      sum += weights[k]! * frozen.temperature(cells[k]!, at(cells[k]!));
    }
    return sum;
  }

  #cellsOf(lane: number): (cell: number) => number {
    const field = this.#field;
    const start = Math.floor(lane / LANES) * LANES * this.#count + (lane % LANES);
    return (cell) => field[start + LANES * cell]!;
  }

  /** Adds a port's unit response to the four slices of a group, each by its own size. */
  #add(group: number, response: PortResponse, byLane: Float64Array): void {
    const { cells, values } = response;
    const field = this.#field;
    const sizes = this.#sizes;
    for (let l = 0; l < LANES; l++) sizes[l] = byLane[group * LANES + l] ?? 0;
    const [s0, s1, s2, s3] = [sizes[0]!, sizes[1]!, sizes[2]!, sizes[3]!];
    const start = group * LANES * this.#count;
    for (let k = 0; k < cells.length; k++) {
      const at = start + LANES * cells[k]!;
      const value = values[k]!;
      field[at] = field[at]! + s0 * value;
      field[at + 1] = field[at + 1]! + s1 * value;
      field[at + 2] = field[at + 2]! + s2 * value;
      field[at + 3] = field[at + 3]! + s3 * value;
    }
  }

  /** Puts the sources of a group in place: the floor's driving temperature and the tubes' heat. */
  #placeSources(
    group: number,
    tubeHeat: Float64Array,
    floorDriving: Float64Array,
    heated: boolean,
  ): void {
    const { floor, tubes } = this.#operator;
    const sources = this.#sources;
    const lanes = Math.min(LANES, this.lanes - group * LANES);
    clearCells(sources, floor.cells);
    for (const tube of tubes) clearCells(sources, tube.cells);
    for (let l = 0; l < lanes; l++) {
      const lane = group * LANES + l;
      const driving = floorDriving[lane]!;
      for (let k = 0; k < floor.cells.length; k++) {
        sources[LANES * floor.cells[k]! + l]! += driving * floor.conductances[k]!;
      }
      for (let tube = 0; heated && tube < tubes.length; tube++) {
        const { cells, weights } = tubes[tube]!;
        const heat = tubeHeat[lane * this.tubes + tube]!;
        for (let k = 0; k < cells.length; k++) {
          sources[LANES * cells[k]! + l]! += heat * weights[k]!;
        }
      }
    }
  }

  predict(step: number, outdoor: Float64Array, deep: Float64Array, running: boolean): void {
    const plan = this.#plans[step]!;
    const before = this.#before;
    this.#placeOutside(outdoor, deep);
    this.#latent?.begin(this.#field);
    for (let group = 0; group < this.#groups; group++) {
      const start = group * LANES * this.#count;
      const latent = this.#latentSources(group, outdoor);
      adiKernel(this.#operator, plan.factors, this.#field, start, this.#work);
      if (latent !== null) {
        addSources(plan.factors, plan.everywhere, latent, this.#field, start, this.#work);
      }
      this.#add(group, plan.outdoor, this.#outdoor);
      this.#add(group, plan.deep, this.#deep);
    }
    for (let lane = 0; lane < this.lanes; lane++) {
      for (let tube = 0; running && tube < this.tubes; tube++) {
        const k = lane * this.tubes + tube;
        const mean = 0.5 * (before.block[k]! + this.#blockMean(lane, tube));
        const felt = mean + plan.tubeResponse[tube]! * this.#lastHeat[k]!;
        this.blockTemperature[k] = mean - (this.#frozen?.tubeLead(tube, felt) ?? 0);
      }
      this.floorPull[lane] = 0.5 * (before.floor[lane]! + this.#floorSum(lane)) -
        this.#floorLead[lane]!;
    }
  }

  /** Temperatures outside the soil as what they are in the field. */
  #placeOutside(outdoor: Float64Array, deep: Float64Array): void {
    const frozen = this.#frozen;
    this.#outdoor.set(outdoor);
    this.#deep.set(deep);
    this.#floorLead.fill(0);
    this.#outdoorMore.fill(0);
    if (frozen === null) return;
    for (let lane = 0; lane < this.lanes; lane++) {
      this.#outdoor[lane] = frozen.atPort("outdoor", outdoor[lane]!);
      this.#deep[lane] = frozen.atPort("deep", deep[lane]!);
    }
  }

  /** The latent power of the last step, which goes on into this one, and what soils do to each other. */
  #latentSources(group: number, outdoor: Float64Array): Float64Array | null {
    if (this.#latent === null) return null;
    const size = LANES * this.#count;
    const start = group * size;
    const power = this.#latent.power.subarray(start, start + size);
    const none = power.every((value) => value === 0);
    const warm = !this.#frozen?.mixed && this.#lastDriving.every((value) => value >= 0);
    if (this.#frozen === null || none && warm) return none ? null : power;
    const sources = power.slice();
    const lanes = Math.min(LANES, this.lanes - group * LANES);
    for (let l = 0; l < lanes; l++) {
      const lane = group * LANES + l;
      const at = this.#cellsOf(lane);
      this.#floorLead[lane] = this.#frozen.addFloor(sources, l, {
        lane,
        driving: this.#lastDriving[lane]!,
        potentialAt: at,
      });
      this.#outdoorMore[lane] = this.#frozen.addMixed(sources, l, outdoor[lane]!, at);
    }
    return sources;
  }

  finish(
    step: number,
    tubeHeat: Float64Array,
    floorDriving: Float64Array,
    running: boolean,
  ): void {
    const plan = this.#plans[step]!;
    const heated = running && tubeHeat.some((heat) => heat !== 0);
    const reach = heated ? plan.all : plan.floor;
    for (let group = 0; group < this.#groups; group++) {
      const start = group * LANES * this.#count;
      this.#placeSources(group, tubeHeat, floorDriving, heated);
      addSources(plan.factors, reach, this.#sources, this.#field, start, this.#work);
    }
    const { floor, outdoor, deep } = this.#conductance;
    for (let lane = 0; lane < this.lanes; lane++) {
      this.floorHeat[lane] = floor * floorDriving[lane]! + this.#floorLead[lane]!;
      this.outdoorHeat[lane] = outdoor * this.#outdoor[lane]! + this.#outdoorMore[lane]!;
      this.deepHeat[lane] = deep * this.#deep[lane]!;
    }
    this.#lastDriving.set(floorDriving);
    if (heated) this.#lastHeat.set(tubeHeat);
    else this.#lastHeat.fill(0);
    this.#takeHalf();
    this.#remember();
    this.#takeHalf();
    // the surfaces conduct by the temperatures before freezing sets them right
    if (this.#latent === null) return;
    this.#latent.finish(this.#field, this.steps[step]!);
    this.#remember();
  }

  /** Takes half of what the surfaces see off their heat: once at the start, once at the end. */
  #takeHalf(): void {
    const before = this.#before;
    for (let lane = 0; lane < this.lanes; lane++) {
      this.floorHeat[lane]! -= 0.5 * before.floor[lane]!;
      this.outdoorHeat[lane]! -= 0.5 * before.outdoor[lane]!;
      this.deepHeat[lane]! -= 0.5 * before.deep[lane]!;
    }
  }

  content(): Float64Array {
    const latent = this.#latent;
    if (latent !== null) {
      return Float64Array.from({ length: this.lanes }, (_, lane) => latent.content(lane));
    }
    const { capacity } = this.#operator;
    const cells = Int32Array.from(capacity, (_, cell) => cell);
    return Float64Array.from(
      { length: this.lanes },
      (_, lane) => this.#read(lane, cells, capacity),
    );
  }

  save(): Float64Array {
    return this.#frozen?.toTemperature(this.#field) ?? this.#field.slice();
  }

  load(state: Float64Array): void {
    this.#field.set(this.#frozen?.toPotential(state) ?? state);
    this.#latent?.start(this.#field);
    this.#remember();
  }
}

/**
 * Full model of `lanes` slices.
 *
 * @param operator one metre of slice
 * @param lanes copies, each with its own temperatures
 * @param steps s, the step lengths wanted
 * @param freezes true: water in the soil freezes cell by cell, as the operator has it
 */
export function adiEngine(
  operator: ConductionOperator,
  lanes: number,
  steps: readonly number[],
  freezes = false,
): SoilEngine {
  return new FullModel(operator, lanes, steps, freezes);
}

/** State of an engine with every lane at the same field, for `load`. */
export function uniformState(lanes: number, cellTemperatures: Float64Array): Float64Array {
  const count = cellTemperatures.length;
  const groups = Math.ceil(lanes / LANES);
  const state = new Float64Array(groups * LANES * count);
  for (let k = 0; k < state.length; k++) {
    state[k] = cellTemperatures[Math.floor((k % (LANES * count)) / LANES)]!;
  }
  return state;
}
