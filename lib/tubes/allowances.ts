/** Allowances for digging and laying, from data/drawings/allowances.csv. @module */
import { readDataTable } from "../basics/data_table.ts";
import tableText from "../../data/drawings/allowances.csv" with { type: "text" };

const ALLOWANCES = new Map(
  readDataTable(tableText, "data/drawings/allowances.csv", ["name", "value"])
    .map((row) => [row.text("name"), row.number("value")]),
);

/**
 * An allowance of data/drawings/allowances.csv in its own unit.
 *
 * @param name name in the table
 * @returns its value
 * @throws {RangeError} if the table has no such name
 */
export function allowance(name: string): number {
  const value = ALLOWANCES.get(name);
  if (value === undefined) {
    const known = [...ALLOWANCES.keys()].join(", ");
    throw new RangeError(`Cannot find the allowance "${name}": known are ${known}`);
  }
  return value;
}
