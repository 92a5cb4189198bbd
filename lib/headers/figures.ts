/** Figures of the headers chapter. @module */
import { type FigureRow, numberFigure } from "../basics/figures.ts";
import type { HeadersResult } from "./types.ts";

/** Every figure of the chapter. */
export function headersFigures(headers: HeadersResult): readonly FigureRow[] {
  return [
    numberFigure("headers.diameter", headers.diameter, "m", "inside diameter of the supply header"),
    numberFigure(
      "headers.areaRatio",
      headers.areaRatio,
      "1",
      "area ratio: tube cross-sections over header cross-section",
    ),
    numberFigure("headers.flowMin", headers.flowMin, "1", "smallest tube flow over the mean"),
    numberFigure("headers.flowMax", headers.flowMax, "1", "largest tube flow over the mean"),
    numberFigure(
      "headers.unevenness",
      headers.unevenness,
      "1",
      "coefficient of variation of the tube flows",
    ),
  ];
}
