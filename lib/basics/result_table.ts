/** Tables of a run: what a reader may quote besides the figures, each a file of `tables/`. @module */

/** What may stand in a cell. */
export type ResultCell = number | string | boolean | null;

/** A table of a run, ready to be written. */
export interface ResultTable {
  /** name of its file without the ending: chapter and content, such as "store-recovery-by-day" */
  readonly name: string;
  /** column heads, each with its unit: "heat charged (kWh)" */
  readonly heads: readonly string[];
  /** cells row by row: SI, degC and kWh; null where there is none */
  readonly rows: readonly (readonly ResultCell[])[];
}

/** A column: its head, its unit ("1" for a ratio, "" for names, numbers of things and dates), its cells. */
export type ResultColumn<Row> = readonly [
  head: string,
  unit: string,
  value: (row: Row, index: number) => ResultCell,
];

/**
 * Makes a table of a run.
 *
 * @param name chapter and content, such as "store-recovery-by-day"
 * @param rows one entry a row
 * @param columns heads, units and cells, in this order
 */
export function resultTable<Row>(
  name: string,
  rows: readonly Row[],
  columns: readonly ResultColumn<Row>[],
): ResultTable {
  return {
    name,
    heads: columns.map(([head, unit]) => unit === "" ? head : `${head} (${unit})`),
    rows: rows.map((row, index) => columns.map(([, , value]) => value(row, index))),
  };
}

/**
 * Columns that hold one series of values side by side, such as the twelve months.
 *
 * @param heads one a column
 * @param unit of all of them
 * @param value of a row in the column of that place, from 0
 */
export function seriesColumns<Row>(
  heads: readonly string[],
  unit: string,
  value: (row: Row, column: number, index: number) => ResultCell,
): ResultColumn<Row>[] {
  return heads.map((head, column) => [head, unit, (row, index) => value(row, column, index)]);
}
