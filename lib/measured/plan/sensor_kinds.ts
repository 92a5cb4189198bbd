/** Kinds of sensors that a monitoring plan chooses from. @module */
import tableText from "../../../data/sensors/sensors.csv" with { type: "text" };
import { findById, readDataTable } from "../../basics/mod.ts";
import type { Quantity } from "../log/types.ts";

/** A row of data/sensors. */
export interface SensorKind {
  /** id of the row */
  readonly id: string;
  /** name for the reader */
  readonly name: string;
  /** what it measures */
  readonly quantity: Quantity;
  /** unit of its column in a log */
  readonly unit: string;
  /** standard uncertainty in the SI unit of the quantity, K for temperatures */
  readonly accuracy: number;
  /** standard uncertainty as a share of the reading, added in squares */
  readonly relative: number;
  /** s between rows */
  readonly interval: number;
  /** shield and mounting */
  readonly shield: string;
  /** standard uncertainty of what one knows without it, in the SI unit of the quantity */
  readonly without: number;
  /** the same as a share of the value */
  readonly withoutRelative: number;
  /** where the values come from */
  readonly source: string;
}

/** The kinds of data/sensors. */
export const SENSOR_KINDS: readonly SensorKind[] = readDataTable(
  tableText,
  "data/sensors/sensors.csv",
  ["id", "name", "quantity", "unit", "accuracy", "relative", "interval_s", "shield", "without"],
).map((row) => ({
  id: row.text("id"),
  name: row.text("name"),
  quantity: row.text("quantity") as Quantity,
  unit: row.text("unit"),
  accuracy: row.number("accuracy"),
  relative: row.number("relative"),
  interval: row.number("interval_s"),
  shield: row.text("shield"),
  without: row.number("without"),
  withoutRelative: row.number("without_relative"),
  source: row.text("source"),
}));

/**
 * Finds a kind.
 *
 * @param id id in data/sensors/sensors.csv
 */
export function findSensorKind(id: string): SensorKind {
  return findById(SENSOR_KINDS, id, "sensor");
}
