/** Conduction in one metre of soil slice as capacities and conductances between cells. @module */
import { sum } from "d3-array";
import { cellFreezing } from "./cell_freezing.ts";
import { equivalentRadius } from "./equivalent_radius.ts";
import type { SliceMesh, TubeBlock } from "./mesh.ts";
import type {
  ConductionOperator,
  SliceSoil,
  SoilBoard,
  SoilZone,
  SurfacePort,
  TubePort,
} from "./slice_types.ts";

export type {
  ConductionOperator,
  SliceSoil,
  SoilBoard,
  SoilZone,
  SurfacePort,
  TubePort,
} from "./slice_types.ts";

const RIM = 7;

/** Sizes around a block, mirrored where the mirror plane cuts it. */
function patchAxis(sizes: Float64Array, from: number, to: number, cut: boolean) {
  const right = Array.from(sizes.slice(to, to + RIM));
  const block = Array.from(sizes.slice(from, to));
  const left = cut ? [...right].reverse() : Array.from(sizes.slice(Math.max(0, from - RIM), from));
  const whole = cut ? [...[...block].reverse(), ...block] : block;
  const pad = (list: number[], atStart: boolean) => {
    while (list.length < RIM) {
      if (atStart) list.unshift(list[0] ?? block[0]!);
      else list.push(list.at(-1) ?? block[0]!);
    }
    return list;
  };
  return {
    sizes: [...pad(left, true), ...whole, ...pad(right, false)],
    range: [RIM, RIM + whole.length] as const,
  };
}

function tubePorts(mesh: SliceMesh, soil: SliceSoil, conductivityAt: Float64Array): TubePort[] {
  const known = new Map<string, number>();
  return mesh.blocks.map((block) => {
    const columns = Array.from(block.cells, (cell) => cell % mesh.columns);
    const rows = Array.from(block.cells, (cell) => Math.floor(cell / mesh.columns));
    const across = patchAxis(
      mesh.widths,
      Math.min(...columns),
      Math.max(...columns) + 1,
      block.part < 1,
    );
    const down = patchAxis(mesh.heights, Math.min(...rows), Math.max(...rows) + 1, false);
    const key = [...across.sizes, ...down.sizes].map((size) => size.toFixed(6)).join();
    const radius = known.get(key) ?? equivalentRadius({
      widths: across.sizes,
      heights: down.sizes,
      blockColumns: across.range,
      blockRows: down.range,
      rim: true,
    });
    known.set(key, radius);
    const count = block.wall.length;
    return {
      cells: block.wall,
      weights: new Float64Array(count).fill(1 / count),
      resistance: Math.log(radius / soil.tubeRadius) /
        (2 * Math.PI * conductivityAt[block.cells[0]!]!),
      part: block.part,
    };
  });
}

/** Surface of a half cell in series with a film, W/(m K). */
function surface(
  cells: readonly number[],
  conductanceOf: (cell: number) => number,
): SurfacePort {
  return { cells: Int32Array.from(cells), conductances: Float64Array.from(cells, conductanceOf) };
}

/** A surface port with what the cells under the floor lose beyond the end walls, by row. */
function withEnds(
  mesh: SliceMesh,
  port: SurfacePort,
  byRow: Float64Array | undefined,
): SurfacePort {
  if (byRow === undefined) return port;
  const each = new Map<number, number>();
  port.cells.forEach((cell, k) => each.set(cell, port.conductances[k]!));
  for (let cell = 0; cell < mesh.columns * mesh.rows; cell++) {
    const [column, row] = [cell % mesh.columns, Math.floor(cell / mesh.columns)];
    if (mesh.underFloor[column] === 0 || byRow[row]! <= 0) continue;
    each.set(cell, (each.get(cell) ?? 0) + byRow[row]! * mesh.widths[column]!);
  }
  return { cells: Int32Array.from(each.keys()), conductances: Float64Array.from(each.values()) };
}

/** Cells in the box around the tubes, blocks left out. */
function storeCells(mesh: SliceMesh): ConductionOperator["store"] {
  const blocks = new Set(mesh.blocks.flatMap((block) => Array.from(block.cells)));
  const x = mesh.blocks.flatMap((block) =>
    Array.from(block.cells, (c) => mesh.x[c % mesh.columns]!)
  );
  const y = mesh.blocks.flatMap((block) =>
    Array.from(block.cells, (c) => mesh.depths[Math.floor(c / mesh.columns)]!)
  );
  const margin = 0.15;
  const cells: number[] = [];
  for (let c = 0; c < mesh.columns * mesh.rows; c++) {
    const across = mesh.x[c % mesh.columns]!;
    const deep = mesh.depths[Math.floor(c / mesh.columns)]!;
    const inside = across > Math.min(...x) - margin && across < Math.max(...x) + margin &&
      deep > Math.min(...y) - margin && deep < Math.max(...y) + margin;
    if (inside && !blocks.has(c)) cells.push(c);
  }
  const area = cells.map((c) =>
    mesh.widths[c % mesh.columns]! * mesh.heights[Math.floor(c / mesh.columns)]!
  );
  const total = sum(area);
  return { cells: Int32Array.from(cells), weights: Float64Array.from(area, (a) => a / total) };
}

/** Soil of a cell: the last zone that holds it, or the soil of the slice. */
function soilOf(mesh: SliceMesh, soil: SliceSoil, cell: number): SliceSoil | SoilZone {
  const depth = mesh.depths[Math.floor(cell / mesh.columns)]!;
  const across = Math.abs(mesh.x[cell % mesh.columns]!);
  return soil.zones.findLast((zone) =>
    across <= zone.within && depth >= zone.from && depth <= zone.to
  ) ?? soil;
}

/** Whether a column lies in the open ground. */
function beyondWall(mesh: SliceMesh, column: number): boolean {
  return Math.abs(mesh.x[column]!) > mesh.outerFace;
}

/** Whether a board lies on the face right of a cell. */
function standsBeside(mesh: SliceMesh, board: SoilBoard, column: number, row: number): boolean {
  return board.kind === "edge" && mesh.depths[row]! < board.depth &&
    beyondWall(mesh, column) !== beyondWall(mesh, column + 1);
}

/** Whether a board lies on the face below a cell. */
function liesBelow(mesh: SliceMesh, board: SoilBoard, column: number, row: number): boolean {
  if (board.kind === "edge") return false;
  if (mesh.depths[row]! > board.depth || mesh.depths[row + 1]! < board.depth) return false;
  if (board.kind === "flat") return mesh.underFloor[column] === 1;
  return beyondWall(mesh, column) && Math.abs(mesh.x[column]!) < mesh.outerFace + board.width!;
}

/** Resistance of boards on a face of a cell, m² K/W. */
function boardResistance(
  mesh: SliceMesh,
  boards: readonly SoilBoard[],
  on: typeof standsBeside,
  cell: number,
): number {
  const [column, row] = [cell % mesh.columns, Math.floor(cell / mesh.columns)];
  let resistance = 0;
  for (const board of boards) if (on(mesh, board, column, row)) resistance += board.resistance;
  return resistance;
}

/** Least share of its capacity that a cell keeps, so that no time constant vanishes. */
const LEAST_CAPACITY = 0.02;

/** Takes the air space of a tube out of its block: first from the core, the rest along the wall. */
function emptyTube(block: TubeBlock, capacity: Float64Array, radius: number): void {
  const each = block.side ** 2 / (block.cells.length / block.part);
  const wall = new Set(block.wall);
  const core = block.cells.filter((cell) => !wall.has(cell));
  for (const cell of core) capacity[cell]! *= LEAST_CAPACITY;
  const air = Math.PI * radius ** 2 * block.part - core.length * each;
  const kept = Math.max(LEAST_CAPACITY, 1 - air / (block.wall.length * each));
  for (const cell of block.wall) capacity[cell]! *= kept;
}

/**
 * Builds capacities and conductances of one metre of slice by finite volumes: two half cells in
 * series between centres, the air space of a tube taken out of the capacity of its block.
 */
export function sliceOperator(mesh: SliceMesh, soil: SliceSoil): ConductionOperator {
  const { columns, rows, widths, heights } = mesh;
  const count = columns * rows;
  const soils = Array.from({ length: count }, (_, cell) => soilOf(mesh, soil, cell));
  const conductivity = Float64Array.from(soils, (each) => each.conductivity);
  const capacity = new Float64Array(count);
  const sideways = new Float64Array(count);
  const downwards = new Float64Array(count);
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const c = row * columns + column;
      const width = widths[column]!;
      const height = heights[row]!;
      capacity[c] = soils[c]!.heatCapacity * width * height;
      if (column + 1 < columns) {
        const series = width / (2 * conductivity[c]!) +
          widths[column + 1]! / (2 * conductivity[c + 1]!) +
          boardResistance(mesh, soil.boards, standsBeside, c);
        sideways[c] = height / series;
      }
      if (row + 1 < rows) {
        const series = height / (2 * conductivity[c]!) +
          heights[row + 1]! / (2 * conductivity[c + columns]!) +
          boardResistance(mesh, soil.boards, liesBelow, c);
        downwards[c] = width / series;
      }
    }
  }
  for (const block of mesh.blocks) emptyTube(block, capacity, soil.tubeRadius);
  const top = Array.from({ length: columns }, (_, column) => column);
  const bottom = soil.deepHeld ? top.map((column) => (rows - 1) * columns + column) : [];
  const throughSurface = (cell: number, film: number) =>
    film <= 0 ? 0 : widths[cell % columns]! /
      (1 / film + heights[Math.floor(cell / columns)]! / (2 * conductivity[cell]!));
  return {
    columns,
    rows,
    capacity,
    sideways,
    downwards,
    tubes: tubePorts(mesh, soil, conductivity),
    floor: surface(
      soil.floorFilm > 0 ? top.filter((column) => mesh.underFloor[column] === 1) : [],
      (cell) => throughSurface(cell, soil.floorFilm),
    ),
    outdoor: withEnds(
      mesh,
      surface(
        soil.outdoorFilm > 0 ? top.filter((column) => beyondWall(mesh, column)) : [],
        (cell) => throughSurface(cell, soil.outdoorFilm),
      ),
      soil.ends?.surface,
    ),
    deep: withEnds(
      mesh,
      surface(bottom, (cell) => throughSurface(cell, Infinity)),
      soil.ends?.deep,
    ),
    store: storeCells(mesh),
    freezing: cellFreezing(soils, capacity),
  };
}
