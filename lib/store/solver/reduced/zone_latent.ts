/** Latent heat of the zones of a reduced slice, solved with the states in every step. @module */
import {
  type FreezingLumps,
  lumpsIn,
  type LumpState,
  type LumpStep,
  settleLumps,
} from "../../../soil/mod.ts";
import { HOUR } from "../../../basics/mod.ts";
import type { StepPlan } from "./plan.ts";
import type { ReducedSlice } from "./slice.ts";
import type { StepBuffers } from "./step_buffers.ts";
import { BLOCK, type Run, runOver } from "./sums/mod.ts";

/**
 * K away from freezing or thawing from which a zone need not be watched; its fastest change, K/s,
 * under the floor and in the ground outside, whose surface knows no day.
 */
const SAFE = 0.3;
const FASTEST = 2 / HOUR;
const FASTEST_OUTSIDE = 0.5 / HOUR;

/** K per W/m at the end of a step between zones: what the states answer, and what is left out. */
function endResponse(slice: ReducedSlice, plan: StepPlan): Float64Array {
  const { states, ports, gains, direct } = slice;
  const zones = slice.zones.length;
  const before = ports - zones;
  return Float64Array.from({ length: zones * zones }, (_, k) => {
    const [a, b] = [before + Math.floor(k / zones), before + (k % zones)];
    let sum = direct[a * ports + b]!;
    for (let s = 0; s < states; s++) {
      sum += gains[a * states + s]! * gains[b * states + s]! * plan.growth[s]!;
    }
    return sum;
  });
}

/**
 * Ice of all zones of all lanes. Within a step the engine moves its states without latent heat,
 * this reads the zones, finds the latent power that makes temperature and ice belong together at
 * the step's end, and adds it to the states. A zone far from freezing, or frozen through and far from
 * thawing, is not read again before it could.
 */
export class ZoneLatent {
  /** J/m and W/m, lane·zones + zone */
  readonly #state: LumpState;
  /** degC at the end of the step without latent heat, lane·zones + zone */
  readonly #free: Float64Array;
  /** s until a zone of a block must be read again, block·zones + zone */
  readonly rest: Float64Array;
  /** by block: ports of the zones that froze or thawed in the last step */
  readonly #active: readonly Run[];
  readonly #slice: ReducedSlice;
  readonly #lumps: FreezingLumps;
  readonly #lanes: number;
  readonly #steps: readonly LumpStep[];
  /** ports before those of the zones */
  readonly #before: number;
  /** zones to be read, and those that may freeze or thaw */
  readonly #due: Int32Array;
  readonly #listed: Int32Array;
  readonly #buffers: StepBuffers;

  constructor(slice: ReducedSlice, lanes: number, buffers: StepBuffers) {
    const { ports } = slice;
    const zones = slice.zones.length;
    const { plans, active } = buffers;
    const lumps = lumpsIn(slice.curve, slice.zones);
    this.#lumps = lumps;
    this.#slice = slice;
    this.#lanes = lanes;
    this.#buffers = buffers;
    this.#state = {
      content: new Float64Array(lanes * zones),
      power: new Float64Array(lanes * zones),
    };
    this.#free = new Float64Array(lanes * zones);
    this.rest = new Float64Array(active.length * zones);
    this.#steps = plans.map((plan) => ({
      lumps,
      seconds: plan.seconds,
      response: endResponse(slice, plan),
    }));
    this.#before = ports - zones;
    this.#active = active.map((listed) => runOver(ports, this.#before, this.#before, listed));
    this.#due = new Int32Array(zones);
    this.#listed = new Int32Array(zones);
  }

  /** How many zones of a block have an input other than 0. */
  active(block: number): number {
    return this.#active[block]!.count;
  }

  /**
   * Ends the step of a block: power into the inputs and the states, ice of the step's end.
   *
   * @param step index of the step length
   * @param block of four lanes, whose states have moved without latent heat
   * @param run ports before the zones that carried anything
   */
  settle(step: number, block: number, run: Run): void {
    const { seconds } = this.#steps[step]!;
    const count = this.#findDue(block, seconds);
    this.#read(block, count, run);
    const last = Math.min(this.#lanes, (block + 1) * BLOCK);
    let active = this.active(block) > 0;
    for (let lane = block * BLOCK; lane < last; lane++) {
      active = this.#settleLane(step, lane, count) || active;
    }
    if (!active) return;
    const { sums, input, x, added, stateGains, kept, plans } = this.#buffers;
    this.#placePower(block, last, input, count);
    const { states, ports } = this.#slice;
    const [known, at, lanes] = [
      block * ports * BLOCK,
      block * states * BLOCK,
      last - block * BLOCK,
    ];
    added.fill(0);
    sums.addRows(stateGains, this.#active[block]!, input, known, added, 0, lanes);
    sums.advance({ decay: kept, growth: plans[step]!.growth }, added, x, at, lanes);
  }

  /** Lists the zones of a block to be read now. */
  #findDue(block: number, seconds: number): number {
    const zones = this.#due.length;
    let count = 0;
    for (let z = 0; z < zones; z++) {
      const at = block * zones + z;
      this.rest[at]! -= seconds;
      if (this.rest[at]! <= 0) this.#due[count++] = z;
    }
    return count;
  }

  /** Temperatures of the zones due at the end of the step without latent heat. */
  #read(block: number, count: number, run: Run): void {
    const { states, ports } = this.#slice;
    const { sums, x, input, read, due, dueGains, dueDirect, allStates } = this.#buffers;
    const lanes = Math.min(BLOCK, this.#lanes - block * BLOCK);
    for (let i = 0; i < count; i++) due[i] = this.#before + this.#due[i]!;
    dueGains.count = count;
    dueDirect.count = count;
    read.fill(0, 0, count * BLOCK);
    sums.addRows(dueGains, allStates, x, block * states * BLOCK, read, 0, lanes);
    sums.addRows(dueDirect, run, input, block * ports * BLOCK, read, 0, lanes);
    for (let i = 0; i < count; i++) this.#take(block, this.#due[i]!, i * BLOCK);
  }

  /** Keeps what was read of a zone; says when it must be read again. */
  #take(block: number, zone: number, from: number): void {
    const { read } = this.#buffers;
    const zones = this.#due.length;
    const lanes = Math.min(BLOCK, this.#lanes - block * BLOCK);
    const [latent, range] = [this.#lumps.latent[zone]!, this.#lumps.range[zone]!];
    const fastest = this.#slice.zones[zone]!.inside ? FASTEST : FASTEST_OUTSIDE;
    let away = Infinity;
    for (let l = 0; l < lanes; l++) {
      const at = (block * BLOCK + l) * zones + zone;
      const temperature = read[from + l]!;
      const held = this.#state.content[at]!;
      this.#free[at] = temperature;
      away = Math.min(
        away,
        held === 0 ? temperature : held === -latent ? -range - temperature : 0,
      );
    }
    this.rest[block * zones + zone] = Math.max(0, (away - SAFE) / fastest);
  }

  /** Solves one lane; false where nothing in it freezes or thaws. */
  #settleLane(step: number, lane: number, count: number): boolean {
    const { content, power } = this.#state;
    const zones = this.#due.length;
    const start = lane * zones;
    const held = this.active(Math.floor(lane / BLOCK)) > 0;
    let listed = 0;
    for (let i = 0; i < count; i++) {
      const z = this.#due[i]!;
      if (content[start + z] !== 0 || this.#free[start + z]! < 0) this.#listed[listed++] = z;
      else if (held) power[start + z] = 0;
    }
    if (listed === 0) return false;
    settleLumps(this.#steps[step]!, this.#state, this.#free, start, this.#listed, listed);
    // its neighbours' power may set a zone going that stood still: then it must not rest
    const rests = Math.floor(lane / BLOCK) * zones;
    for (let i = 0; i < listed; i++) {
      if (power[start + this.#listed[i]!] !== 0) this.rest[rests + this.#listed[i]!] = 0;
    }
    return true;
  }

  /**
   * Writes the power of the step into the inputs, and lists the zones that have any: of the first
   * `count` that are due, for a zone with power never rests.
   */
  #placePower(block: number, last: number, input: Float64Array, count: number): void {
    const { power } = this.#state;
    const zones = this.#due.length;
    const active = this.#active[block]!;
    const first = block * BLOCK;
    let listed = 0;
    for (let i = 0; i < count; i++) {
      const z = this.#due[i]!;
      const known = (block * this.#slice.ports + this.#before + z) * BLOCK;
      let any = false;
      for (let lane = first; lane < last; lane++) {
        const value = power[lane * zones + z]!;
        input[known + lane - first] = value;
        any ||= value !== 0;
      }
      if (any) active.listed[listed++] = this.#before + z;
    }
    active.count = listed;
  }

  /** Latent content of a lane, J/m, 0 or less. */
  content(lane: number): number {
    const zones = this.#due.length;
    let sum = 0;
    for (let z = 0; z < zones; z++) sum += this.#state.content[lane * zones + z]!;
    return sum;
  }

  /** J/m that the ice of a lane under the floor has set free. */
  ice(lane: number): number {
    const { zones } = this.#slice;
    let sum = 0;
    zones.forEach(({ inside, latent }, z) => {
      if (!inside) return;
      sum -= this.#state.content[lane * zones.length + z]! * latent / this.#lumps.latent[z]!;
    });
    return Math.max(0, sum);
  }

  /** Copies the ice out: content and power. */
  save(): Float64Array {
    const { content, power } = this.#state;
    const saved = new Float64Array(content.length + power.length);
    saved.set(content);
    saved.set(power, content.length);
    return saved;
  }

  /** Takes ice in as saved; nothing given means none. */
  load(saved: Float64Array, input: Float64Array): void {
    const { content, power } = this.#state;
    content.fill(0);
    power.fill(0);
    content.set(saved.subarray(0, content.length));
    power.set(saved.subarray(content.length, content.length + power.length));
    const zones = this.#due.length;
    for (let z = 0; z < zones; z++) this.#due[z] = z;
    for (let block = 0; block < this.#active.length; block++) {
      this.#placePower(block, Math.min(this.#lanes, (block + 1) * BLOCK), input, zones);
    }
  }
}
