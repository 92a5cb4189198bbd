/** Tables of the worth chapter for the files of a run. @module */
import { type ResultTable, resultTable } from "../basics/mod.ts";
import type { WorthResult } from "./types.ts";

/** Costs item by item, and money year by year; money in the currency of the price list. */
export function worthTables(worth: WorthResult): readonly ResultTable[] {
  const money = worth.currency ?? "";
  const { costs, earnings } = worth;
  return [
    ...(costs === null ? [] : [
      resultTable("worth-costs", costs.rows, [
        ["part", "", (row) => row.part],
        ["item", "", (row) => row.item],
        ["to order", "", (row) => row.order],
        ["unit", "", (row) => row.unit],
        ["price", money, (row) => row.price],
        ["cost", money, (row) => row.cost],
        ["life", "years", (row) => row.life],
        ["basis", "", (row) => row.basis],
      ]),
    ]),
    resultTable("worth-alternatives", worth.alternatives, [
      ["name", "", (row) => row.name],
      ["change", "", (row) => row.change],
      ["heat saved", "kWh", (row) => row.saved],
      ["coldest hour warmer by", "K", (row) => row.coldestHourGain],
      ["first cost", money, (row) => row.capital],
      ["cost of heat saved", money === "" ? "" : `${money}/kWh`, (row) => row.costOfHeat],
      ["net savings", money, (row) => row.netSavings],
    ]),
    ...(worth.doubt === null ? [] : [
      resultTable("worth-doubt", worth.doubt.shares, [
        ["input", "", (row) => row.input],
        ["range to either side", "1", (row) => row.range],
        ["share of the scatter alone", "1", (row) => row.first],
        ["share with all others", "1", (row) => row.total],
      ]),
    ]),
    ...(earnings === null ? [] : [
      resultTable("worth-cash-flow", earnings.cashFlow, [
        ["year", "", (row) => row.year],
        ["discounted balance", money, (row) => row.balance],
        ["balance", money, (row) => row.undiscounted],
      ]),
    ]),
  ];
}
