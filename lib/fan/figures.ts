/** Figures of the fan chapter. @module */
import { type FigureRow, numberFigure } from "../basics/figures.ts";
import type { FanResult } from "./types.ts";

/** Every figure of the chapter. */
export function fanFigures(fan: FanResult): readonly FigureRow[] {
  return [
    numberFigure("fan.airFlow", fan.airFlow, "m3/s", "air flow at the operating point"),
    numberFigure("fan.pressure", fan.pressure, "Pa", "fan static pressure at the operating point"),
    numberFigure("fan.power", fan.power, "W", "electric power of all fans"),
    numberFigure("fan.specificPower", fan.specificPower, "W/(m3/s)", "specific fan power"),
  ];
}
