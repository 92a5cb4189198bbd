/** The everyday full model: every cell of every slice, alternating directions. @module */
import { CellField } from "./cell_field.ts";
import { type AdiKernel, plainAdi, simdAdi } from "./adi_kernel.ts";
import { LANES } from "./kernel.ts";
import { type AdiPlan, adiPlan } from "./plan.ts";
import { addSources } from "./sources.ts";
import type { SoilEngine } from "../engine.ts";
import type { ConductionOperator } from "../../ground/operator.ts";

const total = (values: Float64Array) => values.reduce((sum, value) => sum + value, 0);

/** Takes the sources of all four slices out of cells. */
function clearCells(sources: Float64Array, cells: Int32Array): void {
  for (let k = 0; k < cells.length; k++) {
    const at = LANES * cells[k]!;
    for (let l = 0; l < LANES; l++) sources[at + l] = 0;
  }
}

/** What the kernel goes over: field, scratch and the factors of each step length. */
function placedIn(
  kernel: AdiKernel,
  operator: ConductionOperator,
  lanes: number,
  steps: readonly number[],
) {
  const cells = LANES * operator.capacity.length;
  const plans = steps.map((seconds) => adiPlan(operator, seconds));
  const wanted: Record<string, Float64Array> = {
    field: new Float64Array(Math.ceil(lanes / LANES) * cells),
    work: new Float64Array(cells),
  };
  plans.forEach(({ factors: { across, along, columnNext } }, k) => {
    Object.assign(wanted, {
      [`across ${k}`]: across,
      [`along ${k}`]: along,
      [`columnNext ${k}`]: columnNext,
    });
  });
  const placed = kernel.place(wanted);
  return {
    field: placed.field!,
    work: placed.work!,
    plans: plans.map((plan, k): AdiPlan => ({
      ...plan,
      factors: {
        ...plan.factors,
        across: placed[`across ${k}`]!,
        along: placed[`along ${k}`]!,
        columnNext: placed[`columnNext ${k}`]!,
      },
    })),
  };
}

/** The two halves of a step. */
class FullModel extends CellField implements SoilEngine {
  readonly tubeResponse: readonly Float64Array[];
  readonly tubeCross: readonly (Float64Array | null)[];
  readonly floorConductance: readonly number[];
  readonly #kernel: AdiKernel;
  readonly #plans: readonly AdiPlan[];
  readonly #conductance: {
    readonly floor: number;
    readonly outdoor: number;
    readonly deep: number;
  };
  readonly #work: Float64Array;
  readonly #sources: Float64Array;
  readonly #outdoor: Float64Array;
  readonly #deep: Float64Array;
  /** W/m of the last step, lane·tubes + tube, and degC that drove the floor, by lane */
  readonly #lastHeat: Float64Array;
  readonly #lastDriving: Float64Array;
  /** the field as the step began, and whether it is still that: a step may be tried more than once */
  readonly #start: Float64Array;
  #tried = false;
  /** W/m by lane that floor and outdoor surface give for the potential's lead */
  readonly #floorLead: Float64Array;
  readonly #outdoorMore: Float64Array;

  constructor(
    operator: ConductionOperator,
    lanes: number,
    steps: readonly number[],
    freezes: boolean,
    kernel: AdiKernel,
  ) {
    const { field, work, plans } = placedIn(kernel, operator, lanes, steps);
    super(operator, lanes, steps, freezes, field);
    const byLane = () => new Float64Array(lanes);
    this.#kernel = kernel;
    this.#plans = plans;
    this.#conductance = {
      floor: total(operator.floor.conductances),
      outdoor: total(operator.outdoor.conductances),
      deep: total(operator.deep.conductances),
    };
    this.#work = work;
    this.#sources = new Float64Array(LANES * this.count);
    this.#outdoor = byLane();
    this.#deep = byLane();
    this.#lastHeat = new Float64Array(lanes * this.tubes);
    this.#lastDriving = byLane();
    this.#start = new Float64Array(this.field.length);
    this.#floorLead = byLane();
    this.#outdoorMore = byLane();
    this.tubeResponse = this.#plans.map((plan) => plan.tubeResponse);
    this.tubeCross = this.#plans.map((plan) => plan.tubeCross);
    this.floorConductance = this.#plans.map((plan) => plan.floorConductance);
  }

  /** Puts the sources of a group in place: the floor's driving temperature and the tubes' heat. */
  #placeSources(
    group: number,
    tubeHeat: Float64Array,
    floorDriving: Float64Array,
    heated: boolean,
  ): void {
    const { floor, tubes } = this.operator;
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
    const before = this.before;
    if (this.#tried) this.field.set(this.#start);
    else this.#start.set(this.field);
    this.#tried = true;
    this.#placeOutside(outdoor, deep);
    this.latent?.begin(this.field);
    for (let group = 0; group < this.groups; group++) {
      const start = group * LANES * this.count;
      const latent = this.#latentSources(group, outdoor);
      this.#kernel.step(this.operator, plan.factors, this.field, start, this.#work);
      if (latent !== null) {
        addSources(plan.factors, plan.everywhere, latent, this.field, start, this.#work);
      }
      this.add(group, plan.outdoor, this.#outdoor);
      this.add(group, plan.deep, this.#deep);
    }
    for (let lane = 0; lane < this.lanes; lane++) {
      for (let tube = 0; running && tube < this.tubes; tube++) {
        const k = lane * this.tubes + tube;
        const mean = 0.5 * (before.block[k]! + this.blockMean(lane, tube));
        const felt = mean + plan.tubeResponse[tube]! * this.#lastHeat[k]!;
        this.blockTemperature[k] = mean - (this.frozen?.tubeLead(tube, felt) ?? 0);
      }
      this.floorPull[lane] = 0.5 * (before.floor[lane]! + this.floorSum(lane)) -
        this.#floorLead[lane]!;
    }
  }

  /** Temperatures outside the soil as what they are in the field. */
  #placeOutside(outdoor: Float64Array, deep: Float64Array): void {
    const frozen = this.frozen;
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
    if (this.latent === null) return null;
    const size = LANES * this.count;
    const start = group * size;
    const power = this.latent.power.subarray(start, start + size);
    const none = power.every((value) => value === 0);
    const warm = !this.frozen?.mixed && this.#lastDriving.every((value) => value >= 0);
    if (this.frozen === null || none && warm) return none ? null : power;
    const sources = power.slice();
    const lanes = Math.min(LANES, this.lanes - group * LANES);
    for (let l = 0; l < lanes; l++) {
      const lane = group * LANES + l;
      const at = this.cellsOf(lane);
      this.#floorLead[lane] = this.frozen.addFloor(sources, l, {
        lane,
        driving: this.#lastDriving[lane]!,
        potentialAt: at,
      });
      this.#outdoorMore[lane] = this.frozen.addMixed(sources, l, outdoor[lane]!, at);
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
    this.#tried = false;
    const heated = running && tubeHeat.some((heat) => heat !== 0);
    const reach = heated ? plan.all : plan.floor;
    for (let group = 0; group < this.groups; group++) {
      const start = group * LANES * this.count;
      this.#placeSources(group, tubeHeat, floorDriving, heated);
      addSources(plan.factors, reach, this.#sources, this.field, start, this.#work);
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
    this.remember();
    this.#takeHalf();
    // the surfaces conduct by the temperatures before freezing sets them right
    if (this.latent !== null) {
      this.latent.finish(this.field, this.steps[step]!);
      this.remember();
    }
    this.readStore();
  }

  /** Takes half of what the surfaces see off their heat: once at the start, once at the end. */
  #takeHalf(): void {
    const before = this.before;
    for (let lane = 0; lane < this.lanes; lane++) {
      this.floorHeat[lane]! -= 0.5 * before.floor[lane]!;
      this.outdoorHeat[lane]! -= 0.5 * before.outdoor[lane]!;
      this.deepHeat[lane]! -= 0.5 * before.deep[lane]!;
    }
  }

  override load(state: Float64Array): void {
    this.#tried = false;
    super.load(state);
  }
}

/**
 * Full model of `lanes` slices.
 *
 * @param operator one metre of slice
 * @param lanes copies, each with its own temperatures
 * @param steps s, the step lengths wanted
 * @param freezes true: water in the soil freezes cell by cell, as the operator has it
 * @param kernel of the step, new; the quickest there is unless given
 */
export function adiEngine(
  operator: ConductionOperator,
  lanes: number,
  steps: readonly number[],
  freezes = false,
  kernel = simdAdi() ?? plainAdi(),
): SoilEngine {
  return new FullModel(operator, lanes, steps, freezes, kernel);
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
