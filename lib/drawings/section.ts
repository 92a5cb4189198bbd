/**
 * Section across the tubes.
 *
 * @module
 */
import { horizontalDimension, lengthWords, verticalDimension } from "./dimension.ts";
import { inOrderOf } from "../units/mod.ts";
import { footingAtRisk, footingRemark } from "../tubes/mod.ts";
import { type FieldGeometry, fieldGeometry } from "../headers/mod.ts";
import type { DrawingInputs } from "./inputs.ts";
import { COLOURS, groundParts, WALL_ABOVE } from "./ground_parts.ts";
import { safetyNotes } from "./notes.ts";
import { CAPTION_INSET, closeSheet, openSheet, type Paper, type Sheet } from "./sheet.ts";
import { wrappedCaption } from "./wrapped_caption.ts";
import { circle, label, line, polyline, SMALLEST } from "./svg.ts";

/** m of ground drawn beyond the house */
const BEYOND = 0.6;
/** mm between dimension lines side by side */
const STEP = 9;
/** mm between levels written below each other */
const LINE = 3.6;

/**
 * Section to scale across the tubes at the middle of their fall: floor, footing with its 45° line,
 * pit, layers, cover, edge insulation, frost depth, water table where known.
 */
export function tubeFieldSection(inputs: DrawingInputs, paper: Paper, number: string): string {
  const field = fieldGeometry(inputs);
  const half = field.houseAcross / 2;
  const levels = namedLevels(inputs, field);
  const lowest = Math.max(field.pit.depth, ...levels.map((level) => level.depth));
  const sheet = openSheet(
    paper,
    {
      left: -half - BEYOND,
      right: half + BEYOND,
      top: -WALL_ABOVE,
      bottom: lowest + 0.2,
    },
    { left: 12 + STEP * field.layers.length, right: 48, top: 8, bottom: 16 },
    { notes: safetyNotes("section"), units: inputs.units },
  );
  sheet.content.push(
    pitSection(sheet, field),
    ...groundParts(sheet, inputs, { half, lowest: field.pit.depth, beyond: BEYOND }),
    ...inputs.tubes.positions.map((position) =>
      circle(sheet.place(position.x, position.depth), sheet.length(field.radius), COLOURS.tube)
    ),
    ...levelLines(sheet, levels, half),
    ...dimensions(sheet, field),
    ...headline(sheet, field),
  );
  return closeSheet(sheet, {
    study: inputs.title,
    title: "Tube field, section across the tubes",
    number,
  });
}

function pitSection(sheet: Sheet, { pit }: FieldGeometry): Element {
  const half = pit.width / 2;
  const top = half + pit.batter * pit.depth;
  return polyline([
    sheet.place(-top, 0),
    sheet.place(-half, pit.depth),
    sheet.place(half, pit.depth),
    sheet.place(top, 0),
    sheet.place(-top, 0),
  ], { fill: COLOURS.pit, "stroke-width": 0.2 });
}

interface NamedLevel {
  readonly depth: number;
  readonly name: string;
  readonly colour: string;
  /** true for a line across the whole section, false for a mark at the right end */
  readonly across: boolean;
}

function namedLevels(inputs: DrawingInputs, field: FieldGeometry): NamedLevel[] {
  const { house, frostDepth, waterTableDepth } = inputs;
  const shown = Math.max(field.pit.depth, house.footingDepth ?? 0, house.edgeInsulationDepth) + 0.5;
  const levels: NamedLevel[] = [];
  const add = (depth: number, name: string, colour: string, across: boolean) =>
    depth > 0 &&
    levels.push({
      depth,
      name: `${name} ${lengthWords(inputs.units).short(depth)}`,
      colour,
      across,
    });
  add(house.footingDepth ?? 0, "footing", "#111", false);
  if (house.edgeInsulation > 0) add(house.edgeInsulationDepth, "edge board", "#111", false);
  if (frostDepth <= shown) add(frostDepth, "frost outside", "#3b5bdb", true);
  if (waterTableDepth !== null && waterTableDepth <= shown) {
    add(waterTableDepth, "water table", "#0b7285", true);
  }
  return levels.sort((a, b) => a.depth - b.depth);
}

/** Levels with their names to the right of the section, moved apart where they would touch. */
function levelLines(sheet: Sheet, levels: readonly NamedLevel[], half: number): Element[] {
  const end = sheet.place(half + BEYOND, 0).x;
  const words = end + 16;
  let above = -Infinity;
  return levels.flatMap(({ depth, name, colour, across }) => {
    const at = sheet.place(across ? -half - BEYOND : half, depth);
    const y = Math.max(at.y, above + LINE);
    above = y;
    const style = { stroke: colour, "stroke-width": 0.2, "stroke-dasharray": "5 1.5 1 1.5" };
    return [
      line(at, { x: end + 10, y: at.y }, style),
      line({ x: end + 10, y: at.y }, { x: words - 1, y }, { stroke: colour, "stroke-width": 0.2 }),
      label({ x: words, y: y + 0.9 }, name, { size: SMALLEST }),
    ];
  });
}

function dimensions(sheet: Sheet, field: FieldGeometry): Element[] {
  const half = field.houseAcross / 2;
  const { row, layers, pit } = field;
  const below = sheet.place(0, pit.depth).y;
  const left = sheet.place(-half - BEYOND, 0).x;
  const right = sheet.place(half + BEYOND, 0).x;
  const top = sheet.place(0, -WALL_ABOVE).y;
  const drawn: Element[] = [
    ...horizontalDimension(
      sheet.place(-half, -WALL_ABOVE),
      sheet.place(half, -WALL_ABOVE),
      top - 4,
      `house ${sheet.said.short(field.houseAcross)}`,
    ),
    ...horizontalDimension(
      sheet.place(-pit.width / 2, pit.depth),
      sheet.place(pit.width / 2, pit.depth),
      below + 12,
      `pit ${sheet.said.short(pit.width)}`,
    ),
    ...layers.flatMap((depth, index) =>
      verticalDimension(
        sheet.place(row[0]!, 0),
        sheet.place(row[0]!, depth),
        left - 2 - index * STEP,
        sheet.said.short(depth),
      )
    ),
    ...verticalDimension(
      sheet.place(pit.width / 2, 0),
      sheet.place(pit.width / 2, pit.depth),
      right + 2,
      sheet.said.short(pit.depth),
    ),
  ];
  if (row.length < 2) return drawn;
  const middle = Math.floor(row.length / 2);
  const deepest = layers.at(-1)!;
  return [
    ...drawn,
    ...horizontalDimension(
      sheet.place(row[middle - 1]!, deepest),
      sheet.place(row[middle]!, deepest),
      below + 5.5,
      sheet.said.short(row[middle]! - row[middle - 1]!),
    ),
  ];
}

function headline(sheet: Sheet, field: FieldGeometry): Element[] {
  const cover = field.layers[0]! - field.radius;
  const remark = inOrderOf(sheet.units, footingRemark(field.footing));
  const words =
    `Cover over the upper tubes ${
      sheet.said.plain(cover)
    }; depths are at mid-length, to the tube ` +
    `centres; add ${sheet.said.plain(field.fall / 2)} at the low end`;
  const room = sheet.size.width - 2 * CAPTION_INSET;
  return footingAtRisk(field.footing)
    ? wrappedCaption(room, [remark], [words])
    : wrappedCaption(room, [], [remark, words]);
}
