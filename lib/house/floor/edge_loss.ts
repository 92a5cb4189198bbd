/** Heat that leaves the floor sideways through the ground: a steady plane section. @module */
import { requireInRange } from "../../basics/mod.ts";
import { solveFivePoint } from "../../basics/linear/five_point.ts";
import { gradedLine } from "../../basics/graded_line.ts";
import { overLayers } from "./layers.ts";

/** A layer of ground, m thick, that conducts W/(m K). */
export interface ConductingLayer {
  /** m */
  readonly thickness: number;
  /** W/(m K) */
  readonly conductivity: number;
}

/** Section through the edge of a floor on the ground, symmetric about its middle. */
export interface GroundSection {
  /** m, half the floor */
  readonly halfWidth: number;
  /** m of wall base between floor and outside ground */
  readonly wallWidth: number;
  /** temperature under the wall base: no heat flow, or falling evenly from inside to outside */
  readonly wallBase: "adiabatic" | "linear";
  /** W/(m K) */
  readonly conductivity: number;
  /** conductivities by depth, W/(m K), the last one's to the bottom; absent: one all the way down */
  readonly layers?: readonly ConductingLayer[] | undefined;
  /** W/(m² K) of floor and outside ground; Infinity where the surface temperature is given */
  readonly insideFilm: number;
  /** W/(m² K), film of the outside surface */
  readonly outsideFilm: number;
  /** m² K/W and m: insulation down the outer face of the wall */
  readonly insulation: number;
  /** m, depth of the edge insulation */
  readonly insulationDepth: number;
  /** m: insulation laid outward from the foot of the vertical one, or 0.3 m deep without one */
  readonly insulationWing: number;
  /** m of ground beside the wall and below the floor; 400 and 400 unless given */
  readonly outside?: number;
  /** m below the surface */
  readonly depth?: number;
  /** m, finest cell; 0.01 unless given */
  readonly finest?: number;
  /** growth of cells away from edges, a ratio; 1.25 unless given */
  readonly growth?: number;
}

/** Heat flow of a section per kelvin between inside and outside, and how it leaves by depth. */
export interface SectionHeat {
  /** W/(m K): out of the half floor, per metre of its edge */
  readonly perMetre: number;
  /** depth of the faces between layers, m, from 0 */
  readonly faces: Float64Array;
  /** mean temperature under the floor by layer, dimensionless: inside 1, outside 0 */
  readonly meanUnderFloor: Float64Array;
  /** W/(m K) that crosses the plane under the floor's edge, by layer */
  readonly sideways: Float64Array;
}

/** m, depth of a wing without an upright board. */
export const WING_DEPTH = 0.3;

/**
 * Steady heat flow of the section by finite volumes, cells fine at floor edge and wall.
 *
 * Plane conduction k∇²T = 0; the floor at 1 and the outside ground at 0, each behind its film.
 * Insulation is a sheet without thickness or heat along it.
 *
 * @param section the ground and its edges
 * @throws {OutOfRangeError} where width or conductivity is not above 0
 */
export function sectionHeat(section: GroundSection): SectionHeat {
  requireInRange("half width of the floor", section.halfWidth, 1e-3, 1e4, "m");
  requireInRange("conductivity of the ground", section.conductivity, 1e-3, 100, "W/(m K)");
  const finest = section.finest ?? 0.01;
  const growth = section.growth ?? 1.25;
  const edge = section.halfWidth + section.wallWidth;
  const wingEnd = edge + section.insulationWing;
  const wingDepth = section.insulationDepth > 0 ? section.insulationDepth : WING_DEPTH;
  const xMarks = section.insulationWing > 0
    ? [0, section.halfWidth, edge, wingEnd, edge + (section.outside ?? 400)]
    : [0, section.halfWidth, edge, edge + (section.outside ?? 400)];
  const zMarks = section.insulationDepth > 0 || section.insulationWing > 0
    ? [0, wingDepth, section.depth ?? 400]
    : [0, section.depth ?? 400];
  const x = gradedLine(xMarks, { finest, growth, fineAtStart: false });
  const z = gradedLine(zMarks, { finest, growth, fineAtStart: true });
  return solveSection(section, x, z, { edge, wingEnd, wingDepth });
}

/** Integral of layer values over a span, layers between faces. */
function overlap(faces: Float64Array, values: Float64Array, from: number, to: number): number {
  let sum = 0;
  for (let j = 0; j < values.length; j++) {
    const [top, bottom] = [Math.max(from, faces[j]!), Math.min(to, faces[j + 1]!)];
    if (bottom > top) sum += values[j]! * (bottom - top) / (faces[j + 1]! - faces[j]!);
  }
  return sum;
}

/**
 * Heat that crosses the plane under the floor's edge between two depths, and the mean temperature
 * under the floor there: their ratio is the conductance sideways of a layer of floor soil.
 *
 * @param section solved section
 * @param from m, upper face of the layer
 * @param to m, lower face
 * @param deepest m, how far down the heat counts; to `to` unless given
 * @returns heat in W/(m K) of edge, mean where inside is 1 and outside 0
 */
export function sidewaysOf(
  section: SectionHeat,
  from: number,
  to: number,
  deepest = to,
): { readonly heat: number; readonly mean: number } {
  const { faces, meanUnderFloor } = section;
  const weighted = meanUnderFloor.map((value, j) => value * (faces[j + 1]! - faces[j]!));
  return {
    heat: overlap(faces, section.sideways, from, deepest),
    mean: overlap(faces, weighted, from, to) / (to - from),
  };
}

interface Marks {
  readonly edge: number;
  readonly wingEnd: number;
  readonly wingDepth: number;
}

function solveSection(
  section: GroundSection,
  x: Float64Array,
  z: Float64Array,
  marks: Marks,
): SectionHeat {
  const [columns, rows] = [x.length - 1, z.length - 1];
  const size = columns * rows;
  const layers = section.layers ?? [{ thickness: Infinity, conductivity: section.conductivity }];
  /** m² K/W straight down, and W/(m K) straight across */
  const down = (from: number, to: number) =>
    overLayers(layers, from, to, (layer) => 1 / layer.conductivity);
  const across = Float64Array.from(
    { length: rows },
    (_, j) =>
      overLayers(layers, z[j]!, z[j + 1]!, (layer) => layer.conductivity) / (z[j + 1]! - z[j]!),
  );
  const middles = Float64Array.from(across, (_, j) => (z[j]! + z[j + 1]!) / 2);
  const toNext = Float64Array.from(
    middles.subarray(1),
    (middle, j) => down(middles[j]!, middle),
  );
  const toFirst = down(0, middles[0]!);
  const tiny = 1e-9;
  const diagonal = new Float64Array(size);
  const below = new Float64Array(size); // to the next row
  const beside = new Float64Array(size); // to the next column
  const right = new Float64Array(size);
  const topInside = new Float64Array(columns);
  for (let i = 0; i < columns; i++) {
    const width = x[i + 1]! - x[i]!;
    const middle = (x[i]! + x[i + 1]!) / 2;
    const cover = topSurface(section, marks, middle);
    const top = cover.film > 0 ? width / (toFirst + 1 / cover.film) : 0;
    diagonal[i * rows] = diagonal[i * rows]! + top;
    right[i * rows] = top * cover.temperature;
    if (middle < section.halfWidth) topInside[i] = top;
    for (let j = 0; j < rows; j++) {
      const cell = i * rows + j;
      const height = z[j + 1]! - z[j]!;
      if (j + 1 < rows) {
        const wing = section.insulation > 0 && section.insulationWing > 0 &&
          middle > marks.edge && middle < marks.wingEnd &&
          Math.abs(z[j + 1]! - marks.wingDepth) < tiny;
        const path = toNext[j]! + (wing ? section.insulation : 0);
        couple(diagonal, below, cell, cell + 1, width / path);
      }
      if (i + 1 < columns) {
        const sheet = section.insulation > 0 && Math.abs(x[i + 1]! - marks.edge) < tiny &&
          z[j + 1]! <= section.insulationDepth + tiny;
        const path = (x[i + 2]! - x[i]!) / 2 / across[j]! + (sheet ? section.insulation : 0);
        couple(diagonal, beside, cell, cell + rows, height / path);
      }
    }
  }
  const temperature = solveFivePoint(diagonal, below, beside, rows, right);
  return gatherSection(section, { x, z, temperature, topInside, beside });
}

function couple(
  diagonal: Float64Array,
  side: Float64Array,
  a: number,
  b: number,
  conductance: number,
): void {
  diagonal[a] = diagonal[a]! + conductance;
  diagonal[b] = diagonal[b]! + conductance;
  side[a] = conductance;
}

function topSurface(
  section: GroundSection,
  marks: Marks,
  at: number,
): { film: number; temperature: number } {
  if (at < section.halfWidth) return { film: section.insideFilm, temperature: 1 };
  if (at > marks.edge) return { film: section.outsideFilm, temperature: 0 };
  if (section.wallBase === "adiabatic") return { film: 0, temperature: 0 };
  return { film: Infinity, temperature: 1 - (at - section.halfWidth) / section.wallWidth };
}

function gatherSection(
  section: GroundSection,
  solved: {
    x: Float64Array;
    z: Float64Array;
    temperature: Float64Array;
    topInside: Float64Array;
    beside: Float64Array;
  },
): SectionHeat {
  const { x, z, temperature, topInside, beside } = solved;
  const [columns, rows] = [x.length - 1, z.length - 1];
  let perMetre = 0;
  const meanUnderFloor = new Float64Array(rows);
  const sideways = new Float64Array(rows);
  for (let i = 0; i < columns; i++) {
    if (x[i + 1]! > section.halfWidth + 1e-9) break;
    perMetre += topInside[i]! * (1 - temperature[i * rows]!);
    const share = (x[i + 1]! - x[i]!) / section.halfWidth;
    const last = Math.abs(x[i + 1]! - section.halfWidth) < 1e-9;
    for (let j = 0; j < rows; j++) {
      const cell = i * rows + j;
      meanUnderFloor[j] = meanUnderFloor[j]! + share * temperature[cell]!;
      if (last) sideways[j] = beside[cell]! * (temperature[cell]! - temperature[cell + rows]!);
    }
  }
  return { perMetre, faces: z, meanUnderFloor, sideways };
}
