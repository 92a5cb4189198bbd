/** Tables of the soil notebook: layers with their ranges, and the way down to groundwater. @module */
import type { DisplayItem } from "../kit/figure.ts";
import { showNumber } from "../../units/mod.ts";
import type { SummarisedSoil } from "../../soil/mod.ts";
import type { SoilInputs, SoilResult } from "../../soil/types.ts";
import { type NamedNumber, numbers, table } from "../kit/table.ts";

/** Soils of the study from the surface down, each with the plausible range of its conductivity. */
export function layerTable({ summary }: SummarisedSoil): DisplayItem {
  const range = ([low, high]: readonly [number, number]) =>
    `${showNumber(low, 2)} to ${showNumber(high, 2)}`;
  return table(summary.layers, [
    { head: "soil", value: ({ texture }) => texture },
    { head: "from", value: ({ top }) => top, kind: "depth" },
    {
      head: "to, m",
      value: (layer) => Number.isFinite(layer.bottom) ? showNumber(layer.bottom, 2) : "bottom",
      right: true,
    },
    {
      head: "dry density",
      value: ({ dryDensity }) => dryDensity,
      kind: "density",
      us: false,
      digits: 0,
    },
    { head: "water", value: ({ moisture }) => moisture, kind: "share" },
    {
      head: "conductivity",
      value: ({ conductivity }) => conductivity,
      kind: "conductivity",
      us: false,
    },
    {
      head: "plausible, W/(m K)",
      value: ({ conductivityRange }) => range(conductivityRange),
      right: true,
    },
    { head: "measured", value: ({ measured }) => measured ? "yes" : "no: estimated" },
  ], "Soil layers from the surface down");
}

/**
 * The way from the tubes down to groundwater, and what it means.
 *
 * @param inputs soil section of the study
 * @param tubeDepth middle of the tubes below the surface, m
 */
export function groundWaterTable(inputs: SoilInputs, result: SummarisedSoil): DisplayItem {
  const water = inputs.waterTableDepth;
  const gap = result.summary.aboveWater;
  const rows: NamedNumber[] = [
    { label: "highest water table, below the surface", value: water, kind: "depth" },
    { label: "centre of the tubes", value: result.tubeDepth, kind: "depth" },
    {
      label: "soil between",
      value: gap === null ? null : Math.max(0, gap),
      kind: "depth",
      note: gapWords(gap),
    },
  ];
  return numbers(rows, "Groundwater");
}

function gapWords(gap: number | null): string {
  if (gap === null) return "not known: ask neighbours, check well records, look for mottling";
  if (gap <= 0) {
    return "the tubes fill with water: drain the site, raise the tubes or drop the store";
  }
  if (gap < 1) {
    return "too close: tubes may flood in a wet spring, and moving water carries the heat away";
  }
  return "clear of the tubes; water moving below still takes part of the heat";
}

/** By how much the column and the wave from air temperature part. */
export function estimatesTable(result: SoilResult): DisplayItem {
  const { difference } = result;
  return numbers([
    {
      label: "column minus wave at tube depth, annual mean",
      value: difference.mean,
      kind: "temperatureDifference",
    },
    {
      label: "the same, largest monthly difference",
      value: difference.largest,
      kind: "temperatureDifference",
    },
    { label: "frost depth from the column", value: result.frostDepth, kind: "depth" },
    {
      label: "frost depth from the wave",
      value: difference.waveFrostDepth,
      kind: "depth",
      note: "it ignores latent heat; a dash means the frost has no lower limit",
    },
    {
      label: "wave used by the other chapters, compared with the column",
      value: difference.waveFit,
      kind: "temperatureDifference",
      note: "root mean square, 0.5 to 5 m deep, all days",
    },
  ], "How far the estimates differ");
}
