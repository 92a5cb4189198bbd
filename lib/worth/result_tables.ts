/** Tables of the worth chapter for the files of a run. @module */
import { type ResultColumn, type ResultTable, resultTable } from "../basics/mod.ts";
import type { Alternative } from "./alternatives.ts";
import type { DesignSearch } from "./designs/types.ts";
import type { MeasureLadder } from "./ladder_types.ts";
import type { OtherWays } from "./other_ways.ts";
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
      ["hours below the crop's limit avoided", "h", (row) => row.cropHoursAvoided],
      ["cost of an hour avoided", money === "" ? "" : `${money}/h`, (row) => row.costOfHour],
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

/** The ladder, a row for each step; none where energy has no price. */
export function ladderTables(ladder: MeasureLadder | null): readonly ResultTable[] {
  if (ladder === null) return [];
  const money = ladder.currency;
  return [
    resultTable("worth-ladder", ladder.rungs, [
      ["step", "", (row) => row.name],
      ["change", "", (row) => row.change],
      ["first cost", money, (row) => row.capital],
      ["first cost so far", money, (row) => row.capitalSoFar],
      ["heat saved", "kWh", (row) => row.saved],
      ["heat saved so far", "kWh", (row) => row.savedSoFar],
      ["heat still needed", "kWh", (row) => row.after.heat],
      ["fan electricity", "kWh", (row) => row.after.fanEnergy],
      ["below the crop's limit", "h", (row) => row.after.hoursBelowCropLimit],
      ["cost of heat saved", `${money}/kWh`, (row) => row.costOfHeat],
      ["net savings", money, (row) => row.netSavings],
    ]),
    resultTable("worth-ladder-rest", ladder.rest, [
      ["step", "", (row) => row.name],
      ["change", "", (row) => row.change],
      ["first cost", money, (row) => row.capital],
      ["heat it would save", "kWh", (row) => row.saved],
      ["cost of heat saved", `${money}/kWh`, (row) => row.costOfHeat],
      ["why not", "", (row) => row.why],
    ]),
  ];
}

/** The house used otherwise, the store with another intake, and heaters by fuel. */
export function otherWayTables(
  { uses, stores, fuels, currency }: OtherWays,
): readonly ResultTable[] {
  const money = currency ?? "";
  const per = (unit: string) => money === "" ? "" : `${money}/${unit}`;
  const rows: readonly ResultColumn<Alternative>[] = [
    ["name", "", (row) => row.name],
    ["change", "", (row) => row.change],
    ["heat saved", "kWh", (row) => row.saved],
    ["hours below the crop's limit avoided", "h", (row) => row.cropHoursAvoided],
    ["first cost", money, (row) => row.capital],
    ["cost of heat saved", per("kWh"), (row) => row.costOfHeat],
    ["cost of an hour avoided", per("h"), (row) => row.costOfHour],
    ["net savings", money, (row) => row.netSavings],
  ];
  return [
    resultTable("worth-other-uses", uses, rows),
    resultTable("worth-other-stores", stores, [
      ...rows,
      ["prices missing", "", (row) => row.missing.join(" ")],
    ]),
    resultTable("worth-heaters", fuels, [
      ["fuel", "", (row) => row.fuel],
      ["heater", money, (row) => row.capital],
      ["cost of heat, fuel alone", per("kWh"), (row) => row.fuelCost],
      ["cost of heat with the heater", per("kWh"), (row) => row.costOfHeat],
      ["cost of an hour avoided", per("h"), (row) => row.costOfHour],
      ["prices missing", "", (row) => row.missing.join(" ")],
    ]),
  ];
}

/** Designs that went through the year, by rising cost; none where there was no search. */
export function designTables(search: DesignSearch | null): readonly ResultTable[] {
  if (search === null) return [];
  const money = search.currency;
  return [
    resultTable("worth-designs", search.rows, [
      ["own", "", (row) => row.own ? "yes" : ""],
      ["tube", "", (row) => row.choice.tube],
      ["tubes", "1", (row) => row.choice.count],
      ["length", "m", (row) => row.choice.length],
      ["spacing", "m", (row) => row.choice.spacing],
      ["layers", "1", (row) => row.choice.layers],
      ["depth", "m", (row) => row.choice.depth],
      ["air flow", "m3/s", (row) => row.choice.airFlow],
      ["header", "m", (row) => row.choice.header],
      ["fan", "", (row) => row.choice.fan],
      ["fans", "1", (row) => row.choice.fans],
      ["edge board", "", (row) => row.choice.edgeBoard ? "yes" : ""],
      ["charging starts", "K", (row) => row.choice.chargeStart],
      ["discharge below", "degC", (row) => row.choice.dischargeBelow],
      ["first cost", money, (row) => row.capital],
      ["heat saved", "kWh", (row) => row.saved],
      ["hours below the crop's limit avoided", "h", (row) => row.cropHoursAvoided],
      ["fan electricity", "kWh", (row) => row.fanEnergy],
      ["cost of heat saved", `${money}/kWh`, (row) => row.costOfHeat],
      ["net savings", money, (row) => row.netSavings],
      ["unbeaten in heat", "", (row) => row.bestForHeat ? "yes" : ""],
      ["unbeaten in hours", "", (row) => row.bestForHours ? "yes" : ""],
      ["limit broken", "", (row) => row.breaks ?? ""],
    ]),
  ];
}
