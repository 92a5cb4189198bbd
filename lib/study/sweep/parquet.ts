/** The table of a sweep as Parquet, for notebooks and databases elsewhere. @module */
import { parquetWriteBuffer } from "hyparquet-writer";
import { cellsOf, type TableColumn } from "./table.ts";

/**
 * Parquet of the rows of a CSV: numbers as doubles, the row as a whole number, words as text, cells
 * that do not apply as nulls.
 *
 * @param csv with its heads, rows in order
 * @param columns of the table
 */
export function parquetOf(csv: string, columns: readonly TableColumn[]): Uint8Array {
  const rows = csv.trimEnd().split("\n").slice(1).map(cellsOf);
  const columnData = columns.map(({ head, numeric }, place) => {
    const cells = rows.map((row) => row[place]!);
    if (place === 0) return { name: head, data: Int32Array.from(cells, Number), type: "INT32" };
    const data = numeric
      ? cells.map((cell) => cell === "" ? null : Number(cell))
      : cells.map((cell) => cell === "" ? null : cell);
    return { name: head, data, type: numeric ? "DOUBLE" : "STRING", nullable: true };
  });
  return new Uint8Array(
    parquetWriteBuffer({ columnData: columnData as never, codec: "SNAPPY" } as never),
  );
}
