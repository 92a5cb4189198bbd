/**
 * Holes in the header: layout table and drilling template.
 *
 * @module
 */
import { horizontalDimension } from "./dimension.ts";
import Papa from "papaparse";
import { splitGroups } from "../headers/mod.ts";
import { type DrawingInputs, fieldGeometry } from "./field.ts";
import { allowance, safetyNotes } from "./notes.ts";
import { caption, closeSheet, openSheet, type Paper, paperSize, type Sheet } from "./sheet.ts";
import { circle, line, rectangle, text } from "./svg.ts";

/** One hole of a header. */
export interface Hole {
  /** from 1, along the header, row by row */
  readonly number: number;
  /** m from the centre of the first hole, along the header */
  readonly along: number;
  /** degrees around the pipe from the horizontal, upwards positive */
  readonly angle: number;
  /** m along the outside of the pipe for that angle */
  readonly around: number;
  /** m */
  readonly diameter: number;
}

/** Layout of the holes of one header. */
export interface HoleLayout {
  /** one hole a tube */
  readonly holes: readonly Hole[];
  /** m, inside diameter of the header */
  readonly headerDiameter: number;
  /** m of header from the first to the last hole centre */
  readonly run: number;
  /** least distance between two hole edges on the unrolled pipe, m */
  readonly ligament: number;
  /** share of the hole pitch left in the tightest pair, (pitch − diameter)/pitch */
  readonly strengthLeft: number;
  /** true where less is left than the table of allowances asks for */
  readonly tooClose: boolean;
}

/**
 * Holes of one supply header, for tubes that arrive level with it; two rows are set 40° above and
 * below the horizontal, three at 60°, 0° and −60°.
 *
 * Strength left is the ligament efficiency (p − d)/p of perforated pipe.
 */
export function headerHoles(inputs: DrawingInputs): HoleLayout {
  const { tubes, headersInputs } = inputs;
  const groups = splitGroups(tubes.positions, headersInputs.groups);
  const largest = groups.reduce((most, one) => one.length > most.length ? one : most, groups[0]!);
  const group = largest.map((tube) => tubes.positions[tube]!);
  const depths = [...new Set(group.map((position) => position.depth))].sort((a, b) => a - b);
  const first = Math.min(...group.map((position) => position.x));
  const diameter = tubes.product.outsideDiameter + allowance("hole clearance");
  const holes = group
    .map((position) => ({ position, row: depths.indexOf(position.depth) }))
    .sort((a, b) => a.row - b.row || a.position.x - b.position.x)
    .map(({ position, row }, index): Hole => {
      const angle = depths.length === 1 ? levelAngle(inputs) : rowAngle(row, depths.length);
      return {
        number: index + 1,
        along: position.x - first,
        angle,
        around: angle * Math.PI / 180 * headersInputs.diameter / 2,
        diameter,
      };
    });
  const pitch = tightestPitch(holes);
  return {
    holes,
    headerDiameter: headersInputs.diameter,
    run: Math.max(...holes.map((hole) => hole.along)),
    ligament: pitch - diameter,
    strengthLeft: Number.isFinite(pitch) ? (pitch - diameter) / pitch : 1,
    tooClose: (pitch - diameter) / pitch < allowance("least ligament") ||
      diameter > 0.8 * headersInputs.diameter,
  };
}

/** Angle of tubes that enter off the centre of headers wider than the step between the layers. */
function levelAngle(inputs: DrawingInputs): number {
  const { offCentre } = fieldGeometry(inputs).headers[0]!;
  if (offCentre === 0) return 0;
  return -Math.asin(2 * offCentre / inputs.headersInputs.diameter) * 180 / Math.PI;
}

function rowAngle(row: number, rows: number): number {
  if (rows === 1) return 0;
  const spread = rows === 2 ? 40 : 60;
  return spread - row * 2 * spread / (rows - 1);
}

function tightestPitch(holes: readonly Hole[]): number {
  let pitch = Infinity;
  for (const [index, one] of holes.entries()) {
    for (const other of holes.slice(index + 1)) {
      pitch = Math.min(pitch, Math.hypot(one.along - other.along, one.around - other.around));
    }
  }
  return pitch;
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
