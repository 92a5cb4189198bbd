/**
 * Holes in the headers: where they are drilled and how much wall they leave.
 *
 * @module
 */
import { max } from "d3-array";
import { allowance } from "../tubes/mod.ts";
import { type BuriedField, type BuriedHeaders, buryHeaders, holeDiameter } from "./in_ground.ts";

/** One hole of a header. */
export interface Hole {
  /** from 1, along the header, row by row */
  readonly number: number;
  /** m from the centre of the first hole, along the header */
  readonly along: number;
  /** degrees around the pipe from the horizontal, upwards positive */
  readonly angle: number;
  /** m along the outside of the supply header for that angle */
  readonly around: number;
  /** the same on the return header, m */
  readonly returnAround: number;
  /** m */
  readonly diameter: number;
}

/** Layout of the holes of one pair of headers. */
export interface HoleLayout {
  /** one hole a tube */
  readonly holes: readonly Hole[];
  /** m, inside diameter of the supply header */
  readonly headerDiameter: number;
  /** m of header from the first to the last hole centre */
  readonly run: number;
  /** least distance between two hole edges on the unrolled pipe of either header, m */
  readonly ligament: number;
  /** share of the hole pitch left in the tightest pair, (pitch − diameter)/pitch */
  readonly strengthLeft: number;
  /** true where less is left than the table of allowances asks for */
  readonly tooClose: boolean;
}

/** Holes wider than this share of the header leave too little of it (common practice, no source). */
const WIDEST_HOLE = 0.8;

/**
 * Holes of one pair of headers.
 *
 * Strength left is the ligament efficiency (p − d)/p of perforated pipe.
 *
 * @param field tubes and headers
 * @param pair one of `buryHeaders`
 * @returns its holes
 */
export function holeLayout(field: BuriedField, pair: BuriedHeaders): HoleLayout {
  const { positions, product } = field.tubes;
  const { diameter: supply, returnDiameter } = field.headers;
  const diameter = holeDiameter(product);
  const holes = pair.rows.flatMap((row) =>
    pair.members.map((tube) => positions[tube]!).filter(({ depth }) => depth === row.depth)
      .map(({ x }) => ({
        along: x - pair.first,
        angle: row.supply.angle,
        around: row.supply.angle * Math.PI / 180 * supply / 2,
        returnAround: row.return.angle * Math.PI / 180 * returnDiameter / 2,
        diameter,
      }))
  ).map((hole, index): Hole => ({ number: index + 1, ...hole }));
  const pitch = Math.min(
    tightestPitch(holes, ({ around }) => around),
    tightestPitch(holes, ({ returnAround }) => returnAround),
  );
  return {
    holes,
    headerDiameter: supply,
    run: max(holes, ({ along }) => along)!,
    ligament: pitch - diameter,
    strengthLeft: Number.isFinite(pitch) ? (pitch - diameter) / pitch : 1,
    tooClose: (pitch - diameter) / pitch < allowance("least ligament") ||
      diameter > WIDEST_HOLE * Math.min(supply, returnDiameter),
  };
}

/** Holes of the pair of headers with the most tubes. */
export function largestHoleLayout(field: BuriedField): HoleLayout {
  const pairs = buryHeaders(field);
  return holeLayout(
    field,
    pairs.reduce((most, one) => one.members.length > most.members.length ? one : most),
  );
}

/** Least distance between two hole centres on the unrolled pipe, m. */
function tightestPitch(holes: readonly Hole[], around: (hole: Hole) => number): number {
  const inOrder = holes.toSorted((a, b) => a.along - b.along);
  let pitch = Infinity;
  for (const [index, one] of inOrder.entries()) {
    for (let next = index + 1; next < inOrder.length; next++) {
      const other = inOrder[next]!;
      if (other.along - one.along >= pitch) break;
      pitch = Math.min(pitch, Math.hypot(one.along - other.along, around(one) - around(other)));
    }
  }
  return pitch;
}
