/** Conduction in one metre of soil slice as capacities and conductances between cells. @module */
import { sum } from "d3-array";
import { cellFreezing } from "./cell_freezing.ts";
import type { SliceMesh } from "./mesh.ts";
import type {
  ConductionOperator,
  SliceSoil,
  SoilBoard,
  SoilZone,
  SurfacePort,
} from "./slice_types.ts";
import { cutMesh } from "./tube_cut.ts";
import { tubePlaces, tubePorts } from "./tube_ports.ts";

export type {
  ConductionOperator,
  SliceSoil,
  SoilBoard,
  SoilZone,
  SurfacePort,
  TubePort,
} from "./slice_types.ts";

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
  const [left, right] = [Math.min(...x) - margin, Math.max(...x) + margin];
  const [top, bottom] = [Math.min(...y) - margin, Math.max(...y) + margin];
  const cells: number[] = [];
  for (let c = 0; c < mesh.columns * mesh.rows; c++) {
    const across = mesh.x[c % mesh.columns]!;
    const deep = mesh.depths[Math.floor(c / mesh.columns)]!;
    const inside = across > left && across < right && deep > top && deep < bottom;
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
  const places = tubePlaces(mesh);
  const cut = cutMesh(widths, heights, places, soil.tubeRadius);
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const c = row * columns + column;
      capacity[c] = soils[c]!.heatCapacity * cut.area[c]!;
      if (column + 1 < columns) {
        const series = (widths[column]! - cut.across[c]!) / conductivity[c]! +
          cut.across[c + 1]! / conductivity[c + 1]! +
          boardResistance(mesh, soil.boards, standsBeside, c);
        sideways[c] = cut.openRight[c]! / series;
      }
      if (row + 1 < rows) {
        const series = (heights[row]! - cut.down[c]!) / conductivity[c]! +
          cut.down[c + columns]! / conductivity[c + columns]! +
          boardResistance(mesh, soil.boards, liesBelow, c);
        downwards[c] = cut.openBelow[c]! / series;
      }
    }
  }
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
    tubes: tubePorts({ mesh, places, radius: soil.tubeRadius, conductivity }),
    floor: {
      ...surface(
        soil.floorFilm > 0 ? top.filter((column) => mesh.underFloor[column] === 1) : [],
        (cell) => throughSurface(cell, soil.floorFilm),
      ),
      inSoil: 1 / (1 + 2 * conductivity[0]! / heights[0]! / soil.floorFilm),
    },
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
