/**
 * Holes in the header: layout table and drilling template.
 *
 * @module
 */
import { horizontalDimension } from "./dimension.ts";
import { buriedField, fieldGeometry, type HoleLayout, largestHoleLayout } from "../headers/mod.ts";
import type { DrawingInputs } from "./inputs.ts";
import { holeMarks, numberStep } from "./hole_marks.ts";
import { holeTable, LINE, tableLines } from "./hole_table.ts";
import { safetyNotes } from "./notes.ts";
import { caption, closeSheet, openSheet, type Paper, type Sheet } from "./sheet.ts";
import { line, rectangle } from "./svg.ts";

/** Holes of the pair of headers with the most tubes. */
export function headerHoles(inputs: DrawingInputs): HoleLayout {
  return largestHoleLayout(buriedField(inputs));
}

/** Unrolled header with its holes, to scale, and the table of centres behind it. */
export function headerHoleDrawing(inputs: DrawingInputs, paper: Paper, number: string): string {
  const layout = headerHoles(inputs);
  const girth = Math.PI * layout.headerDiameter;
  const { end } = fieldGeometry(inputs).headers[0]!;
  const sheet = openSheet(
    paper,
    {
      left: -end,
      right: layout.run + end,
      top: -girth / 2,
      bottom: girth / 2,
    },
    { left: 10, right: 10, top: 6 + LINE * tableLines(paper, layout), bottom: 18 },
    { notes: safetyNotes("holes"), units: inputs.units },
  );
  sheet.content.push(
    rectangle(sheet.place(-end, -girth / 2), {
      width: sheet.length(layout.run + 2 * end),
      height: sheet.length(girth),
    }, { fill: "#fdf6ec", stroke: "#8a4b08", "stroke-width": 0.35 }),
    line(sheet.place(-end, 0), sheet.place(layout.run + end, 0), {
      "stroke-dasharray": "5 1.5 1 1.5",
      "stroke-width": 0.15,
    }),
    ...holeMarks(sheet, layout, end),
    ...pitchDimensions(sheet, layout, girth),
    ...heading(sheet, { inputs, layout, step: numberStep(sheet, layout) }),
    ...holeTable(sheet, layout),
  );
  return closeSheet(sheet, {
    study: inputs.title,
    title: "Supply header, hole layout unrolled",
    number,
  });
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
      sheet.said.fineShort(pitch),
    ),
    ...horizontalDimension(
      sheet.place(first.along, girth / 2),
      sheet.place(last.along, girth / 2),
      bottom + 13,
      `first to last hole ${sheet.said.fineShort(last.along - first.along)}`,
    ),
  ];
}

function heading(
  { said }: Sheet,
  { inputs, layout, step }: {
    readonly inputs: DrawingInputs;
    readonly layout: HoleLayout;
    readonly step: number;
  },
): Element[] {
  const { headersInputs } = inputs;
  const diameter = layout.holes[0]!.diameter;
  const several = headersInputs.groups > 1;
  const strength = layout.holes.length > 1
    ? `; ${(100 * layout.strengthLeft).toFixed(0)} % of the closest pitch is left ` +
      `(${said.small(layout.ligament)})`
    : "";
  const { headers } = fieldGeometry(inputs);
  const alike = headers.every(({ members }) => members.length === layout.holes.length);
  const count = several ? `${headersInputs.groups} supply headers` : "1 supply header";
  const words = `${count}, inside diameter ${said.fine(layout.headerDiameter)}, ` +
    `${several ? alike ? "each with " : "with up to " : ""}${layout.holes.length} hole${
      layout.holes.length === 1 ? "" : "s"
    } of ${said.fine(diameter)}${strength}`;
  const turned = layout.holes.every((hole) => hole.angle === layout.holes[0]!.angle) &&
    layout.holes[0]!.angle !== 0;
  const drill =
    "Drill every second hole first and check the fit before drilling the rest. Return headers " +
    (headersInputs.returnDiameter === headersInputs.diameter
      ? "are drilled as mirror images."
      : "have arcs of their own (drawings/header-holes.csv).") +
    (turned ? " Upper header shown; the lower one is turned over." : "");
  const numbers = step === 1 ? "" : ` Numbered in steps of ${step}.`;
  if (!layout.tooClose) return caption([words, drill + numbers]);
  return caption([
    "Too little wall is left between the holes, or the holes are too wide for the pipe: use a larger " +
    "header or moulded take-offs.",
    words + numbers,
  ], true);
}
