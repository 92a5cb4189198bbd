/** Fuels of a back-up heater. @module */
import tableText from "../../../data/fuels/fuels.csv" with { type: "text" };
import { findById, readDataTable } from "../../basics/mod.ts";

/** A row of data/fuels. */
export interface Fuel {
  /** id of the row */
  readonly id: string;
  /** name for the reader */
  readonly name: string;
  /** unit in which it is sold */
  readonly unit: string;
  /** kWh in one unit, lower heating value */
  readonly heatingValue: number;
  /** heat given over energy bought, ratio; above 1 for a heat pump */
  readonly efficiency: number;
  /** kg of carbon dioxide for a kWh bought; null where it follows from the grid */
  readonly carbon: number | null;
  /** where the values come from */
  readonly source: string;
}

/** The fuels of data/fuels. */
export const FUELS: readonly Fuel[] = readDataTable(tableText, "data/fuels/fuels.csv", [
  "id",
  "name",
  "unit",
  "heating_value_kWh_per_unit",
  "efficiency",
  "carbon_kg_per_kWh",
  "source",
]).map((row) => ({
  id: row.text("id"),
  name: row.text("name"),
  unit: row.text("unit"),
  heatingValue: row.number("heating_value_kWh_per_unit"),
  efficiency: row.number("efficiency"),
  carbon: row.numberOrNull("carbon_kg_per_kWh"),
  source: row.text("source"),
}));

/**
 * Finds a fuel.
 *
 * @param id id in data/fuels/fuels.csv
 * @throws {InputError} listing the known ids
 */
export function findFuel(id: string): Fuel {
  return findById(FUELS, id, "fuel");
}
