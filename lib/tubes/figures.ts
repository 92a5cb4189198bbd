/** Figures of the tubes chapter. @module */
import { type FigureRow, numberFigure } from "../basics/figures.ts";
import type { TubesResult } from "./types.ts";

/** Every figure of the chapter. */
export function tubesFigures(tubes: TubesResult): readonly FigureRow[] {
  return [
    numberFigure("tubes.count", tubes.count, "1", "number of tubes"),
    numberFigure("tubes.length", tubes.length, "m", "length of one tube"),
    numberFigure("tubes.totalLength", tubes.totalLength, "m", "total length of all tubes"),
    numberFigure("tubes.diameter", tubes.diameter, "m", "inside diameter of the tubes"),
    numberFigure(
      "tubes.airSpeed",
      tubes.airSpeed,
      "m/s",
      "air speed in the tubes at the design flow",
    ),
    numberFigure(
      "tubes.flowPerTube",
      tubes.flowPerTube,
      "m3/s",
      "air flow of one tube at the design flow",
    ),
    numberFigure(
      "tubes.pressureDrop",
      tubes.pressureDrop,
      "Pa",
      "pressure drop of one tube, ends included",
    ),
    numberFigure("tubes.effectiveness", tubes.effectiveness, "1", "effectiveness of one tube, dry"),
  ];
}
