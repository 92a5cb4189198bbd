/** How tubes are cut from coils as they are sold. @module */
import { InputError } from "../../basics/mod.ts";

/** Cutting of a field's tubes from coils. */
export interface CoilCuts {
  /** number of coils to order */
  readonly coils: number;
  /** number of joints between pieces, in all tubes together */
  readonly joints: number;
  /** m left over in all coils together */
  readonly offCut: number;
  /** the cutting in words */
  readonly words: string;
}

/**
 * Cuts tubes of one length from coils. Where a coil holds a tube, as many tubes as fit are cut from
 * each and the rest is left over; where it does not, pieces are joined and the rest of a coil begins
 * the next tube.
 *
 * @param count number of tubes
 * @param length of each, m
 * @param coil length of a coil, m
 */
export function coilCuts(count: number, length: number, coil: number): CoilCuts {
  if (!(coil > 0)) throw new InputError(`Cannot cut tubes from coils of ${coil} m`);
  const each = Math.floor(coil / length + 1e-9);
  if (each >= 1) {
    const coils = Math.ceil(count / each);
    return {
      coils,
      joints: 0,
      offCut: coils * coil - count * length,
      words: `${each} tubes from each, no joints`,
    };
  }
  const coils = Math.ceil(count * length / coil - 1e-9);
  const joints = jointsOf(count, length, coil);
  return {
    coils,
    joints,
    offCut: coils * coil - count * length,
    words: `tubes longer than a coil: ${joints} joints`,
  };
}

/** Ends of coils that fall inside a tube when coils are laid end to end. */
function jointsOf(count: number, length: number, coil: number): number {
  const total = count * length;
  let joints = 0;
  for (let end = coil; end < total - 1e-9; end += coil) {
    const inTube = end / length;
    if (Math.abs(inTube - Math.round(inTube)) * length > 1e-6) joints++;
  }
  return joints;
}
