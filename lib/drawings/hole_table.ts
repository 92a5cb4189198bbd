/** Centres of the holes: as a table on the sheet, and as CSV. @module */
import { group } from "d3-array";
import Papa from "papaparse";
import type { Hole, HoleLayout } from "../headers/mod.ts";
import { type Paper, paperSize, type Sheet } from "./sheet.ts";
import { text } from "./svg.ts";

/** mm from one line to the next */
export const LINE = 3.4;
const COLUMN = 54;
/** Lines of holes that a sheet has room for; longer tables are left to the CSV. */
const MOST_LINES = 12;
/** m by which pitches of one row may differ and still be written as one */
const SAME_PITCH = 5e-4;

function tableColumns(paper: Paper): number {
  return Math.floor((paperSize(paper).width - 24) / COLUMN);
}

function isWhole(paper: Paper, layout: HoleLayout): boolean {
  return layout.holes.length <= MOST_LINES * tableColumns(paper);
}

/** Lines of the table of centres, its head included. */
export function tableLines(paper: Paper, layout: HoleLayout): number {
  return isWhole(paper, layout)
    ? 1 + Math.ceil(layout.holes.length / tableColumns(paper))
    : 1 + rowsOf(layout).length;
}

const rowsOf = (layout: HoleLayout): Hole[][] => [
  ...group(layout.holes, ({ angle }) => angle).values(),
];

/** Centres of all holes, or of each row where there are too many. */
export function holeTable(sheet: Sheet, layout: HoleLayout): Element[] {
  const top = 23.5;
  const small = { size: 2.3 };
  if (!isWhole(sheet.paper, layout)) {
    const lines = [
      "Rows of holes; the centre of every hole stands in drawings/header-holes.csv",
      ...rowsOf(layout).map(rowWords),
    ];
    return lines.map((words, index) => text({ x: 12, y: top + index * LINE }, words, small));
  }
  const lines = tableLines(sheet.paper, layout) - 1;
  const used = Math.ceil(layout.holes.length / lines);
  const heads = Array.from(
    { length: used },
    (_, column) => text({ x: 12 + column * COLUMN, y: top }, "hole: along, angle, arc", small),
  );
  const rows = layout.holes.map((hole, index) => {
    const words = `${hole.number}: ${hole.along.toFixed(3)} m, ${hole.angle.toFixed(0)}°, ${
      (1000 * hole.around).toFixed(0)
    } mm`;
    const at = {
      x: 12 + Math.floor(index / lines) * COLUMN,
      y: top + (1 + index % lines) * LINE,
    };
    return text(at, words, small);
  });
  return [...heads, ...rows];
}

function rowWords(row: readonly Hole[]): string {
  const [first, last] = [row[0]!, row.at(-1)!];
  const pitch = row.length > 1 ? row[1]!.along - first.along : 0;
  const even = row.slice(1).every((hole, index) =>
    Math.abs(hole.along - row[index]!.along - pitch) < SAME_PITCH
  );
  const step = even && row.length > 1 ? `, every ${pitch.toFixed(3)} m` : "";
  return `holes ${first.number} to ${last.number}: angle ${first.angle.toFixed(0)}°, arc ${
    (1000 * first.around).toFixed(0)
  } mm, along ${first.along.toFixed(3)} m to ${last.along.toFixed(3)} m${step}`;
}

/** The table of centres as CSV, for the person at the drill. */
export function holesCsv(layout: HoleLayout): string {
  const rows = layout.holes.map((hole) => ({
    hole: hole.number,
    "along from first hole, m": hole.along.toFixed(3),
    "angle above horizontal, deg": hole.angle.toFixed(1),
    "arc above horizontal, mm": (1000 * hole.around).toFixed(0),
    "arc on the return header, mm": (1000 * hole.returnAround).toFixed(0),
    "diameter, mm": (1000 * hole.diameter).toFixed(0),
  }));
  return `${Papa.unparse(rows, { newline: "\n" })}\n`;
}
