/** The fast engine: a few dozen modal states for each slice, exact between steps. @module */
import type { SoilEngine } from "./engine.ts";
import type { ReducedSlice } from "./reduction.ts";

/** What modal states can do beyond any engine. */
export interface ReducedEngine extends SoilEngine {
  readonly slice: ReducedSlice;
  /**
   * Jumps to the periodic state: adds a/(1 − a) of the year's change to each state, a = e^(−λ·year).
   * Exact where inputs repeat.
   *
   * @param start states a year ago, as saved
   * @param seconds length of the period
   */
  jump(start: Float64Array, seconds: number): void;
  /** Temperatures of all cells of a lane, degC. */
  cells(lane: number): Float64Array;
}

interface StepPlan {
  readonly seconds: number;
  /** e^(−λΔt) and (1 − e^(−λΔt))/λ */
  readonly decay: Float64Array;
  readonly growth: Float64Array;
  /** port·states + state: mean over the step of the port value for the state at its start */
  readonly mean: Float64Array;
  /** port·ports + port: mean port value for each unit of input held over the step */
  readonly response: Float64Array;
}

function planStep(slice: ReducedSlice, seconds: number): StepPlan {
  const { states, ports, rates, gains, direct } = slice;
  const decay = rates.map((rate) => Math.exp(-rate * seconds));
  const growth = rates.map((rate) => -Math.expm1(-rate * seconds) / rate);
  const mean = new Float64Array(ports * states);
  const response = direct.slice();
  for (let p = 0; p < ports; p++) {
    for (let k = 0; k < states; k++) {
      mean[p * states + k] = gains[p * states + k]! * growth[k]! / seconds;
    }
    for (let q = 0; q < ports; q++) {
      let sum = 0;
      for (let k = 0; k < states; k++) {
        sum += gains[p * states + k]! * gains[q * states + k]! *
          (1 - growth[k]! / seconds) / rates[k]!;
      }
      response[p * ports + q]! += sum;
    }
  }
  return { seconds, decay, growth, mean, response };
}

/**
 * Engine of `lanes` reduced slices. Inputs are held over a step and the states move exactly
 * (zero-order hold), so the soil adds no error of time.
 */
export function reducedEngine(
  slice: ReducedSlice,
  lanes: number,
  steps: readonly number[],
): ReducedEngine {
  const { states, tubes, ports, gains, conductances } = slice;
  const plans = steps.map((seconds) => planStep(slice, seconds));
  const [floorPort, outdoorPort, deepPort] = [tubes, tubes + 1, tubes + 2];
  const x = new Float64Array(lanes * states);
  /** inputs of each lane in the step: tube heat, then floor, outdoor, deep temperature */
  const input = new Float64Array(lanes * ports);
  /** mean of the three surface ports from the state alone */
  const free = new Float64Array(lanes * 3);
  const blockTemperature = new Float64Array(lanes * tubes);
  const floorPull = new Float64Array(lanes);
  const floorHeat = new Float64Array(lanes);
  const outdoorHeat = new Float64Array(lanes);
  const deepHeat = new Float64Array(lanes);
  const storeTemperature = new Float64Array(lanes);

  const predict = (step: number, outdoor: Float64Array, deep: Float64Array): void => {
    const { mean, response } = plans[step]!;
    for (let lane = 0; lane < lanes; lane++) {
      const at = lane * states;
      const known = lane * ports;
      input[known + outdoorPort] = outdoor[lane]!;
      input[known + deepPort] = deep[lane]!;
      const floorBefore = input[known + floorPort]!;
      for (let p = 0; p < ports; p++) {
        let value = 0;
        const row = p * states;
        for (let k = 0; k < states; k++) value += mean[row + k]! * x[at + k]!;
        if (p >= tubes) free[lane * 3 + p - tubes] = value;
        const felt = value + response[p * ports + outdoorPort]! * outdoor[lane]! +
          response[p * ports + deepPort]! * deep[lane]!;
        if (p < tubes) {
          blockTemperature[lane * tubes + p] = felt +
            response[p * ports + floorPort]! * floorBefore;
        } else if (p === floorPort) {
          let fromTubes = 0;
          for (let q = 0; q < tubes; q++) {
            fromTubes += response[p * ports + q]! * input[known + q]!;
          }
          floorPull[lane] = felt + fromTubes;
        }
      }
    }
  };
  const finish = (step: number, tubeHeat: Float64Array, floorDriving: Float64Array): void => {
    const { decay, growth, response } = plans[step]!;
    for (let lane = 0; lane < lanes; lane++) {
      const at = lane * states;
      const own = lane * ports;
      for (let q = 0; q < tubes; q++) input[own + q] = tubeHeat[lane * tubes + q]!;
      input[own + floorPort] = floorDriving[lane]!;
      for (let s = 0; s < 3; s++) {
        const row = (tubes + s) * ports;
        let value = free[lane * 3 + s]!;
        for (let q = 0; q < ports; q++) value += response[row + q]! * input[own + q]!;
        const heat = conductances[s]! * input[own + tubes + s]! - value;
        if (s === 0) floorHeat[lane] = heat;
        else if (s === 1) outdoorHeat[lane] = heat;
        else deepHeat[lane] = heat;
      }
      let store = 0;
      for (let q = 0; q < ports; q++) store += slice.storeDirect[q]! * input[own + q]!;
      for (let k = 0; k < states; k++) {
        let pushed = 0;
        for (let q = 0; q < ports; q++) pushed += gains[q * states + k]! * input[own + q]!;
        const value = decay[k]! * x[at + k]! + growth[k]! * pushed;
        x[at + k] = value;
        store += slice.store[k]! * value;
      }
      storeTemperature[lane] = store;
    }
  };
  const refresh = (): void => {
    for (let lane = 0; lane < lanes; lane++) {
      let store = 0;
      for (let q = 0; q < ports; q++) store += slice.storeDirect[q]! * input[lane * ports + q]!;
      for (let k = 0; k < states; k++) store += slice.store[k]! * x[lane * states + k]!;
      storeTemperature[lane] = store;
    }
  };
  return {
    slice,
    lanes,
    tubes,
    steps,
    tubeResponse: plans.map(({ response }) =>
      Float64Array.from({ length: tubes }, (_, p) => response[p * ports + p]!)
    ),
    tubeCross: plans.map(({ response }) =>
      Float64Array.from({ length: tubes * tubes }, (_, k) => {
        const to = Math.floor(k / tubes);
        const from = k % tubes;
        return to === from ? 0 : response[to * ports + from]!;
      })
    ),
    floorConductance: plans.map(({ response }) =>
      conductances[0] - response[floorPort * ports + floorPort]!
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
        let sum = 0;
        for (let k = 0; k < states; k++) sum += slice.content[k]! * x[lane * states + k]!;
        return sum;
      }),
    save: () => x.slice(),
    load: (state) => {
      x.set(state);
      refresh();
    },
    jump: (start, seconds) => {
      for (let k = 0; k < x.length; k++) {
        const rate = slice.rates[k % states]!;
        x[k]! += (x[k]! - start[k]!) / Math.expm1(rate * seconds);
      }
      refresh();
    },
    cells: (lane) => {
      const field = new Float64Array(slice.capacity.length);
      for (let c = 0; c < field.length; c++) {
        let value = 0;
        for (let k = 0; k < states; k++) {
          value += slice.shapes[c * states + k]! * x[lane * states + k]!;
        }
        for (let q = 0; q < ports; q++) {
          value += slice.directShapes[c * ports + q]! * input[lane * ports + q]!;
        }
        field[c] = value;
      }
      return field;
    },
  };
}

/** Reduced states of every lane for a field of cell temperatures: x = shapesᵀ·M·T. */
export function reducedState(
  slice: ReducedSlice,
  lanes: number,
  cellTemperatures: Float64Array,
): Float64Array {
  const { states, shapes, capacity } = slice;
  const one = new Float64Array(states);
  for (let c = 0; c < capacity.length; c++) {
    const heat = capacity[c]! * cellTemperatures[c]!;
    for (let k = 0; k < states; k++) one[k]! += shapes[c * states + k]! * heat;
  }
  const state = new Float64Array(lanes * states);
  for (let lane = 0; lane < lanes; lane++) state.set(one, lane * states);
  return state;
}
