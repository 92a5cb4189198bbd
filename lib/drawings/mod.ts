/** Drawings to scale and the quantities that go with them. @module */
import { fanAndRiserSketch } from "./fan_sketch.ts";
import type { DrawingInputs } from "./inputs.ts";
import { headerHoleDrawing } from "./holes.ts";
import { tubeFieldLongSection } from "./long_section.ts";
import { tubeFieldPlan } from "./plan.ts";
import { tubeFieldSection } from "./section.ts";
import type { Paper } from "./sheet.ts";

export { fanAndRiserSketch } from "./fan_sketch.ts";
export type { DrawingInputs } from "./inputs.ts";
export { drawingInputs } from "./from_study.ts";
export { headerHoleDrawing, headerHoles } from "./holes.ts";
export { holesCsv } from "./hole_table.ts";
export { tubeFieldLongSection } from "./long_section.ts";
export { tubeFieldPlan } from "./plan.ts";
export { tubeFieldSection } from "./section.ts";
export { scaleBarLength } from "./scale.ts";
export { drawnSize, paperSize } from "./sheet.ts";
export type { Paper } from "./sheet.ts";

/** Name of a sheet. */
export type DrawingName = "plan" | "section" | "long-section" | "header-holes" | "fan-and-riser";

const SHEETS: readonly (readonly [
  DrawingName,
  (inputs: DrawingInputs, paper: Paper, mark: string) => string,
])[] = [
  ["plan", tubeFieldPlan],
  ["section", tubeFieldSection],
  ["long-section", tubeFieldLongSection],
  ["header-holes", headerHoleDrawing],
  ["fan-and-riser", fanAndRiserSketch],
];

/**
 * One drawing cut out for a report.
 *
 * @returns text of an SVG
 */
export function drawForReport(inputs: DrawingInputs, name: DrawingName): string {
  const [, draw] = SHEETS.find(([one]) => one === name)!;
  return draw(inputs, "report", "");
}

/**
 * All sheets on one size of paper.
 *
 * @returns text of an SVG file by file name, such as "plan-A4.svg"
 */
export function drawSheets(inputs: DrawingInputs, paper: Paper): Record<string, string> {
  return Object.fromEntries(
    SHEETS.map(([name, draw], index) => [
      `${name}-${paper}.svg`,
      draw(inputs, paper, `${index + 1} of ${SHEETS.length}`),
    ]),
  );
}
