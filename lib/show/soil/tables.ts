/** Tables of the soil notebook: layers with their ranges, and the way down to groundwater. @module */
import type { DisplayItem } from "../kit/figure.ts";
import { showNumber } from "../../units/mod.ts";
import { soilProperties } from "../../soil/mod.ts";
import type { SoilInputs, SoilResult } from "../../soil/types.ts";
import { type NamedNumber, numbers, table } from "../kit/table.ts";

/** Soils of the study from the surface down, each with the plausible range of its conductivity. */
export function layerTable(inputs: SoilInputs): DisplayItem {
  let bottom = 0;
  const layers = [...inputs.layers ?? [], { ...inputs, thickness: Infinity }].map((make) => ({
    make,
    top: bottom,
    bottom: bottom += make.thickness,
    properties: soilProperties(make),
  }));
  const range = ([low, high]: readonly [number, number]) =>
    `${showNumber(low, 2)} to ${showNumber(high, 2)}`;
  return table(layers, [
    { head: "soil", value: ({ make }) => make.texture },
    { head: "from", value: ({ top }) => top, kind: "depth" },
    {
      head: "to, m",
      value: (layer) => Number.isFinite(layer.bottom) ? showNumber(layer.bottom, 2) : "bottom",
      right: true,
    },
    {
      head: "dry density",
      value: ({ make }) => make.dryDensity,
      kind: "density",
      us: false,
      digits: 0,
    },
    { head: "water", value: ({ make }) => make.moisture, kind: "share" },
    {
      head: "conductivity",
      value: ({ properties }) => properties.conductivity,
      kind: "conductivity",
      us: false,
    },
    {
      head: "plausible, W/(m K)",
      value: ({ properties }) => range(properties.conductivityRange),
      right: true,
    },
    {
      head: "measured",
      value: ({ make }) => make.measuredConductivity === null ? "no: estimated" : "yes",
    },
  ], "Soil layers from the surface down");
}

/**
 * The way from the tubes down to groundwater, and what it means.
 *
 * @param inputs soil section of the study
 * @param tubeDepth middle of the tubes below the surface, m
 */
export function groundWaterTable(inputs: SoilInputs, tubeDepth: number): DisplayItem {
  const water = inputs.waterTableDepth;
  const gap = water === null ? null : water - tubeDepth;
  const rows: NamedNumber[] = [
    { label: "highest water table, below the surface", value: water, kind: "depth" },
    { label: "centre of the tubes", value: tubeDepth, kind: "depth" },
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
