/** Conduction applied to a field cell by cell. @module */
import { surfaceConductance } from "../full/factors.ts";
import type { ConductionOperator } from "../../ground/operator.ts";

/**
 * M^(−1/2)·K·M^(−1/2) on a field times √M.
 *
 * @param operator slice
 * @param values field by cell times √M
 * @param root √M by cell
 */
export function applyConduction(
  operator: ConductionOperator,
  values: Float64Array,
  root: Float64Array,
): Float64Array {
  const { columns, sideways, downwards } = operator;
  const surface = surfaceConductance(operator);
  const size = root.length;
  const field = values.map((value, c) => value / root[c]!);
  const flow = field.map((value, c) => surface[c]! * value);
  for (let c = 0; c < size; c++) {
    const right = sideways[c]!;
    if (right !== 0) {
      const heat = right * (field[c]! - field[c + 1]!);
      flow[c]! += heat;
      flow[c + 1]! -= heat;
    }
    if (c + columns < size) {
      const heat = downwards[c]! * (field[c]! - field[c + columns]!);
      flow[c]! += heat;
      flow[c + columns]! -= heat;
    }
  }
  for (let c = 0; c < size; c++) flow[c]! /= root[c]!;
  return flow;
}
