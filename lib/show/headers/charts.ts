/** Pictures of the headers chapter. @module */
import * as Plot from "@observablehq/plot";
import type { SummarisedHeaders, TubeShare } from "../../headers/mod.ts";
import { dataTable } from "../kit/data_table.ts";
import { shown, shownRange } from "../kit/reader.ts";
import { type DisplayItem, figure } from "../kit/figure.ts";
import { GREY, PALETTE } from "../kit/palette.ts";

/** Flow of each tube over the mean, with the band of ±10 %. */
export function tubeFlowChart(headers: SummarisedHeaders): DisplayItem {
  const { tubes: rows, outside } = headers.summary;
  const top = Math.max(1.25, headers.flowMax * 1.08);
  return figure({
    height: 290,
    x: { label: "tube, numbered from the fan side, layer by layer", ...tubeAxis(rows.length) },
    y: { label: "flow over the mean, –", domain: [0, top] },
    marks: [
      Plot.rectY([{ low: 0.9, high: 1.1 }], {
        x1: 0.4,
        x2: rows.length + 0.6,
        y1: "low",
        y2: "high",
        fill: GREY,
      }),
      Plot.rectY(rows, {
        x1: (row: TubeShare) => row.tube - 0.38,
        x2: (row: TubeShare) => row.tube + 0.38,
        y: "share",
        fill: (row: TubeShare) => row.outside ? PALETTE.warm : PALETTE.air,
      }),
      Plot.ruleY([1], { stroke: PALETTE.ink, strokeDasharray: "4 3" }),
      Plot.ruleY([0], { stroke: PALETTE.ink }),
    ],
    color: { type: "identity" },
  }, {
    title: "Does every tube get its share?",
    alt: `Flow of each tube over the mean, from ${
      shownRange(headers.flowMin, headers.flowMax, "ratio")
    }; ${outside} of ${rows.length} tubes are outside ±10 %.`,
    legend: [
      { label: "within ±10 %", colour: PALETTE.air },
      { label: "outside", colour: PALETTE.warm },
      { label: "band of ±10 %", colour: GREY },
    ],
    table: dataTable(rows, [
      { head: "tube", value: (row) => row.tube, digits: 0 },
      { head: "depth", value: (row) => row.depth, kind: "depth" },
      { head: "flow over mean", value: (row) => row.share, digits: 3 },
      { head: "flow", value: (row) => row.flow, kind: "tubeFlow" },
    ]),
  });
}

/** Static pressure along supply and return header. */
export function pressureChart(headers: SummarisedHeaders): DisplayItem {
  const rows = headers.summary.tubes;
  const depths = [...new Set(rows.map((row) => row.depth))];
  const line = (y: "supplyPressure" | "returnPressure", stroke: string) =>
    depths.flatMap((depth) => [
      Plot.lineY(rows.filter((row) => row.depth === depth), {
        x: "tube",
        y,
        stroke,
        strokeWidth: 2.5,
      }),
      Plot.dot(rows.filter((row) => row.depth === depth), { x: "tube", y, fill: stroke, r: 1.8 }),
    ]);
  return figure({
    height: 290,
    x: { label: "tube, numbered from the fan side, layer by layer", ...tubeAxis(rows.length) },
    y: { label: "static pressure above the return outlet, Pa", grid: true },
    marks: [...line("supplyPressure", PALETTE.warm), ...line("returnPressure", PALETTE.cold)],
  }, {
    title: "Static pressure along the headers",
    alt: `Static pressure at each tube in the supply and in the return header; the difference ` +
      `drives the flow. Headers and tubes together take ${
        shown(headers.pressureDrop, "pressure")
      }.`,
    legend: [
      { label: "supply header", colour: PALETTE.warm, sign: "line" },
      { label: "return header", colour: PALETTE.cold, sign: "line" },
    ],
    table: dataTable(rows, [
      { head: "tube", value: (row) => row.tube, digits: 0 },
      { head: "supply", value: (row) => row.supplyPressure, kind: "pressure" },
      { head: "return", value: (row) => row.returnPressure, kind: "pressure" },
      { head: "across the tube", value: (row) => row.across, kind: "pressure" },
    ]),
  });
}

function tubeAxis(count: number): Plot.ScaleOptions {
  const step = count <= 20 ? 1 : count <= 50 ? 5 : 10;
  const ticks = Array.from({ length: count }, (_, index) => index + 1)
    .filter((tube) => tube === 1 || tube % step === 0);
  return { domain: [0.4, count + 0.6], ticks, tickFormat: (tube: number) => String(tube) };
}
