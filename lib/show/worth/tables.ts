/** Tables of the worth chapter. @module */
import { showNumber } from "../../units/mod.ts";
import { shown } from "../kit/reader.ts";
import type { CostRow, WorthResult } from "../../worth/mod.ts";
import type { DisplayItem } from "../kit/figure.ts";
import { paragraph, table } from "../kit/table.ts";
import { moneyText, priceText, yearsText } from "./money_words.ts";

/** Everything to buy and do, with its price and cost. */
export function costsTable({ costs, quantities, currency }: WorthResult): DisplayItem {
  const rows: readonly (Partial<CostRow> & Pick<CostRow, "part" | "item" | "order" | "unit">)[] =
    costs?.rows ?? quantities;
  return table(rows, [
    { head: "part", value: (row) => row.part },
    { head: "item", value: (row) => row.item },
    { head: "to order", value: (row) => orderText(row), right: true },
    { head: "price", value: (row) => priceOf(row, currency), right: true },
    { head: "cost", value: (row) => moneyText(row.cost, currency), right: true },
  ], 'The board at the edge belongs to the house and is not counted; "–" has no price.');
}

function priceOf({ price, unit }: Partial<CostRow>, currency: string | null): string {
  if (price === null || price === undefined) return "–";
  return `${showNumber(price, 2)} ${currency} per ${unit?.replace(/s$/, "")}`;
}

function orderText({ order, unit }: Pick<CostRow, "order" | "unit">): string {
  return `${showNumber(order, unit === "pieces" ? 0 : 1)} ${unit}`;
}

/** The money figures, each in a line. */
export function moneyTable(worth: WorthResult): DisplayItem {
  const { earnings, currency, costs } = worth;
  if (earnings === null) {
    return paragraph(`Money is left open: no price for ${worth.missing.join(", ")}.`);
  }
  const { savingsToInvestment: ratio, adjustedRateOfReturn: rate } = earnings;
  const rows: readonly (readonly [string, string])[] = [
    ["materials, machines and licensed work", moneyText(costs?.bought, currency)],
    ["work by hand", moneyText(costs?.labour, currency)],
    ["for what was not foreseen, all work hired", moneyText(costs?.contingency, currency)],
    ["first cost of the store less grants", moneyText(earnings.capital, currency)],
    ["present value of energy and upkeep saved", moneyText(earnings.operationSaved, currency)],
    ["present value of what is invested", moneyText(earnings.extraInvestment, currency)],
    ["net savings, present value", moneyText(earnings.netSavings, currency)],
    ["savings over investment", ratio === null ? "–" : showNumber(ratio, 2)],
    ["adjusted return on the investment", rate === null ? "–" : `${showNumber(100 * rate, 1)} %`],
    ["simple payback", yearsText(earnings.simplePayback)],
    ["discounted payback", yearsText(earnings.discountedPayback)],
    ["cost of the heat saved", priceText(earnings.costOfHeat, currency)],
    [`cost of heat from ${worth.fuel}`, priceText(worth.heatPrice, currency)],
  ];
  return table(rows, [
    { head: "", value: ([label]) => label },
    { head: "", value: ([, text]) => text, right: true },
  ], "The store against a heater alone");
}

/** Fuel and carbon saved, as a paragraph. */
export function fuelWords({ fuelSaved, fuel, carbonSaved }: WorthResult): DisplayItem {
  return paragraph(
    `That is ${showNumber(fuelSaved.amount, 0)} ${fuelSaved.unit} of ${fuel} a year and ${
      shown(carbonSaved, "mass")
    } of carbon dioxide, the fans' electricity counted.`,
  );
}
