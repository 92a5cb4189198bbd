/**
 * Safety notes and allowances of the drawings, from data tables.
 *
 * @module
 */
import Papa from "papaparse";
import allowanceText from "../../data/drawings/allowances.csv" with { type: "text" };
import noteText from "../../data/drawings/safety_notes.csv" with { type: "text" };

/** Sheets that carry notes of their own. */
export type NotedSheet = "plan" | "section" | "holes" | "fan";

interface NoteRow {
  readonly sheet: string;
  readonly note: string;
  readonly "defer to": string;
}

interface AllowanceRow {
  readonly name: string;
  readonly value: string;
}

function rows<Row>(content: string): Row[] {
  return Papa.parse<Row>(content.trim(), { header: true }).data;
}

const NOTES = rows<NoteRow>(noteText);
const ALLOWANCES = new Map(
  rows<AllowanceRow>(allowanceText).map((row) => [row.name, Number(row.value)]),
);

/** Notes printed on a sheet: those of every sheet, then its own. */
export function safetyNotes(sheet: NotedSheet): string[] {
  return NOTES.filter((row) => row.sheet === "all" || row.sheet === sheet)
    .map((row) => `${row.note} Ask: ${row["defer to"]}.`);
}

/**
 * An allowance of data/drawings/allowances.csv in its own unit.
 *
 * @throws {RangeError} if the table has no such name
 */
export function allowance(name: string): number {
  const value = ALLOWANCES.get(name);
  if (value === undefined) {
    const known = [...ALLOWANCES.keys()].join(", ");
    throw new RangeError(`Cannot find the allowance "${name}": the known ones are ${known}`);
  }
  return value;
}
