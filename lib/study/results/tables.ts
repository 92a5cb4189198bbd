/** Table files of a run: what a reader may quote besides the figures. @module */
import Papa from "papaparse";
import { join } from "node:path";
import { type ResultCell, type ResultTable, wordsCell } from "../../basics/mod.ts";
import { COMPUTATIONS } from "../chapters.ts";
import type { StudyRun } from "../run/run.ts";

/** Digits that count in a cell. */
const DIGITS = 6;

/**
 * Every table of a run, of the chapters and of what they compute only when asked for, in the order of
 * the job.
 *
 * @param run what was computed already is not computed again
 * @param names results whose tables are wanted; all unless given
 */
export async function resultTables(
  run: StudyRun,
  names: Iterable<string> = COMPUTATIONS.keys(),
): Promise<ResultTable[]> {
  const getters = run as unknown as Readonly<Record<string, () => Promise<unknown>>>;
  const found: ResultTable[] = [];
  const wanted = new Set(names);
  for (const [name, { tables }] of COMPUTATIONS) {
    if (tables !== undefined && wanted.has(name)) found.push(...tables(await getters[name]!()));
  }
  return found;
}

/**
 * A table as CSV: the unit in each head, numbers to six digits, cells that do not apply empty. Words
 * that a spreadsheet would take for a formula stand behind an apostrophe.
 *
 * @param table heads and cells, SI
 */
export function tableCsv({ heads, rows }: ResultTable): string {
  const data = rows.map((row) => row.map(cellText));
  return Papa.unparse({ fields: [...heads], data }, { newline: "\n" }) + "\n";
}

function cellText(cell: ResultCell): string {
  if (cell === null) return "";
  if (typeof cell === "boolean") return cell ? "yes" : "no";
  if (typeof cell === "string") return wordsCell(cell);
  return Number.isFinite(cell) ? String(Number(cell.toPrecision(DIGITS))) : "";
}

/**
 * Writes every table of a run into `tables/` of a folder.
 *
 * @param run everything is computed before anything is written
 * @param folder made where it does not exist
 * @param names results whose tables are written; all unless given
 */
export async function writeTables(
  run: StudyRun,
  folder: string,
  names?: Iterable<string>,
): Promise<void> {
  const tables = await resultTables(run, names);
  const target = join(folder, "tables");
  await Deno.mkdir(target, { recursive: true });
  for (const table of tables) {
    await Deno.writeTextFile(join(target, `${table.name}.csv`), tableCsv(table));
  }
}
