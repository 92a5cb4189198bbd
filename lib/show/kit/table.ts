/** Tables and lists of numbers as display items. @module */
import { type Column, type DataTable, dataTable, tableHtml, tableText } from "./data_table.ts";
import type { DisplayItem } from "./figure.ts";
import { escapeMarkup } from "./escape.ts";
import { type Kind, showSi, showUs } from "../../units/mod.ts";
import { inOneSystem } from "./layout.ts";
import { readersUnits, shown } from "./reader.ts";

/**
 * A table in the reader's units and, where the other system has its own unit, a column of that next
 * to each.
 *
 * @param rows one entry a row
 * @param columns what stands in each column
 * @param title line above the table
 */
export function table<Row>(
  rows: readonly Row[],
  columns: readonly Column<Row>[],
  title?: string,
): DisplayItem {
  return tableItem(dataTable(rows, columns), title);
}

function tableItem(data: DataTable, title?: string): DisplayItem {
  const text = tableText(data);
  return {
    "text/html": tableHtml(data, title),
    "text/plain": title === undefined ? text : `${title}\n${text}`,
  };
}

/** One named number. */
export interface NamedNumber {
  /** name shown */
  readonly label: string;
  /** SI value as the library holds it; null where it does not apply; text is shown as it is */
  readonly value: number | string | null;
  /** kind of lib/units/kinds.ts; not needed for text */
  readonly kind?: Kind;
  /** short remark: where it comes from, what it means */
  readonly note?: string;
}

/** Named numbers, one a line, in the reader's units first. */
export function numbers(list: readonly NamedNumber[], title?: string): DisplayItem {
  const remarked = list.some((entry) => entry.note !== undefined);
  const systems = inOneSystem() ? [""] : readersUnits() === "US" ? ["US", "SI"] : ["SI", "US"];
  return tableItem({
    heads: ["", ...systems, ...(remarked ? ["remark"] : [])],
    numeric: [false, ...systems.map(() => true), false],
    rows: list.map((entry) => [
      entry.label,
      ...bothTexts(entry).slice(0, systems.length),
      ...(remarked ? [entry.note ?? ""] : []),
    ]),
  }, title);
}

/** In the reader's units and in the others; the second is empty where those are the same. */
function bothTexts(entry: NamedNumber): [string, string] {
  if (entry.value === null) return ["–", ""];
  if (typeof entry.value === "string") return [entry.value, ""];
  const kind = entry.kind ?? "ratio";
  const us = showUs(entry.value, kind);
  const other = us !== "" && readersUnits() === "US" ? showSi(entry.value, kind) : us;
  return [shown(entry.value, kind), other];
}

/** A paragraph. */
export function paragraph(text: string): DisplayItem {
  return { "text/html": `<p>${escapeMarkup(text)}</p>`, "text/plain": text };
}
