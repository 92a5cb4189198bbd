/**
 * Plan of the tube field.
 *
 * @module
 */
import { horizontalDimension, verticalDimension } from "./dimension.ts";
import { inOrderOf } from "../units/mod.ts";
import { footingAtRisk, footingRemark } from "../tubes/mod.ts";
import {
  type BuriedHeaders,
  type FieldGeometry,
  fieldGeometry,
  type HeaderLayout,
  headerLength,
} from "../headers/mod.ts";
import type { DrawingInputs } from "./inputs.ts";
import { COLOURS } from "./ground_parts.ts";
import { safetyNotes } from "./notes.ts";
import { CAPTION_INSET, closeSheet, openSheet, type Paper, type Sheet } from "./sheet.ts";
import { wrappedCaption } from "./wrapped_caption.ts";
import {
  element,
  label,
  line,
  type PaperPoint,
  polyline,
  rectangle,
  SMALLEST,
  text,
} from "./svg.ts";

const DASHED = { "stroke-dasharray": "2 1.2" };

/**
 * Plan to scale: house, footing line, pit, headers, tubes of the upper layer, riser ends, north.
 *
 * @param inputs study data
 * @param paper sheet to draw on
 * @param number such as "1 of 5"
 * @returns text of an SVG file
 */
export function tubeFieldPlan(inputs: DrawingInputs, paper: Paper, number: string): string {
  const field = fieldGeometry(inputs);
  const sheet = openSheet(
    paper,
    {
      left: -field.houseAlong / 2,
      right: field.houseAlong / 2,
      top: -field.houseAcross / 2,
      bottom: field.houseAcross / 2,
    },
    { left: 20, right: 20, top: 10, bottom: 14 },
    { notes: safetyNotes("plan"), units: inputs.units },
  );
  sheet.content.push(
    ...houseOutline(sheet, field),
    ...footingOutline(sheet, field),
    ...pipes(sheet, field, inputs),
    ...dimensions(sheet, field),
    ...northArrow(sheet, inputs),
    ...legend(sheet, inputs, field),
  );
  return closeSheet(sheet, {
    study: inputs.title,
    title: "Tube field, plan",
    number,
  });
}

function houseOutline(sheet: Sheet, field: FieldGeometry): Element[] {
  const { houseAlong: along, houseAcross: across, pit } = field;
  return [
    rectangle(sheet.place(-along / 2, -across / 2), {
      width: sheet.length(along),
      height: sheet.length(across),
    }, { "stroke-width": 0.6 }),
    ...[...new Set([2 * pit.batter * pit.lowEnd, 0])].map((run) =>
      rectangle(sheet.place(-(pit.length + run) / 2, -(pit.width + run) / 2), {
        width: sheet.length(pit.length + run),
        height: sheet.length(pit.width + run),
      }, { fill: COLOURS.pit, "stroke-width": 0.2 })
    ),
  ];
}

/** Half sides of the 45° line at pit depth, m; null where none can be drawn. */
function lineAtPitDepth({ houseAlong, houseAcross, footing }: FieldGeometry) {
  if (footing.inset === null) return null;
  const [along, across] = [houseAlong / 2 - footing.inset, houseAcross / 2 - footing.inset];
  return along <= 0 || across <= 0 ? null : { along, across };
}

function footingOutline(sheet: Sheet, field: FieldGeometry): Element[] {
  const half = lineAtPitDepth(field);
  if (half === null) return [];
  return [
    rectangle(sheet.place(-half.along, -half.across), {
      width: sheet.length(2 * half.along),
      height: sheet.length(2 * half.across),
    }, { ...DASHED, stroke: COLOURS.limit }),
  ];
}

function pipes(sheet: Sheet, field: FieldGeometry, inputs: DrawingInputs): Element[] {
  const half = field.length / 2;
  const tubes = field.row.map((x) =>
    line(sheet.place(-half, x), sheet.place(half, x), {
      stroke: COLOURS.tube.stroke,
      "stroke-width": Math.max(0.25, sheet.length(2 * field.radius)),
    })
  );
  const { diameter, returnDiameter, layout } = inputs.headersInputs;
  const upper = field.headers.filter(({ depth }) => depth === field.levels[0]!.depth);
  return [
    ...tubes,
    ...upper.flatMap((pair) => [
      headerBox(sheet, { x: -half, diameter, pair }),
      headerBox(sheet, { x: half, diameter: returnDiameter, pair }),
    ]),
    ...upper.flatMap((pair) => {
      const ends = riserEnds(layout, pair);
      return [
        ...ends.supply.map((y) => riser(sheet, -half, y, "in")),
        ...ends.return.map((y) => riser(sheet, half, y, "out")),
      ];
    }),
  ];
}

function headerBox(
  sheet: Sheet,
  { x, diameter, pair }: {
    readonly x: number;
    readonly diameter: number;
    readonly pair: BuriedHeaders;
  },
): Element {
  return rectangle(sheet.place(x - diameter / 2, pair.first - pair.end), {
    width: sheet.length(diameter),
    height: sheet.length(headerLength(pair)),
  }, { fill: COLOURS.header.fill, stroke: COLOURS.header.stroke, "stroke-width": 0.35 });
}

/** Where the risers meet the supply and the return header, across the field. */
function riserEnds(
  layout: HeaderLayout,
  { first, last, end }: BuriedHeaders,
): { readonly supply: readonly number[]; readonly return: readonly number[] } {
  const [top, bottom] = [first - end, last + end];
  switch (layout) {
    case "Z":
      return { supply: [top], return: [bottom] };
    case "U":
      return { supply: [top], return: [top] };
    case "centre":
      return { supply: [(first + last) / 2], return: [(first + last) / 2] };
    case "two-ended":
      return { supply: [top, bottom], return: [top, bottom] };
  }
}

function riser(sheet: Sheet, x: number, y: number, name: string): Element {
  const at = sheet.place(x, y);
  const size = 2.2;
  return element("g", {}, [
    rectangle({ x: at.x - size, y: at.y - size }, { width: 2 * size, height: 2 * size }, {
      fill: "#fff",
      stroke: COLOURS.header.stroke,
    }),
    text({ x: at.x, y: at.y + 0.8 }, name, { anchor: "middle", size: SMALLEST }),
  ]);
}

function dimensions(sheet: Sheet, field: FieldGeometry): Element[] {
  const { houseAlong: along, houseAcross: across, length, width, row } = field;
  const top = sheet.place(0, -across / 2).y;
  const bottom = sheet.place(0, across / 2).y;
  const left = sheet.place(-along / 2, 0).x;
  const right = sheet.place(along / 2, 0).x;
  const pair = Math.floor((row.length - 1) / 3);
  const first = row[pair]!;
  const spacing = row.length > 1 ? row[pair + 1]! - first : 0;
  const shown = [
    ...horizontalDimension(
      { x: left, y: top },
      { x: right, y: top },
      top - 5,
      `house ${sheet.said.both(along)}`,
    ),
    ...horizontalDimension(
      sheet.place(-length / 2, width / 2),
      sheet.place(length / 2, width / 2),
      bottom + 8,
      `tubes between header centres ${sheet.said.both(length)}`,
    ),
    ...verticalDimension(
      { x: left, y: top },
      { x: left, y: bottom },
      left - 6,
      sheet.said.short(across),
    ),
    ...width === 0 ? [] : verticalDimension(
      sheet.place(length / 2, -width / 2),
      sheet.place(length / 2, width / 2),
      right + 5,
      sheet.said.short(width),
    ),
  ];
  if (spacing > 0) {
    const at = sheet.place(-length / 4, first + spacing / 2);
    shown.push(spacingMark(sheet, { first, second: first + spacing }, at, spacing));
  }
  return shown;
}

function spacingMark(
  sheet: Sheet,
  pair: { readonly first: number; readonly second: number },
  at: PaperPoint,
  spacing: number,
): Element {
  const bar = line({ x: at.x, y: sheet.place(0, pair.first).y }, {
    x: at.x,
    y: sheet.place(0, pair.second).y,
  }, {
    "stroke-width": 0.5,
  });
  const words = label({ x: at.x + 1.8, y: at.y + 0.9 }, `spacing ${sheet.said.short(spacing)}`);
  return element("g", {}, [bar, words]);
}

/** The glazed long side is drawn below; north is turned to match. */
function northArrow(sheet: Sheet, inputs: DrawingInputs): Element[] {
  const along = inputs.tubesInputs.direction === "along";
  const down = along ? inputs.house.facing : inputs.house.facing - 90;
  const turn = (180 - down) * Math.PI / 180;
  const centre = { x: sheet.size.width - 18, y: 22 };
  const tip = { x: centre.x + 6 * Math.sin(turn), y: centre.y - 6 * Math.cos(turn) };
  const tail = { x: centre.x - 6 * Math.sin(turn), y: centre.y + 6 * Math.cos(turn) };
  const label = { x: centre.x + 8.4 * Math.sin(turn), y: centre.y - 8.4 * Math.cos(turn) + 0.9 };
  const side = (sign: number) => ({
    x: tip.x - 3 * Math.sin(turn) + sign * 1.4 * Math.cos(turn),
    y: tip.y + 3 * Math.cos(turn) + sign * 1.4 * Math.sin(turn),
  });
  return [
    line(tail, tip, { "stroke-width": 0.4 }),
    polyline([tip, side(1), side(-1), tip], { fill: "#111" }),
    text(label, "N", { anchor: "middle", bold: true }),
  ];
}

/** mm beside the words at the head that the arrow to the north takes. */
const NORTH_ROOM = 14;

function legend(sheet: Sheet, inputs: DrawingInputs, field: FieldGeometry): Element[] {
  const { tubes, headersInputs } = inputs;
  const layers = field.layers.length;
  const header = sheet.said.fine(headersInputs.diameter);
  const words = `${tubes.count} tube${tubes.count === 1 ? "" : "s"}, ${tubes.product.name}, in ` +
    `${layers} layer${layers === 1 ? "" : "s"}; header inside diameter ${header}` +
    (lineAtPitDepth(field) === null ? "" : "; dashed line: 45° line at pit depth");
  const atRisk = footingAtRisk(field.footing);
  const where = inOrderOf(sheet.units, footingRemark(field.footing));
  const room = sheet.size.width - 2 * CAPTION_INSET - NORTH_ROOM;
  return wrappedCaption(room, atRisk ? [where] : [], atRisk ? [words] : [words, where]);
}
