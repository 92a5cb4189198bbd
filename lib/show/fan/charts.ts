/** Picture of the fan chapter. @module */
import * as Plot from "@observablehq/plot";
import type { FanInputs, SummarisedFan } from "../../fan/mod.ts";
import { dataTable } from "../kit/data_table.ts";
import { shown } from "../kit/reader.ts";
import { type DisplayItem, figure } from "../kit/figure.ts";
import { pictureWidth } from "../kit/layout.ts";
import { PALETTE } from "../kit/palette.ts";
import { DEFAULTS, wordsWidth } from "../kit/picture.ts";

/** Fan curve, system curve and the point where they meet, with the clean and the dirty filter. */
export function curveChart(result: SummarisedFan, inputs: FanInputs): DisplayItem {
  const { curve, dirtySystemCurve } = result.summary;
  const rated = result.curve.airFlow.map((x, index) => ({
    x,
    y: result.curve.staticPressure[index]!,
  }));
  const highest = Math.max(...curve.map((point) => point.pressure)) * 1.15;
  const furthest = result.curve.airFlow.at(-1)!;
  const system = [{ airFlow: 0, pressure: 0 }, ...result.systemCurve]
    .filter((point) => point.pressure <= highest && point.airFlow <= furthest);
  const dirtySystem = dirtySystemCurve.filter((point) => point.pressure <= highest);
  const dirty = result.dirtyFilter === null ? [] : [result.dirtyFilter];
  const point = { x: "airFlow", y: "pressure" } as const;
  const words = `${shown(result.airFlow, "airFlow")}, ${shown(result.pressure, "pressure")}`;
  const { marginLeft, marginRight } = DEFAULTS;
  const drawn = pictureWidth() - marginLeft - marginRight;
  const behind = (1 - result.airFlow / furthest) * drawn + marginRight; // px to the picture's end
  return figure({
    height: 340,
    x: { label: "air flow of the whole field, m³/s", grid: true, zero: true },
    y: { label: "pressure, Pa", grid: true, zero: true },
    marks: [
      Plot.lineY(curve, { ...point, stroke: PALETTE.cold, strokeWidth: 2.5 }),
      Plot.dot(rated, { x: "x", y: "y", fill: PALETTE.cold, r: 2.5 }),
      Plot.lineY(system, {
        ...point,
        stroke: PALETTE.warm,
        strokeWidth: 2.5,
        strokeDasharray: "7 3",
      }),
      Plot.lineY(dirtySystem, { ...point, stroke: PALETTE.latent, strokeDasharray: "2 3" }),
      Plot.dot(dirty, { ...point, r: 5, stroke: PALETTE.latent, strokeWidth: 2, fill: "white" }),
      Plot.dot([result], { ...point, r: 6, fill: PALETTE.ink }),
      Plot.text([result], {
        ...point,
        text: () => words,
        ...(behind > wordsWidth(words) + 12
          ? { textAnchor: "start" as const, dx: 12, dy: 3 }
          : { textAnchor: "end" as const, dx: -14, dy: 4 }),
        fill: PALETTE.ink,
        stroke: "white",
        strokeWidth: 5,
      }),
    ],
  }, {
    title: "What the fan delivers against this tube field",
    alt:
      `Fan curve and system curve meet at ${shown(result.airFlow, "airFlow")} and ${
        shown(result.pressure, "pressure")
      }.` + (result.dirtyFilter === null
        ? " With a dirty filter they no longer meet."
        : ` With a dirty filter at ${shown(result.dirtyFilter.airFlow, "airFlow")}.`),
    legend: [
      { label: `${inputs.count} × ${result.curve.name}`, colour: PALETTE.cold, sign: "line" },
      { label: "system", colour: PALETTE.warm, sign: "dash" },
      { label: "operating point", colour: PALETTE.ink },
      { label: "with a dirty filter", colour: PALETTE.latent, sign: "dash" },
    ],
    table: dataTable(rated, [
      { head: "air flow", value: (row) => row.x, kind: "airFlow" },
      { head: "fan static pressure", value: (row) => row.y, kind: "pressure" },
      {
        head: "electric power",
        value: (_, index) => result.curve.power[index]!,
        kind: "power",
        us: false,
      },
    ]),
  });
}
