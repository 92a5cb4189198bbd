/** The everyday full model: every cell of every slice, alternating directions. @module */
import { type AdiFactors, adiFactors, type PortResponse, portResponse } from "./adi_factors.ts";
import { adiKernel, LANES } from "./adi_kernel.ts";
import type { SoilEngine } from "./engine.ts";
import type { ConductionOperator, SurfacePort } from "./operator.ts";

/** Everything constant for one step length. */
interface StepPlan {
  readonly factors: AdiFactors;
  readonly tubes: readonly PortResponse[];
  readonly floor: PortResponse;
  readonly outdoor: PortResponse;
  readonly deep: PortResponse;
}

/** Weighted sum of a unit response over a set of cells. */
function seenBy(
  response: PortResponse,
  cells: Int32Array,
  weights: Float64Array,
  count: number,
): number {
  const full = new Float64Array(count);
  response.cells.forEach((cell, k) => full[cell] = response.values[k]!);
  return cells.reduce((sum, cell, k) => sum + weights[k]! * full[cell]!, 0);
}

function planStep(operator: ConductionOperator, seconds: number): StepPlan {
  const factors = adiFactors(operator, seconds);
  const count = operator.capacity.length;
  const responseTo = (cells: Int32Array, weights: Float64Array) => {
    const source = new Float64Array(count);
    cells.forEach((cell, k) => source[cell] = weights[k]!);
    return portResponse(operator, factors, source);
  };
  return {
    factors,
    tubes: operator.tubes.map((tube) => responseTo(tube.cells, tube.weights)),
    floor: responseTo(operator.floor.cells, operator.floor.conductances),
    outdoor: responseTo(operator.outdoor.cells, operator.outdoor.conductances),
    deep: responseTo(operator.deep.cells, operator.deep.conductances),
  };
}

const total = (values: Float64Array) => values.reduce((sum, value) => sum + value, 0);

/**
 * Full model of `lanes` slices.
 *
 * @param operator one metre of slice
 * @param lanes copies, each with its own temperatures
 * @param steps s, the step lengths wanted
 */
export function adiEngine(
  operator: ConductionOperator,
  lanes: number,
  steps: readonly number[],
): SoilEngine {
  const count = operator.capacity.length;
  const tubes = operator.tubes.length;
  const groups = Math.ceil(lanes / LANES);
  const field = new Float64Array(groups * LANES * count);
  const work = new Float64Array(LANES * count);
  const plans = steps.map((seconds) => planStep(operator, seconds));
  const blockTemperature = new Float64Array(lanes * tubes);
  const floorPull = new Float64Array(lanes);
  const floorHeat = new Float64Array(lanes);
  const outdoorHeat = new Float64Array(lanes);
  const deepHeat = new Float64Array(lanes);
  const storeTemperature = new Float64Array(lanes);
  const before = {
    block: new Float64Array(lanes * tubes),
    floor: new Float64Array(lanes),
    outdoor: new Float64Array(lanes),
    deep: new Float64Array(lanes),
  };
  const drive = { outdoor: new Float64Array(lanes), deep: new Float64Array(lanes) };
  const sizes = new Float64Array(LANES);
  const base = (lane: number) => Math.floor(lane / LANES) * LANES * count + (lane % LANES);

  const read = (lane: number, cells: Int32Array, weights: Float64Array): number => {
    const start = base(lane);
    let sum = 0;
    for (let k = 0; k < cells.length; k++) sum += weights[k]! * field[start + LANES * cells[k]!]!;
    return sum;
  };
  const readSurface = (lane: number, port: SurfacePort) =>
    read(lane, port.cells, port.conductances);
  /** Adds a port's response to the four slices of a group, each by its own size. */
  const add = (group: number, response: PortResponse): void => {
    const [s0, s1, s2, s3] = [sizes[0]!, sizes[1]!, sizes[2]!, sizes[3]!];
    if (s0 === 0 && s1 === 0 && s2 === 0 && s3 === 0) return;
    const start = group * LANES * count;
    const { cells, values } = response;
    for (let k = 0; k < cells.length; k++) {
      const at = start + LANES * cells[k]!;
      const value = values[k]!;
      field[at] = field[at]! + s0 * value;
      field[at + 1] = field[at + 1]! + s1 * value;
      field[at + 2] = field[at + 2]! + s2 * value;
      field[at + 3] = field[at + 3]! + s3 * value;
    }
  };
  /** Sizes of a group's four slices; slices that only fill up the group get 0. */
  const gather = (group: number, of: (lane: number) => number): void => {
    for (let l = 0; l < LANES; l++) {
      const lane = group * LANES + l;
      sizes[l] = lane < lanes ? of(lane) : 0;
    }
  };
  const remember = (): void => {
    for (let lane = 0; lane < lanes; lane++) {
      for (let tube = 0; tube < tubes; tube++) {
        const port = operator.tubes[tube]!;
        before.block[lane * tubes + tube] = read(lane, port.cells, port.weights);
      }
      before.floor[lane] = readSurface(lane, operator.floor);
      before.outdoor[lane] = readSurface(lane, operator.outdoor);
      before.deep[lane] = readSurface(lane, operator.deep);
      storeTemperature[lane] = read(lane, operator.store.cells, operator.store.weights);
    }
  };
  const conductance = {
    floor: total(operator.floor.conductances),
    outdoor: total(operator.outdoor.conductances),
    deep: total(operator.deep.conductances),
  };

  const predict = (
    step: number,
    outdoor: Float64Array,
    deep: Float64Array,
    running: boolean,
  ): void => {
    const plan = plans[step]!;
    for (let group = 0; group < groups; group++) {
      adiKernel(operator, plan.factors, field, group * LANES * count, work);
      gather(group, (lane) => outdoor[lane]!);
      add(group, plan.outdoor);
      gather(group, (lane) => deep[lane]!);
      add(group, plan.deep);
    }
    for (let lane = 0; lane < lanes; lane++) {
      drive.outdoor[lane] = outdoor[lane]!;
      drive.deep[lane] = deep[lane]!;
      for (let tube = 0; running && tube < tubes; tube++) {
        const port = operator.tubes[tube]!;
        const k = lane * tubes + tube;
        blockTemperature[k] = 0.5 * (before.block[k]! + read(lane, port.cells, port.weights));
      }
      floorPull[lane] = 0.5 * (before.floor[lane]! + readSurface(lane, operator.floor));
    }
  };
  const finish = (
    step: number,
    tubeHeat: Float64Array,
    floorDriving: Float64Array,
    running: boolean,
  ): void => {
    const plan = plans[step]!;
    for (let group = 0; group < groups; group++) {
      for (let tube = 0; running && tube < tubes; tube++) {
        gather(group, (lane) => tubeHeat[lane * tubes + tube]!);
        add(group, plan.tubes[tube]!);
      }
      gather(group, (lane) => floorDriving[lane]!);
      add(group, plan.floor);
    }
    for (let lane = 0; lane < lanes; lane++) {
      floorHeat[lane] = conductance.floor * floorDriving[lane]! - 0.5 * before.floor[lane]!;
      outdoorHeat[lane] = conductance.outdoor * drive.outdoor[lane]! - 0.5 * before.outdoor[lane]!;
      deepHeat[lane] = conductance.deep * drive.deep[lane]! - 0.5 * before.deep[lane]!;
    }
    remember();
    for (let lane = 0; lane < lanes; lane++) {
      floorHeat[lane]! -= 0.5 * before.floor[lane]!;
      outdoorHeat[lane]! -= 0.5 * before.outdoor[lane]!;
      deepHeat[lane]! -= 0.5 * before.deep[lane]!;
    }
  };
  remember();
  return {
    lanes,
    tubes,
    steps,
    tubeResponse: plans.map((plan) =>
      Float64Array.from(plan.tubes, (response, tube) => {
        const port = operator.tubes[tube]!;
        return 0.5 * seenBy(response, port.cells, port.weights, count);
      })
    ),
    tubeCross: plans.map((plan) => {
      const cross = new Float64Array(tubes * tubes);
      let most = 0;
      plan.tubes.forEach((response, from) =>
        operator.tubes.forEach((port, to) => {
          if (to === from) return;
          const felt = 0.5 * seenBy(response, port.cells, port.weights, count);
          cross[to * tubes + from] = felt;
          most = Math.max(most, Math.abs(felt));
        })
      );
      return most > 1e-9 ? cross : null;
    }),
    floorConductance: plans.map((plan) =>
      conductance.floor -
      0.5 * seenBy(plan.floor, operator.floor.cells, operator.floor.conductances, count)
    ),
    blockTemperature,
    floorPull,
    floorHeat,
    outdoorHeat,
    deepHeat,
    storeTemperature,
    predict,
    finish,
    content: () =>
      Float64Array.from({ length: lanes }, (_, lane) => {
        const start = base(lane);
        let sum = 0;
        for (let c = 0; c < count; c++) sum += operator.capacity[c]! * field[start + LANES * c]!;
        return sum;
      }),
    save: () => field.slice(),
    load: (state) => {
      field.set(state);
      remember();
    },
  };
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
