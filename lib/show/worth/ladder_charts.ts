/** The ladder in pictures and words. @module */
import * as Plot from "@observablehq/plot";
import { shown, shownBoth } from "../kit/reader.ts";
import type { LadderRung, MeasureLadder } from "../../worth/mod.ts";
import { dataTable } from "../kit/data_table.ts";
import { type DisplayItem, figure } from "../kit/figure.ts";
import { PALETTE } from "../kit/palette.ts";
import { wordsWidth } from "../kit/picture.ts";
import { paragraph } from "../kit/table.ts";
import { moneyText, priceText } from "./money_words.ts";

const NO_LADDER = "There is no ladder: heat or electricity has no price.";

/** A landing of the ladder: the house as it is, or with a step and all before it. */
type Landing = Pick<LadderRung, "name" | "change" | "after" | "capitalSoFar"> & {
  readonly rung: LadderRung | null;
};

function landings({ asItIs, rungs }: MeasureLadder): readonly Landing[] {
  const start = { name: "as it is", change: "", after: asItIs, capitalSoFar: 0, rung: null };
  return [start, ...rungs.map((rung) => ({ ...rung, rung }))];
}

/** Heat still needed, and hours below the crop's limit, against the money spent, step by step. */
export function ladderChart(ladder: MeasureLadder | null): DisplayItem {
  if (ladder === null) return paragraph(NO_LADDER);
  const { currency } = ladder;
  const rows = landings(ladder);
  const steps = (value: (row: Landing) => number, label: string, colour: string) => {
    const most = Math.max(1, ...rows.map(value));
    return {
      height: 240,
      marginLeft: 70,
      marginRight: 20 + wordsWidth(rows.at(-1)!.name),
      x: { label: `spent so far, ${currency}`, grid: true },
      y: { label, grid: true, domain: [0, 1.1 * most] },
      marks: [
        Plot.lineY(rows, {
          x: "capitalSoFar",
          y: value,
          stroke: colour,
          strokeWidth: 2.5,
          curve: "step-after",
        }),
        Plot.dot(rows, { x: "capitalSoFar", y: value, fill: colour, r: 4 }),
        Plot.text(rows, {
          x: "capitalSoFar",
          y: value,
          text: "name",
          textAnchor: "start",
          dx: 8,
          dy: -8,
        }),
      ],
    };
  };
  return figure([
    steps(({ after }) => after.heat, "heat still needed, kWh a year", PALETTE.warm),
    steps(
      ({ after }) => after.hoursBelowCropLimit!,
      "below the crop's killing limit without a heater, h",
      PALETTE.air,
    ),
  ], {
    title: "The ladder: what to build, one step after the other",
    alt: rows.map(({ name, capitalSoFar, after }) =>
      `${name}: ${moneyText(capitalSoFar, currency)} spent, ${
        shown(after.heat, "energy")
      } still needed, ${shown(after.hoursBelowCropLimit!, "hours")} below the crop's limit`
    ).join("; ") + ".",
    note:
      "Each step is run through the year on the house with all before it. The last one shown is " +
      "the last that pays.",
    legend: [
      { label: "heat still needed", colour: PALETTE.warm, sign: "line" },
      { label: "hours below the crop's limit", colour: PALETTE.air, sign: "line" },
    ],
    table: dataTable(rows, [
      {
        head: "step",
        value: (row) =>
          row.name,
      },
      { head: "", value: (row) => row.change },
      {
        head: "first cost",
        value: ({ rung }) => moneyText(rung?.capital, currency),
        right: true,
      },
      { head: "spent so far", value: (row) => moneyText(row.capitalSoFar, currency), right: true },
      { head: "step saves", value: ({ rung }) => rung?.saved ?? null, kind: "energy" },
      { head: "still needed", value: ({ after }) => after.heat, kind: "energy" },
      {
        head: "below the crop's limit",
        value: ({ after }) => after.hoursBelowCropLimit!,
        kind: "hours",
      },
      {
        head: "its cost of saving",
        value: ({ rung }) => priceText(rung?.costOfHeat, currency),
        right: true,
      },
      {
        head: "net by step",
        value: ({ rung }) => moneyText(rung?.netSavings, currency),
        right: true,
      },
    ]),
  });
}

/** The plan in a few sentences, and why the rest is no step. */
export function ladderWords(ladder: MeasureLadder | null): DisplayItem {
  if (ladder === null) return paragraph(NO_LADDER);
  const { rungs, currency, rest } = ladder;
  const last = rungs.at(-1);
  const plan = last === undefined
    ? "No step pays: leave the house as it is, and heat."
    : `Build, in this order: ${rungs.map(({ name }) => name).join(", then ")}. Together they cost ${
      moneyText(last.capitalSoFar, currency)
    } and save ${shownBoth(last.savedSoFar, "energy")} of heat a year, ${
      moneyText(last.netSavingsSoFar, currency)
    } of present value against a heater alone.`;
  const store = ladder.withStore
    ? " The store is a step as it is planned: mend the faults that the verdict names first."
    : "";
  const left = rest.map(({ name, why, costOfHeat }) =>
    `${name} (${costOfHeat === null ? why : priceText(costOfHeat, currency)})`
  ).join(", ");
  return paragraph(
    `${plan}${store}${left === "" ? "" : ` What is left does not pay then: ${left}.`}`,
  );
}
