/** Drawings to scale inside a notebook. @module */
import { shownBoth } from "../kit/reader.ts";
import { type DisplayItem, pictureItem } from "../kit/figure.ts";
import { drawingInputs, drawSheets } from "../../drawings/mod.ts";
import type { SoilResult } from "../../soil/types.ts";
import type { Study } from "../../study/mod.ts";
import type { TubesResult } from "../../tubes/types.ts";

/** Name of a sheet. */
export type SheetName = "plan" | "section" | "long-section" | "header-holes" | "fan-and-riser";

/** Titles of the sheets. */
export const SHEET_TITLES: Readonly<Record<SheetName, string>> = {
  plan: "Plan of the tube field, to scale",
  section: "Section across the tube field, to scale",
  "long-section": "Section along the tubes, to scale",
  "header-holes": "Header holes, unrolled, to scale",
  "fan-and-riser": "Fan and riser, sketch",
};

/** One sheet of the study's drawings. */
export function drawing(
  name: SheetName,
  study: Study,
  results: { readonly soil: SoilResult; readonly tubes: TubesResult },
): DisplayItem {
  const svg = drawSheets(drawingInputs(study, results), "A4")[`${name}-A4.svg`]!;
  const { count, length } = results.tubes;
  return pictureItem(svg, {
    note: `For printing to scale: drawings/${name}-A4.svg in the results.`,
    title: SHEET_TITLES[name],
    alt:
      `${SHEET_TITLES[name]}: ${count} tubes of ${
        shownBoth(length, "length")
      }, with dimensions. The printable file ` +
      `is in the drawings folder of the results.`,
  });
}
