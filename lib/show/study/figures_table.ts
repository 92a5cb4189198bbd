/** The figures of results.json as a table. @module */
import type { DisplayItem } from "../kit/figure.ts";
import { type Kind, showNumber, showPower, showSi, showUs } from "../../units/mod.ts";
import type { Figure, Figures } from "../../study/mod.ts";
import { readersUnits, shown } from "../kit/reader.ts";
import { table } from "../kit/table.ts";

// unit in results.json -> kind it is shown as
const KIND_OF_UNIT: Readonly<Record<string, Kind>> = {
  degC: "temperature",
  K: "temperatureDifference",
  kWh: "energy",
  "kWh/m2": "radiation",
  "kWh/(m2 d)": "dailyRadiation",
  "K d": "degreeDays",
  "W/K": "conductance",
  "W/(m K)": "conductivity",
  "m2/s": "diffusivity",
  m: "depth",
  m2: "area",
  "m/s": "speed",
  "m3/s": "airFlow",
  Pa: "pressure",
  W: "power",
  "W/(m3/s)": "specificPower",
  h: "hours",
};
const KIND_OF_KEY: Readonly<Record<string, Kind>> = {
  "fan.energyPerYear": "electricity",
  "tubes.count": "count",
  "tubes.diameter": "smallLength",
  "tubes.totalLength": "length",
  "tubes.length": "length",
  "tubes.flowPerTube": "tubeFlow",
  "headers.diameter": "smallLength",
  "tubes.effectiveness": "share",
  "store.recovery": "share",
  "store.carriedAcrossSeasons": "share",
};

/** A figure's value in the reader's units and in the others, as text; the second may be empty. */
export function figureTexts(key: string, figure: Figure): readonly [string, string] {
  const { value, unit } = figure;
  if (value === null) return ["–", ""];
  if (typeof value === "string") return [value, ""];
  const kind = KIND_OF_KEY[key] ?? KIND_OF_UNIT[unit];
  if (kind !== undefined) {
    const us = showUs(value, kind);
    if (us === "" || readersUnits() === "SI") return [showSi(value, kind), us];
    return [us, showSi(value, kind)];
  }
  if (value !== 0 && Math.abs(value) < 0.001) {
    return [`${showPower(value)} ${unitText(unit)}`.trim(), ""];
  }
  return [`${showNumber(value, 2)} ${unitText(unit)}`.trim(), ""];
}

/** The range of a figure in the reader's units, as text; empty where it has none. */
function rangeText(key: string, { low, high, unit }: Figure): string {
  if (low === undefined || high === undefined) return "";
  const kind = KIND_OF_KEY[key] ?? KIND_OF_UNIT[unit];
  const [from, to] = [low, high].map((value) =>
    kind === undefined ? `${showNumber(value, 2)} ${unitText(unit)}`.trim() : shown(value, kind)
  );
  return `${from} to ${to}`;
}

function unitText(unit: string): string {
  return unit === "1" ? "" : unit;
}

/**
 * The figures of one chapter, or of all. Provisional ones are left out, so that a figure has one value
 * in all notebooks; the chapter's own tables and cards hold them in their own words.
 *
 * @param figures from the run
 * @param chapter such as "soil"; every chapter without it
 */
export function figuresTable(figures: Figures, chapter?: string): DisplayItem {
  const rows = Object.entries(figures)
    .filter(([key]) => chapter === undefined || key.startsWith(`${chapter}.`))
    .filter(([, figure]) => figure.provisional !== true)
    .map(([key, figure]) => ({ key, figure, texts: figureTexts(key, figure) }));
  const ranges = rows.some((row) => row.figure.low !== undefined);
  const [first, second] = readersUnits() === "US" ? ["US", "SI"] as const : ["SI", "US"] as const;
  return table(rows, [
    { head: "figure", value: (row) => row.figure.label },
    { head: first, value: (row) => row.texts[0], right: true },
    { head: second, value: (row) => row.texts[1], right: true },
    ...(ranges
      ? [{
        head: "95 % range",
        value: (row: typeof rows[number]) => rangeText(row.key, row.figure),
        right: true,
      }]
      : []),
    { head: "key in results.json", value: (row) => row.key },
  ]);
}
