/**
 * Holes in the header: layout table and drilling template.
 *
 * @module
 */
import { horizontalDimension } from "./dimension.ts";
import Papa from "papaparse";
import { type Hole, type HoleLayout, largestHoleLayout } from "../headers/mod.ts";
import { buriedField, type DrawingInputs } from "./field.ts";
import { safetyNotes } from "./notes.ts";
import { caption, closeSheet, openSheet, type Paper, paperSize, type Sheet } from "./sheet.ts";
import { circle, line, rectangle, text } from "./svg.ts";

/** Holes of the pair of headers with the most tubes. */
export function headerHoles(inputs: DrawingInputs): HoleLayout {
  return largestHoleLayout(buriedField(inputs));
}

/** Unrolled header with its holes, to scale, and the table of centres behind it. */
export function headerHoleDrawing(inputs: DrawingInputs, paper: Paper, number: string): string {
  const layout = headerHoles(inputs);
  const girth = Math.PI * layout.headerDiameter;
  const end = layout.holes[0]!.diameter;
  const sheet = openSheet(paper, {
    left: -end,
    right: layout.run + end,
    top: -girth / 2,
    bottom: girth / 2,
  }, { left: 10, right: 10, top: 6 + LINE * tableLines(paper, layout), bottom: 18 });
  sheet.content.push(
    rectangle(sheet.place(-end, -girth / 2), {
      width: sheet.length(layout.run + 2 * end),
      height: sheet.length(girth),
    }, { fill: "#fdf6ec", stroke: "#8a4b08", "stroke-width": 0.35 }),
    line(sheet.place(-end, 0), sheet.place(layout.run + end, 0), {
      "stroke-dasharray": "5 1.5 1 1.5",
      "stroke-width": 0.15,
    }),
    ...layout.holes.flatMap((hole) => holeMark(sheet, hole)),
    ...pitchDimensions(sheet, layout, girth),
    ...heading(inputs, layout),
    ...table(sheet, layout),
  );
  return closeSheet(sheet, {
    study: inputs.title,
    title: "Supply header, hole layout unrolled",
    number,
    notes: safetyNotes("holes"),
  });
}

function holeMark(sheet: Sheet, hole: Hole): Element[] {
  const centre = sheet.place(hole.along, -hole.around);
  const radius = sheet.length(hole.diameter / 2);
  const cross = Math.max(0.6, radius * 0.35);
  return [
    circle(centre, radius, { fill: "#fff" }),
    line({ x: centre.x - cross, y: centre.y }, { x: centre.x + cross, y: centre.y }, {
      "stroke-width": 0.12,
    }),
    line({ x: centre.x, y: centre.y - cross }, { x: centre.x, y: centre.y + cross }, {
      "stroke-width": 0.12,
    }),
    text({ x: centre.x, y: centre.y - radius - 0.6 }, String(hole.number), {
      anchor: "middle",
      size: 2,
    }),
  ];
}

function pitchDimensions(sheet: Sheet, layout: HoleLayout, girth: number): Element[] {
  const row = layout.holes.filter((hole) => hole.angle === layout.holes[0]!.angle);
  const last = row.at(-1)!;
  const first = row[0]!;
  const bottom = sheet.place(0, girth / 2).y;
  if (row.length < 2) return [];
  const pitch = row[1]!.along - first.along;
  return [
    ...horizontalDimension(
      sheet.place(first.along, girth / 2),
      sheet.place(row[1]!.along, girth / 2),
      bottom + 6,
      pitch.toFixed(3),
    ),
    ...horizontalDimension(
      sheet.place(first.along, girth / 2),
      sheet.place(last.along, girth / 2),
      bottom + 13,
      `first to last hole ${(last.along - first.along).toFixed(3)}`,
    ),
  ];
}

function heading(inputs: DrawingInputs, layout: HoleLayout): Element[] {
  const { headersInputs } = inputs;
  const diameter = layout.holes[0]!.diameter;
  const several = headersInputs.groups > 1;
  const strength = layout.holes.length > 1
    ? `; ${(100 * layout.strengthLeft).toFixed(0)} % of the closest pitch is left ` +
      `(${(1000 * layout.ligament).toFixed(0)} mm)`
    : "";
  const count = several ? `${headersInputs.groups} supply headers` : "1 supply header";
  const words = `${count}, inside diameter ${layout.headerDiameter.toFixed(3)} m, ` +
    `${several ? "each with " : ""}${layout.holes.length} hole${
      layout.holes.length === 1 ? "" : "s"
    } of ${diameter.toFixed(3)} m${strength}`;
  const turned = layout.holes.every((hole) => hole.angle === layout.holes[0]!.angle) &&
    layout.holes[0]!.angle !== 0;
  const drill =
    "Drill every second hole first and check the fit before drilling the rest. Return headers " +
    "are drilled as mirror images." +
    (turned ? " Upper header shown; the lower one is turned over." : "");
  if (!layout.tooClose) return caption([words, drill]);
  return caption([
    "Too little wall is left between the holes, or the holes are too wide for the pipe: use a larger " +
    "header or moulded take-offs.",
    words,
  ], true);
}

const LINE = 3.4;
const COLUMN = 54;

function tableColumns(paper: Paper): number {
  return Math.floor((paperSize(paper).width - 24) / COLUMN);
}

/** Lines of the table of centres, its head included. */
function tableLines(paper: Paper, layout: HoleLayout): number {
  return 1 + Math.ceil(layout.holes.length / tableColumns(paper));
}

/** Centres of all holes. */
function table(sheet: Sheet, layout: HoleLayout): Element[] {
  const top = 23.5;
  const lines = tableLines(sheet.paper, layout) - 1;
  const used = Math.ceil(layout.holes.length / lines);
  const small = { size: 2.3 };
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

/** The table of centres as CSV, for the person at the drill. */
export function holesCsv(layout: HoleLayout): string {
  const rows = layout.holes.map((hole) => ({
    hole: hole.number,
    "along from first hole, m": hole.along.toFixed(3),
    "angle above horizontal, deg": hole.angle.toFixed(1),
    "arc above horizontal, mm": (1000 * hole.around).toFixed(0),
    "diameter, mm": (1000 * hole.diameter).toFixed(0),
  }));
  return `${Papa.unparse(rows, { newline: "\n" })}\n`;
}
