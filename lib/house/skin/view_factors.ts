/** How much of the diffuse light from each surface of a room reaches each other one. @module */
import { inward, roomMiddle, type RoomSurface } from "./beam_landing.ts";
import type { Corner, Outline } from "./outline.ts";

type Vector = readonly [number, number, number];

function less(a: Corner, b: Corner): Vector {
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
}

/**
 * Share of the light that a small flat spot sends out evenly that meets a polygon in front of it.
 * F = 1/(2π) Σ angle(k, k+1)·(n · unit(r_k × r_k+1)), r the corners as seen from the spot.
 *
 * Source: Lambert 1760 [lambert-1760] (from memory), exact.
 *
 * @param spot m
 * @param normal unit vector into the room
 * @param outline corners of the polygon, m
 */
export function spotViewFactor(spot: Corner, normal: Vector, outline: Outline): number {
  let sum = 0;
  let a = less(outline[outline.length - 1]!, spot);
  for (const corner of outline) {
    const b = less(corner, spot);
    const crossed: Vector = [
      a[1] * b[2] - a[2] * b[1],
      a[2] * b[0] - a[0] * b[2],
      a[0] * b[1] - a[1] * b[0],
    ];
    const size = Math.hypot(...crossed);
    if (size > 1e-300) {
      const angle = Math.atan2(size, a[0] * b[0] + a[1] * b[1] + a[2] * b[2]);
      sum += angle * (normal[0] * crossed[0] + normal[1] * crossed[1] + normal[2] * crossed[2]) /
        size;
    }
    a = b;
  }
  return Math.abs(sum) / (2 * Math.PI);
}

/** pieces along each side of a triangle */
const PIECES = 8;

/** Middles of the small triangles of an outline, each with its area, m and m². */
function spots(outline: Outline): { at: Corner; area: number }[] {
  const found: { at: Corner; area: number }[] = [];
  const [first] = outline;
  for (let i = 1; i + 1 < outline.length; i++) {
    const [u, v] = [less(outline[i]!, first!), less(outline[i + 1]!, first!)];
    const area = Math.hypot(
      u[1] * v[2] - u[2] * v[1],
      u[2] * v[0] - u[0] * v[2],
      u[0] * v[1] - u[1] * v[0],
    ) / 2 / PIECES ** 2;
    const point = (p: number, q: number): Corner => [
      first![0] + (p * u[0] + q * v[0]) / PIECES,
      first![1] + (p * u[1] + q * v[1]) / PIECES,
      first![2] + (p * u[2] + q * v[2]) / PIECES,
    ];
    for (let p = 0; p < PIECES; p++) {
      for (let q = 0; p + q < PIECES; q++) {
        found.push({ at: point(p + 1 / 3, q + 1 / 3), area });
        if (p + q + 1 < PIECES) found.push({ at: point(p + 2 / 3, q + 2 / 3), area });
      }
    }
  }
  return found;
}

/** m² of each surface times its share of the light to each other one, from its own spots. */
function exchangeAreas(
  surfaces: readonly RoomSurface[],
): { exchange: Float64Array[]; areas: Float64Array } {
  const inside = roomMiddle(surfaces);
  const areas = new Float64Array(surfaces.length);
  const exchange = surfaces.map(({ outline }, from) => {
    const row = new Float64Array(surfaces.length);
    if (outline.length < 3) return row;
    const normal = inward(outline, inside);
    for (const { at, area } of spots(outline)) {
      areas[from] = areas[from]! + area;
      surfaces.forEach((other, to) => {
        if (to === from || other.outline.length < 3) return;
        row[to] = row[to]! + area * spotViewFactor(at, normal, other.outline);
      });
    }
    return row;
  });
  return { exchange, areas };
}

/** rounds in which rows are scaled to their sums */
const ROUNDS = 60;

/**
 * View factors of a closed convex room: row i holds what each surface gets of the light that
 * surface i sends out evenly. From each small spot the shares are exact; over the surface they are a
 * mean of spots, of the smaller surface of a pair, and all are scaled a little so that A_i·F_ij =
 * A_j·F_ji and every row adds up to 1.
 *
 * @param surfaces of the room, floor included
 * @returns shares, 0 to 1; a surface without area sees nothing and its row is 0
 */
export function viewFactors(surfaces: readonly RoomSurface[]): readonly Float64Array[] {
  const { exchange, areas } = exchangeAreas(surfaces);
  const both = exchange.map((row, from) =>
    row.map((value, to) => areas[from]! <= areas[to]! ? value : exchange[to]![from]!)
  );
  const total = (row: Float64Array) => row.reduce((sum, value) => sum + value, 0);
  for (let round = 0; round < ROUNDS; round++) {
    const scale = both.map((row, i) => areas[i]! > 0 ? Math.sqrt(areas[i]! / total(row)) : 0);
    both.forEach((row, from) => {
      for (let to = 0; to < row.length; to++) row[to] = row[to]! * scale[from]! * scale[to]!;
    });
  }
  return both.map((row) => {
    const all = total(row);
    return all > 0 ? row.map((value) => value / all) : row;
  });
}
