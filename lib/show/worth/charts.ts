/** Pictures of the worth chapter. @module */
import * as Plot from "@observablehq/plot";
import { showNumber, showSi } from "../../units/mod.ts";
import type { Alternative, MoneyYear, WorthResult } from "../../worth/mod.ts";
import { dataTable } from "../kit/data_table.ts";
import { type DisplayItem, figure } from "../kit/figure.ts";
import { PALETTE } from "../kit/palette.ts";
import { paragraph } from "../kit/table.ts";
import { moneyText, priceText } from "./money_words.ts";

/** What was saved less what was spent, year by year. */
export function balanceChart({ earnings, currency, missing }: WorthResult): DisplayItem {
  if (earnings === null) {
    return paragraph(`No balance is drawn: no price for ${missing.join(", ")}.`);
  }
  const { cashFlow } = earnings;
  const last = cashFlow.at(-1)!;
  return figure({
    height: 320,
    marginLeft: 70,
    x: { label: "years from today", grid: true },
    y: { label: `saved less spent, ${currency}`, grid: true },
    marks: [
      Plot.ruleY([0], { stroke: PALETTE.ink }),
      Plot.lineY(cashFlow, { x: "year", y: "balance", stroke: PALETTE.soil, strokeWidth: 2.5 }),
      Plot.lineY(cashFlow, {
        x: "year",
        y: "undiscounted",
        stroke: PALETTE.warm,
        strokeDasharray: "7 3",
      }),
    ],
  }, {
    title: "The store against a heater alone, year by year",
    alt: `From ${moneyText(cashFlow[0]!.balance, currency)} today to ${
      moneyText(last.balance, currency)
    } after ${last.year} years, discounted.`,
    note: "Steps down are things bought again. What is left at the end is not in the lines.",
    legend: [
      { label: "discounted", colour: PALETTE.soil, sign: "line" },
      { label: "not discounted", colour: PALETTE.warm, sign: "dash" },
    ],
    table: dataTable(cashFlow, [
      { head: "year", value: (row: MoneyYear) => row.year, kind: "count" },
      { head: "discounted", value: (row) => moneyText(row.balance, currency), right: true },
      {
        head: "not discounted",
        value: (row) => moneyText(row.undiscounted, currency),
        right: true,
      },
    ]),
  });
}

const KIND_WORDS: Readonly<Record<Alternative["kind"], string>> = {
  house: "house, still to do",
  store: "heat store",
};
const KIND_COLOURS: Readonly<Record<Alternative["kind"], string>> = {
  house: PALETTE.warm,
  store: PALETTE.soil,
};

/** What a kilowatt-hour saved costs by each way, beside that of the fuel. */
export function alternativesChart(worth: WorthResult): DisplayItem {
  const { alternatives, heatPrice, currency, fuel, missing } = worth;
  const priced = alternatives.filter(({ costOfHeat, saved }) => costOfHeat !== null && saved > 0);
  const rows = dataTable(alternatives, [
    { head: "way", value: (row) => row.name },
    { head: "", value: (row) => row.change },
    { head: "heat saved", value: (row) => row.saved, kind: "energy" },
    {
      head: "coldest hour warmer by",
      value: (row) => row.coldestHourGain,
      kind: "temperatureDifference",
    },
    { head: "first cost", value: (row) => moneyText(row.capital, currency), right: true },
    {
      head: "cost of heat saved",
      value: (row) => priceText(row.costOfHeat, currency),
      right: true,
    },
    { head: "net savings", value: (row) => moneyText(row.netSavings, currency), right: true },
  ]);
  if (heatPrice === null || priced.length === 0) {
    return paragraph(`No costs are drawn: no price for ${missing.join(", ")}.`);
  }
  const most = Math.max(heatPrice, ...priced.map(({ costOfHeat }) => costOfHeat!));
  return figure({
    height: 90 + 28 * priced.length,
    marginLeft: 185,
    x: {
      label: `cost of a kilowatt-hour saved, ${currency}`,
      grid: true,
      domain: [0, 1.2 * most],
    },
    y: { domain: priced.map(({ name }) => name), label: null, padding: 0.3 },
    marks: [
      Plot.barX(priced, {
        x: "costOfHeat",
        y: "name",
        fill: (row: Alternative) => KIND_COLOURS[row.kind],
      }),
      Plot.text(priced, {
        x: "costOfHeat",
        y: "name",
        text: (row: Alternative) =>
          `${showNumber(row.costOfHeat!, 3)}, ${showSi(row.saved, "energy")}`,
        textAnchor: "start",
        dx: 5,
      }),
      Plot.ruleX([heatPrice], { stroke: PALETTE.ink, strokeDasharray: "4 3" }),
    ],
  }, {
    title: "What a kilowatt-hour saved costs",
    alt: `${
      priced.map(({ name, costOfHeat }) => `${name}: ${priceText(costOfHeat, currency)}`).join("; ")
    }; heat from ${fuel}: ${priceText(heatPrice, currency)}.`,
    note: "Each alone. A way pays where its bar ends left of the dashed line.",
    legend: [
      ...[...new Set(priced.map(({ kind }) => kind))].map((kind) => ({
        label: KIND_WORDS[kind],
        colour: KIND_COLOURS[kind],
      })),
      { label: `heat from ${fuel}`, colour: PALETTE.ink, sign: "dash" as const },
    ],
    table: rows,
  });
}
