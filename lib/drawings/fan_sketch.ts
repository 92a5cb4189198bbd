/**
 * Elevation of intake, fan, riser and outlet.
 *
 * @module
 */
import { horizontalDimension, metres, verticalDimension } from "./dimension.ts";
import { type DrawingInputs, fieldGeometry } from "./field.ts";
import { safetyNotes } from "./notes.ts";
import { closeSheet, openSheet, type Paper, type Sheet } from "./sheet.ts";
import { label, line, polyline, rectangle, text } from "./svg.ts";

/** Elevation to scale along the tubes: intake high, fan in the riser, outlet low at the far end. */
export function fanAndRiserSketch(inputs: DrawingInputs, paper: Paper, number: string): string {
  const field = fieldGeometry(inputs);
  const { house } = inputs;
  const half = field.houseAlong / 2;
  const headerDepth = field.layers.reduce((sum, depth) => sum + depth, 0) / field.layers.length;
  const sheet = openSheet(paper, {
    left: -half,
    right: half,
    top: -house.ridgeHeight,
    bottom: field.pit.depth,
  }, 20);
  const { place } = sheet;
  const intake = house.ridgeHeight - Math.max(0.4, inputs.riserDiameter);
  const outletHeight = 0.4;
  const end = inputs.headersInputs.layout === "U" ? -1 : 1;
  sheet.content.push(
    line(place(-half, 0), place(half, 0), { "stroke-width": 0.5 }),
    rectangle(place(-half, -house.ridgeHeight), {
      width: sheet.length(field.houseAlong),
      height: sheet.length(house.ridgeHeight),
    }, { "stroke-width": 0.4 }),
    line(place(-half, -house.eaveHeight), place(half, -house.eaveHeight), {
      "stroke-width": 0.15,
    }),
    pipe(sheet, -field.length / 2, -intake, headerDepth, inputs.riserDiameter),
    pipe(
      sheet,
      end * field.length / 2 + (end < 0 ? inputs.riserDiameter * 1.5 : 0),
      -outletHeight,
      headerDepth,
      inputs.riserDiameter,
    ),
    rectangle(place(-field.length / 2, headerDepth - field.radius), {
      width: sheet.length(field.length),
      height: sheet.length(2 * field.radius),
    }, { fill: "#cfe6ee", stroke: "#1f6f8b" }),
    ...fan(sheet, inputs, intake),
    ...labels(sheet, inputs, { intake, headerDepth, outletHeight }),
  );
  return closeSheet(sheet, {
    study: inputs.title,
    title: "Fan, riser and outlet, elevation",
    number,
    notes: safetyNotes("fan"),
  });
}

function pipe(sheet: Sheet, x: number, top: number, bottom: number, diameter: number): Element {
  return rectangle(sheet.place(x - diameter / 2, top), {
    width: sheet.length(diameter),
    height: sheet.length(bottom - top),
  }, { fill: "#f7e3c8", stroke: "#8a4b08" });
}

function fan(sheet: Sheet, inputs: DrawingInputs, intake: number): Element[] {
  const { riserDiameter, tubes } = inputs;
  const x = -tubes.length / 2;
  const box = sheet.place(x - riserDiameter * 0.6, -intake * 0.6);
  const size = sheet.length(riserDiameter * 1.2);
  const tip = sheet.place(x, -intake * 0.6 + riserDiameter * 0.95);
  return [
    rectangle(box, { width: size, height: size }, { fill: "#fff", "stroke-width": 0.4 }),
    polyline([
      { x: tip.x - 1.4, y: tip.y - 2.4 },
      tip,
      { x: tip.x + 1.4, y: tip.y - 2.4 },
    ]),
    label({ x: box.x + size + 1.5, y: box.y + size / 2 + 0.9 }, "fan, guards both sides, isolator"),
  ];
}

function labels(
  sheet: Sheet,
  inputs: DrawingInputs,
  at: { readonly intake: number; readonly headerDepth: number; readonly outletHeight: number },
): Element[] {
  const { tubes, house, riserDiameter } = inputs;
  const left = sheet.place(-tubes.length / 2, -at.intake);
  const field = fieldGeometry(inputs);
  const edge = sheet.place(-field.houseAlong / 2, 0).x;
  const far = sheet.place(field.houseAlong / 2, 0);
  const side = sheet.length(riserDiameter / 2) + 1.5;
  const end = inputs.headersInputs.layout === "U" ? -1 : 1;
  const outlet = sheet.place(end * tubes.length / 2, -at.outletHeight);
  return [
    label(
      { x: left.x + side, y: left.y + 1 },
      "intake near the ridge: screen, rodent guard, test port",
    ),
    text(
      {
        x: outlet.x - end * (side + (end < 0 ? sheet.length(riserDiameter * 1.5) : 0)),
        y: outlet.y - 2,
      },
      "outlet low, along the cold edge",
      { anchor: end < 0 ? "start" : "end" },
    ),
    ...verticalDimension(
      { x: edge, y: sheet.place(0, -house.ridgeHeight).y },
      { x: edge, y: sheet.place(0, 0).y },
      edge - 4,
      `ridge ${metres(house.ridgeHeight)}`,
    ),
    ...verticalDimension(
      { x: far.x, y: far.y },
      { x: far.x, y: sheet.place(0, at.headerDepth).y },
      far.x + 4,
      metres(at.headerDepth),
    ),
    ...horizontalDimension(
      sheet.place(-tubes.length / 2 - riserDiameter / 2, at.headerDepth),
      sheet.place(-tubes.length / 2 + riserDiameter / 2, at.headerDepth),
      sheet.place(0, field.pit.depth).y + 6,
      `riser inside ${riserDiameter.toFixed(3)}`,
    ),
  ];
}
