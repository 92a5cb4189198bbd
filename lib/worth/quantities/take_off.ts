/**
 * Quantity take-off: all that must be bought and done, complete enough to order by.
 *
 * @module
 */
import Papa from "papaparse";
import { roundTo, wordsCell } from "../../basics/mod.ts";
import { edgeBoardRows, flatBoardRows } from "./boards.ts";
import { collectorRows } from "./collector.ts";
import { earthRows } from "./earth.ts";
import { equipmentRows } from "./equipment.ts";
import { labourRow } from "./labour.ts";
import { pipeRows } from "./pipes.ts";
import type { MaterialQuantity, TakeOffInputs } from "./types.ts";

/** Everything the store takes, and the edge insulation of the house it stands under. */
export function quantityTakeOff(inputs: TakeOffInputs): MaterialQuantity[] {
  const rows = [
    ...pipeRows(inputs),
    ...earthRows(inputs),
    ...flatBoardRows(inputs),
    ...equipmentRows(inputs),
    ...collectorRows(inputs),
  ];
  return [...rows, labourRow(rows), ...edgeBoardRows(inputs)];
}

/** The take-off as CSV. */
export function quantitiesCsv(rows: readonly MaterialQuantity[]): string {
  const table = rows.map((row) => ({
    item: wordsCell(row.item),
    "net amount": roundTo(row.amount, 0.01),
    "to order": roundTo(row.order, 0.01),
    unit: row.unit,
    basis: wordsCell(row.basis),
  }));
  return `${Papa.unparse(table, { newline: "\n" })}\n`;
}
