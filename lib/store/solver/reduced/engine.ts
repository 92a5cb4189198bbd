/** The fast engine: a few dozen modal states for each slice, exact between steps. @module */
import type { SoilEngine } from "../engine.ts";
import { BLOCK, byState, planStep, type StepPlan } from "./plan.ts";
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
  /** Adds the states of `count` lanes from one on to others and clears them. */
  merge(to: number, from: number, count: number): void;
  /** Temperatures of all cells of a lane, degC. */
  cells(lane: number): Float64Array;
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
  const { states, tubes, ports, conductances } = slice;
  const plans = steps.map((seconds) => planStep(slice, seconds));
  const [floorPort, outdoorPort, deepPort] = [tubes, tubes + 1, tubes + 2];
  /** ports that can carry anything: the deep end only where it is held */
  const active = conductances[2] > 0 ? ports : ports - 1;
  const surfaces = active - tubes;
  const blocks = Math.ceil(lanes / BLOCK);
  const padded = blocks * BLOCK;
  const gains = byState(slice);
  /** states: (block·states + state)·4 + lane in block */
  const x = new Float64Array(padded * states);
  /** inputs of the step, (block·ports + port)·4 + lane: tube heat, floor, outdoor, deep temperature */
  const input = new Float64Array(padded * ports);
  /** mean of the three surface ports from the state alone, (block·3 + surface)·4 + lane */
  const free = new Float64Array(padded * 3);
  const blockTemperature = new Float64Array(lanes * tubes);
  const floorPull = new Float64Array(lanes);
  const floorHeat = new Float64Array(lanes);
  const outdoorHeat = new Float64Array(lanes);
  const deepHeat = new Float64Array(lanes);
  const storeTemperature = new Float64Array(lanes);
  const four = new Float64Array(BLOCK);
  const eight = new Float64Array(2 * BLOCK);

  /** Mean of one port over the step from the states of a block, into `four`. */
  const meanOfPort = (mean: Float64Array, block: number, port: number): void => {
    const row = port * states;
    let at = block * states * BLOCK;
    let a0 = 0, a1 = 0, a2 = 0, a3 = 0;
    for (let k = 0; k < states; k++) {
      const m = mean[row + k]!;
      a0 += m * x[at]!;
      a1 += m * x[at + 1]!;
      a2 += m * x[at + 2]!;
      a3 += m * x[at + 3]!;
      at += BLOCK;
    }
    four[0] = a0;
    four[1] = a1;
    four[2] = a2;
    four[3] = a3;
  };
  /**
   * Means of ports `port` and `port + 1` over the step from states and surface inputs of a block,
   * into `eight`: two ports share each load of the states.
   */
  const meanOfPair = (plan: StepPlan, block: number, port: number): void => {
    const { mean, response } = plan;
    const row = port * states;
    let at = block * states * BLOCK;
    let a0 = 0, a1 = 0, a2 = 0, a3 = 0, b0 = 0, b1 = 0, b2 = 0, b3 = 0;
    for (let k = 0; k < states; k++) {
      const m = mean[row + k]!;
      const n = mean[row + states + k]!;
      const x0 = x[at]!;
      const x1 = x[at + 1]!;
      const x2 = x[at + 2]!;
      const x3 = x[at + 3]!;
      a0 += m * x0;
      a1 += m * x1;
      a2 += m * x2;
      a3 += m * x3;
      b0 += n * x0;
      b1 += n * x1;
      b2 += n * x2;
      b3 += n * x3;
      at += BLOCK;
    }
    at = (block * ports + floorPort) * BLOCK;
    for (let q = floorPort; q < active; q++) {
      const r = response[port * ports + q]!;
      const t = response[(port + 1) * ports + q]!;
      a0 += r * input[at]!;
      a1 += r * input[at + 1]!;
      a2 += r * input[at + 2]!;
      a3 += r * input[at + 3]!;
      b0 += t * input[at]!;
      b1 += t * input[at + 1]!;
      b2 += t * input[at + 2]!;
      b3 += t * input[at + 3]!;
      at += BLOCK;
    }
    eight[0] = a0;
    eight[1] = a1;
    eight[2] = a2;
    eight[3] = a3;
    eight[4] = b0;
    eight[5] = b1;
    eight[6] = b2;
    eight[7] = b3;
  };
  /** Adds what inputs from port `first` on do to one port, into `four`. */
  const addInputs = (response: Float64Array, block: number, port: number, first: number): void => {
    const row = port * ports;
    let at = (block * ports + first) * BLOCK;
    let [a0, a1, a2, a3] = [four[0]!, four[1]!, four[2]!, four[3]!];
    for (let q = first; q < active; q++) {
      const r = response[row + q]!;
      a0 += r * input[at]!;
      a1 += r * input[at + 1]!;
      a2 += r * input[at + 2]!;
      a3 += r * input[at + 3]!;
      at += BLOCK;
    }
    four[0] = a0;
    four[1] = a1;
    four[2] = a2;
    four[3] = a3;
  };

  const predict = (
    step: number,
    outdoor: Float64Array,
    deep: Float64Array,
    running: boolean,
  ): void => {
    const plan = plans[step]!;
    const { mean, response } = plan;
    const floorOwn = response[floorPort * ports + floorPort]!;
    for (let block = 0; block < blocks; block++) {
      const first = block * BLOCK;
      const count = Math.min(BLOCK, lanes - first);
      const known = block * ports * BLOCK;
      for (let l = 0; l < count; l++) {
        input[known + outdoorPort * BLOCK + l] = outdoor[first + l]!;
        input[known + deepPort * BLOCK + l] = deep[first + l]!;
      }
      if (running) {
        const paired = tubes - tubes % 2;
        for (let p = 0; p < paired; p += 2) {
          meanOfPair(plan, block, p);
          for (let l = 0; l < count; l++) {
            blockTemperature[(first + l) * tubes + p] = eight[l]!;
            blockTemperature[(first + l) * tubes + p + 1] = eight[BLOCK + l]!;
          }
        }
        for (let p = paired; p < tubes; p++) {
          meanOfPort(mean, block, p);
          addInputs(response, block, p, floorPort);
          for (let l = 0; l < count; l++) blockTemperature[(first + l) * tubes + p] = four[l]!;
        }
      }
      for (let s = 0; s < surfaces; s++) {
        meanOfPort(mean, block, tubes + s);
        free.set(four, (block * 3 + s) * BLOCK);
        if (s > 0) continue;
        addInputs(response, block, floorPort, 0);
        for (let l = 0; l < count; l++) {
          floorPull[first + l] = four[l]! - floorOwn * input[known + floorPort * BLOCK + l]!;
        }
      }
    }
  };
  const finish = (
    step: number,
    tubeHeat: Float64Array,
    floorDriving: Float64Array,
    running: boolean,
  ): void => {
    const { decay, growth, response } = plans[step]!;
    const from = running ? 0 : tubes;
    for (let block = 0; block < blocks; block++) {
      const first = block * BLOCK;
      const count = Math.min(BLOCK, lanes - first);
      const own = block * ports * BLOCK;
      for (let l = 0; l < count; l++) {
        for (let q = 0; q < tubes; q++) {
          input[own + q * BLOCK + l] = running ? tubeHeat[(first + l) * tubes + q]! : 0;
        }
        input[own + floorPort * BLOCK + l] = floorDriving[first + l]!;
      }
      for (let s = 0; s < surfaces; s++) {
        for (let l = 0; l < BLOCK; l++) four[l] = free[(block * 3 + s) * BLOCK + l]!;
        addInputs(response, block, tubes + s, from);
        const heat = s === 0 ? floorHeat : s === 1 ? outdoorHeat : deepHeat;
        for (let l = 0; l < count; l++) {
          heat[first + l] = conductances[s]! * input[own + (tubes + s) * BLOCK + l]! - four[l]!;
        }
      }
      moveStates(block, silent(block, from) ? active : from, decay, growth);
    }
    refresh();
  };
  /** True where no input of a block from a port on is other than 0, as in tagged fields at rest. */
  const silent = (block: number, from: number): boolean => {
    const end = (block * ports + active) * BLOCK;
    for (let k = (block * ports + from) * BLOCK; k < end; k++) if (input[k] !== 0) return false;
    return true;
  };
  /** x ← e^(−λΔt)·x + growth·(gains·input) for four lanes. */
  const moveStates = (
    block: number,
    from: number,
    decay: Float64Array,
    growth: Float64Array,
  ): void => {
    const paired = states - states % 2;
    for (let k = 0; k < paired; k += 2) movePair(block, k, from, decay, growth);
    for (let k = paired; k < states; k++) moveOne(block, k, from, decay, growth);
  };
  /** Two states share each load of the inputs. */
  const movePair = (
    block: number,
    k: number,
    from: number,
    decay: Float64Array,
    growth: Float64Array,
  ): void => {
    let a0 = 0, a1 = 0, a2 = 0, a3 = 0, b0 = 0, b1 = 0, b2 = 0, b3 = 0;
    let known = (block * ports + from) * BLOCK;
    const row = k * ports;
    for (let q = from; q < active; q++) {
      const g = gains[row + q]!;
      const h = gains[row + ports + q]!;
      const u0 = input[known]!;
      const u1 = input[known + 1]!;
      const u2 = input[known + 2]!;
      const u3 = input[known + 3]!;
      a0 += g * u0;
      a1 += g * u1;
      a2 += g * u2;
      a3 += g * u3;
      b0 += h * u0;
      b1 += h * u1;
      b2 += h * u2;
      b3 += h * u3;
      known += BLOCK;
    }
    const at = (block * states + k) * BLOCK;
    const [e, f] = [decay[k]!, growth[k]!];
    x[at] = e * x[at]! + f * a0;
    x[at + 1] = e * x[at + 1]! + f * a1;
    x[at + 2] = e * x[at + 2]! + f * a2;
    x[at + 3] = e * x[at + 3]! + f * a3;
    const [v, w] = [decay[k + 1]!, growth[k + 1]!];
    x[at + 4] = v * x[at + 4]! + w * b0;
    x[at + 5] = v * x[at + 5]! + w * b1;
    x[at + 6] = v * x[at + 6]! + w * b2;
    x[at + 7] = v * x[at + 7]! + w * b3;
  };
  const moveOne = (
    block: number,
    k: number,
    from: number,
    decay: Float64Array,
    growth: Float64Array,
  ): void => {
    const at = (block * states + k) * BLOCK;
    for (let l = 0; l < BLOCK; l++) {
      let sum = 0;
      for (let q = from; q < active; q++) {
        sum += gains[k * ports + q]! * input[(block * ports + q) * BLOCK + l]!;
      }
      x[at + l] = decay[k]! * x[at + l]! + growth[k]! * sum;
    }
  };
  const place = (lane: number) => Math.floor(lane / BLOCK) * BLOCK * states + (lane % BLOCK);
  const inputOf = (lane: number, port: number) =>
    input[(Math.floor(lane / BLOCK) * ports + port) * BLOCK + (lane % BLOCK)]!;
  const refresh = (): void => {
    if (!thermometer) return;
    for (let block = 0; block < blocks; block++) {
      // the thermometer is a port like any other: weights of states and of inputs
      meanOfPort(slice.store, block, 0);
      addInputs(slice.storeDirect, block, 0, 0);
      const first = block * BLOCK;
      const count = Math.min(BLOCK, lanes - first);
      for (let l = 0; l < count; l++) storeTemperature[first + l] = four[l]!;
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
        const other = k % tubes;
        return to === other ? 0 : response[to * ports + other]!;
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
        const at = place(lane);
        for (let k = 0; k < states; k++) sum += slice.content[k]! * x[at + BLOCK * k]!;
        return sum;
      }),
    save: () => x.slice(),
    load: (state) => {
      x.set(state);
      refresh();
    },
    jump: (start, seconds) => {
      for (let k = 0; k < x.length; k++) {
        const rate = slice.rates[Math.floor(k / BLOCK) % states]!;
        x[k]! += (x[k]! - start[k]!) / Math.expm1(rate * seconds);
      }
      refresh();
    },
    merge: (to, from, count) => {
      for (let lane = 0; lane < count; lane++) {
        const [target, source] = [place(to + lane), place(from + lane)];
        for (let k = 0; k < states * BLOCK; k += BLOCK) {
          x[target + k]! += x[source + k]!;
          x[source + k] = 0;
        }
      }
      refresh();
    },
    cells: (lane) => {
      const field = new Float64Array(slice.capacity.length);
      const at = place(lane);
      for (let c = 0; c < field.length; c++) {
        let value = 0;
        for (let k = 0; k < states; k++) {
          value += slice.shapes[c * states + k]! * x[at + BLOCK * k]!;
        }
        for (let q = 0; q < ports; q++) {
          value += slice.directShapes[c * ports + q]! * inputOf(lane, q);
        }
        field[c] = value;
      }
      return field;
    },
  };
}
