/**
 * Sizes of the units that values are shown in. They stand in a table, so that showing a number needs
 * no unit library: that one is large and reads what people write.
 *
 * @module
 */
import { readDataTable } from "../basics/data_table.ts";
import table from "../../data/units/scales.csv" with { type: "text" };

/** Size of a shown unit: shown value = value × factor + offset. */
export interface UnitSize {
  /** ratio of the shown value to that inside the library */
  readonly factor: number;
  /** added after the factor, in the shown unit; only a temperature has one */
  readonly offset: number;
}

const SIZES: ReadonlyMap<string, UnitSize> = new Map(
  readDataTable(table, "data/units/scales.csv", ["unit", "inside", "factor (1)", "offset (unit)"])
    .map((row) => [
      sizeKey(row.text("unit"), row.text("inside")),
      { factor: row.number("factor (1)"), offset: row.number("offset (unit)") },
    ]),
);

function sizeKey(unit: string, inside: string): string {
  return `${unit} of ${inside}`;
}

/**
 * Size of a unit against the one inside the library.
 *
 * @param unit as the unit reader writes it, such as "kBTU"
 * @param inside likewise, such as "kWh"
 * @throws {Error} where data/units/scales.csv has no such row: a fault of this library
 */
export function unitSize(unit: string, inside: string): UnitSize {
  const found = SIZES.get(sizeKey(unit, inside));
  if (found === undefined) {
    throw new Error(`Cannot find "${unit}" for "${inside}" in data/units/scales.csv`);
  }
  return found;
}
