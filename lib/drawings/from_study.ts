/**
 * Drawing inputs from a study and its results.
 *
 * @module
 */
import type { SoilResult } from "../soil/types.ts";
import type { Study } from "../study/types.ts";
import type { TubesResult } from "../tubes/types.ts";
import type { DrawingInputs } from "./inputs.ts";

/**
 * Picks what the drawings need.
 *
 * @param study the study, in SI
 * @param results results of the soil and tubes chapters
 */
export function drawingInputs(
  study: Study,
  results: { readonly soil: SoilResult; readonly tubes: TubesResult },
): DrawingInputs {
  return {
    title: study.heading.title,
    units: study.heading.units,
    house: study.house,
    tubesInputs: study.tubes,
    tubes: results.tubes,
    headersInputs: study.headers,
    riserDiameter: study.fan.riserDiameter,
    fans: study.fan.count,
    frostDepth: results.soil.frostDepth,
    waterTableDepth: study.soil.waterTableDepth,
  };
}
