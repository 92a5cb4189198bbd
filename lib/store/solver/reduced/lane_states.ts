/** What the fast engine holds between steps, and what can be read from it or done to it. @module */
import { temperatureAt } from "../../../soil/mod.ts";
import { LaneResults } from "../engine.ts";
import { cellField, everyFourth, jumpStates } from "./fields.ts";
import type { ReducedSlice } from "./slice.ts";
import { type StepBuffers, stepBuffers } from "./step_buffers.ts";
import { BLOCK, type Run, runOver, type Sums } from "./sums/mod.ts";
import { ZoneLatent } from "./zone_latent.ts";

/** States, inputs and ice of all lanes, four lanes side by side. */
export class LaneStates extends LaneResults {
  readonly slice: ReducedSlice;
  protected readonly buffers: StepBuffers;
  protected readonly blocks: number;
  /** runs of ports: tubes and surfaces, surfaces alone, none */
  protected readonly all: Run;
  protected readonly onSurfaces: Run;
  protected readonly none: Run;
  protected readonly x: Float64Array;
  /** tube heat, floor driving, outdoor and deep temperature, latent power of the step */
  protected readonly input: Float64Array;
  /** the same with the zones of a block that freeze or thaw, by block */
  readonly #allAndZones: readonly Run[];
  readonly #surfacesAndZones: readonly Run[];
  /** degC that drove the floor in the last step, by lane */
  protected readonly lastDriving: Float64Array;
  /** null where nothing freezes */
  protected readonly latent: ZoneLatent | null;
  readonly #thermometer: boolean;

  constructor(
    slice: ReducedSlice,
    lanes: number,
    steps: readonly number[],
    thermometer: boolean,
    sums?: Sums,
  ) {
    super(lanes, slice.tubes, steps);
    const { tubes, ports, zones } = slice;
    this.slice = slice;
    this.buffers = stepBuffers(slice, lanes, steps, sums);
    this.blocks = Math.ceil(lanes / BLOCK);
    const to = tubes + this.buffers.surfaces;
    this.all = runOver(ports, 0, to);
    this.onSurfaces = runOver(ports, tubes, to);
    this.none = runOver(ports, to, to);
    this.x = this.buffers.x;
    this.input = this.buffers.input;
    this.lastDriving = new Float64Array(lanes);
    this.latent = zones.length > 0 ? new ZoneLatent(slice, lanes, this.buffers) : null;
    const withZones = (run: Run) =>
      this.buffers.active.map((listed) => runOver(ports, run.from, run.to, listed));
    this.#allAndZones = withZones(this.all);
    this.#surfacesAndZones = withZones(this.onSurfaces);
    this.#thermometer = thermometer;
  }

  /** Lanes of a block that are not there to fill it up. */
  protected lanesOf(block: number): number {
    return Math.min(BLOCK, this.lanes - block * BLOCK);
  }

  /** Ports of a block that carry anything: with its zones that freeze or thaw. */
  protected runOf(block: number, withTubes: boolean): Run {
    const run = (withTubes ? this.#allAndZones : this.#surfacesAndZones)[block]!;
    run.count = this.latent?.active(block) ?? 0;
    return run;
  }

  /** Index of a lane's first state; the next ones follow every four. */
  #place(lane: number): number {
    return Math.floor(lane / BLOCK) * BLOCK * this.slice.states + (lane % BLOCK);
  }

  /** The thermometer is a port like any other: weights of states and of inputs. */
  protected refresh(): void {
    if (!this.#thermometer) return;
    const { states, ports, curve } = this.slice;
    const { sums, read, allStates, store, storeDirect } = this.buffers;
    for (let block = 0; block < this.blocks; block++) {
      const count = this.lanesOf(block);
      const run = this.runOf(block, true);
      read.fill(0, 0, BLOCK);
      sums.addRows(store, allStates, this.x, block * states * BLOCK, read, 0, count);
      sums.addRows(storeDirect, run, this.input, block * ports * BLOCK, read, 0, count);
      for (let l = 0; l < count; l++) {
        this.storeTemperature[block * BLOCK + l] = temperatureAt(curve, read[l]!);
      }
    }
  }

  /** Heat over 0 °C unfrozen by lane, J/m. */
  content(): Float64Array {
    const { states, content } = this.slice;
    return Float64Array.from({ length: this.lanes }, (_, lane) => {
      let sum = this.latent?.content(lane) ?? 0;
      const at = this.#place(lane);
      for (let k = 0; k < states; k++) sum += content[k]! * this.x[at + BLOCK * k]!;
      return sum;
    });
  }

  /** Heat the freezing soil under the floor has set free and not taken back, by lane, J/m. */
  ice(): Float64Array {
    return Float64Array.from(
      { length: this.lanes },
      (_, lane) => this.latent?.ice(lane) ?? 0,
    );
  }

  /** What else the next step depends on: what drove the last one, and which zones may rest. */
  #driven(): readonly Float64Array[] {
    const zones = this.latent === null ? [] : [this.latent.rest];
    return [this.input, this.lastDriving, this.floorHeat, ...zones];
  }

  /** States, the ice after them, and what else the next step depends on. */
  save(): Float64Array {
    const parts = [this.x, this.latent?.save() ?? new Float64Array(0), ...this.#driven()];
    const saved = new Float64Array(parts.reduce((sum, { length }) => sum + length, 0));
    let at = 0;
    for (const part of parts) {
      saved.set(part, at);
      at += part.length;
    }
    return saved;
  }

  /** Goes on where a saved state stopped; states and ice alone start from rest. */
  load(state: Float64Array): void {
    this.x.set(state.subarray(0, this.x.length));
    const ice = this.x.length;
    let at = ice + 2 * this.lanes * this.slice.zones.length;
    for (const part of this.#driven()) {
      part.fill(0);
      part.set(state.subarray(at, at + part.length));
      at += part.length;
    }
    this.latent?.load(state.subarray(ice), this.input);
    this.#clearFilling();
    this.refresh();
  }

  /**
   * Lanes that only fill the last block up start at 0: with no input they would fade into numbers
   * too small for the processor's fast path and double the time of a year.
   */
  #clearFilling(): void {
    for (let lane = this.lanes; lane < this.blocks * BLOCK; lane++) {
      const at = this.#place(lane);
      for (let k = 0; k < this.slice.states; k++) this.x[at + BLOCK * k] = 0;
    }
  }

  /** Jumps the states; the ice stays, for the last weeks of a year make what it starts with. */
  jump(start: Float64Array, seconds: number): void {
    jumpStates(this.slice, this.x, start, seconds);
    this.refresh();
  }

  merge(to: number, from: number, count: number): void {
    const { x } = this;
    for (let lane = 0; lane < count; lane++) {
      const [target, source] = [this.#place(to + lane), this.#place(from + lane)];
      for (let k = 0; k < this.slice.states * BLOCK; k += BLOCK) {
        x[target + k]! += x[source + k]!;
        x[source + k] = 0;
      }
    }
    this.refresh();
  }

  cells(lane: number): Float64Array {
    const { ports, states } = this.slice;
    const input = Math.floor(lane / BLOCK) * ports * BLOCK + (lane % BLOCK);
    return cellField(
      this.slice,
      everyFourth(this.x, this.#place(lane), states),
      everyFourth(this.input, input, ports),
    );
  }
}
