/** Steady heat of a rectangular floor on the ground in three dimensions. @module */
import { NotConvergedError, requireInRange } from "../../lib/basics/mod.ts";
import { gradedLine } from "../../lib/basics/graded_line.ts";

/** A rectangular floor on the ground; a quarter is solved. */
export interface Slab {
  /** m, inside */
  readonly length: number;
  /** m, inside */
  readonly width: number;
  /** m of wall base all around */
  readonly wallWidth: number;
  /** temperature under the wall base: no heat flow, or falling evenly from inside to outside */
  readonly wallBase: "adiabatic" | "linear";
  /** W/(m K) */
  readonly conductivity: number;
  /** W/(m² K) of the floor; Infinity where its surface temperature is given */
  readonly insideFilm: number;
  /** W/(m² K) of the ground outside; Infinity where its surface temperature is given */
  readonly outsideFilm: number;
  /** m of ground beside the wall, adiabatic beyond */
  readonly outside: number;
  /** m of ground below the floor; at its foot the outside temperature is held */
  readonly depth: number;
  /** m, finest cell */
  readonly finest: number;
  /** growth of cells away from edges */
  readonly growth: number;
}

interface Grid {
  readonly counts: readonly [number, number, number];
  readonly size: number;
  /** conductance to the next cell along each axis, W/K */
  readonly east: Float64Array;
  readonly north: Float64Array;
  readonly down: Float64Array;
  readonly diagonal: Float64Array;
  readonly right: Float64Array;
  /** conductance of the floor surface over each column, W/K, 0 elsewhere */
  readonly floor: Float64Array;
}

function middles(faces: Float64Array): Float64Array {
  return faces.slice(1).map((face, i) => (face + faces[i]!) / 2);
}

function sizes(faces: Float64Array): Float64Array {
  return faces.slice(1).map((face, i) => face - faces[i]!);
}

function buildGrid(slab: Slab): Grid {
  const { finest, growth, wallWidth, outside, conductivity: k } = slab;
  const line = (half: number) =>
    gradedLine([0, half, half + wallWidth, half + wallWidth + outside], {
      finest,
      growth,
      fineAtStart: false,
    });
  const [x, y] = [line(slab.length / 2), line(slab.width / 2)];
  const z = gradedLine([0, slab.depth], { finest, growth, fineAtStart: true });
  const [mx, my, mz] = [middles(x), middles(y), middles(z)];
  const [dx, dy, dz] = [sizes(x), sizes(y), sizes(z)];
  const [nx, ny, nz] = [mx.length, my.length, mz.length];
  const size = nx * ny * nz;
  const series = () => new Float64Array(size);
  const [east, north, down, diagonal, right] = [series(), series(), series(), series(), series()];
  const floor = new Float64Array(nx * ny);
  const join = (side: Float64Array, a: number, b: number, conductance: number) => {
    side[a] = conductance;
    diagonal[a]! += conductance;
    diagonal[b]! += conductance;
  };
  for (let i = 0, cell = 0; i < nx; i++) {
    for (let j = 0; j < ny; j++) {
      const area = dx[i]! * dy[j]!;
      const out = Math.max(mx[i]! - slab.length / 2, my[j]! - slab.width / 2);
      const surface = topSurface(slab, out);
      const top = surface.film > 0 ? area / (mz[0]! / k + 1 / surface.film) : 0;
      diagonal[cell]! += top;
      right[cell]! += top * surface.temperature;
      if (out < 0) floor[i * ny + j] = top;
      for (let l = 0; l < nz; l++, cell++) {
        if (i + 1 < nx) {
          join(east, cell, cell + ny * nz, k * dy[j]! * dz[l]! / (mx[i + 1]! - mx[i]!));
        }
        if (j + 1 < ny) join(north, cell, cell + nz, k * dx[i]! * dz[l]! / (my[j + 1]! - my[j]!));
        if (l + 1 < nz) join(down, cell, cell + 1, k * area / (mz[l + 1]! - mz[l]!));
        else diagonal[cell]! += k * area / (slab.depth - mz[l]!);
      }
    }
  }
  return { counts: [nx, ny, nz], size, east, north, down, diagonal, right, floor };
}

function topSurface(slab: Slab, out: number): { film: number; temperature: number } {
  if (out < 0) return { film: slab.insideFilm, temperature: 1 };
  if (out > slab.wallWidth) return { film: slab.outsideFilm, temperature: 0 };
  if (slab.wallBase === "adiabatic") return { film: 0, temperature: 0 };
  return { film: Infinity, temperature: 1 - out / slab.wallWidth };
}

/** Pivots of the modified incomplete factorisation (Gustafsson 1978 [gustafsson-1978]). */
function incompletePivots(grid: Grid): Float64Array {
  const { counts, size, east, north, down, diagonal } = grid;
  const [stepX, stepY] = [counts[1] * counts[2], counts[2]];
  const keep = 0.97;
  const inverse = new Float64Array(size);
  for (let c = 0; c < size; c++) {
    let pivot = diagonal[c]!;
    const take = (from: number, side: Float64Array, a: Float64Array, b: Float64Array) => {
      const g = side[from]!;
      pivot -= g * (g + keep * (a[from]! + b[from]!)) * inverse[from]!;
    };
    if (c >= stepX) take(c - stepX, east, north, down);
    if (c >= stepY) take(c - stepY, north, east, down);
    if (c >= 1) take(c - 1, down, east, north);
    inverse[c] = 1 / pivot;
  }
  return inverse;
}

function precondition(grid: Grid, inverse: Float64Array, r: Float64Array, z: Float64Array): void {
  const { counts, size, east, north, down } = grid;
  const [stepX, stepY] = [counts[1] * counts[2], counts[2]];
  for (let c = 0; c < size; c++) {
    let sum = r[c]!;
    if (c >= stepX) sum += east[c - stepX]! * z[c - stepX]!;
    if (c >= stepY) sum += north[c - stepY]! * z[c - stepY]!;
    if (c >= 1) sum += down[c - 1]! * z[c - 1]!;
    z[c] = sum * inverse[c]!;
  }
  for (let c = size - 1; c >= 0; c--) {
    let sum = 0;
    if (c + stepX < size) sum += east[c]! * z[c + stepX]!;
    if (c + stepY < size) sum += north[c]! * z[c + stepY]!;
    if (c + 1 < size) sum += down[c]! * z[c + 1]!;
    z[c]! += sum * inverse[c]!;
  }
}

function multiply(grid: Grid, p: Float64Array, q: Float64Array): void {
  const { counts, size, east, north, down, diagonal } = grid;
  const [stepX, stepY] = [counts[1] * counts[2], counts[2]];
  for (let c = 0; c < size; c++) {
    let sum = diagonal[c]! * p[c]!;
    if (c >= stepX) sum -= east[c - stepX]! * p[c - stepX]!;
    if (c >= stepY) sum -= north[c - stepY]! * p[c - stepY]!;
    if (c >= 1) sum -= down[c - 1]! * p[c - 1]!;
    if (c + stepX < size) sum -= east[c]! * p[c + stepX]!;
    if (c + stepY < size) sum -= north[c]! * p[c + stepY]!;
    if (c + 1 < size) sum -= down[c]! * p[c + 1]!;
    q[c] = sum;
  }
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}

/** Conjugate gradients; the conductances past a row's end are 0, so neighbours need no test of edges. */
function solveGrid(grid: Grid): Float64Array {
  const { size } = grid;
  const inverse = incompletePivots(grid);
  const x = new Float64Array(size);
  const r = grid.right.slice();
  const [z, q] = [new Float64Array(size), new Float64Array(size)];
  precondition(grid, inverse, r, z);
  const p = z.slice();
  let rz = dot(r, z);
  const goal = rz * 1e-16;
  for (let round = 1; round <= 2000; round++) {
    multiply(grid, p, q);
    const step = rz / dot(p, q);
    for (let c = 0; c < size; c++) {
      x[c]! += step * p[c]!;
      r[c]! -= step * q[c]!;
    }
    precondition(grid, inverse, r, z);
    const next = dot(r, z);
    if (next < goal) return x;
    const ratio = next / rz;
    for (let c = 0; c < size; c++) p[c] = z[c]! + ratio * p[c]!;
    rz = next;
  }
  throw new NotConvergedError("the heat of the slab", 2000, Math.sqrt(rz));
}

/**
 * Heat that a rectangular floor loses to the ground in the steady state, per kelvin.
 *
 * k∇²T = 0 by finite volumes on a quarter of the floor, conjugate gradients with a modified
 * incomplete factorisation. On corners and edges heat flow is singular: the result falls short by
 * an error of first order in the finest cell.
 *
 * @param slab floor, ground, mesh
 * @returns W/K
 * @throws {NotConvergedError} where the iteration stalls
 */
export function slabHeat(slab: Slab): number {
  requireInRange("length of the floor", slab.length, 1e-3, 1e4, "m");
  requireInRange("width of the floor", slab.width, 1e-3, 1e4, "m");
  const grid = buildGrid(slab);
  const temperature = solveGrid(grid);
  const [, ny, nz] = grid.counts;
  let heat = 0;
  for (let column = 0; column < grid.floor.length; column++) {
    const i = Math.floor(column / ny);
    const j = column % ny;
    heat += grid.floor[column]! * (1 - temperature[(i * ny + j) * nz]!);
  }
  return 4 * heat;
}
