/** The cells of the full model, and what can be read from them. @module */
import type { PortResponse } from "./factors.ts";
import { FrozenConduction } from "./frozen_conduction.ts";
import { LANES } from "./kernel.ts";
import { CellLatent } from "./latent.ts";
import { LaneResults } from "../engine.ts";
import type { ConductionOperator } from "../../ground/operator.ts";

/** What every port sees at the start of a step, by lane (and tube). */
interface PortSight {
  readonly block: Float64Array;
  readonly floor: Float64Array;
  readonly outdoor: Float64Array;
  readonly deep: Float64Array;
}

/** All cells of all lanes, four lanes side by side; where frozen soil conducts better, as potentials. */
export class CellField extends LaneResults {
  protected readonly operator: ConductionOperator;
  protected readonly count: number;
  protected readonly groups: number;
  protected readonly field: Float64Array;
  protected readonly before: PortSight;
  /** null: the soil conducts and nothing in it freezes */
  protected readonly latent: CellLatent | null;
  /** null: frozen soil conducts as unfrozen does, and the field is temperatures */
  protected readonly frozen: FrozenConduction | null;
  readonly #sizes = new Float64Array(LANES);

  constructor(
    operator: ConductionOperator,
    lanes: number,
    steps: readonly number[],
    freezes: boolean,
    field: Float64Array,
  ) {
    super(lanes, operator.tubes.length, steps);
    const byLane = () => new Float64Array(lanes);
    this.operator = operator;
    this.count = operator.capacity.length;
    this.groups = Math.ceil(lanes / LANES);
    this.field = field;
    this.before = {
      block: new Float64Array(lanes * this.tubes),
      floor: byLane(),
      outdoor: byLane(),
      deep: byLane(),
    };
    this.latent = freezes && operator.freezing !== null
      ? new CellLatent(operator, operator.freezing, this.groups, Math.max(...steps))
      : null;
    this.frozen = freezes ? FrozenConduction.of(operator, lanes) : null;
  }

  /** Weighted sum over cells of a lane. */
  protected read(lane: number, cells: Int32Array, weights: Float64Array): number {
    const field = this.field;
    const start = Math.floor(lane / LANES) * LANES * this.count + (lane % LANES);
    let sum = 0;
    for (let k = 0; k < cells.length; k++) sum += weights[k]! * field[start + LANES * cells[k]!]!;
    return sum;
  }

  protected floorSum(lane: number): number {
    const { cells, conductances } = this.operator.floor;
    return this.read(lane, cells, conductances);
  }

  protected blockMean(lane: number, tube: number): number {
    const { cells, weights } = this.operator.tubes[tube]!;
    return this.read(lane, cells, weights);
  }

  /** Keeps what the ports see, for the means over the next step. */
  protected remember(): void {
    const { outdoor, deep } = this.operator;
    const before = this.before;
    for (let lane = 0; lane < this.lanes; lane++) {
      for (let tube = 0; tube < this.tubes; tube++) {
        before.block[lane * this.tubes + tube] = this.blockMean(lane, tube);
      }
      before.floor[lane] = this.floorSum(lane);
      before.outdoor[lane] = this.read(lane, outdoor.cells, outdoor.conductances);
      before.deep[lane] = this.read(lane, deep.cells, deep.conductances);
    }
  }

  /** Reads the thermometers between the tubes. */
  protected readStore(): void {
    const { store } = this.operator;
    for (let lane = 0; lane < this.lanes; lane++) {
      this.storeTemperature[lane] = this.#readTemperature(lane, store.cells, store.weights);
    }
  }

  /** Weighted sum of the temperatures of cells of a lane. */
  #readTemperature(lane: number, cells: Int32Array, weights: Float64Array): number {
    const frozen = this.frozen;
    if (frozen === null) return this.read(lane, cells, weights);
    const at = this.cellsOf(lane);
    let sum = 0;
    for (let k = 0; k < cells.length; k++) {
      sum += weights[k]! * frozen.temperature(cells[k]!, at(cells[k]!));
    }
    return sum;
  }

  protected cellsOf(lane: number): (cell: number) => number {
    const field = this.field;
    const start = Math.floor(lane / LANES) * LANES * this.count + (lane % LANES);
    return (cell) => field[start + LANES * cell]!;
  }

  /** Adds a port's unit response to the four slices of a group, each by its own size. */
  protected add(group: number, response: PortResponse, byLane: Float64Array): void {
    const { cells, values } = response;
    const field = this.field;
    const sizes = this.#sizes;
    for (let l = 0; l < LANES; l++) sizes[l] = byLane[group * LANES + l] ?? 0;
    const [s0, s1, s2, s3] = [sizes[0]!, sizes[1]!, sizes[2]!, sizes[3]!];
    const start = group * LANES * this.count;
    for (let k = 0; k < cells.length; k++) {
      const at = start + LANES * cells[k]!;
      const value = values[k]!;
      field[at] = field[at]! + s0 * value;
      field[at + 1] = field[at + 1]! + s1 * value;
      field[at + 2] = field[at + 2]! + s2 * value;
      field[at + 3] = field[at + 3]! + s3 * value;
    }
  }

  content(): Float64Array {
    const latent = this.latent;
    if (latent !== null) {
      return Float64Array.from({ length: this.lanes }, (_, lane) => latent.content(lane));
    }
    const { capacity } = this.operator;
    const cells = Int32Array.from(capacity, (_, cell) => cell);
    return Float64Array.from(
      { length: this.lanes },
      (_, lane) => this.read(lane, cells, capacity),
    );
  }

  save(): Float64Array {
    return this.frozen?.toTemperature(this.field) ?? this.field.slice();
  }

  load(state: Float64Array): void {
    this.field.set(this.frozen?.toPotential(state) ?? state);
    this.latent?.start(this.field);
    this.remember();
    this.readStore();
  }
}
