/** Tables that the headers chapter writes. @module */
import { type ResultTable, resultTable } from "../basics/mod.ts";
import type { WorkmanshipStudy } from "./careless_ends.ts";
import type { SummarisedHeaders } from "./summary.ts";
import type { HeadersVariants } from "./variants.ts";

/** Flow and pressures tube by tube. */
export function headersTables({ summary }: SummarisedHeaders): ResultTable[] {
  return [
    resultTable("headers-tubes", summary.tubes, [
      ["tube", "", (row) => row.tube],
      ["depth", "m", (row) => row.depth],
      ["flow over mean", "1", (row) => row.share],
      ["flow", "m3/s", (row) => row.flow],
      ["supply header", "Pa", (row) => row.supplyPressure],
      ["return header", "Pa", (row) => row.returnPressure],
      ["across the tube", "Pa", (row) => row.across],
    ]),
  ];
}

const SPREADS = [
  ["flowMin", "smallest flow over mean"],
  ["flowMax", "largest flow over mean"],
  ["heatAtEqualFlow", "heat at the same air flow over flanged"],
  ["heatAtEqualPressure", "heat at the same pressure over flanged"],
] as const;

function workmanshipTable(studies: readonly WorkmanshipStudy[]): ResultTable {
  const rows = studies.flatMap(({ name, result }) =>
    SPREADS.map(([key, words]) => ({ name, words, ...result[key] }))
  );
  return resultTable("headers-workmanship", rows, [
    ["tube ends", "", (row) => row.name],
    ["what", "", (row) => row.words],
    ["mean", "1", (row) => row.mean],
    ["low, 5 %", "1", (row) => row.low],
    ["high, 95 %", "1", (row) => row.high],
  ]);
}

/** Other sizes and layouts, careless ends, flooded tubes, plates. */
export function headersVariantsTables(variants: HeadersVariants): ResultTable[] {
  return [
    resultTable("headers-sizes", variants.sizes, [
      ["layout", "", (row) => row.layout],
      ["inside diameter", "m", (row) => row.diameter],
      ["area ratio", "1", (row) => row.areaRatio],
      ["smallest flow over mean", "1", (row) => row.flowMin],
      ["largest flow over mean", "1", (row) => row.flowMax],
      ["unevenness", "1", (row) => row.unevenness],
      ["pressure drop", "Pa", (row) => row.pressureDrop],
    ]),
    resultTable("headers-layouts", variants.layouts, [
      ["layout", "", (row) => row.layout],
      ["smallest flow over mean", "1", (row) => row.result.flowMin],
      ["largest flow over mean", "1", (row) => row.result.flowMax],
      ["unevenness", "1", (row) => row.result.unevenness],
      ["pressure drop", "Pa", (row) => row.result.pressureDrop],
      ["heat of an even field", "1", (row) => row.result.heatFactor],
    ]),
    resultTable("headers-wanted", variants.wanted, [
      ["layout", "", (row) => row.layout],
      ["wanted unevenness", "1", (row) => row.unevenness],
      ["inside diameter at least", "m", (row) => row.sized?.diameter ?? null],
      ["pressure drop", "Pa", (row) => row.sized?.pressureDrop ?? null],
    ]),
    workmanshipTable(variants.workmanship),
    resultTable("headers-flooded-tubes", variants.blocked, [
      ["group of tubes", "", (row) => row.name],
      ["smallest flow of the open tubes over mean", "1", (row) => row.flowMin],
      ["largest flow of the open tubes over mean", "1", (row) => row.flowMax],
      ["pressure drop", "Pa", (row) => row.pressureDrop],
      ["heat at the same air flow", "1", (row) => row.heat],
    ]),
    resultTable("headers-orifices", variants.balance.tubes, [
      ["tube", "", (_, index) => index + 1],
      ["flow over mean without orifices", "1", (row) => row.share],
      ["orifice diameter", "m", (row) => row.hole],
    ]),
  ];
}
