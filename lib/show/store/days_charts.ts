/** Pictures of the store chapter: heat day by day, and how full the store is. @module */
import * as Plot from "@observablehq/plot";
import type { SummarisedStore } from "../../store/mod.ts";
import { axisDate, dayName, monthTicks, QUARTERS } from "../kit/calendar.ts";
import { dataTable } from "../kit/data_table.ts";
import { shown } from "../kit/reader.ts";
import { type DisplayItem, figure } from "../kit/figure.ts";
import { lineLegend, timePlot } from "../kit/lines.ts";
import { PALETTE } from "../kit/palette.ts";

/** Heat of every day: put in above the line, given back below, sensible and latent apart. */
export function dailyHeatChart(result: SummarisedStore): DisplayItem {
  const days = result.summary.heatDays;
  const best = days.reduce((a, b) =>
    a.sensibleIn + a.latentIn >= b.sensibleIn + b.latentIn ? a : b
  );
  const bars = days.flatMap((row) => {
    const x1 = axisDate(row.day * 24);
    const x2 = axisDate(row.day * 24 + 24);
    return [
      { x1, x2, y1: 0, y2: row.sensibleIn, colour: PALETTE.warm },
      { x1, x2, y1: row.sensibleIn, y2: row.sensibleIn + row.latentIn, colour: PALETTE.latent },
      { x1, x2, y1: 0, y2: -row.sensibleOut, colour: PALETTE.cold },
      { x1, x2, y1: -row.sensibleOut, y2: -row.sensibleOut - row.latentOut, colour: PALETTE.ink },
    ].filter((bar) => Math.abs(bar.y2 - bar.y1) > 0.05);
  });
  return figure({
    height: 300,
    marginLeft: 70,
    x: {
      type: "utc",
      label: null,
      ticks: monthTicks(),
      tickFormat: "%b",
      domain: [axisDate(0), axisDate(8760)],
    },
    y: { label: "heat into the soil, kWh a day", grid: true },
    color: { type: "identity" },
    marks: [
      Plot.rect(bars, { x1: "x1", x2: "x2", y1: "y1", y2: "y2", fill: "colour", inset: 0 }),
      Plot.ruleY([0], { stroke: PALETTE.ink }),
    ],
  }, {
    title: "Heat charged and discharged, day by day",
    alt: `Heat into the tube walls and back, every day of the year. Most is charged on ${
      dayName(best.day)
    }: ${shown(best.sensibleIn + best.latentIn, "energy")}.`,
    note: "Above the line: charged into the soil. Below: discharged into the house.",
    legend: [
      { label: "charged, sensible", colour: PALETTE.warm },
      { label: "charged, latent (condensing)", colour: PALETTE.latent },
      { label: "discharged, sensible", colour: PALETTE.cold },
      { label: "discharged, latent (evaporating)", colour: PALETTE.ink },
    ],
  });
}

/** How full the store is through the year, between its own coldest and warmest. */
export function stateOfChargeChart(result: SummarisedStore): DisplayItem {
  const percent = Float64Array.from(result.stateOfCharge, (share) => share * 100);
  const lines = [
    { label: "state of charge", colour: PALETTE.soil, series: percent, width: 1.6 },
  ];
  const { chargeByQuarter, chargeEnds: [low, high] } = result.summary;
  return figure(
    timePlot({ lines, start: 0, hours: 8760, axis: "state of charge, %", limits: [0, 100] }),
    {
      title: "How full the store is",
      alt: `State of charge through the year: 0 % is ${shown(low, "temperature")} between the ` +
        `tubes, 100 % is ${shown(high, "temperature")}.`,
      note:
        "A thermometer between the tubes, scaled between its lowest and highest readings of the year. " +
        "The house can only draw heat from soil warmer than itself.",
      legend: lineLegend(lines),
      table: dataTable(chargeByQuarter, [
        { head: "quarter", value: (_, quarter) => QUARTERS[quarter]! },
        { head: "lowest, %", value: (row) => row.lowest * 100, digits: 0 },
        { head: "mean, %", value: (row) => row.mean * 100, digits: 0 },
        { head: "highest, %", value: (row) => row.highest * 100, digits: 0 },
      ]),
    },
  );
}
