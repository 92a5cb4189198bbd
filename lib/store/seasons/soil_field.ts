/** Temperatures of a store's soil carried over to another store: where its settling may begin. @module */
import { reducedStates } from "../solver/reduced/fields.ts";
import type { SliceMesh } from "../ground/mesh.ts";
import type { SoilModel } from "./soil_model.ts";

/** A soil's temperatures. */
export interface SoilField {
  /** m, middles of columns and rows */
  readonly x: Float64Array;
  readonly depths: Float64Array;
  /** degC of all cells, row by row; the lanes with tubes first */
  readonly cells: readonly Float64Array[];
  /** lanes with tubes; one more without may follow */
  readonly slices: number;
}

/** The field of a model's cells. */
export function soilField(model: SoilModel, cells: readonly Float64Array[]): SoilField {
  const { mesh, slices } = model.site;
  return { x: mesh.x, depths: mesh.depths, cells, slices };
}

/** Index of the last value not above the wanted one, and how far the wanted one is on the way to the next, 0 to 1. */
function between(values: Float64Array, wanted: number): readonly [number, number] {
  let at = 0;
  while (at < values.length - 2 && values[at + 1]! <= wanted) at++;
  const share = (wanted - values[at]!) / (values[at + 1]! - values[at]!);
  return [at, Math.min(1, Math.max(0, share))];
}

/** A lane's field on another mesh, linear in both directions, its edge value beyond it. */
function onMesh(field: SoilField, cells: Float64Array, mesh: SliceMesh): Float64Array {
  const columns = Array.from(mesh.x, (x) => between(field.x, x));
  const width = field.x.length;
  const found = new Float64Array(mesh.rows * mesh.columns);
  mesh.depths.forEach((depth, row) => {
    const [up, down] = between(field.depths, depth);
    columns.forEach(([left, right], column) => {
      const at = up * width + left;
      const above = cells[at]! + right * (cells[at + 1]! - cells[at]!);
      const below = cells[at + width]! + right * (cells[at + width + 1]! - cells[at + width]!);
      found[row * mesh.columns + column] = above + down * (below - above);
    });
  });
  return found;
}

/**
 * States of a store's soil that come as near as they can to the field of another.
 *
 * @param model the store
 * @param field the other's soil
 */
export function stateFromField(model: SoilModel, field: SoilField): Float64Array {
  const { mesh, slices, lengths } = model.site;
  const lanes = Array.from(lengths, (_, lane) => {
    const wanted = lane < slices ? lane : field.slices;
    const own = field.cells[Math.min(wanted, field.cells.length - 1)]!;
    return onMesh(field, own, mesh);
  });
  return reducedStates(model.slice, lanes);
}
