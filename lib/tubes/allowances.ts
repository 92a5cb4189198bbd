/** Allowances for digging and laying, from data/drawings/allowances.csv. @module */
import Papa from "papaparse";
import tableText from "../../data/drawings/allowances.csv" with { type: "text" };

interface AllowanceRow {
  readonly name: string;
  readonly value: string;
}

const ALLOWANCES = new Map(
  Papa.parse<AllowanceRow>(tableText.trim(), { header: true }).data
    .map((row) => [row.name, Number(row.value)]),
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
