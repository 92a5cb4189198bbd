/** A data table as a page carries it: the numbers without where they come from. @module */
import Papa from "papaparse";

/**
 * The table without remarks, and with nothing in its column of sources: no result hangs on them, and
 * they stand in the project's own copy.
 *
 * @param text CSV with a header line
 */
export function leanTable(text: string): string {
  const rows = Papa.parse<string[]>(text.trim()).data.filter(([first]) => !first!.startsWith("#"));
  const source = rows[0]!.indexOf("source");
  const lean = rows.map((row, line) =>
    row.map((cell, column) => line > 0 && column === source ? "" : cell)
  );
  return Papa.unparse(lean, { newline: "\n" });
}
