/** A small sweep without its sums: rows are added and put in order as the command does it. @module */
import { join } from "node:path";
import { writeWhole } from "winterground/study/results/write_whole.ts";
import {
  findManifest,
  openRows,
  orderedText,
  parquetOf,
  readRows,
  type TableColumn,
  writeManifest,
} from "winterground/study/sweep/mod.ts";

/** Heads of the table. */
export const COLUMNS: readonly TableColumn[] = [
  { head: "row", numeric: true },
  { head: "given tubes.length (m)", numeric: true },
  { head: "fault", numeric: false },
];
/** Rows in the order in which they finish. */
export const FINISHED = [3, 1, 2, 4, 5];
const MADE = { study: "a", sweep: "b", library: "c" };

/** A row's line. */
export const lineOf = (row: number): string => `${row},${6 + row / 4},`;

/** Goes on with the rows in a folder and puts them in order. */
export async function goOn(folder: string): Promise<void> {
  if (await findManifest(folder, MADE) === null) {
    await writeManifest(folder, { made: MADE, rows: FINISHED.length, figures: [] });
  }
  const path = join(folder, "rows.csv");
  const rows = await openRows(path, COLUMNS);
  for (const row of FINISHED) if (!rows.done.has(row)) rows.add(lineOf(row));
  rows.close();
  const csv = orderedText((await readRows(path, COLUMNS)).rows, COLUMNS);
  await writeWhole(path, csv);
  await writeWhole(join(folder, "rows.parquet"), parquetOf(csv, COLUMNS));
}
