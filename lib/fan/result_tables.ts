/** Tables that the fan chapter writes. @module */
import { type ResultColumn, type ResultTable, resultTable } from "../basics/mod.ts";
import type { SummarisedFan } from "./summary.ts";
import type { FanTrial } from "./trial.ts";
import type { FanVariants } from "./variants.ts";

/** The operating points of the two modes of the store. */
function fanModes({ charge, discharge }: SummarisedFan) {
  return [{ name: "charging", ...charge }, { name: "discharging", ...discharge }];
}

/** Curve of the fans and of the field. */
export function fanTables(result: SummarisedFan): ResultTable[] {
  const curve: readonly ResultColumn<{ readonly airFlow: number; readonly pressure: number }>[] = [
    ["air flow", "m3/s", (row) => row.airFlow],
    ["pressure", "Pa", (row) => row.pressure],
  ];
  return [
    resultTable("fan-curve", result.summary.curve, curve),
    resultTable("fan-system-curve", result.systemCurve, curve),
    resultTable("fan-modes", fanModes(result), [
      ["fan", "", (row) => row.name],
      ["air flow", "m3/s", (row) => row.airFlow],
      ["pressure", "Pa", (row) => row.pressure],
      ["electric power", "W", (row) => row.power],
    ]),
  ];
}

const POINT: readonly ResultColumn<FanTrial>[] = [
  ["air flow", "m3/s", ({ result }) => result?.airFlow ?? null],
  ["flow over design", "1", ({ result }) => result?.flowRatio ?? null],
  ["pressure", "Pa", ({ result }) => result?.pressure ?? null],
  ["electric power", "W", ({ result }) => result?.power ?? null],
  ["efficiency", "1", ({ result }) => result?.efficiency ?? null],
  ["why there is no point", "", ({ reason }) => reason],
];

/** Other fans, numbers, speeds and elevations. */
export function fanVariantsTables(variants: FanVariants): ResultTable[] {
  const { counts, speeds, choices, elevations } = variants;
  return [
    resultTable<FanTrial>("fan-counts", counts, [["fans", "", ({ name }) => name], ...POINT]),
    resultTable("fan-speeds", speeds, [["speed over rated", "1", (row) => row.speed], ...POINT]),
    resultTable<FanTrial>("fan-choices", choices, [["fan", "", ({ name }) => name], ...POINT]),
    resultTable("fan-elevations", elevations, [
      ["elevation", "m", (row) => row.elevation],
      ["heat per kelvin", "W/K", (row) => row.capacityRate],
      ...POINT,
    ]),
  ];
}
