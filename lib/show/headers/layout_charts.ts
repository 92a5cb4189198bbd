/** Pictures that compare headers: layouts, workmanship. @module */
import { shown, shownRange } from "../kit/reader.ts";
import * as Plot from "@observablehq/plot";
import type { TubesResult } from "../../tubes/types.ts";
import type { HeaderLayout, HeadersResult, Spread } from "../../headers/mod.ts";
import { dataTable } from "../kit/data_table.ts";
import { type DisplayItem, figure } from "../kit/figure.ts";
import { PALETTE } from "../kit/palette.ts";
import { LAYOUT_NAMES } from "./layout_names.ts";

const LINES: Readonly<Record<HeaderLayout, { colour: string; dash: string }>> = {
  U: { colour: PALETTE.warm, dash: "" },
  Z: { colour: PALETTE.cold, dash: "8 3" },
  centre: { colour: PALETTE.latent, dash: "2 3" },
  "two-ended": { colour: PALETTE.ink, dash: "9 3 2 3" },
};

/** Share of each tube of the first group in every layout; of its upper layer, where it has several. */
export function layoutChart(
  variants: readonly { readonly layout: HeaderLayout; readonly result: HeadersResult }[],
  tubes: TubesResult,
): DisplayItem {
  const groups = variants[0]!.result.groups;
  const first = tubes.positions[groups.indexOf(0)]!.depth;
  const shown = (_: number, tube: number) =>
    groups[tube] === 0 && tubes.positions[tube]!.depth === first;
  const rows = variants.flatMap(({ layout, result }) =>
    [...result.shares].filter(shown).map((share, tube) => ({ layout, tube: tube + 1, share }))
  );
  const widest = variants.reduce((worst, one) =>
    one.result.unevenness > worst.result.unevenness ? one : worst
  );
  const shares = rows.map((row) => row.share);
  const count = rows.length / variants.length;
  return figure({
    height: 320,
    x: {
      label: "tube of one layer, numbered from the fed end",
      domain: [0.5, Math.max(1.5, count + 0.5)],
      tickFormat: (tube: number) => Number.isInteger(tube) ? String(tube) : "",
    },
    y: {
      label: "flow over the mean, –",
      grid: true,
      domain: [Math.min(0.88, ...shares) - 0.01, Math.max(1.12, ...shares) + 0.01],
    },
    marks: [
      Plot.ruleY([0.9, 1.1], { stroke: PALETTE.soil, strokeDasharray: "2 4" }),
      Plot.ruleY([1], { stroke: PALETTE.ink, strokeWidth: 0.7 }),
      ...count > 1 ? [] : [Plot.dot(rows, { x: "tube", y: "share", fill: PALETTE.ink, r: 3 })],
      ...variants.map(({ layout }) =>
        Plot.line(rows.filter((row) => row.layout === layout), {
          x: "tube",
          y: "share",
          stroke: LINES[layout].colour,
          strokeWidth: 2.3,
          ...LINES[layout].dash === "" ? {} : { strokeDasharray: LINES[layout].dash },
        })
      ),
    ],
  }, {
    title: "The same headers in four layouts",
    alt: `Flow of each tube over the mean in four layouts; the least even is ${
      LAYOUT_NAMES[widest.layout]
    }, from ${shownRange(widest.result.flowMin, widest.result.flowMax, "ratio")}.`,
    legend: variants.map(({ layout }) => ({
      label: LAYOUT_NAMES[layout],
      colour: LINES[layout].colour,
      sign: LINES[layout].dash === "" ? "line" as const : "dash" as const,
    })),
    note: "Dotted lines: ±10 %.",
    table: dataTable(variants, [
      { head: "layout", value: (row) => LAYOUT_NAMES[row.layout] },
      { head: "smallest over mean", value: (row) => row.result.flowMin, digits: 3 },
      { head: "largest over mean", value: (row) => row.result.flowMax, digits: 3 },
      { head: "unevenness (CV)", value: (row) => row.result.unevenness, kind: "sharePrecise" },
      { head: "pressure", value: (row) => row.result.pressureDrop, kind: "pressure", us: false },
      {
        head: "heat over that of an even field",
        value: (row) => row.result.heatFactor,
        kind: "sharePrecise",
      },
    ]),
  });
}

/** What the trials of one way to set the tube ends gave. */
export interface WorkmanshipOutcome {
  /** what was done */
  readonly name: string;
  /** spread over the drawn fields */
  readonly result: {
    readonly trials: number;
    readonly flowMin: Spread;
    readonly flowMax: Spread;
    readonly heatAtEqualFlow: Spread;
    readonly heatAtEqualPressure: Spread;
  };
}

/** Shares and heat of fields with tube ends set more and less carefully. */
export function workmanshipChart(studies: readonly WorkmanshipOutcome[]): DisplayItem {
  const rows = studies.flatMap(({ name, result }) => [
    {
      name,
      what: "tube with least air",
      colour: PALETTE.cold,
      symbol: "triangle2",
      ...result.flowMin,
    },
    {
      name,
      what: "tube with most air",
      colour: PALETTE.warm,
      symbol: "triangle",
      ...result.flowMax,
    },
    {
      name,
      what: "heat at constant flow",
      colour: PALETTE.ink,
      symbol: "circle",
      ...result.heatAtEqualFlow,
    },
    {
      name,
      what: "heat at constant fan pressure",
      colour: PALETTE.latent,
      symbol: "square",
      ...result.heatAtEqualPressure,
    },
  ]);
  const kinds = rows.slice(0, 4);
  const worst = studies.at(-1)!;
  return figure({
    height: 70 + 62 * studies.length,
    marginLeft: 250,
    x: { label: "ratio to the mean, or to flanged connectors, –", grid: true },
    y: { label: null, domain: studies.map(({ name }) => name) },
    marks: [
      Plot.ruleX([1], { stroke: PALETTE.ink, strokeWidth: 0.7 }),
      ...kinds.flatMap(({ what, colour, symbol }, index) => {
        const own = rows.filter((row) => row.what === what);
        const dy = -12 + 8 * index;
        return [
          Plot.link(own, {
            x1: "low",
            x2: "high",
            y1: "name",
            y2: "name",
            dy,
            stroke: colour,
            strokeWidth: 2,
          }),
          Plot.dot(own, {
            x: "mean",
            y: "name",
            dy,
            symbol: symbol as Plot.SymbolType,
            fill: colour,
            r: 4,
          }),
        ];
      }),
    ],
  }, {
    title: "The cost of careless holes",
    alt:
      `Smallest and largest tube flow and the heat of the field for ${studies.length} ways of setting the ` +
      `tube ends. In the worst case the tube with least air carries ${
        shown(worst.result.flowMin.mean, "ratio")
      } of the mean and the field gives ${
        shown(worst.result.heatAtEqualPressure.mean, "ratio")
      } of the heat at constant fan pressure.`,
    legend: kinds.map(({ what, colour }) => ({ label: what, colour })),
    note: `${worst.result.trials} random fields each; the line spans nine in ten.`,
    table: dataTable(rows, [
      { head: "tube ends", value: (row) => row.name },
      { head: "", value: (row) => row.what },
      { head: "mean", value: (row) => row.mean, digits: 3 },
      { head: "low (5 %)", value: (row) => row.low, digits: 3 },
      { head: "high (95 %)", value: (row) => row.high, digits: 3 },
    ]),
  });
}
