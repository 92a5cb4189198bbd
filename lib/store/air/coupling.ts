/** How the tubes of a slice feel each other and themselves within one step. @module */
import { sum } from "d3-array";
import { inverse as invert, Matrix } from "ml-matrix";
import type { SoilEngine } from "../solver/engine.ts";
import type { TubeField } from "./tube_field.ts";

/**
 * Coupling of one step length. With a the air-side conductance of a segment, T_w the wall, y the
 * block without heat and q the heat: T_w = y + F·q and q = a∘(T_a − T_w) + q_latent, so
 * q = (1/a + F)⁻¹(T_a − y + q_latent/a).
 */
export interface TubeCoupling {
  /** K per W/m of tube: own wall */
  readonly own: Float64Array;
  /** the same from other tubes, tube·tubes + other, 0 on the diagonal; null where there is none */
  readonly cross: Float64Array | null;
  /** (1/a + F)⁻¹ in W/(m K), tube·tubes + other; null where there is no cross term */
  readonly inverse: Float64Array | null;
  /**
   * K per W/m of a tube while all tubes take up heat by their conductance: own wall and what the others
   * add to it
   */
  readonly together: Float64Array;
}

/** Coupling of one step length of an engine. */
export function tubeCoupling(
  engine: SoilEngine,
  field: TubeField,
  lengthFactor: number,
  step: number,
): TubeCoupling {
  const { tubes } = field;
  const own = engine.tubeResponse[step]!.map((value, tube) =>
    value * lengthFactor + field.soilSide[tube]!
  );
  const cross = engine.tubeCross[step]?.map((value) => value * lengthFactor) ?? null;
  if (cross === null) return { own, cross, inverse: null, together: own };
  const matrix = Matrix.zeros(tubes, tubes);
  for (let tube = 0; tube < tubes; tube++) {
    for (let other = 0; other < tubes; other++) {
      const value = tube === other
        ? own[tube]! + 1 / field.sensible[tube]!
        : cross[tube * tubes + other]!;
      matrix.set(tube, other, value);
    }
  }
  return {
    own,
    cross,
    inverse: Float64Array.from(invert(matrix).to1DArray()),
    together: own.map((value, tube) => {
      const others = cross.subarray(tube * tubes, (tube + 1) * tubes);
      return value + sum(field.sensible, (taken, k) => taken * others[k]!) / field.sensible[tube]!;
    }),
  };
}

/** Couplings of all step lengths of an engine. */
export function tubeCouplings(
  engine: SoilEngine,
  field: TubeField,
  lengthFactor: number,
): TubeCoupling[] {
  return engine.tubeResponse.map((_, step) => tubeCoupling(engine, field, lengthFactor, step));
}

/** Heat of all tubes of a slice from what drives each, K; writes W/m into `heat`. */
export function sliceHeat(
  coupling: TubeCoupling,
  field: TubeField,
  driving: Float64Array,
  heat: Float64Array,
): void {
  const { tubes } = field;
  const { inverse, own } = coupling;
  if (inverse === null) {
    for (let tube = 0; tube < tubes; tube++) {
      heat[tube] = driving[tube]! / (own[tube]! + 1 / field.sensible[tube]!);
    }
    return;
  }
  // three rows at a time, so that no sum waits for another
  let tube = 0;
  for (; tube + 2 < tubes; tube += 3) {
    const row = tube * tubes;
    const next = row + tubes;
    const last = next + tubes;
    let sum = 0;
    let second = 0;
    let third = 0;
    for (let other = 0; other < tubes; other++) {
      const pull = driving[other]!;
      sum += inverse[row + other]! * pull;
      second += inverse[next + other]! * pull;
      third += inverse[last + other]! * pull;
    }
    heat[tube] = sum;
    heat[tube + 1] = second;
    heat[tube + 2] = third;
  }
  for (; tube < tubes; tube++) {
    let sum = 0;
    const row = tube * tubes;
    for (let other = 0; other < tubes; other++) sum += inverse[row + other]! * driving[other]!;
    heat[tube] = sum;
  }
}

/** K at one tube from the heat of the others. */
export function fromOthers(
  coupling: TubeCoupling,
  tubes: number,
  tube: number,
  heat: Float64Array,
): number {
  const { cross } = coupling;
  if (cross === null) return 0;
  let sum = 0;
  const row = tube * tubes;
  for (let other = 0; other < tubes; other++) sum += cross[row + other]! * heat[other]!;
  return sum;
}
