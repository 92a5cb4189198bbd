/** Tables that the soil chapter writes. @module */
import {
  MONTH_ABBREVIATIONS,
  type ResultTable,
  resultTable,
  seriesColumns,
} from "../basics/mod.ts";
import type { SummarisedSoil } from "./summary.ts";

/** Ground by depth and month, soils tried, layers, waves and frost. */
export function soilTables(result: SummarisedSoil): ResultTable[] {
  const { summary } = result;
  return [
    resultTable("soil-ground-by-month", result.depths, [
      ["depth", "m", (depth) => depth],
      ...seriesColumns<number>(
        MONTH_ABBREVIATIONS,
        "degC",
        (_, month, index) => result.monthly[month]![index]!,
      ),
    ]),
    resultTable("soil-two-estimates", summary.estimates, [
      ["month", "", (row) => row.month + 1],
      ["column at tube depth", "degC", (row) => row.column],
      ["wave at tube depth", "degC", (row) => row.wave],
      ["column minus wave", "K", (row) => row.difference],
    ]),
    resultTable("soil-sensitivity", result.sensitivity, [
      ["soil", "", (row) => row.change],
      ["conductivity", "W/(m K)", (row) => row.conductivity],
      ["moisture", "m3/m3", (row) => row.moisture],
      ["frost depth", "m", (row) => row.frostDepth],
      ["mean at tube depth", "degC", (row) => row.meanAtTubeDepth],
      ["lowest at tube depth", "degC", (row) => row.minAtTubeDepth],
      ["highest at tube depth", "degC", (row) => row.maxAtTubeDepth],
    ]),
    resultTable("soil-layers", summary.layers, [
      ["soil", "", (row) => row.texture],
      ["from", "m", (row) => row.top],
      ["to", "m", (row) => Number.isFinite(row.bottom) ? row.bottom : null],
      ["dry density", "kg/m3", (row) => row.dryDensity],
      ["moisture", "m3/m3", (row) => row.moisture],
      ["conductivity", "W/(m K)", (row) => row.conductivity],
      ["lowest plausible conductivity", "W/(m K)", (row) => row.conductivityRange[0]],
      ["highest plausible conductivity", "W/(m K)", (row) => row.conductivityRange[1]],
    ]),
    resultTable("soil-penetration", summary.penetration, [
      ["period", "d", (row) => row.days],
      ["depth where 37 % is left", "m", (row) => row.depth],
      ["depth where 5 % is left", "m", (row) => row.depthOfTwentieth],
    ]),
    resultTable("soil-frost-and-snow", summary.frost, [
      ["day of the year from 1", "", (row) => row.day + 1],
      ["frozen from", "m", (row) => row.frozen ? row.top : null],
      ["frozen to", "m", (row) => row.frozen ? row.bottom : null],
      ["snow depth", "m", (row) => result.snowDepth[row.day]!],
    ]),
  ];
}
