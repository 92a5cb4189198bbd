/** Soil of the cells that a round tube cuts. @module */

/** A cell as a rectangle about the middle of a tube, m. */
export interface CellBox {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** What the tube leaves of a cell. */
export interface CutCell {
  /** m² of soil */
  readonly area: number;
  /** m, middle of the soil across and down from the middle of the tube; of the box if none is left */
  readonly x: number;
  readonly y: number;
  /** m of wall in the cell */
  readonly wall: number;
}

/** Strips that a cell is cut into. */
const STRIPS = 200;

/** Height of soil above and below the tube in a strip, and its first moment. */
function soilOfStrip(box: CellBox, half: number): { height: number; moment: number } {
  const upper = Math.max(0, Math.min(box.bottom, -half) - box.top);
  const lower = Math.max(0, box.bottom - Math.max(box.top, half));
  return {
    height: upper + lower,
    moment: upper * (box.top + upper / 2) + lower * (box.bottom - lower / 2),
  };
}

/** Half the height of the tube at a place across, m. */
function halfChord(radius: number, x: number): number {
  return Math.sqrt(Math.max(0, radius ** 2 - x ** 2));
}

/** Area and middle of the soil, by strips; the wall is left to `wallByCell`. */
export function cutCell(box: CellBox, radius: number): Omit<CutCell, "wall"> {
  const step = (box.right - box.left) / STRIPS;
  let [area, across, down] = [0, 0, 0];
  for (let k = 0; k < STRIPS; k++) {
    const x = box.left + (k + 0.5) * step;
    const { height, moment } = soilOfStrip(box, halfChord(radius, x));
    area += height * step;
    across += x * height * step;
    down += moment * step;
  }
  return area > 1e-9 * (box.right - box.left) * (box.bottom - box.top)
    ? { area, x: across / area, y: down / area }
    : { area: 0, x: (box.left + box.right) / 2, y: (box.top + box.bottom) / 2 };
}

/** m of an edge, from `from` to `to` at distance `at` from the middle, that lies in soil. */
export function openLength(from: number, to: number, at: number, radius: number): number {
  const half = halfChord(radius, at);
  return Math.max(0, Math.min(to, -half) - from) + Math.max(0, to - Math.max(from, half));
}

/** Angles at which the wall crosses the edges of columns and rows, ascending, from −π to π. */
function crossings(columns: readonly number[], rows: readonly number[], radius: number): number[] {
  const within = (edges: readonly number[]) => edges.filter((edge) => Math.abs(edge) < radius);
  const half = Math.PI / 2;
  return [
    -Math.PI,
    Math.PI,
    -half,
    half,
    ...within(columns).flatMap((x) => [Math.acos(x / radius), -Math.acos(x / radius)]),
    ...within(rows).map((y) => Math.asin(y / radius)),
    ...within(rows).map((y) => (y < 0 ? -Math.PI : Math.PI) - Math.asin(y / radius)),
  ].sort((one, other) => one - other);
}

/**
 * Share of the tube's wall in each cell of a block: its arcs between the edges of the cells.
 *
 * @param columns m from the middle of the tube, edges of the block's columns
 * @param rows the same downwards
 * @returns by row·columns + column; sums to 1 (what lies beyond the edges counts to the last cell)
 */
export function wallByCell(
  columns: readonly number[],
  rows: readonly number[],
  radius: number,
  mirrored = false,
): Float64Array {
  const shares = new Float64Array((columns.length - 1) * (rows.length - 1));
  const place = (edges: readonly number[], value: number) => {
    let k = 0;
    while (k < edges.length - 2 && value >= edges[k + 1]!) k++;
    return k;
  };
  const angles = crossings(columns, rows, radius);
  for (let k = 1; k < angles.length; k++) {
    const [from, to] = [angles[k - 1]!, angles[k]!];
    const x = radius * Math.cos((from + to) / 2);
    if (to <= from || (mirrored && x < 0)) continue;
    const y = radius * Math.sin((from + to) / 2);
    shares[place(rows, y) * (columns.length - 1) + place(columns, x)]! += to - from;
  }
  const round = mirrored ? Math.PI : 2 * Math.PI;
  return shares.map((arc) => arc / round);
}

/** A round tube in a mesh, by the columns and rows of its block. */
export interface TubePlace {
  /** first and one past the last */
  readonly columns: readonly [number, number];
  readonly rows: readonly [number, number];
  /** m, middle of the tube from the left and upper edge of the mesh */
  readonly x: number;
  readonly y: number;
}

/** Cells of a mesh after round tubes are cut out. */
export interface CutMesh {
  /** m² of soil by cell */
  readonly area: Float64Array;
  /** m from the left and upper edge of a cell to the middle of its soil */
  readonly across: Float64Array;
  readonly down: Float64Array;
  /** m of open face to the right and below */
  readonly openRight: Float64Array;
  readonly openBelow: Float64Array;
}

/**
 * Least share of its faces and of its soil that a cell keeps, so that none is cut off and no time
 * constant vanishes. A fiftieth instead would cost 1 % of the heat in dry sand.
 */
const LEAST_SHARE = 0.001;

/** Edges from sizes, from 0. */
export function edgesOf(sizes: ArrayLike<number>): Float64Array {
  const edges = new Float64Array(sizes.length + 1);
  for (let k = 0; k < sizes.length; k++) edges[k + 1] = edges[k]! + sizes[k]!;
  return edges;
}

/** Cuts tubes of one radius out of a mesh. */
export function cutMesh(
  widths: ArrayLike<number>,
  heights: ArrayLike<number>,
  tubes: readonly TubePlace[],
  radius: number,
): CutMesh {
  const columns = widths.length;
  const count = columns * heights.length;
  const width = (c: number) => widths[c % columns]!;
  const height = (c: number) => heights[Math.floor(c / columns)]!;
  const fill = (of: (c: number) => number) => Float64Array.from({ length: count }, (_, c) => of(c));
  const mesh = {
    area: fill((c) => width(c) * height(c)),
    across: fill((c) => width(c) / 2),
    down: fill((c) => height(c) / 2),
    openRight: fill(height),
    openBelow: fill(width),
  };
  const x = edgesOf(widths);
  const y = edgesOf(heights);
  for (const tube of tubes) {
    for (let row = tube.rows[0]; row < tube.rows[1]; row++) {
      for (let column = tube.columns[0]; column < tube.columns[1]; column++) {
        const c = row * columns + column;
        const box = {
          left: x[column]! - tube.x,
          right: x[column + 1]! - tube.x,
          top: y[row]! - tube.y,
          bottom: y[row + 1]! - tube.y,
        };
        const cut = cutCell(box, radius);
        mesh.area[c] = Math.max(cut.area, LEAST_SHARE * mesh.area[c]!);
        mesh.across[c] = cut.x - box.left;
        mesh.down[c] = cut.y - box.top;
        mesh.openRight[c] = Math.max(
          openLength(box.top, box.bottom, box.right, radius),
          LEAST_SHARE * height(c),
        );
        mesh.openBelow[c] = Math.max(
          openLength(box.left, box.right, box.bottom, radius),
          LEAST_SHARE * width(c),
        );
      }
    }
  }
  return mesh;
}

/** Conductance over conductivity between a cell and its right or lower neighbour. */
export function betweenCells(
  widths: ArrayLike<number>,
  heights: ArrayLike<number>,
  cut: CutMesh,
  c: number,
): { right: number; below: number } {
  const columns = widths.length;
  const column = c % columns;
  const row = Math.floor(c / columns);
  return {
    right: column + 1 < columns
      ? cut.openRight[c]! / (widths[column]! - cut.across[c]! + cut.across[c + 1]!)
      : 0,
    below: row + 1 < heights.length
      ? cut.openBelow[c]! / (heights[row]! - cut.down[c]! + cut.down[c + columns]!)
      : 0,
  };
}
