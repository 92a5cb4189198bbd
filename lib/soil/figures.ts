/** Figures of the soil chapter. @module */
import { type FigureRow, numberFigure, withRange } from "../basics/figures.ts";
import { groundRanges } from "./doubt.ts";
import type { SoilResult } from "./types.ts";

/** Every figure of the chapter. */
export function soilFigures(soil: SoilResult): readonly FigureRow[] {
  const { properties, wave } = soil;
  const ranges = groundRanges(soil);
  return [
    withRange(
      numberFigure(
        "soil.meanTemperature",
        wave.mean,
        "degC",
        "mean temperature of the undisturbed ground",
      ),
      ranges.mean,
    ),
    numberFigure(
      "soil.surfaceAmplitude",
      wave.amplitude,
      "K",
      "annual temperature amplitude at the ground surface",
    ),
    numberFigure(
      "soil.diffusivity",
      properties.diffusivity,
      "m2/s",
      "thermal diffusivity of the soil",
    ),
    numberFigure(
      "soil.conductivity",
      properties.conductivity,
      "W/(m K)",
      "thermal conductivity of the soil",
    ),
    numberFigure(
      "soil.conductivityLow",
      properties.conductivityRange[0],
      "W/(m K)",
      "lowest plausible thermal conductivity of the soil",
    ),
    numberFigure(
      "soil.conductivityHigh",
      properties.conductivityRange[1],
      "W/(m K)",
      "highest plausible thermal conductivity of the soil",
    ),
    withRange(
      numberFigure(
        "soil.frostDepth",
        soil.frostDepth,
        "m",
        "deepest frost in the undisturbed ground",
      ),
      ranges.frostDepth,
    ),
    withRange(
      numberFigure(
        "soil.temperatureAtTubeDepthMin",
        soil.temperatureAtTubeDepthMin,
        "degC",
        "lowest temperature of the undisturbed ground at the depth of the tubes",
      ),
      ranges.lowest,
    ),
    withRange(
      numberFigure(
        "soil.temperatureAtTubeDepthMax",
        soil.temperatureAtTubeDepthMax,
        "degC",
        "highest temperature of the undisturbed ground at the depth of the tubes",
      ),
      ranges.highest,
    ),
  ];
}
