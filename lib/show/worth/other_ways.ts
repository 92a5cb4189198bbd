/** All ways on one axis: house, store with its intake as planned or otherwise, other uses, heaters by fuel. @module */
import * as Plot from "@observablehq/plot";
import { showNumber } from "../../units/mod.ts";
import type { OtherWays, WorthResult } from "../../worth/mod.ts";
import { dataTable } from "../kit/data_table.ts";
import { type DisplayItem, figure } from "../kit/figure.ts";
import { PALETTE } from "../kit/palette.ts";
import { paragraph } from "../kit/table.ts";
import { hourPriceText, moneyText, priceText } from "./money_words.ts";

const COLOURS = {
  "on the house": PALETTE.warm,
  "heat store": PALETTE.soil,
  "house used otherwise": PALETTE.air,
  "heater alone": PALETTE.ink,
} as const;

/** One way on the axis. */
interface Way {
  readonly name: string;
  readonly kind: keyof typeof COLOURS;
  readonly change: string;
  readonly capital: number | null;
  readonly saved: number | null;
  readonly costOfHeat: number | null;
  readonly costOfHour: number | null;
}

function waysOf({ alternatives }: WorthResult, { uses, stores, fuels }: OtherWays): readonly Way[] {
  return [
    ...alternatives.map((one): Way => ({
      ...one,
      kind: one.kind === "store" ? "heat store" : "on the house",
    })),
    ...stores.map((one): Way => ({
      ...one,
      kind: "heat store",
      change: one.missing.length > 0
        ? `${one.change}; no price for ${one.missing.join(", ")}`
        : one.change,
    })),
    ...uses.map((one): Way => ({ ...one, kind: "house used otherwise" })),
    ...fuels.map((one): Way => ({
      name: `heater: ${one.fuel}`,
      kind: "heater alone",
      change: one.missing.length > 0
        ? `no price for ${one.missing.join(", ")}`
        : `holds the set point; fuel alone ${showNumber(one.fuelCost!, 3)} a kWh`,
      capital: one.capital,
      saved: null,
      costOfHeat: one.costOfHeat,
      costOfHour: one.costOfHour,
    })),
  ];
}

/** What a kilowatt-hour of heat costs by each way: not needed, given back by the store, or made. */
export function allWaysChart(worth: WorthResult, other: OtherWays): DisplayItem {
  const { currency } = other;
  const rows = waysOf(worth, other);
  const priced = rows.filter(({ costOfHeat }) => costOfHeat !== null)
    .toSorted((a, b) => a.costOfHeat! - b.costOfHeat!);
  if (priced.length === 0) return paragraph("No way is drawn: none has a price.");
  const most = Math.max(...priced.map(({ costOfHeat }) => costOfHeat!));
  return figure({
    height: 90 + 24 * priced.length,
    marginLeft: 185,
    x: { label: `cost of a kilowatt-hour, ${currency}`, grid: true, domain: [0, 1.15 * most] },
    y: { domain: priced.map(({ name }) => name), label: null, padding: 0.3 },
    marks: [
      Plot.barX(priced, { x: "costOfHeat", y: "name", fill: ({ kind }: Way) => COLOURS[kind] }),
      Plot.text(priced, {
        x: "costOfHeat",
        y: "name",
        text: ({ costOfHeat }: Way) => showNumber(costOfHeat!, 3),
        textAnchor: "start",
        dx: 5,
      }),
    ],
  }, {
    title: "Every way to a kilowatt-hour of heat",
    alt: priced.map(({ name, costOfHeat }) => `${name}: ${priceText(costOfHeat, currency)}`)
      .join("; ") + ".",
    note:
      "Each alone. Heaters with their first cost, over the heat of the house as it is. A house " +
      "used otherwise does not give the same crop; its price is what that costs.",
    legend: [...new Set(priced.map(({ kind }) => kind))].map((kind) => ({
      label: kind,
      colour: COLOURS[kind],
    })),
    table: dataTable(rows, [
      { head: "way", value: (row) => row.name },
      { head: "", value: (row) => row.kind },
      { head: "what", value: (row) => row.change },
      { head: "first cost", value: (row) => moneyText(row.capital, currency), right: true },
      { head: "heat saved", value: (row) => row.saved, kind: "energy" },
      {
        head: "cost of a kilowatt-hour",
        value: (row) => priceText(row.costOfHeat, currency),
        right: true,
      },
      {
        head: "cost of an hour below the crop's limit avoided",
        value: (row) => hourPriceText(row.costOfHour, currency),
        right: true,
      },
    ]),
  });
}
