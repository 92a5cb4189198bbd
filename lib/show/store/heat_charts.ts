/** Pictures of the store chapter: heat in and out. @module */
import * as Plot from "@observablehq/plot";
import type { SummarisedStore } from "../../store/mod.ts";
import type { StoreResult } from "../../store/types.ts";
import { axisDate, MONTHS, monthTicks, QUARTERS } from "../kit/calendar.ts";
import { siText } from "../kit/si_text.ts";
import { dataTable } from "../kit/data_table.ts";
import { shown } from "../kit/reader.ts";
import { type DisplayItem, figure } from "../kit/figure.ts";
import { PALETTE } from "../kit/palette.ts";
import { hourlyPoints, type Point, thin } from "../kit/thin.ts";

/** Heat put in above the line, given back below it, sensible and latent apart. */
export function monthlyHeatChart(result: SummarisedStore): DisplayItem {
  const months = result.summary.heatMonths;
  const bars = months.flatMap((row) => {
    const month = MONTHS[row.month]!;
    return [
      { month, from: 0, to: row.sensibleIn, colour: PALETTE.warm },
      { month, from: row.sensibleIn, to: row.sensibleIn + row.latentIn, colour: PALETTE.latent },
      { month, from: 0, to: -row.sensibleOut, colour: PALETTE.cold },
      { month, from: -row.sensibleOut, to: -row.sensibleOut - row.latentOut, colour: PALETTE.ink },
    ];
  });
  return figure({
    height: 330,
    marginLeft: 70,
    x: { domain: MONTHS, label: null, padding: 0.25 },
    y: { label: "heat into the soil, kWh a month", grid: true },
    color: { type: "identity" },
    marks: [
      Plot.barY(bars, { x: "month", y1: "from", y2: "to", fill: "colour" }),
      Plot.ruleY([0], { stroke: PALETTE.ink }),
    ],
  }, {
    title: "Heat charged and discharged, month by month",
    alt: `Heat charged into the tube walls ${shown(result.heatIn, "energy")} a year, discharged ${
      shown(result.heatOut, "energy")
    }; latent part of the heat charged ${shown(result.latentIn, "energy")}.`,
    note: "Above the line: charged into the soil. Below: discharged into the house.",
    legend: [
      { label: "charged, sensible", colour: PALETTE.warm },
      { label: "charged, latent (condensing)", colour: PALETTE.latent },
      { label: "discharged, sensible", colour: PALETTE.cold },
      { label: "discharged, latent (evaporating)", colour: PALETTE.ink },
    ],
    table: dataTable(months, [
      { head: "month", value: (row) => MONTHS[row.month]! },
      { head: "charged, sensible", value: (row) => row.sensibleIn, kind: "energy" },
      { head: "charged, latent", value: (row) => row.latentIn, kind: "energy" },
      { head: "discharged, sensible", value: (row) => row.sensibleOut, kind: "energy" },
      { head: "discharged, latent", value: (row) => row.latentOut, kind: "energy" },
      { head: "fan", value: (row) => row.fan, kind: "energy", us: false },
      { head: "water left in the tubes", value: (row) => row.condensate, kind: "mass" },
    ]),
  });
}

/** Running totals of heat in, heat back and their difference through the year. */
export function cumulativeHeatChart(result: SummarisedStore): DisplayItem {
  const { heatIn, heatOut, difference } = result.summary.runningTotals;
  const lines = [
    { label: "charged", colour: PALETTE.warm, points: hourlyPoints(heatIn) },
    { label: "discharged", colour: PALETTE.cold, points: hourlyPoints(heatOut) },
    { label: "difference", colour: PALETTE.ink, points: hourlyPoints(difference) },
  ];
  return figure({
    height: 300,
    marginLeft: 70,
    x: { type: "utc", label: null, grid: true, ticks: monthTicks(), tickFormat: "%b" },
    y: { label: "heat since 1 January, kWh", grid: true },
    marks: [
      Plot.ruleY([0], { stroke: PALETTE.ink, strokeWidth: 0.8 }),
      ...lines.map((line) =>
        Plot.lineY(thin(line.points, 400), {
          x: (point: Point) => axisDate(point.x),
          y: "y",
          stroke: line.colour,
          strokeWidth: 2.2,
          ...(line.label === "difference" ? { strokeDasharray: "5 3" } : {}),
        })
      ),
    ],
  }, {
    title: "Heat charged and discharged since 1 January",
    alt: `Running totals of heat charged and discharged. Where the dashed line rises, the ground ` +
      `is filling; where it falls, it is emptying. Recovery over the year: ${
        siText(result.recovery, "share", "none, as nothing is charged")
      }.`,
    legend: lines.map((line) => ({
      label: line.label,
      colour: line.colour,
      sign: line.label === "difference" ? "dash" : "line",
    })),
  });
}

/** When the heat discharged in each quarter was put in. */
export function quartersChart(result: StoreResult): DisplayItem {
  const origins = [...QUARTERS.map((name) => `charged ${name}`), "undisturbed ground"];
  const colours = [PALETTE.cold, PALETTE.air, PALETTE.warm, PALETTE.soil, PALETTE.ink];
  const bars = result.quarters.flatMap((row, quarter) =>
    row.map((heat, origin) => ({ quarter: QUARTERS[quarter]!, origin: origins[origin]!, heat }))
  );
  return figure({
    height: 290,
    marginLeft: 70,
    x: { domain: QUARTERS as string[], label: "discharged in", padding: 0.3 },
    y: { label: "heat discharged, kWh", grid: true },
    color: { domain: origins, range: colours },
    marks: [
      Plot.barY(bars, { x: "quarter", y: "heat", fill: "origin", order: origins }),
      Plot.ruleY([0], { stroke: PALETTE.ink }),
    ],
  }, {
    title: "Heat discharged, by the quarter it was charged in",
    alt: `Heat discharged in each quarter, by the quarter it was charged in; ${
      siText(result.carriedAcrossSeasons, "share", "none")
    } was charged in an earlier quarter.`,
    legend: origins.map((label, index) => ({ label, colour: colours[index]! })),
    table: dataTable(result.quarters, [
      { head: "discharged in", value: (_, index) => QUARTERS[index]! },
      ...origins.map((head, origin) => ({
        head,
        value: (row: readonly number[]) => row[origin] ?? null,
        kind: "energy" as const,
      })),
    ]),
  });
}
