/** Centres of the holes: as a table on the sheet, and as CSV. @module */
import { group } from "d3-array";
import Papa from "papaparse";
import type { Hole, HoleLayout } from "../headers/mod.ts";
import { feetInches, type UnitSystem } from "../units/mod.ts";
import type { LengthWords } from "./dimension.ts";
import { drawnSize, type Paper, type Sheet } from "./sheet.ts";
import { SMALLEST, text } from "./svg.ts";

/** mm from one line to the next */
export const LINE = 3.4;
const COLUMN = 54;
/** Lines of holes that a sheet has room for; longer tables are left to the CSV. */
const MOST_LINES = 12;
/** m by which pitches of one row may differ and still be written as one */
const SAME_PITCH = 5e-4;

function tableColumns(paper: Paper): number {
  return Math.floor((drawnSize(paper).width - 24) / COLUMN);
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
  const { said } = sheet;
  const small = { size: SMALLEST };
  if (!isWhole(sheet.paper, layout)) {
    const lines = [
      "Rows of holes; the centre of every hole stands in drawings/header-holes.csv",
      ...rowsOf(layout).map((row) => rowWords(said, row)),
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
    const words = `${hole.number}: ${said.fine(hole.along)}, ${hole.angle.toFixed(0)}°, ${
      said.small(hole.around)
    }`;
    const at = {
      x: 12 + Math.floor(index / lines) * COLUMN,
      y: top + (1 + index % lines) * LINE,
    };
    return text(at, words, small);
  });
  return [...heads, ...rows];
}

function rowWords(said: LengthWords, row: readonly Hole[]): string {
  const [first, last] = [row[0]!, row.at(-1)!];
  const pitch = row.length > 1 ? row[1]!.along - first.along : 0;
  const even = row.slice(1).every((hole, index) =>
    Math.abs(hole.along - row[index]!.along - pitch) < SAME_PITCH
  );
  const step = even && row.length > 1 ? `, every ${said.fine(pitch)}` : "";
  return `holes ${first.number} to ${last.number}: angle ${first.angle.toFixed(0)}°, arc ${
    said.small(first.around)
  }, along ${said.fine(first.along)} to ${said.fine(last.along)}${step}`;
}

/**
 * The table of centres as CSV, for the person at the drill.
 *
 * @param layout of the header
 * @param units US puts columns in feet and inches, to a sixteenth of an inch, before the others
 */
export function holesCsv(layout: HoleLayout, units: UnitSystem = "SI"): string {
  const rows = layout.holes.map((hole) => ({
    hole: hole.number,
    ...(units === "US" ? inFeet(hole) : {}),
    "along from first hole, m": hole.along.toFixed(3),
    "angle above horizontal, deg": hole.angle.toFixed(1),
    "arc above horizontal, mm": (1000 * hole.around).toFixed(0),
    "arc on the return header, mm": (1000 * hole.returnAround).toFixed(0),
    "diameter, mm": (1000 * hole.diameter).toFixed(0),
  }));
  return `${Papa.unparse(rows, { newline: "\n" })}\n`;
}

function inFeet(hole: Hole): Readonly<Record<string, string>> {
  const text = (metres: number) => feetInches(metres, 16);
  return {
    "along from first hole, ft-in": text(hole.along),
    "arc above horizontal, in": text(hole.around),
    "arc on the return header, in": text(hole.returnAround),
    "diameter, in": text(hole.diameter),
  };
}
