/**
 * Section along one tube: fall, headers, low point.
 *
 * @module
 */
import { horizontalDimension, verticalDimension } from "./dimension.ts";
import { buriedPipes } from "./buried_pipes.ts";
import {
  buildDoubts,
  buildFaults,
  buriedField,
  type FieldGeometry,
  fieldGeometry,
} from "../headers/mod.ts";
import type { DrawingInputs } from "./inputs.ts";
import { COLOURS, groundParts, WALL_ABOVE } from "./ground_parts.ts";
import { safetyNotes } from "./notes.ts";
import {
  caption,
  CAPTION_INSET,
  CAPTION_SIZE,
  closeSheet,
  openSheet,
  type Paper,
  type Sheet,
  wrap,
} from "./sheet.ts";
import { inOrderOf } from "../units/mod.ts";
import { label, line, polyline, rectangle, SMALLEST } from "./svg.ts";

const BEYOND = 0.4;
/** m, drawn depth of the sump below the low end of the pit */
const SUMP = 0.3;
const STEP = 9;
/** m of house that are drawn; longer ones are broken in the middle */
const MOST_SHOWN = 10;
/** m of cover below which the caption warns (common practice, no source) */
const LEAST_USUAL_COVER = 0.3;

/** Section to scale along the tubes: each layer with its fall, both headers, the drained low point. */
export function tubeFieldLongSection(inputs: DrawingInputs, paper: Paper, number: string): string {
  const field = fieldGeometry(inputs);
  const cut = Math.max(0, field.houseAlong - MOST_SHOWN);
  const half = (field.houseAlong - cut) / 2;
  const opened = openSheet(paper, {
    left: -half - BEYOND,
    right: half + BEYOND,
    top: -WALL_ABOVE,
    bottom: Math.max(field.pit.lowEnd + SUMP, inputs.house.footingDepth ?? 0),
  }, {
    left: 12 + STEP * field.layers.length,
    right: 12 + STEP * field.layers.length,
    top: 10,
    bottom: 14,
  }, { notes: safetyNotes("section"), units: inputs.units });
  const sheet = shortened(opened, cut);
  sheet.content.push(
    pitOutline(sheet, field, cut),
    ...groundParts(opened, inputs, { half, lowest: field.pit.lowEnd, beyond: BEYOND }),
    ...tubesAndHeaders(sheet, field, inputs, cut),
    ...breakMark(opened, field, cut),
    ...sump(sheet, field),
    ...dimensions(sheet, field),
    ...headline(sheet, { inputs, field, cut }),
  );
  return closeSheet(sheet, {
    study: inputs.title,
    title: "Tube field, section along a tube",
    number,
  });
}

/** A sheet that leaves out `cut` metres in the middle. */
function shortened(sheet: Sheet, cut: number): Sheet {
  return { ...sheet, place: (x, y) => sheet.place(x - Math.sign(x) * cut / 2, y) };
}

/** Two break lines over the middle, with the ground between them wiped out. */
function breakMark(sheet: Sheet, field: FieldGeometry, cut: number): Element[] {
  if (cut === 0) return [];
  const top = sheet.place(0, 0).y + 0.4;
  const bottom = sheet.place(0, field.pit.lowEnd).y + 1;
  const middle = (top + bottom) / 2;
  const x = sheet.place(0, 0).x;
  const ground = rectangle({ x: x - 1.5, y: top }, { width: 3, height: bottom - top }, {
    fill: "#fff",
    stroke: "none",
  });
  return [
    ground,
    ...[-1.5, 1.5].map((shift) =>
      polyline([
        { x: x + shift, y: top },
        { x: x + shift, y: middle - 2 },
        { x: x + shift - 1, y: middle - 0.7 },
        { x: x + shift + 1, y: middle + 0.7 },
        { x: x + shift, y: middle + 2 },
        { x: x + shift, y: bottom },
      ], { "stroke-width": 0.2 })
    ),
  ];
}

function pitOutline(sheet: Sheet, field: FieldGeometry, cut: number): Element {
  const { length, depth, lowEnd } = field.pit;
  const { place } = sheet;
  const drop = lowEnd - depth;
  const seen = drop * cut / length;
  const run = field.pit.batter;
  return polyline([
    place(-length / 2 - run * (depth - drop), 0),
    place(-length / 2, depth - drop),
    place(-cut / 2, depth - seen),
    place(cut / 2, depth + seen),
    place(length / 2, lowEnd),
    place(length / 2 + run * lowEnd, 0),
  ], { fill: COLOURS.pit, "stroke-width": 0.2 });
}

function tubesAndHeaders(
  sheet: Sheet,
  field: FieldGeometry,
  inputs: DrawingInputs,
  cut: number,
): Element[] {
  const { place } = sheet;
  const half = field.length / 2;
  const { diameter, returnDiameter } = inputs.headersInputs;
  const drop = field.fall / 2;
  const upper = field.levels[0]!;
  const supplyTop = place(-half, upper.depth - drop - diameter / 2);
  const returnTop = place(half, upper.depth + drop - returnDiameter / 2);
  return [
    ...buriedPipes(sheet, field, { inputs, cut }),
    ...named(supplyTop, sheet.place(0, -WALL_ABOVE).y, "supply header", 1),
    ...named(returnTop, sheet.place(0, -WALL_ABOVE).y, "return header", -1),
  ];
}

/** A name above the floor with a leader down to what it names. */
function named(
  at: { readonly x: number; readonly y: number },
  y: number,
  words: string,
  side: 1 | -1,
): Element[] {
  const elbow = { x: at.x + side * 4, y: y + 0.5 };
  return [
    polyline([at, elbow, { x: elbow.x + side * 2, y: elbow.y }], { "stroke-width": 0.2 }),
    label({ x: elbow.x + side * 2.8, y: y + 1.4 }, words, {
      anchor: side > 0 ? "start" : "end",
      size: SMALLEST,
    }),
  ];
}

function sump(sheet: Sheet, field: FieldGeometry): Element[] {
  const { place } = sheet;
  const x = field.length / 2;
  const bottom = place(0, field.pit.lowEnd + SUMP).y;
  const words = "low point: drained sump with trap and clean-out";
  return [
    rectangle(place(x - 0.15, field.pit.lowEnd - 0.1), {
      width: sheet.length(0.3),
      height: sheet.length(SUMP + 0.1),
    }, { fill: "#fff" }),
    line(
      place(x - 0.15, field.pit.lowEnd + SUMP / 2),
      place(x + 0.15, field.pit.lowEnd + SUMP / 2),
      {
        stroke: COLOURS.tube.stroke,
        "stroke-width": 0.3,
      },
    ),
    label({ x: place(x - 0.15, 0).x - 2, y: bottom + 1.5 }, words, {
      anchor: "end",
      size: SMALLEST,
    }),
  ];
}

function dimensions(sheet: Sheet, field: FieldGeometry): Element[] {
  const { place } = sheet;
  const half = field.length / 2;
  const drop = field.fall / 2;
  const bottom = place(0, field.pit.lowEnd + SUMP).y;
  const left = place(-field.houseAlong / 2 - BEYOND, 0).x;
  const right = place(field.houseAlong / 2 + BEYOND, 0).x;
  return [
    ...horizontalDimension(
      place(-half, field.layers.at(-1)! - drop),
      place(half, field.layers.at(-1)! + drop),
      bottom + 8,
      sheet.said.both(field.length),
    ),
    ...field.layers.flatMap((depth, index) => [
      ...verticalDimension(
        place(-half, 0),
        place(-half, depth - drop),
        left - 2 - index * STEP,
        sheet.said.short(depth - drop),
      ),
      ...verticalDimension(
        place(half, 0),
        place(half, depth + drop),
        right + 2 + index * STEP,
        sheet.said.short(depth + drop),
      ),
    ]),
  ];
}

function headline(
  sheet: Sheet,
  given: { readonly inputs: DrawingInputs; readonly field: FieldGeometry; readonly cut: number },
): Element[] {
  const { inputs, field, cut } = given;
  const percent = (inputs.tubesInputs.slope * 100).toFixed(1);
  const cover = field.layers[0]! - field.fall / 2 - field.radius;
  const faults = [
    ...buildFaults(buriedField(inputs)).map(({ text }) => text),
    ...buildDoubts(buriedField(inputs)),
  ];
  const warnings = [
    ...faults.map((fault) => inOrderOf(sheet.units, fault)),
    ...cover < LEAST_USUAL_COVER
      ? [
        `Cover at the supply end is only ${
          sheet.said.plain(cover)
        }: lay the field deeper or flatter`,
      ]
      : [],
  ];
  const words =
    `Fall ${percent} %, ${sheet.said.plain(field.fall)} from the supply to the return header` +
    `${cut > 0 ? `; ${sheet.said.plain(cut)} of tube omitted in the middle` : ""}. ` +
    "Measure the air speed in every tube before backfilling; cap open ends.";
  const width = sheet.size.width - 2 * CAPTION_INSET;
  const told = warnings.slice(0, 2).flatMap((warning) => wrap(warning, width, CAPTION_SIZE));
  const more = [words, ...entryWords(sheet, field)]
    .flatMap((line) => wrap(line, width, CAPTION_SIZE));
  return caption([...told, ...more].slice(0, 4), told.length);
}

/** How tubes that do not lie level with the header's centre get into it. */
function entryWords(sheet: Sheet, { levels }: FieldGeometry): string[] {
  const rows = levels.flatMap(({ rows }) => rows);
  const bends = [...new Set(rows.flatMap(({ bend }) => bend > 0 ? [bend.toFixed(0)] : []))];
  if (bends.length > 0) {
    return [`Tubes off their header are bent into it: bends of ${bends.join("° and ")}°`];
  }
  const offset = Math.max(...rows.map(({ offset }) => Math.abs(offset)));
  return offset === 0 ? [] : [
    `Headers are wider than the layer spacing: tubes enter ${sheet.said.small(offset)} off centre`,
  ];
}
