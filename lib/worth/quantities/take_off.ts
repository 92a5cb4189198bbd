/**
 * Quantity take-off: all that must be bought and done, complete enough to order by.
 *
 * @module
 */
import Papa from "papaparse";
import { roundTo, wordsCell } from "../../basics/mod.ts";
import { asSold, inOrderOf, type UnitSystem } from "../../units/mod.ts";
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

/**
 * The take-off as CSV.
 *
 * @param rows of the take-off
 * @param units US puts columns as they are bought there before the others
 */
export function quantitiesCsv(
  rows: readonly MaterialQuantity[],
  units: UnitSystem = "SI",
): string {
  const words = (text: string) => wordsCell(inOrderOf(units, text));
  const table = rows.map((row) => ({
    item: words(row.item),
    ...(units === "US" ? bought(row) : {}),
    "net amount": roundTo(row.amount, 0.01),
    "to order": roundTo(row.order, 0.01),
    unit: row.unit,
    basis: words(row.basis),
  }));
  return `${Papa.unparse(table, { newline: "\n" })}\n`;
}

function bought({ amount, order, unit }: MaterialQuantity): Readonly<Record<string, unknown>> {
  const [net, toOrder] = [amount, order].map((one) => asSold(one, unit, "US"));
  return {
    "net amount, US": roundTo(net!.amount, 0.01),
    "to order, US": roundTo(toOrder!.amount, 0.01),
    "unit, US": net!.unit,
  };
}
