/**
 * Section along one tube: fall, low point, headers.
 *
 * @module
 */
import { horizontalDimension, metres, metresAndFeet, verticalDimension } from "./dimension.ts";
import { type DrawingInputs, fieldGeometry } from "./field.ts";
import { safetyNotes } from "./notes.ts";
import { closeSheet, openSheet, type Paper } from "./sheet.ts";
import { circle, line, text } from "./svg.ts";

/** Section to scale along the tubes: each layer with its fall, both headers, the drained low point. */
export function tubeFieldLongSection(inputs: DrawingInputs, paper: Paper, number: string): string {
  const field = fieldGeometry(inputs);
  const { headersInputs, tubesInputs } = inputs;
  const half = field.length / 2;
  const fall = tubesInputs.slope * field.length;
  const sheet = openSheet(paper, {
    left: -field.houseAlong / 2,
    right: field.houseAlong / 2,
    top: -0.3,
    bottom: field.pit.depth + fall + 0.3,
  }, 22);
  const { place } = sheet;
  sheet.content.push(
    line(place(-field.houseAlong / 2, 0), place(field.houseAlong / 2, 0), { "stroke-width": 0.5 }),
  );
  for (const depth of field.layers) {
    sheet.content.push(
      line(place(-half, depth), place(half, depth + fall), {
        stroke: "#1f6f8b",
        "stroke-width": Math.max(0.3, sheet.length(2 * field.radius)),
      }),
    );
  }
  const middle = field.layers.reduce((sum, depth) => sum + depth, 0) / field.layers.length;
  const stacked = headersInputs.groups >= field.layers.length ? field.layers : [middle];
  for (const depth of stacked) {
    sheet.content.push(
      circle(place(-half, depth), sheet.length(headersInputs.diameter / 2), {
        fill: "#f7e3c8",
        stroke: "#8a4b08",
      }),
      circle(place(half, depth + fall), sheet.length(headersInputs.returnDiameter / 2), {
        fill: "#f7e3c8",
        stroke: "#8a4b08",
      }),
    );
  }
  const deepest = field.layers.at(-1)!;
  const low = place(half, deepest + fall);
  const bottom = place(0, field.pit.depth + fall + 0.3).y;
  const percent = (tubesInputs.slope * 100).toFixed(1);
  sheet.content.push(
    ...horizontalDimension(
      place(-half, deepest),
      place(half, deepest + fall),
      bottom + 8,
      `between header centres ${metresAndFeet(field.length)}, fall ${percent} %, ${
        metres(fall)
      } m in all`,
    ),
    ...verticalDimension(
      place(-half, 0),
      place(-half, deepest),
      place(-field.houseAlong / 2, 0).x - 4,
      metres(deepest),
    ),
    ...verticalDimension(
      place(half, 0),
      place(half, deepest + fall),
      place(field.houseAlong / 2, 0).x + 4,
      metres(deepest + fall),
    ),
    text({ x: low.x - 2, y: bottom + 1 }, "low point: drained sump with trap and clean-out", {
      anchor: "end",
      size: 2.4,
    }),
    text({ x: 12, y: 13.5 }, "Test every tube for air speed before backfill; cap open ends.", {
      size: 2.5,
    }),
  );
  return closeSheet(sheet, {
    study: inputs.title,
    title: "Tube field, section along a tube",
    number,
    notes: safetyNotes("section"),
  });
}
