/** Latent heat in every cell of the full model. @module */
import type { ConductionOperator } from "../../ground/operator.ts";
import type { CellFreezing } from "../../ground/cell_freezing.ts";
import { LANES } from "./kernel.ts";

/**
 * Freezing cell by cell: conduction says how much heat each cell gains, the freezing curve what
 * temperature that means. The latent power of the last step is a source of the next one's
 * conduction, so that a cell held at 0 °C by its freezing water is held there within the step too;
 * without it neighbours would feel a cell that cools as if dry, and the answer would drift with the
 * step. The ledger closes to rounding.
 *
 * Source: enthalpy form, Voller & Cross 1981 [voller-cross-1981], Int. J. Heat Mass Transfer 24:545
 * (from memory); the carried source is our own.
 */
export class CellLatent {
  /** W/m set free over the last step, four lanes for each cell, group by group */
  readonly power: Float64Array;
  readonly #operator: ConductionOperator;
  readonly #freezing: CellFreezing;
  /** J/m over 0 °C unfrozen */
  readonly #heat: Float64Array;
  readonly #before: Float64Array;

  constructor(operator: ConductionOperator, freezing: CellFreezing, groups: number) {
    const size = groups * LANES * operator.capacity.length;
    this.#operator = operator;
    this.#freezing = freezing;
    this.power = new Float64Array(size);
    this.#heat = new Float64Array(size);
    this.#before = new Float64Array(size);
  }

  #cellOf(k: number): number {
    return Math.floor(k / LANES) % this.#operator.capacity.length;
  }

  /** Takes a field of temperatures as it stands, nothing freezing at the moment. */
  start(field: Float64Array): void {
    this.power.fill(0);
    field.forEach((value, k) => this.#heat[k] = this.#heatOf(this.#cellOf(k), value));
  }

  /** Keeps the temperatures of a step's start. */
  begin(field: Float64Array): void {
    this.#before.set(field);
  }

  /** Turns the temperatures of a step of plain conduction into those with freezing. */
  finish(field: Float64Array, seconds: number): void {
    const { capacity } = this.#operator;
    for (let k = 0; k < field.length; k++) {
      const cell = this.#cellOf(k);
      const before = this.#before[k]!;
      const conducted = capacity[cell]! * (field[k]! - before) - this.power[k]! * seconds;
      this.#heat[k]! += conducted;
      const thawed = before >= 0 && this.#heat[k]! >= 0 && this.power[k] === 0;
      if (thawed) continue;
      field[k] = this.#temperatureOf(cell, this.#heat[k]!);
      this.power[k] = (capacity[cell]! * (field[k]! - before) - conducted) / seconds;
      if (this.#heat[k]! >= 0 && before >= 0) this.power[k] = 0;
    }
  }

  /** Heat over 0 °C unfrozen of one lane, J/m. */
  content(lane: number): number {
    const count = this.#operator.capacity.length;
    const start = Math.floor(lane / LANES) * LANES * count + (lane % LANES);
    let sum = 0;
    for (let c = 0; c < count; c++) sum += this.#heat[start + LANES * c]!;
    return sum;
  }

  #heatOf(cell: number, temperature: number): number {
    const { latent, range, frozenCapacity } = this.#freezing;
    if (temperature >= 0) return this.#operator.capacity[cell]! * temperature;
    const ice = Math.min(1, -temperature / range[cell]!);
    return frozenCapacity[cell]! * temperature - latent[cell]! * ice;
  }

  #temperatureOf(cell: number, heat: number): number {
    const { latent, range, frozenCapacity } = this.#freezing;
    if (heat >= 0) return heat / this.#operator.capacity[cell]!;
    const frozen = frozenCapacity[cell]!;
    const slope = frozen + latent[cell]! / range[cell]!;
    return heat >= -slope * range[cell]! ? heat / slope : (heat + latent[cell]!) / frozen;
  }
}
