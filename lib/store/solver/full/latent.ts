/** Latent heat in every cell of the full model. @module */
import type { ConductionOperator } from "../../ground/operator.ts";
import type { CellFreezing } from "../../ground/cell_freezing.ts";
import { LANES } from "./kernel.ts";

/** Heat by potential of each cell: three straight pieces, W and J for each metre. */
interface HeatCurve {
  /** J/(m K), unfrozen, while freezing, frozen */
  readonly thawed: Float64Array;
  readonly mushy: Float64Array;
  readonly frozen: Float64Array;
  /** K and J/m where the last water freezes */
  readonly bend: Float64Array;
  readonly bendHeat: Float64Array;
}

/** A frozen cell of small capacity and long step would swing: this much of what it exchanges, at least. */
const CALM = 0.6;

/** Heat curves in the potential θ of conduction: C_u θ above 0, then ice, then C_f θ/r. */
function heatCurves(
  operator: ConductionOperator,
  freezing: CellFreezing,
  longest: number,
): HeatCurve {
  const { capacity } = operator;
  const { latent, range, frozenCapacity, ratio } = freezing;
  const swing = exchange(operator);
  const rise = (c: number) => (1 + ratio[c]!) / 2;
  const bend = range.map((width, c) => -width * rise(c));
  const mushy = capacity.map((_, c) => (frozenCapacity[c]! + latent[c]! / range[c]!) / rise(c));
  return {
    thawed: capacity,
    mushy,
    frozen: capacity.map((heat, c) => {
      const faced = 2 * swing[c]! * longest;
      return Math.max(frozenCapacity[c]! / ratio[c]!, CALM * heat * faced / (heat + faced / 2));
    }),
    bend,
    bendHeat: bend.map((potential, c) => mushy[c]! * potential),
  };
}

/** W/(m K) of all faces of each cell. */
function exchange({ columns, capacity, sideways, downwards }: ConductionOperator): Float64Array {
  return capacity.map((_, c) =>
    sideways[c]! + downwards[c]! + (c % columns > 0 ? sideways[c - 1]! : 0) +
    (c >= columns ? downwards[c - columns]! : 0)
  );
}

/**
 * Freezing cell by cell, in the potential in which frozen and unfrozen soil conduct alike:
 * conduction says how much heat each cell gains, the freezing curve what potential that means. The
 * latent power of the last step is a source of the next one's conduction, so that a cell held at 0 °C
 * by its freezing water is held there within the step too; without it neighbours would feel a cell
 * that cools as if dry, and the answer would drift with the step. The ledger closes to rounding.
 *
 * Source: enthalpy form, Voller & Cross 1981 [voller-cross-1981], Int. J. Heat Mass Transfer 24:545
 * (from memory); the carried source is our own.
 */
export class CellLatent {
  /** W/m set free over the last step, four lanes for each cell, group by group */
  readonly power: Float64Array;
  readonly #curve: HeatCurve;
  /** J/m over 0 °C unfrozen */
  readonly #heat: Float64Array;
  readonly #before: Float64Array;

  /**
   * @param operator slice
   * @param freezing water of its cells
   * @param groups of four lanes
   * @param longest s, of the steps wanted
   */
  constructor(
    operator: ConductionOperator,
    freezing: CellFreezing,
    groups: number,
    longest: number,
  ) {
    const size = groups * LANES * operator.capacity.length;
    this.#curve = heatCurves(operator, freezing, longest);
    this.power = new Float64Array(size);
    this.#heat = new Float64Array(size);
    this.#before = new Float64Array(size);
  }

  /** Takes a field of potentials as it stands, nothing freezing at the moment. */
  start(field: Float64Array): void {
    const cells = this.#curve.thawed.length;
    this.power.fill(0);
    field.forEach((value, k) => this.#heat[k] = this.#heatOf(Math.floor(k / LANES) % cells, value));
  }

  /** Keeps the potentials of a step's start. */
  begin(field: Float64Array): void {
    this.#before.set(field);
  }

  /** Turns the potentials of a step of plain conduction into those with freezing. */
  finish(field: Float64Array, seconds: number): void {
    const cells = this.#curve.thawed.length;
    const groups = field.length / LANES / cells;
    for (let group = 0; group < groups; group++) {
      for (let cell = 0; cell < cells; cell++) {
        const from = LANES * (group * cells + cell);
        for (let k = from; k < from + LANES; k++) this.#finishCell(field, k, cell, seconds);
      }
    }
  }

  #finishCell(field: Float64Array, k: number, cell: number, seconds: number): void {
    const { thawed, bend } = this.#curve;
    const before = this.#before[k]!;
    const power = this.power[k]!;
    const conducted = thawed[cell]! * (field[k]! - before) - power * seconds;
    const heat = this.#heat[k]! + conducted;
    this.#heat[k] = heat;
    if (before >= 0 && heat >= 0 && power === 0) return;
    const now = this.#potentialOf(cell, heat);
    field[k] = now;
    const still = now >= 0 && before >= 0 || now <= bend[cell]! && before <= bend[cell]!;
    this.power[k] = still ? 0 : (thawed[cell]! * (now - before) - conducted) / seconds;
  }

  /** Heat over 0 °C unfrozen of one lane, J/m. */
  content(lane: number): number {
    const count = this.#curve.thawed.length;
    const start = Math.floor(lane / LANES) * LANES * count + (lane % LANES);
    let sum = 0;
    for (let c = 0; c < count; c++) sum += this.#heat[start + LANES * c]!;
    return sum;
  }

  #heatOf(cell: number, potential: number): number {
    const { thawed, mushy, frozen, bend, bendHeat } = this.#curve;
    if (potential >= 0) return thawed[cell]! * potential;
    if (potential >= bend[cell]!) return mushy[cell]! * potential;
    return bendHeat[cell]! + frozen[cell]! * (potential - bend[cell]!);
  }

  #potentialOf(cell: number, heat: number): number {
    const { thawed, mushy, frozen, bend, bendHeat } = this.#curve;
    if (heat >= 0) return heat / thawed[cell]!;
    if (heat >= bendHeat[cell]!) return heat / mushy[cell]!;
    return bend[cell]! + (heat - bendHeat[cell]!) / frozen[cell]!;
  }
}
