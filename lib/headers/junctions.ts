/**
 * How the static pressure of a header changes where a tube leaves or joins it.
 *
 * @module
 */
import tableText from "../../data/fittings/junctions.csv" with { type: "text" };
import { findById, readDataTable } from "../basics/mod.ts";

/**
 * Static pressure change along the run of a junction, downstream minus upstream:
 * Δp = k·½ρ(W_up² − W_down²) − m·½ρ(W_up − W_down)².
 */
export interface JunctionModel {
  /** id of the row */
  readonly id: string;
  /** name for the reader */
  readonly name: string;
  /** k where air leaves the header */
  readonly dividingRegain: number;
  /** m where air leaves the header */
  readonly dividingRunLoss: number;
  /** k where air joins the header */
  readonly combiningRegain: number;
  /** m where air joins the header */
  readonly combiningRunLoss: number;
  /** where the values come from */
  readonly source: string;
}

/** The junction models that come with the library. */
const JUNCTIONS: readonly JunctionModel[] = readDataTable(
  tableText,
  "data/fittings/junctions.csv",
  ["id", "name", "dividing_regain", "dividing_run_loss", "combining_regain", "combining_run_loss"],
).map((row) => ({
  id: row.text("id"),
  name: row.text("name"),
  dividingRegain: row.number("dividing_regain"),
  dividingRunLoss: row.number("dividing_run_loss"),
  combiningRegain: row.number("combining_regain"),
  combiningRunLoss: row.number("combining_run_loss"),
  source: row.text("source"),
}));

/**
 * Finds a junction model.
 *
 * @param id id in data/fittings/junctions.csv
 * @returns the model
 * @throws {InputError} listing the known ids
 */
export function findJunctions(id: string): JunctionModel {
  return findById(JUNCTIONS, id, "junction model");
}

/**
 * Rise of static pressure from the left to the right side of a junction; works in both directions of
 * flow.
 *
 * @param left header speed on the left, m/s, positive to the right
 * @param right header speed on the right, m/s
 * @param dividing true where air leaves the header
 * @param model coefficients and the density, kg/m³
 * @returns Pa
 */
export function junctionRise(
  left: number,
  right: number,
  dividing: boolean,
  model: JunctionModel & { readonly density: number },
): number {
  const regain = dividing ? model.dividingRegain : model.combiningRegain;
  const runLoss = dividing ? model.dividingRunLoss : model.combiningRunLoss;
  const change = left - right;
  if (change === 0) return 0;
  // where air meets from both sides nothing runs through: the run loss fades out between them
  const direction = Math.max(-1, Math.min(1, (left + right) / Math.abs(change)));
  return model.density / 2 *
    (regain * (left * left - right * right) - direction * runLoss * change ** 2);
}
