/**
 * Section across the tubes.
 *
 * @module
 */
import { horizontalDimension, metres, verticalDimension } from "./dimension.ts";
import {
  type DrawingInputs,
  type FieldGeometry,
  fieldGeometry,
  footingClearance,
} from "./field.ts";
import { safetyNotes } from "./notes.ts";
import { closeSheet, openSheet, type Paper, type Sheet } from "./sheet.ts";
import { circle, line, polyline, rectangle, text } from "./svg.ts";

const WALL = 0.2;

/**
 * Section to scale across the tubes: floor, footing with its 45° line, pit, layers, cover, edge
 * insulation, frost depth, water table where known.
 */
export function tubeFieldSection(inputs: DrawingInputs, paper: Paper, number: string): string {
  const field = fieldGeometry(inputs);
  const half = field.houseAcross / 2;
  const lowest = Math.max(
    field.pit.depth,
    inputs.house.footingDepth,
    inputs.house.edgeInsulationDepth,
    inputs.frostDepth,
  );
  const sheet = openSheet(paper, {
    left: -half - 0.6,
    right: half + 0.6,
    top: -0.6,
    bottom: lowest + 0.3,
  }, Math.max(18, 10 + 9 * field.layers.length));
  sheet.content.push(
    ...ground(sheet, field, inputs),
    ...levels(sheet, field, inputs, lowest),
    ...tubeSections(sheet, field, inputs),
    ...dimensions(sheet, field, inputs),
    clearanceText(inputs, field),
  );
  return closeSheet(sheet, {
    study: inputs.title,
    title: "Tube field, section across the tubes",
    number,
    notes: safetyNotes("section"),
  });
}

function ground(sheet: Sheet, field: FieldGeometry, inputs: DrawingInputs): Element[] {
  const half = field.houseAcross / 2;
  const depth = inputs.house.footingDepth;
  const drawn: Element[] = [
    line(sheet.place(-half - 0.6, 0), sheet.place(half + 0.6, 0), { "stroke-width": 0.5 }),
    rectangle(sheet.place(-field.pit.width / 2, 0), {
      width: sheet.length(field.pit.width),
      height: sheet.length(field.pit.depth),
    }, { fill: "#f4efe6", "stroke-width": 0.2 }),
  ];
  for (const side of [-1, 1]) {
    const outer = side < 0 ? -half : half - WALL;
    drawn.push(
      rectangle(sheet.place(outer, -0.5), {
        width: sheet.length(WALL),
        height: sheet.length(0.5 + depth),
      }, { fill: "#ddd" }),
    );
    if (depth > 0) {
      const reach = Math.max(0.2, field.pit.depth - depth + 0.2);
      const inner = side * (half - WALL);
      drawn.push(
        polyline([sheet.place(inner, depth), sheet.place(inner - side * reach, depth + reach)], {
          stroke: "#b00020",
          "stroke-dasharray": "2 1.2",
        }),
      );
    }
    const insulation = inputs.house.edgeInsulation > 0 ? inputs.house.edgeInsulationDepth : 0;
    if (insulation > 0) {
      drawn.push(
        rectangle(sheet.place(side < 0 ? -half - 0.08 : half, 0), {
          width: sheet.length(0.08),
          height: sheet.length(insulation),
        }, { fill: "#f6c1d0", "stroke-width": 0.2 }),
      );
    }
  }
  return drawn;
}

function levels(
  sheet: Sheet,
  field: FieldGeometry,
  inputs: DrawingInputs,
  lowest: number,
): Element[] {
  const half = field.houseAcross / 2 + 0.6;
  const drawn: Element[] = [];
  const level = (depth: number, label: string, colour: string) => {
    const left = sheet.place(-half, depth);
    const right = sheet.place(half, depth);
    const style = { stroke: colour, "stroke-dasharray": "5 1.5 1 1.5" };
    drawn.push(
      line(left, right, style),
      text({ x: right.x, y: right.y - 0.8 }, label, { anchor: "end", size: 2.3 }),
    );
  };
  if (inputs.frostDepth > 0 && inputs.frostDepth <= lowest) {
    level(inputs.frostDepth, `frost outside ${metres(inputs.frostDepth)}`, "#3b5bdb");
  }
  const water = inputs.waterTableDepth;
  if (water !== null && water <= lowest + 0.3) level(water, `water ${metres(water)}`, "#0b7285");
  return drawn;
}

function tubeSections(sheet: Sheet, field: FieldGeometry, inputs: DrawingInputs): Element[] {
  return inputs.tubes.positions.map((position) =>
    circle(sheet.place(position.x, position.depth), sheet.length(field.radius), {
      fill: "#cfe6ee",
      stroke: "#1f6f8b",
    })
  );
}

function dimensions(sheet: Sheet, field: FieldGeometry, inputs: DrawingInputs): Element[] {
  const half = field.houseAcross / 2;
  const { row, layers, pit } = field;
  const below = sheet.place(0, pit.depth).y;
  const left = sheet.place(-half - 0.6, 0).x;
  const right = sheet.place(half + 0.6, 0).x;
  const drawn: Element[] = [
    ...horizontalDimension(
      sheet.place(-half, -0.5),
      sheet.place(half, -0.5),
      sheet.place(0, -0.5).y - 5,
      `house ${metres(field.houseAcross)}`,
    ),
    ...horizontalDimension(
      sheet.place(-pit.width / 2, pit.depth),
      sheet.place(pit.width / 2, pit.depth),
      below + 13,
      `pit ${metres(pit.width)}`,
    ),
  ];
  layers.forEach((depth, index) => {
    const from = sheet.place(row[0]!, 0);
    const to = sheet.place(row[0]!, depth);
    drawn.push(...verticalDimension(from, to, left - 2 - index * 9, metres(depth)));
  });
  drawn.push(
    ...verticalDimension(
      sheet.place(pit.width / 2, 0),
      sheet.place(pit.width / 2, pit.depth),
      right + 2,
      metres(pit.depth),
    ),
  );
  if (row.length > 1) {
    const deepest = layers.at(-1)!;
    const middle = Math.floor(row.length / 2);
    drawn.push(
      ...horizontalDimension(
        sheet.place(row[middle - 1]!, deepest),
        sheet.place(row[middle]!, deepest),
        below + 6,
        metres(row[middle]! - row[middle - 1]!),
      ),
    );
  }
  if (inputs.house.footingDepth > 0) {
    const at = sheet.place(half - WALL, inputs.house.footingDepth);
    drawn.push(
      text({ x: at.x - 1.5, y: at.y - 1 }, `footing ${metres(inputs.house.footingDepth)}`, {
        anchor: "end",
        size: 2.3,
      }),
    );
  }
  return drawn;
}

function clearanceText(inputs: DrawingInputs, field: FieldGeometry): Element {
  const room = footingClearance(inputs, field);
  const words = room < 0
    ? `The pit cuts the 45° line from the footing by ${metres(-room)} m: ask an engineer first`
    : `Room to the 45° line from the footing: ${metres(room)} m`;
  return text({ x: 12, y: 13.5 }, words, { size: 2.5, bold: room < 0 });
}
