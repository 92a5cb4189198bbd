/** The vertical soil slice as a graded mesh with every tube in it. @module */
import { mean } from "d3-array";
import { InputError } from "../../basics/mod.ts";
import { type AxisPlan, cutAxis } from "./graded.ts";

/** A tube seen in the slice. */
export interface SliceTube {
  /** m from the middle of the house */
  readonly x: number;
  /** m below the floor */
  readonly depth: number;
}

/** How fine a mesh is; refined runs change it. */
export interface MeshSettings {
  /** ratio, largest cell at a tube over the penetration depth of half a day */
  readonly tubeCell: number;
  /** ratio of a cell to the penetration depth of half a day up to which cells grow by `nearGrowth` */
  readonly nearCell: number;
  /** ratio of a small cell to the one before it */
  readonly nearGrowth: number;
  /** ratio of a larger cell to the one before it */
  readonly growth: number;
  /** ratio, first cell under the surface over the penetration depth of half a day */
  readonly surfaceCell: number;
  /** m, largest cell */
  readonly largestCell: number;
}

/** What the mesh of one slice is built from. */
export interface SliceGeometry extends MeshSettings {
  /** m, floor seen in the slice */
  readonly floorWidth: number;
  /** m of soil on each side of the floor */
  readonly outsideSoil: number;
  /** m below the surface */
  readonly depth: number;
  readonly tubes: readonly SliceTube[];
  /** outside radius of the tubes, m */
  readonly tubeRadius: number;
  /** keep only x ≥ 0; the plane x = 0 lets no heat through */
  readonly half: boolean;
  /** m, depth that a swing of half a day reaches in the soil round the tubes */
  readonly penetration: number;
  /** m, depths where a face must lie (foot of the edge board, board below the tubes) */
  readonly faces: readonly number[];
  /** m of wall base on each side of the floor, whose top lets no heat through; 0 unless given */
  readonly wall?: number | undefined;
  /** m from the wall outward where a face must lie: the end of a wing of insulation */
  readonly wing?: number | undefined;
}

/** A tube's block of cells. */
export interface TubeBlock {
  /** all cells, index row·columns + column */
  readonly cells: Int32Array;
  /** 1, or 0.5 where the mirror plane cuts the tube in halves */
  readonly part: number;
  /** m, side of the whole block */
  readonly side: number;
}

/** A graded mesh: columns across the house, rows downwards. */
export interface SliceMesh {
  readonly columns: number;
  readonly rows: number;
  /** m */
  readonly widths: Float64Array;
  readonly heights: Float64Array;
  /** m, centres */
  readonly x: Float64Array;
  readonly depths: Float64Array;
  /** 1 where a column lies under the floor */
  readonly underFloor: Uint8Array;
  /** m from the middle of the house to the edge of the floor, and to the outer face of the wall */
  readonly edge: number;
  readonly outerFace: number;
  readonly blocks: readonly TubeBlock[];
  readonly half: boolean;
}

/** Production settings: found adequate by halving (see docs/store.md). */
export const PRODUCTION_MESH: MeshSettings = {
  tubeCell: 0.5,
  nearCell: 2,
  nearGrowth: 1.2,
  growth: 1.3,
  surfaceCell: 0.1,
  largestCell: 4,
};

/** s, half a day: the shortest swing that carries much heat. */
const SHORTEST_SWING = 43200;

/**
 * Depth to which a swing of half a day is felt: to the e-th part, √(aT/π).
 *
 * Source: Carslaw & Jaeger 1959 [carslaw-jaeger-1959] §2.6.
 *
 * @param soil conductivity W/(m K) and heat capacity J/(m³ K)
 * @returns m
 */
export function penetrationDepth(
  soil: { readonly conductivity: number; readonly heatCapacity: number },
): number {
  return Math.sqrt(soil.conductivity / soil.heatCapacity * SHORTEST_SWING / Math.PI);
}

/** Fewest cells across a tube: with fewer its wall is no circle. */
const LEAST_ACROSS = 4;

/** Cells across a tube: an even number, so that the mirror plane may cut it. */
function cellsAcross({ tubeRadius, tubeCell, penetration }: SliceGeometry): number {
  return Math.max(LEAST_ACROSS, 2 * Math.ceil(tubeRadius / (tubeCell * penetration)));
}

/** Share of a block up to which two positions count as one. */
const TOGETHER = 0.25;

/** Positions that fall in one column (or row) of blocks are moved onto their mean. */
function gather(values: readonly number[], side: number): number[] {
  const sorted = [...new Set(values)].sort((a, b) => a - b);
  const groups: number[][] = [];
  for (const value of sorted) {
    const group = groups.at(-1);
    if (group !== undefined && value - group[0]! < TOGETHER * side) group.push(value);
    else groups.push([value]);
  }
  return values.map((value) => {
    const group = groups.find((members) => members.includes(value))!;
    return mean(group)!;
  });
}

/** True where two blocks have soil in common; tubes of one place are one. */
function anyOverlap(places: readonly number[], depths: readonly number[], side: number): boolean {
  const least = side - 1e-6;
  return places.some((x, one) =>
    places.some((other, two) => {
      const [across, down] = [Math.abs(x - other), Math.abs(depths[one]! - depths[two]!)];
      return two > one && across < least && down < least && across + down > 0;
    })
  );
}

/** Distinct values in rising order. */
function distinct(values: readonly number[]): number[] {
  return [...new Set(values)].sort((a, b) => a - b);
}

function centres(sizes: Float64Array, start: number): Float64Array {
  let position = start;
  return sizes.map((size) => (position += size) - size / 2);
}

/** Index range of the cells whose centres lie within half a side of a place. */
function rangeAround(centre: Float64Array, at: number, side: number): number[] {
  const found: number[] = [];
  centre.forEach((value, index) => {
    if (Math.abs(value - at) < side / 2) found.push(index);
  });
  return found;
}

/** m, cells at the edge of the floor and at the end of a wing, and beside a wall. */
const EDGE_CELL = 0.15;
const WALL_CELL = 0.1;

/** Places across the house where a face must lie. */
function edgeLines(geometry: SliceGeometry): AxisPlan["lines"] {
  const { floorWidth, outsideSoil, half, wall = 0, wing = 0 } = geometry;
  if (outsideSoil <= 0) return [];
  const edge = floorWidth / 2;
  const places = [...new Set([edge, edge + wall, edge + wall + wing])];
  const size = wall > 0 ? WALL_CELL : EDGE_CELL;
  return [...places.map((at) => -at), ...places]
    .filter((at) => !half || at > 0)
    .map((at) => ({ at, size: at > edge + wall || at < -edge - wall ? EDGE_CELL : size }));
}

/**
 * Builds the mesh of a slice.
 *
 * Each tube lies in a square block of equal cells as wide as it is; cells grow away from blocks,
 * surface, edges of the floor and boards.
 *
 * @throws {InputError} where tubes overlap, stick out of the soil or lie too near the surface
 */
export function sliceMesh(geometry: SliceGeometry): SliceMesh {
  const { tubes, tubeRadius, half } = geometry;
  const side = 2 * tubeRadius;
  const blockCells = cellsAcross(geometry);
  const growth = {
    ratio: geometry.growth,
    largest: geometry.largestCell,
    fine: { ratio: geometry.nearGrowth, below: geometry.nearCell * geometry.penetration },
  };
  const edge = geometry.floorWidth / 2;
  const outer = edge + (geometry.wall ?? 0) + geometry.outsideSoil;
  const kept = tubes.filter((tube) => !half || tube.x > -1e-6);
  const places = gather(kept.map((tube) => Math.abs(tube.x) < 1e-6 ? 0 : tube.x), side);
  const depths = gather(kept.map((tube) => tube.depth), side);
  if (depths.some((depth) => depth - side / 2 < 0.02)) {
    throw new InputError(
      "the tubes are too close to the floor for the soil mesh: expected at least 0.02 m of cover",
    );
  }
  if (depths.some((depth) => depth + side / 2 > geometry.depth - 0.02)) {
    throw new InputError(
      "the tubes lie below the soil mesh: make the mesh deeper or the tubes shallower",
    );
  }
  if (anyOverlap(places, depths, side)) {
    throw new InputError("the tubes are so close that they overlap in the soil mesh");
  }
  const widths = Float64Array.from(cutAxis({
    from: half ? 0 : -outer,
    to: outer,
    stretches: distinct(places).map((x) =>
      half && x === 0
        ? { from: 0, to: side / 2, cells: blockCells / 2 }
        : { from: x - side / 2, to: x + side / 2, cells: blockCells }
    ),
    lines: edgeLines(geometry),
    growth,
  }));
  const heights = Float64Array.from(cutAxis({
    from: 0,
    to: geometry.depth,
    stretches: distinct(depths).map((depth) => ({
      from: depth - side / 2,
      to: depth + side / 2,
      cells: blockCells,
    })),
    lines: [
      { at: 0, size: geometry.surfaceCell * geometry.penetration },
      ...geometry.faces.map((at) => ({ at, size: 0.15 })),
    ],
    growth,
  }));
  const x = centres(widths, half ? 0 : -outer);
  const rowDepths = centres(heights, 0);
  const blocks = kept.map((_, index): TubeBlock => {
    const columns = rangeAround(x, places[index]!, side);
    const rows = rangeAround(rowDepths, depths[index]!, side);
    const cells = rows.flatMap((row) => columns.map((column) => row * widths.length + column));
    return {
      cells: Int32Array.from(cells),
      part: half && places[index] === 0 ? 0.5 : 1,
      side,
    };
  });
  return {
    columns: widths.length,
    rows: heights.length,
    widths,
    heights,
    x,
    depths: rowDepths,
    underFloor: Uint8Array.from(x, (value) => Math.abs(value) < edge ? 1 : 0),
    edge,
    outerFace: edge + (geometry.wall ?? 0),
    blocks,
    half,
  };
}
