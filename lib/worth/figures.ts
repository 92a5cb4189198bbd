/** Figures of the worth chapter. @module */
import { type FigureRow, numberFigure, withRange } from "../basics/figures.ts";
import type { WorthResult } from "./types.ts";

/** Every figure of the chapter; money figures without a value say which price is missing. */
export function worthFigures(worth: WorthResult): readonly FigureRow[] {
  const { earnings, currency, missing, verdict, doubt, designFaults } = worth;
  const money = currency ?? "money";
  const figure = (
    key: string,
    value: number | null | undefined,
    unit: string,
    label: string,
  ): FigureRow =>
    earnings === null
      ? [key, { value: null, unit, label: `${label}: no price for ${missing.join(", ")}` }]
      : numberFigure(key, value, unit, label);
  return [
    ["worth.verdict", { value: verdict.word, unit: "text", label: "dig, not yet or no" }],
    numberFigure(
      "worth.designFaults",
      designFaults.length,
      "1",
      "faults of the design to be mended before anybody digs",
    ),
    withRange(
      figure("worth.capital", earnings?.capital, money, "first cost of the store less grants"),
      doubt?.capital ?? null,
    ),
    withRange(
      figure(
        "worth.netPresentValue",
        earnings?.netSavings,
        money,
        "present value that the store saves against a heater alone",
      ),
      doubt?.netSavings ?? null,
    ),
    payback(worth),
    withRange(
      figure(
        "worth.costOfHeat",
        earnings?.costOfHeat,
        `${money}/kWh`,
        "levelised cost of the heat that the store saves",
      ),
      doubt?.costOfHeat ?? null,
    ),
    figure(
      "worth.chanceVerdictFlips",
      doubt?.chanceVerdictFlips,
      "1",
      "share of sampled prices, costs and savings with another verdict",
    ),
    bestMeasure(worth),
  ];
}

/** The cheapest kilowatt-hour of all that has a price. */
function bestMeasure({ alternatives, missing }: WorthResult): FigureRow {
  const best = alternatives.find(({ costOfHeat, saved }) => costOfHeat !== null && saved > 0);
  const label = "what saves a kilowatt-hour for least";
  return [
    "worth.bestMeasure",
    best === undefined
      ? { value: null, unit: "text", label: `${label}: no price for ${missing.join(", ")}` }
      : { value: best.name, unit: "text", label },
  ];
}

/** The payback; one that never comes says so. */
function payback({ earnings, missing }: WorthResult): FigureRow {
  const label = "simple payback of the store against a heater alone";
  const why = earnings === null
    ? `no price for ${missing.join(", ")}`
    : "never within the years looked at";
  return numberFigure("worth.payback", earnings?.simplePayback, "years", label, why);
}
