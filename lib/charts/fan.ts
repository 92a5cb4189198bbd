/** Picture of the fan chapter. @module */
import * as Plot from "@observablehq/plot";
import type { FanCurve, FanInputs, FanResult } from "../fan/types.ts";
import { dataTable } from "./data_table.ts";
import { showSi } from "./display_units.ts";
import { type DisplayItem, figure } from "./figure.ts";
import { PALETTE } from "./palette.ts";
import type { Point } from "./thin.ts";

/** Density the fan curves are given at, kg/m³. AMCA 210 standard air. */
const STANDARD_DENSITY = 1.2;

/** What the picture needs. */
export interface FanChartInput {
  readonly result: FanResult;
  readonly inputs: FanInputs;
  readonly curve: FanCurve;
}

/**
 * The fan curve moved to the study's speed, number of fans and density by the fan laws:
 * flow ∝ speed, pressure ∝ speed²·density; fans side by side add their flows.
 */
export function movedFanCurve(input: FanChartInput, speed = input.inputs.speed): Point[] {
  return input.curve.airFlow.map((flow, index) => ({
    x: flow * speed * input.inputs.count,
    y: input.curve.staticPressure[index]! * speed ** 2 * input.result.density / STANDARD_DENSITY,
  }));
}

/** Fan curve, system curve and the point where they meet. */
export function fanChart(input: FanChartInput): DisplayItem {
  const { result } = input;
  const curve = movedFanCurve(input);
  const furthest = Math.max(...curve.map((point) => point.x), result.airFlow);
  const highest = Math.max(...curve.map((point) => point.y)) * 1.15;
  const system = Array.from({ length: 41 }, (_, index) => {
    const x = furthest * index / 40;
    return { x, y: result.systemCoefficient * x ** result.systemExponent };
  }).filter((point) => point.y <= highest);
  return figure({
    height: 340,
    x: { label: "air flow of the whole field, m³/s", grid: true, zero: true },
    y: { label: "pressure, Pa", grid: true, zero: true },
    marks: [
      Plot.lineY(curve, { x: "x", y: "y", stroke: PALETTE.cold, strokeWidth: 2.5 }),
      Plot.dot(curve, { x: "x", y: "y", fill: PALETTE.cold, r: 2.5 }),
      Plot.lineY(system, {
        x: "x",
        y: "y",
        stroke: PALETTE.warm,
        strokeWidth: 2.5,
        strokeDasharray: "7 3",
      }),
      Plot.dot([result], { x: "airFlow", y: "pressure", r: 6, fill: PALETTE.ink }),
      Plot.text([result], {
        x: "airFlow",
        y: "pressure",
        text: () => `${showSi(result.airFlow, "airFlow")}, ${showSi(result.pressure, "pressure")}`,
        textAnchor: "start",
        dx: 12,
        dy: 3,
        fill: PALETTE.ink,
        stroke: "white",
        strokeWidth: 5,
      }),
    ],
  }, {
    title: "What the fan delivers against this tube field",
    alt: `Fan curve and system curve meet at ${showSi(result.airFlow, "airFlow")} and ${
      showSi(result.pressure, "pressure")
    }.`,
    legend: [
      { label: `${input.inputs.count} × ${input.curve.name}`, colour: PALETTE.cold, sign: "line" },
      { label: "system", colour: PALETTE.warm, sign: "dash" },
      { label: "operating point", colour: PALETTE.ink },
    ],
    table: dataTable(curve, [
      { head: "air flow", value: (point) => point.x, kind: "airFlow" },
      { head: "fan static pressure", value: (point) => point.y, kind: "pressure" },
      {
        head: "system",
        value: (point) => result.systemCoefficient * point.x ** result.systemExponent,
        kind: "pressure",
      },
    ]),
  });
}
