/**
 * Where headers and tube ends lie in the ground: one header to a layer or to several, tubes straight
 * into it or with a bend.
 *
 * @module
 */
import { max, mean, min } from "d3-array";
import {
  allowance,
  type Pit,
  pitRound,
  type TubePosition,
  type TubeProduct,
} from "../tubes/mod.ts";
import { splitGroups } from "./build.ts";
import { findFitting } from "./fittings.ts";
import type { HeadersInputs } from "./types.ts";

/** What the layout in the ground hangs on. */
export interface BuriedField {
  /** tubes: places, size, m between the headers */
  readonly tubes: {
    readonly positions: readonly TubePosition[];
    readonly product: Pick<TubeProduct, "insideDiameter" | "outsideDiameter">;
    readonly length: number;
  };
  /** fall along the tube, m/m */
  readonly slope: number;
  /** sizes and number of the headers */
  readonly headers: Pick<HeadersInputs, "diameter" | "returnDiameter" | "groups">;
}

/** The end of a row of tubes at a header. */
export interface TubeEnd {
  /** of the hole above the horizontal through the header's centre, degrees; negative below it */
  readonly angle: number;
  /** m of tube from the header's wall to the bend; 0 where the tube runs in straight */
  readonly slant: number;
}

/** The tubes of one layer at their headers. */
export interface HeaderRow {
  /** of the tubes at the middle of the fall, m below the floor */
  readonly depth: number;
  /** m that the tubes lie below the header's centre; negative above it */
  readonly offset: number;
  /** degrees of the bend at each tube end; 0 where the tube runs in straight */
  readonly bend: number;
  /** m along the tubes from the header's centre to the bend; 0 where the tube runs in straight */
  readonly run: number;
  /** at the supply header */
  readonly supply: TubeEnd;
  /** at the return header */
  readonly return: TubeEnd;
}

/** One pair of headers with its tubes. */
export interface BuriedHeaders {
  /** indices into the positions of the tubes, in rising order across the field */
  readonly members: readonly number[];
  /** of both headers' centres at the middle of the fall, m below the floor */
  readonly depth: number;
  /** centres of the outermost tubes, m from the middle of the field */
  readonly first: number;
  /** the last one, m */
  readonly last: number;
  /** m of header beyond the outermost tubes */
  readonly end: number;
  /** layers of the group, upper first */
  readonly rows: readonly HeaderRow[];
}

/** m between headers that lie above or beside each other (common practice, no source). */
const HEADER_GAP = 0.015;
/** m of header left between its outermost hole and its cap, at least (common practice, no source). */
const END_WALL = 0.02;
/** share of the header's radius by which tubes may enter off its centre (common practice, no source). */
const MOST_OFF_CENTRE = 0.35;
/** Largest angle of the holes for two layers on one header: a stock bend (common practice, no source). */
const BEND = 45;
/** Largest angle of the holes for more than two layers (common practice, no source). */
const STEEP_BEND = 60;

/** Hole that a tube end needs, m. */
export function holeDiameter(product: Pick<TubeProduct, "outsideDiameter">): number {
  return product.outsideDiameter + allowance("hole clearance");
}

/**
 * Lays the headers of a field. Headers above each other that are wider than the step between their
 * layers are spread apart. Tubes that lie up to 0.35 of the radius off the header's centre run in
 * straight; others leave it at an angle and are bent into their layer.
 *
 * @param field tubes and headers
 * @returns each pair of headers, in the order of `splitGroups`
 */
export function buryHeaders(
  { tubes, headers }: Pick<BuriedField, "tubes" | "headers">,
): readonly BuriedHeaders[] {
  const groups = splitGroups(tubes.positions, headers.groups).map((members) => {
    const places = members.map((tube) => tubes.positions[tube]!);
    const layers = [...new Set(places.map(({ depth }) => depth))].sort((a, b) => a - b);
    const across = places.map(({ x }) => x);
    return { members, layers, middle: mean(layers)!, first: min(across)!, last: max(across)! };
  });
  const levels = [...new Set(groups.map(({ middle }) => middle))].sort((a, b) => a - b);
  const wider = Math.max(headers.diameter, headers.returnDiameter);
  const step = min(levels.slice(1).map((level, i) => level - levels[i]!)) ?? Infinity;
  const lacking = Math.max(0, wider + HEADER_GAP - step);
  const end = headerEnd(groups, holeDiameter(tubes.product));
  return groups.map(({ members, layers, middle, first, last }) => {
    const shift = lacking * (levels.indexOf(middle) - (levels.length - 1) / 2);
    const depth = middle + shift;
    return {
      members,
      depth,
      first,
      last,
      end,
      rows: layers.map((layer, row) =>
        // the shift itself where the layer has its header, so that nothing is lost to rounding
        headerRow(layers.length === 1 ? -shift : layer - depth, {
          depth: layer,
          steepest: steepest(row, layers.length),
          outsideDiameter: tubes.product.outsideDiameter,
          headers,
        })
      ),
    };
  });
}

/** Header beyond its outermost hole centres: a hole's width, less where the next header is near, m. */
function headerEnd(
  groups: readonly { readonly middle: number; readonly first: number; readonly last: number }[],
  hole: number,
): number {
  const gaps = groups.flatMap((one) =>
    groups.filter((other) => other.middle === one.middle && other.first > one.last)
      .map((other) => (other.first - one.last - HEADER_GAP) / 2)
  );
  return Math.max(hole / 2 + END_WALL, Math.min(hole, min(gaps) ?? Infinity));
}

/** Largest angle of the holes of a row, degrees; the middle of three rows needs none. */
function steepest(row: number, rows: number): number {
  const spread = rows <= 2 ? BEND : STEEP_BEND;
  return rows === 1 ? STEEP_BEND : Math.abs(spread - row * 2 * spread / (rows - 1));
}

const DEGREE = Math.PI / 180;

function headerRow(
  offset: number,
  row: {
    readonly depth: number;
    readonly steepest: number;
    readonly outsideDiameter: number;
    readonly headers: BuriedField["headers"];
  },
): HeaderRow {
  const { depth, outsideDiameter } = row;
  const [supply, back] = [row.headers.diameter / 2, row.headers.returnDiameter / 2];
  if (Math.abs(offset) <= MOST_OFF_CENTRE * Math.min(supply, back)) {
    const straight = (radius: number): TubeEnd => ({
      angle: offset === 0 ? 0 : -Math.asin(offset / radius) / DEGREE,
      slant: 0,
    });
    return { depth, offset, bend: 0, run: 0, supply: straight(supply), return: straight(back) };
  }
  // a tube's diameter of straight tube between header and bend (common practice, no source)
  const most = Math.asin(Math.abs(offset) / (Math.max(supply, back) + outsideDiameter)) / DEGREE;
  const bend = Number.isNaN(most) ? row.steepest : Math.min(row.steepest, most);
  const bent = (radius: number): TubeEnd => ({
    angle: -Math.sign(offset) * bend,
    slant: Math.abs(offset) / Math.sin(bend * DEGREE) - radius,
  });
  const run = Math.abs(offset) / Math.tan(bend * DEGREE);
  return { depth, offset, bend, run, supply: bent(supply), return: bent(back) };
}

/** Length of a header from end to end, m. */
export function headerLength({ first, last, end }: BuriedHeaders): number {
  return last - first + 2 * end;
}

/**
 * Velocity heads that the two bends of a tube add.
 *
 * Source: the 45° elbow of data/fittings/losses.csv, other angles by the sine: Idelchik 1994
 * [idelchik-1994], diagram 6-1, A₁ = 0.9·sin δ up to 70°, from memory.
 *
 * @param bend angle of each bend, degrees
 * @returns velocity heads of the tube
 */
export function bendLoss(bend: number): number {
  return 2 * findFitting("elbow-45").loss * Math.sin(bend * DEGREE) / Math.sin(45 * DEGREE);
}

/** Velocity heads that bends add to each tube, in the order of the positions. */
export function bendLosses(field: Pick<BuriedField, "tubes" | "headers">): Float64Array {
  const losses = new Float64Array(field.tubes.positions.length);
  for (const { members, rows } of buryHeaders(field)) {
    for (const tube of members) {
      const { depth } = field.tubes.positions[tube]!;
      const row = rows.find((one) => one.depth === depth)!;
      losses[tube] = row.bend === 0 ? 0 : bendLoss(row.bend);
    }
  }
  return losses;
}

/** m that the tubes fall from the supply to the return header, half on either side of the middle. */
export function fieldFall({ tubes, slope }: BuriedField): number {
  return slope * tubes.length;
}

/** The pit round tubes and headers. */
export function fieldPit(field: BuriedField): Pit {
  const { tubes, headers } = field;
  const wider = Math.max(headers.diameter, headers.returnDiameter);
  const lowestTube = max(tubes.positions, ({ depth }) => depth)!;
  const lowestHeader = max(buryHeaders(field), ({ depth }) => depth)!;
  return pitRound({
    reach: max(tubes.positions, ({ x }) => Math.abs(x))!,
    outsideDiameter: tubes.product.outsideDiameter,
    length: tubes.length,
    fall: fieldFall(field),
    headerDiameter: wider,
    underside: Math.max(
      lowestTube + tubes.product.outsideDiameter / 2,
      lowestHeader + wider / 2,
    ),
  });
}
