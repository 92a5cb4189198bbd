/** Tables that the tubes chapter writes. @module */
import { type ResultTable, resultTable } from "../basics/mod.ts";
import type { SummarisedTubes } from "./summary.ts";
import type { TubesResult } from "./types.ts";
import type { TubesVariants } from "./variants.ts";

/** Effectiveness and pressure by length. */
export function tubesTables({ summary }: SummarisedTubes): ResultTable[] {
  return [
    resultTable("tubes-by-length", summary.byLength, [
      ["length", "m", (row) => row.length],
      ["effectiveness", "1", (row) => row.effectiveness],
      ["gain of one more metre", "1/m", (row) => row.gainPerMetre],
      ["pressure drop", "Pa", (row) => row.pressureDrop],
    ]),
  ];
}

function fieldTable(name: string, rows: readonly TubesResult[]): ResultTable {
  return resultTable(name, rows, [
    ["number of tubes", "", (row) => row.count],
    ["air speed", "m/s", (row) => row.airSpeed],
    ["flow per tube", "m3/s", (row) => row.flowPerTube],
    ["pressure drop", "Pa", (row) => row.pressureDrop],
    ["effectiveness", "1", (row) => row.effectiveness],
  ]);
}

/** Other tubes, flows, numbers and lengths; silt and water. */
export function tubesVariantsTables(variants: TubesVariants): ResultTable[] {
  const lengths = variants.lengths.flatMap(({ days, rows }) =>
    rows.map((row) => ({ days, ...row }))
  );
  return [
    fieldTable("tubes-at-flows", variants.flows),
    fieldTable("tubes-at-counts", variants.counts),
    resultTable("tubes-materials", variants.materials, [
      ["tube", "", (row) => row.product.id],
      ["inside diameter", "m", (row) => row.product.insideDiameter],
      ["air speed", "m/s", (row) => row.airSpeed],
      ["friction factor", "1", (row) => row.friction],
      ["friction factor, smooth", "1", (row) => row.smoothFriction],
      ["pressure drop", "Pa", (row) => row.pressureDrop],
      ["film coefficient", "W/(m2 K)", (row) => row.film],
      ["effectiveness", "1", (row) => row.effectiveness],
    ]),
    resultTable("tubes-heat-by-length", lengths, [
      ["period of the wave", "d", (row) => row.days],
      ["length", "m", (row) => row.length],
      ["heat in half a wave", "kWh", (row) => row.heat],
      ["next metre, each day", "kWh/(m d)", (row) => row.marginalHeatPerDay],
      ["pressure drop", "Pa", (row) => row.pressureDrop],
    ]),
    resultTable("tubes-silt-and-water", variants.fouled, [
      ["in the tube", "", (row) => row.name],
      ["deepest", "m", (row) => row.filling.depth],
      ["water", "l", (row) => row.litres],
      ["flow over a clean tube's", "1", (row) => row.flow],
      ["heat over a clean tube's", "1", (row) => row.heat],
    ]),
  ];
}
