/** Pictures of the worth chapter. @module */
import * as Plot from "@observablehq/plot";
import { showNumber } from "../../units/mod.ts";
import { shown } from "../kit/reader.ts";
import type { Alternative, DoubtShare, MoneyYear, WorthResult } from "../../worth/mod.ts";
import { dataTable } from "../kit/data_table.ts";
import { type DisplayItem, figure } from "../kit/figure.ts";
import { pictureWidth } from "../kit/layout.ts";
import { PALETTE } from "../kit/palette.ts";
import { paragraph } from "../kit/table.ts";
import { hourPriceText, moneyText, priceText } from "./money_words.ts";

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

/** px that the words behind a bar take at most. */
const WORDS_BEHIND = 112;

/** What a kilowatt-hour saved costs by each way, beside that of the fuel. */
export function alternativesChart(worth: WorthResult): DisplayItem {
  const { alternatives, heatWorth, currency, fuel, missing } = worth;
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
    {
      head: "hours below the crop's limit avoided",
      value: (row) => row.cropHoursAvoided,
      kind: "hours",
    },
    {
      head: "cost of an hour avoided",
      value: (row) => hourPriceText(row.costOfHour, currency),
      right: true,
    },
    { head: "net savings", value: (row) => moneyText(row.netSavings, currency), right: true },
  ]);
  if (heatWorth === null || priced.length === 0) {
    return paragraph(`No costs are drawn: no price for ${missing.join(", ")}.`);
  }
  const most = Math.max(heatWorth, ...priced.map(({ costOfHeat }) => costOfHeat!));
  const room = pictureWidth() - 185 - 24; // px of the bars and the words behind them
  return figure({
    height: 90 + 28 * priced.length,
    marginLeft: 185,
    x: {
      label: `cost of a kilowatt-hour saved, ${currency}`,
      grid: true,
      domain: [0, most / (1 - WORDS_BEHIND / room)],
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
          `${showNumber(row.costOfHeat!, 3)}, ${shown(row.saved, "energy")}`,
        textAnchor: "start",
        dx: 5,
      }),
      Plot.ruleX([heatWorth], { stroke: PALETTE.ink, strokeDasharray: "4 3" }),
    ],
  }, {
    title: "What a kilowatt-hour saved costs",
    alt: `${
      priced.map(({ name, costOfHeat }) => `${name}: ${priceText(costOfHeat, currency)}`).join("; ")
    }; heat from ${fuel}: ${priceText(heatWorth, currency)}.`,
    note:
      "Each alone, heat levelised over the years like the rest. A way pays where its bar ends left of the dashed line.",
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

/** What the scatter of the net savings comes from, input by input. */
export function doubtChart({ doubt, missing, currency }: WorthResult): DisplayItem {
  if (doubt === null) return paragraph(`No doubt is drawn: no price for ${missing.join(", ")}.`);
  const { shares } = doubt;
  const percent = (value: number) => shown(Math.max(0, value), "share");
  return figure({
    height: 90 + 26 * shares.length,
    marginLeft: 150,
    x: { label: "share of the scatter of the net savings, %", grid: true, domain: [0, 100] },
    y: { domain: shares.map(({ input }) => input), label: null, padding: 0.3 },
    marks: [
      Plot.barX(shares, {
        x: (row: DoubtShare) => 100 * Math.max(0, row.total),
        y: "input",
        fill: PALETTE.soil,
      }),
      Plot.text(shares, {
        x: (row: DoubtShare) => 100 * Math.max(0, row.total),
        y: "input",
        text: (row: DoubtShare) => percent(row.total),
        textAnchor: "start",
        dx: 5,
      }),
    ],
  }, {
    title: "What to find out first",
    alt: `Net savings lie between ${moneyText(doubt.netSavings[0], currency)} and ${
      moneyText(doubt.netSavings[1], currency)
    }. ${shares.map(({ input, total }) => `${input}: ${percent(total)}`).join("; ")}.`,
    note: "Each input with all that it does together with others.",
    legend: [{ label: "share of the scatter", colour: PALETTE.soil }],
    table: dataTable(shares, [
      { head: "input", value: (row) => row.input },
      { head: "range to either side", value: (row) => row.range, kind: "share" },
      { head: "share alone", value: (row) => Math.max(0, row.first), kind: "share" },
      { head: "share with all others", value: (row) => Math.max(0, row.total), kind: "share" },
    ]),
  });
}

/** Bands of 95 % of the money figures, and how often the verdict would be another. */
export function doubtWords({ doubt, missing, currency, verdict, fuel }: WorthResult): DisplayItem {
  if (doubt === null) return paragraph(`No bands are given: no price for ${missing.join(", ")}.`);
  const even = doubt.breakEvenFuel;
  return paragraph(
    `In 95 of 100 cases the first cost lies between ${moneyText(doubt.capital[0], currency)} and ${
      moneyText(doubt.capital[1], currency)
    }, net savings between ${moneyText(doubt.netSavings[0], currency)} and ${
      moneyText(doubt.netSavings[1], currency)
    }` +
      (doubt.costOfHeat === null
        ? ""
        : `, the cost of the heat saved between ${priceText(doubt.costOfHeat[0], currency)} and ${
          priceText(doubt.costOfHeat[1], currency)
        }`) +
      (even === null
        ? ""
        : `. The store just pays with ${fuel} at ${showNumber(even[0], 1)} to ${
          showNumber(even[1], 1)
        } times today's price`) +
      `. The verdict would be another than "${verdict.word}" in ${
        shown(doubt.chanceVerdictFlips, "share")
      } of the cases. Find out first: ${doubt.shares[0]!.input}.`,
  );
}
