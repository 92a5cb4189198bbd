/** "Do this first": what house improvements and the store bring, as bars and in numbers. @module */
import * as Plot from "@observablehq/plot";
import type { RankedMeasure } from "../../store/mod.ts";
import { shown } from "../kit/reader.ts";
import { type DisplayItem, figure } from "../kit/figure.ts";
import { siText } from "../kit/si_text.ts";
import { PALETTE } from "../kit/palette.ts";
import { table } from "../kit/table.ts";

/** "+1.2 K", with its sign */
function gainText(gain: number): string {
  const text = shown(gain, "temperatureDifference");
  return `${text.startsWith("−") || Number.parseFloat(text) === 0 ? "" : "+"}${text}`;
}

const COLOURS: Readonly<Record<RankedMeasure["kind"], string>> = {
  present: PALETTE.air,
  house: PALETTE.warm,
  store: PALETTE.soil,
};

/** Heat saved by each measure alone, from the most; the first entry of the ranking is the house as it is. */
export function measuresChart(ranking: readonly RankedMeasure[]): DisplayItem {
  const [base, ...measures] = ranking;
  const best = measures[0];
  const most = Math.max(1, ...measures.map((measure) => measure.saved));
  const least = Math.min(0, ...measures.map((measure) => measure.saved));
  return figure({
    height: 62 + measures.length * 34,
    marginLeft: 170,
    marginTop: 10,
    x: {
      domain: [least * 1.05, most * 1.75],
      label: "heat demand saved, kWh a year",
      grid: true,
    },
    y: { domain: measures.map((measure) => measure.name), label: null, padding: 0.3 },
    marks: [
      Plot.barX(measures, {
        x: "saved",
        y: "name",
        fill: (measure: RankedMeasure) => COLOURS[measure.kind],
      }),
      Plot.text(measures, {
        x: (measure: RankedMeasure) => Math.max(0, measure.saved),
        y: "name",
        text: (measure: RankedMeasure) =>
          `${shown(measure.saved, "energy")}, ${siText(measure.savedShare, "share")}; ` +
          `coldest hour ${gainText(measure.coldestHourGain)}`,
        textAnchor: "start",
        dx: 5,
      }),
      Plot.ruleX([0], { stroke: PALETTE.ink }),
    ],
  }, {
    title: "What each improvement saves",
    legend: [
      { label: "house improvement", colour: COLOURS.house },
      ...(measures.some(({ kind }) => kind === "store")
        ? [{ label: "heat store", colour: COLOURS.store }]
        : []),
    ],
    alt: best === undefined || base!.heatDemand <= 0
      ? "There is no heat to save: the house holds its set point without heating."
      : `Heat demand saved by each improvement on its own in this climate; most by ${best.name}: ${
        shown(best.saved, "energy")
      } of ${shown(base!.heatDemand, "energy")} a year.`,
    note: base!.heatDemand <= 0
      ? "No heat to save in this climate; only the coldest hour changes."
      : "Each on its own, all else unchanged, on its own settled ground, the fan always off but for the store: two together save less than the sum.",
  });
}

/** What each improvement brings, the house as it is in the first line. */
export function measuresTable(ranking: readonly RankedMeasure[]): DisplayItem {
  return table(ranking, [
    { head: "measure", value: (row) => row.name },
    { head: "what is changed", value: (row) => row.change },
    { head: "heat demand", value: (row) => row.heatDemand, kind: "energy", us: false },
    { head: "saved", value: (row) => row.saved, kind: "energy", us: false },
    { head: "coldest hour, unheated", value: (row) => row.coldestHour, kind: "temperature" },
    { head: "below freezing", value: (row) => row.hoursBelowFreezing, kind: "hours" },
  ]);
}
