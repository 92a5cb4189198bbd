/** What the full model's ports and soil boundaries need where frozen soil conducts better. @module */
import {
  conductionPotential,
  type FreezingCurve,
  potentialLead,
  temperatureOfPotential,
} from "../../../soil/mod.ts";
import type { ConductionOperator } from "../../ground/operator.ts";
import { LANES } from "./kernel.ts";

/** A face between cells of soils that freeze differently, W/(m K). */
interface MixedFace {
  readonly cell: number;
  readonly next: number;
  readonly conductance: number;
}

/** Curve of each cell; null where all conduct frozen as they do unfrozen. */
function cellCurves({ freezing }: ConductionOperator): FreezingCurve[] | null {
  if (freezing === null || freezing.ratio.every((ratio) => ratio === 1)) return null;
  const known = new Map<string, FreezingCurve>();
  return Array.from(freezing.ratio, (ratio, c) => {
    const range = freezing.range[c]!;
    const key = `${ratio} ${range}`;
    const curve = known.get(key) ?? { ratio, range };
    known.set(key, curve);
    return curve;
  });
}

/** Faces between cells whose potentials differ at the same temperature. */
function mixedFaces(operator: ConductionOperator, curves: readonly FreezingCurve[]): MixedFace[] {
  const { columns, sideways, downwards } = operator;
  return curves.flatMap((curve, cell) =>
    ([[cell + 1, sideways[cell]!], [cell + columns, downwards[cell]!]] as const)
      .filter(([next, conductance]) => conductance > 0 && curves[next] !== curve)
      .map(([next, conductance]) => ({ cell, next, conductance }))
  );
}

/** Cells of a port whose potential differs from that of its first cell. */
function others(curves: readonly FreezingCurve[], cells: Int32Array): number[] {
  return [...cells.keys()].filter((k) => curves[cells[k]!] !== curves[cells[0]!]);
}

/**
 * Frozen conduction of the full model. The field is the potential of conduction, cell by cell, with
 * the curve of the cell's own soil; what lies outside the soil is a temperature. Where a temperature
 * meets a potential, or two soils meet, the difference of the last step is carried on as a source.
 */
export class FrozenConduction {
  readonly #operator: ConductionOperator;
  readonly #curves: readonly FreezingCurve[];
  readonly #faces: readonly MixedFace[];
  readonly #outdoorOthers: readonly number[];
  /** K by which the potential of the floor's face leads, lane·cells + cell of the floor */
  readonly #floorLead: Float64Array;

  private constructor(operator: ConductionOperator, curves: FreezingCurve[], lanes: number) {
    this.#operator = operator;
    this.#curves = curves;
    this.#faces = mixedFaces(operator, curves);
    this.#outdoorOthers = others(curves, operator.outdoor.cells);
    this.#floorLead = new Float64Array(lanes * operator.floor.cells.length);
  }

  /** Null where frozen soil conducts as unfrozen does. */
  static of(operator: ConductionOperator, lanes: number): FrozenConduction | null {
    const curves = cellCurves(operator);
    return curves === null ? null : new FrozenConduction(operator, curves, lanes);
  }

  /** Whether sources other than the freezing water are needed at all. */
  get mixed(): boolean {
    return this.#faces.length > 0 || this.#outdoorOthers.length > 0;
  }

  /** Temperatures of all lanes to potentials. */
  toPotential(field: Float64Array): Float64Array {
    const count = this.#curves.length;
    return field.map((value, k) =>
      conductionPotential(this.#curves[Math.floor(k / LANES) % count]!, value)
    );
  }

  /** Potentials of all lanes to temperatures. */
  toTemperature(field: Float64Array): Float64Array {
    const count = this.#curves.length;
    return field.map((value, k) =>
      temperatureOfPotential(this.#curves[Math.floor(k / LANES) % count]!, value)
    );
  }

  /** Temperature of a cell whose potential is known, degC. */
  temperature(cell: number, potential: number): number {
    return temperatureOfPotential(this.#curves[cell]!, potential);
  }

  /** Potential of a temperature at the first cell of a port. */
  atPort(port: "outdoor" | "deep", temperature: number): number {
    const { cells } = this.#operator[port];
    return cells.length === 0
      ? temperature
      : conductionPotential(this.#curves[cells[0]!]!, temperature);
  }

  /** K by which a block's potential leads. */
  tubeLead(tube: number, potential: number): number {
    return potentialLead(this.#curves[this.#operator.tubes[tube]!.cells[0]!]!, potential);
  }

  /**
   * Adds what the floor takes more because the potential leads on its face, as far as the last step
   * tells.
   *
   * @param sources W/m, four lanes for each cell
   * @param l lane among the four
   * @param given lane among all, degC that drove its floor last, potential of its cells
   * @returns W/m added
   */
  addFloor(
    sources: Float64Array,
    l: number,
    given: {
      readonly lane: number;
      readonly driving: number;
      readonly potentialAt: (cell: number) => number;
    },
  ): number {
    const { cells, conductances, inSoil = 1 } = this.#operator.floor;
    const { driving, potentialAt } = given;
    const leads = this.#floorLead;
    let heat = 0;
    for (let k = 0; k < cells.length; k++) {
      const at = given.lane * cells.length + k;
      const across = driving + leads[at]! - potentialAt(cells[k]!);
      const face = driving - (1 - inSoil) * across;
      leads[at] = conductionPotential(this.#curves[cells[k]!]!, face) - face;
      const more = conductances[k]! * leads[at]!;
      sources[LANES * cells[k]! + l]! += more;
      heat += more;
    }
    return heat;
  }

  /**
   * Adds what soils that freeze differently do to each other, and to the outdoor surface.
   *
   * @param sources W/m, four lanes for each cell
   * @param l lane among the four
   * @param outdoor degC
   * @param potentialAt potential of a cell at the step's start
   * @returns W/m more that enters from outdoors
   */
  addMixed(
    sources: Float64Array,
    l: number,
    outdoor: number,
    potentialAt: (cell: number) => number,
  ): number {
    for (const { cell, next, conductance } of this.#faces) {
      const face = (this.temperature(cell, potentialAt(cell)) +
        this.temperature(next, potentialAt(next))) / 2;
      const jump = conductionPotential(this.#curves[cell]!, face) -
        conductionPotential(this.#curves[next]!, face);
      sources[LANES * cell + l]! += conductance * jump;
      sources[LANES * next + l]! -= conductance * jump;
    }
    const { cells, conductances } = this.#operator.outdoor;
    const first = this.atPort("outdoor", outdoor);
    let heat = 0;
    for (const k of this.#outdoorOthers) {
      const more = conductances[k]! *
        (conductionPotential(this.#curves[cells[k]!]!, outdoor) - first);
      sources[LANES * cells[k]! + l]! += more;
      heat += more;
    }
    return heat;
  }
}
