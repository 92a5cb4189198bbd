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

/** One piece cut from a coil. */
export interface CoilPiece {
  /** number from 1 of the tube it becomes, or becomes part of */
  readonly tube: number;
  /** m */
  readonly length: number;
}

/** What is cut from one coil. */
export interface CutCoil {
  /** number from 1 */
  readonly coil: number;
  /** in the order in which they are cut */
  readonly pieces: readonly CoilPiece[];
  /** m left over */
  readonly left: number;
}

/** m below which a piece is none. */
const NO_PIECE = 1e-6;

/**
 * The list for the person with the saw: what is cut from each coil, as {@link coilCuts} counts it.
 *
 * @param count number of tubes
 * @param length of each, m
 * @param coil length of a coil, m
 */
export function cutCoils(count: number, length: number, coil: number): CutCoil[] {
  const { coils } = coilCuts(count, length, coil);
  const each = Math.floor(coil / length + 1e-9);
  return Array.from({ length: coils }, (_, index): CutCoil => {
    const pieces = each >= 1
      ? wholeTubes(index * each, Math.min(count, (index + 1) * each), length)
      : endToEnd(index * coil, Math.min(count * length, (index + 1) * coil), length);
    const used = pieces.reduce((total, piece) => total + piece.length, 0);
    return { coil: index + 1, pieces, left: Math.max(0, coil - used) };
  });
}

/** Tubes that are cut in one piece each. */
function wholeTubes(from: number, to: number, length: number): CoilPiece[] {
  return Array.from({ length: to - from }, (_, index) => ({ tube: from + index + 1, length }));
}

/** Pieces between two places of all tubes laid end to end, m. */
function endToEnd(from: number, to: number, length: number): CoilPiece[] {
  const pieces: CoilPiece[] = [];
  let at = from;
  while (to - at > NO_PIECE) {
    const tube = Math.floor((at + NO_PIECE) / length);
    const end = Math.min(to, (tube + 1) * length);
    if (end - at > NO_PIECE) pieces.push({ tube: tube + 1, length: end - at });
    at = end;
  }
  return pieces;
}
