/** Round tubes coupled to the cells they cut. @module */
import { equivalentRadius } from "./equivalent_radius.ts";
import type { SliceMesh } from "./mesh.ts";
import type { TubePort } from "./slice_types.ts";
import { edgesOf, type TubePlace, wallByCell } from "./tube_cut.ts";

/** Cells round a block in which the exact field of a line is compared. */
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

/** Where the tubes lie, by columns and rows of their blocks. */
export function tubePlaces(mesh: SliceMesh): TubePlace[] {
  const [x, y] = [edgesOf(mesh.widths), edgesOf(mesh.heights)];
  return mesh.blocks.map((block) => {
    const columns = Array.from(block.cells, (cell) => cell % mesh.columns);
    const rows = Array.from(block.cells, (cell) => Math.floor(cell / mesh.columns));
    const [left, right] = [Math.min(...columns), Math.max(...columns) + 1];
    const [top, bottom] = [Math.min(...rows), Math.max(...rows) + 1];
    return {
      columns: [left, right],
      rows: [top, bottom],
      x: block.part < 1 ? 0 : (x[left]! + x[right]!) / 2,
      y: (y[top]! + y[bottom]!) / 2,
    };
  });
}

/** Heat enters the cells by their share of the wall. */
function tubePort(
  mesh: SliceMesh,
  { place, part, radius }: {
    readonly place: TubePlace;
    readonly part: number;
    readonly radius: number;
  },
): Pick<TubePort, "cells" | "weights"> {
  const [x, y] = [edgesOf(mesh.widths), edgesOf(mesh.heights)];
  const [left, right] = place.columns;
  const [top, bottom] = place.rows;
  const columns = Array.from(x.slice(left, right + 1), (edge) => edge - place.x);
  const rows = Array.from(y.slice(top, bottom + 1), (edge) => edge - place.y);
  const shares = wallByCell(columns, rows, radius, part < 1);
  const touched = [...shares.keys()].filter((k) => shares[k]! > 0);
  const width = right - left;
  return {
    cells: Int32Array.from(
      touched,
      (k) => (top + Math.floor(k / width)) * mesh.columns + left + k % width,
    ),
    weights: Float64Array.from(touched, (k) => shares[k]!),
  };
}

/**
 * Couplings of all tubes.
 *
 * @param given mesh, places of its tubes, their outside radius, m, and conductivity by cell, W/(m K)
 */
export function tubePorts(given: {
  readonly mesh: SliceMesh;
  readonly places: readonly TubePlace[];
  readonly radius: number;
  readonly conductivity: Float64Array;
}): TubePort[] {
  const { mesh, places, radius, conductivity } = given;
  const known = new Map<string, number>();
  return mesh.blocks.map((block, k) => {
    const place = places[k]!;
    const across = patchAxis(mesh.widths, ...place.columns, block.part < 1);
    const down = patchAxis(mesh.heights, ...place.rows, false);
    const key = [...across.sizes, ...down.sizes].map((size) => Math.round(1e6 * size)).join();
    const equivalent = known.get(key) ?? equivalentRadius({
      widths: across.sizes,
      heights: down.sizes,
      blockColumns: across.range,
      blockRows: down.range,
      radius,
    });
    known.set(key, equivalent);
    return {
      ...tubePort(mesh, { place, part: block.part, radius }),
      resistance: Math.log(equivalent / radius) /
        (2 * Math.PI * conductivity[block.cells[0]!]!),
      part: block.part,
    };
  });
}
