/** Picture of the search for tube fields. @module */
import { showNumber } from "../../units/mod.ts";
import * as Plot from "@observablehq/plot";
import type { FieldSearch } from "../../store/mod.ts";
import type { FieldCandidate } from "../../tubes/mod.ts";
import { dataTable } from "../kit/data_table.ts";
import { type DisplayItem, figure } from "../kit/figure.ts";
import { ownMarks } from "../kit/own_marks.ts";
import { PALETTE } from "../kit/palette.ts";

const CLASSES = [
  { colour: PALETTE.cold, symbol: "circle" },
  { colour: PALETTE.warm, symbol: "triangle" },
  { colour: PALETTE.latent, symbol: "square" },
] as const;

/** Heat against fan energy of the fields that no other one beats, marked by cost. */
export function searchChart(search: FieldSearch): DisplayItem {
  const { front, own, costClasses } = search;
  const refused = Object.entries(search.refused).sort((a, b) => b[1] - a[1])
    .map(([reason, count]) => `${reason} (${count})`).join(", ");
  if (costClasses === null) {
    const words = `No design meets the limits: ${refused}.`;
    return { "text/html": `<p>${words}</p>`, "text/plain": words };
  }
  const [low, high] = costClasses;
  const classOf = (field: FieldCandidate) => field.cost < low ? 0 : field.cost < high ? 1 : 2;
  const names = [`up to ${money(low)}`, `${money(low)} to ${money(high)}`, `above ${money(high)}`];
  const place = { x: "fanEnergy", y: "heat" } as const;
  return figure({
    height: 340,
    x: { label: "fan electricity, kWh a day", grid: true, zero: true },
    y: { label: "heat into the soil, kWh a day", grid: true, zero: true },
    marks: [
      ...CLASSES.map(({ colour, symbol }, index) =>
        Plot.dot(front.filter((field) => classOf(field) === index), {
          ...place,
          symbol,
          stroke: colour,
          strokeWidth: 1.8,
          r: 3.5,
        })
      ),
      ...ownMarks(own === null ? [] : [own], place),
    ],
    color: { type: "identity" },
  }, {
    title: "Designs that no other beats in heat, electricity and cost",
    alt: `${front.length} of ${search.allowed} allowed designs are unbeaten; heat against fan ` +
      `electricity, marked by cost in three classes. More heat costs more money or more electricity.`,
    note: "Same air flow, a daily air temperature swing about the soil, dry walls. Prices are " +
      `those of the price list: enter your own before choosing. Rejected: ${refused}.`,
    legend: CLASSES.map(({ colour }, index) => ({
      label: `${["circle", "triangle", "square"][index]}: cost ${names[index]}`,
      colour,
    })),
    table: dataTable(front, [
      { head: "tube", value: (row) => row.tube },
      { head: "number", value: (row) => row.count, digits: 0 },
      { head: "length", value: (row) => row.length, kind: "length", us: false },
      { head: "spacing", value: (row) => row.spacing, kind: "depth", us: false },
      { head: "layers", value: (row) => row.layers, digits: 0 },
      { head: "depth", value: (row) => row.depth, kind: "depth", us: false },
      { head: "heat a day", value: (row) => row.heat, kind: "energy", digits: 1, us: false },
      { head: "fan a day", value: (row) => row.fanEnergy, kind: "electricity", digits: 2 },
      { head: "cost", value: (row) => row.cost, digits: 0 },
    ]),
  });
}

function money(value: number): string {
  return showNumber(value, 0);
}
