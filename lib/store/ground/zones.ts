/** Where the water of a slice freezes together: rings round the tubes, bands below the floor. @module */
import type { SliceMesh } from "./mesh.ts";
import type { ConductionOperator } from "./operator.ts";

/** Cells of one soil that freeze as one. */
export interface FreezingZone {
  readonly cells: Int32Array;
  /** share of each cell by heat capacity; sums to 1 */
  readonly weights: Float64Array;
  /** J/m set free when all its water freezes */
  readonly latent: number;
  /** K */
  readonly range: number;
  /** J/(m K) of its cells, unfrozen and all water ice */
  readonly capacity: number;
  readonly frozenCapacity: number;
  /** ratio of frozen to unfrozen conductivity */
  readonly ratio: number;
  /** m² of the slice */
  readonly area: number;
  /** under the floor, not in the ground outside */
  readonly inside: boolean;
}

/** m beyond a tube's wall: rings end here, the first ring is the tube's own block. */
const RINGS = [0.001, 0.041, 0.091];
/**
 * m, lower edges of the bands below the floor. Those of the top, which freeze by night and thaw by day,
 * are thin and go across all of the floor
 */
const TOP_BANDS = [0.01, 0.022, 0.035, 0.05, 0.067, 0.087, 0.11];
const BANDS = [...TOP_BANDS, 0.157, 0.256, 0.36, 0.48];
/** m, thickness of the bands below those, and how far below the lowest tube they go on */
const LOWER_BAND = 0.32;
const BELOW_TUBES = 0.25;
/** m, lower edges of the bands in the ground outside, and strips by distance from the wall */
const OUTSIDE_BANDS = [0.36, 0.8, 1.5];
const OUTSIDE_STRIPS = [0, 0.7, 3];
/** Outermost columns of tubes on each side, at the cold edge, that freeze apart from the others. */
const OUTER_COLUMNS = 1;

/** A tube's place, by the cells of its block. */
interface Place {
  readonly x: number;
  readonly depth: number;
  readonly half: number;
}

/** Tubes as places, and what groups them. */
interface TubePlaces {
  readonly places: readonly Place[];
  /** m, columns of tubes by distance from the middle, and layers by depth */
  readonly columns: readonly number[];
  readonly layers: readonly number[];
  /** m, half the width of the house with its walls */
  readonly outerFace: number;
  readonly bands: readonly number[];
}

/** Values that differ by more than a centimetre, rising. */
function distinct(values: readonly number[]): number[] {
  return values.toSorted((a, b) => a - b)
    .filter((value, k, all) => k === 0 || value - all[k - 1]! > 0.01);
}

function nearest(values: readonly number[], wanted: number): number {
  let best = 0;
  values.forEach((value, k) => {
    if (Math.abs(value - wanted) < Math.abs(values[best]! - wanted)) best = k;
  });
  return best;
}

function tubePlaces(mesh: SliceMesh): TubePlaces {
  const places = mesh.blocks.map((block): Place => {
    const mean = (of: (cell: number) => number) =>
      block.cells.reduce((sum, cell) => sum + of(cell), 0) / block.cells.length;
    return {
      x: block.part < 1 ? 0 : mean((cell) => mesh.x[cell % mesh.columns]!),
      depth: mean((cell) => mesh.depths[Math.floor(cell / mesh.columns)]!),
      half: block.side / 2,
    };
  });
  const bands = [...BANDS];
  const lowest = Math.max(...places.map((place) => place.depth + place.half));
  while (bands.at(-1)! < lowest + BELOW_TUBES) {
    bands.push(Math.min(bands.at(-1)! + LOWER_BAND, Math.max(lowest + BELOW_TUBES, 0.8)));
  }
  return {
    places,
    columns: distinct(places.map((place) => Math.abs(place.x))),
    layers: distinct(places.map((place) => place.depth)),
    outerFace: mesh.outerFace,
    bands,
  };
}

/** Whether a place belongs to the outermost columns of tubes, whose edge is colder. */
function groupAt(tubes: TubePlaces, x: number): string {
  const { columns } = tubes;
  if (columns.length <= 1) return "all";
  const outer = Math.min(OUTER_COLUMNS, columns.length - 1);
  return nearest(columns, Math.abs(x)) >= columns.length - outer ? "outer" : "inner";
}

/** Name of the zone a place outside the floor lies in; null where none does. */
function zoneOutside(tubes: TubePlaces, x: number, depth: number): string | null {
  const strip = OUTSIDE_STRIPS.findIndex((edge) => Math.abs(x) - tubes.outerFace < edge);
  const band = OUTSIDE_BANDS.findIndex((edge) => depth < edge);
  return strip < 0 || band < 0 ? null : `outside ${strip} ${band}`;
}

/** Name of the zone a place under the floor lies in; null where none does. */
function zoneInside(tubes: TubePlaces, x: number, depth: number): string | null {
  const away = tubes.places.map((place) =>
    Math.max(Math.abs(x - place.x), Math.abs(depth - place.depth)) - place.half
  );
  const tube = away.reduce((best, value, k) => value < away[best]! ? k : best, 0);
  const ring = RINGS.findIndex((edge) => away[tube]! < edge);
  if (ring >= 0) {
    const { x: at, depth: lies } = tubes.places[tube]!;
    return `ring ${ring} layer ${nearest(tubes.layers, lies)} ${groupAt(tubes, at)}`;
  }
  const band = tubes.bands.findIndex((edge) => depth < edge);
  if (band < 0) return null;
  return band < TOP_BANDS.length ? `band ${band}` : `band ${band} ${groupAt(tubes, x)}`;
}

/** Soils whose water freezes alike share a name. */
function soilName(operator: ConductionOperator, cell: number): string {
  const { latent, range, ratio } = operator.freezing!;
  const water = (latent[cell]! / operator.capacity[cell]!).toPrecision(6);
  return `${water} ${range[cell]} ${ratio[cell]!.toPrecision(6)}`;
}

/** Makes a zone of cells of one soil. */
function zoneOf(
  mesh: SliceMesh,
  operator: ConductionOperator,
  cells: readonly number[],
  inside: boolean,
): FreezingZone {
  const { capacity, freezing } = operator;
  const { columns, widths, heights } = mesh;
  const heat = cells.reduce((sum, cell) => sum + capacity[cell]!, 0);
  return {
    cells: Int32Array.from(cells),
    weights: Float64Array.from(cells, (cell) => capacity[cell]! / heat),
    latent: cells.reduce((sum, cell) => sum + freezing!.latent[cell]!, 0),
    range: freezing!.range[cells[0]!]!,
    capacity: heat,
    frozenCapacity: cells.reduce((sum, cell) => sum + freezing!.frozenCapacity[cell]!, 0),
    ratio: freezing!.ratio[cells[0]!]!,
    area: cells.reduce(
      (sum, cell) => sum + widths[cell % columns]! * heights[Math.floor(cell / columns)]!,
      0,
    ),
    inside,
  };
}

/**
 * Divides the water of a slice into zones: square rings round the tubes (one set for each layer of
 * them), bands below the floor, both for the outermost columns of tubes and for all others, and
 * bands in three strips of the near ground outside, the first under the wall base. Cells of different soils are never in one zone; soil without
 * water and ground out of reach is in none. Some 39 zones hold the house within 0.05 K of freezing
 * cell by cell (docs/store.md).
 */
export function freezingZones(mesh: SliceMesh, operator: ConductionOperator): FreezingZone[] {
  if (operator.freezing === null || mesh.blocks.length === 0) return [];
  const tubes = tubePlaces(mesh);
  const cells = new Map<string, number[]>();
  for (let c = 0; c < operator.capacity.length; c++) {
    if (operator.freezing.latent[c] === 0) continue;
    const [x, depth] = [mesh.x[c % mesh.columns]!, mesh.depths[Math.floor(c / mesh.columns)]!];
    const name = mesh.underFloor[c % mesh.columns] === 1
      ? zoneInside(tubes, x, depth)
      : zoneOutside(tubes, x, depth);
    if (name === null) continue;
    const key = `${name} ${soilName(operator, c)}`;
    const listed = cells.get(key);
    if (listed === undefined) cells.set(key, [c]);
    else listed.push(c);
  }
  return [...cells].map(([key, listed]) =>
    zoneOf(mesh, operator, listed, !key.startsWith("outside"))
  );
}
