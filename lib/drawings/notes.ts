/**
 * Safety notes of the drawings, from a data table.
 *
 * @module
 */
import Papa from "papaparse";
import noteText from "../../data/drawings/safety_notes.csv" with { type: "text" };

/** Sheets that carry notes of their own. */
export type NotedSheet = "plan" | "section" | "holes" | "fan";

interface NoteRow {
  readonly sheet: string;
  readonly note: string;
  readonly "defer to": string;
}

const NOTES = Papa.parse<NoteRow>(noteText.trim(), { header: true }).data;

/** Notes printed on a sheet: those of every sheet, then its own. */
export function safetyNotes(sheet: NotedSheet): string[] {
  return NOTES.filter((row) => row.sheet === "all" || row.sheet === sheet)
    .map((row) => `${row.note} Ask: ${row["defer to"]}.`);
}
