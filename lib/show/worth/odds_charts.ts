/** Pictures of many winters. @module */
import * as Plot from "@observablehq/plot";
import { shown, shownBoth } from "../kit/reader.ts";
import type { RankedWinter, WinterOdds } from "../../worth/mod.ts";
import { dataTable } from "../kit/data_table.ts";
import { type DisplayItem, figure } from "../kit/figure.ts";
import { PALETTE } from "../kit/palette.ts";
import { paragraph } from "../kit/table.ts";
import { NO_CROP } from "../store/crop_words.ts";
import { NO_WINTERS, rareText } from "./odds_words.ts";

const LEGEND = [
  { label: "with the store", colour: PALETTE.soil },
  { label: "without", colour: PALETTE.warm, sign: "dash" as const },
];

function lines(rows: readonly RankedWinter[]) {
  return [
    Plot.lineY(rows, {
      x: ({ share }: RankedWinter) => 100 * share,
      y: "withStore",
      stroke: PALETTE.soil,
      strokeWidth: 2.5,
    }),
    Plot.lineY(rows, {
      x: ({ share }: RankedWinter) => 100 * share,
      y: "without",
      stroke: PALETTE.warm,
      strokeDasharray: "7 3",
    }),
    Plot.ruleX([10], { stroke: PALETTE.ink, strokeDasharray: "2 3" }),
  ];
}

/** Rows of the table behind: every twentieth of the winters is enough to read the line. */
function thinned(rows: readonly RankedWinter[]): readonly RankedWinter[] {
  const step = Math.max(1, Math.round(rows.length / 20));
  return rows.filter((_, place) => place % step === 0 || place === rows.length - 1);
}

/** Coldest hour of every winter, the coldest winter first, with the store and without. */
export function coldestHourOdds(odds: WinterOdds | null): DisplayItem {
  if (odds === null) return paragraph(NO_WINTERS);
  const rows = odds.coldestFirst;
  const { withStore, without } = odds.coldestHour;
  const killing = odds.limits.find(({ name }) => name === "killing")!;
  return figure({
    height: 320,
    x: { label: "share of winters at least as cold, %", grid: true, domain: [0, 100] },
    y: { label: "coldest hour in the house, degC", grid: true },
    marks: [
      ...lines(rows),
      ...(killing.limit > NO_CROP
        ? [Plot.ruleY([killing.limit], { stroke: PALETTE.ink, strokeDasharray: "4 3" })]
        : []),
    ],
  }, {
    title: "The coldest hour, winter by winter",
    alt: `Half of ${odds.winters} winters fall below ${
      shownBoth(withStore.median.value, "temperature")
    } with the store and ${
      shownBoth(without.median.value, "temperature")
    } without; one in ten below ${rareText(withStore.rare10, "temperature")} and ${
      rareText(without.rare10, "temperature")
    }.`,
    note: killing.limit > NO_CROP
      ? "Dotted: one winter in ten. Dashed across: the crop's killing limit."
      : "Dotted: one winter in ten.",
    legend: LEGEND,
    table: dataTable(thinned(rows), [
      { head: "winters at least as cold", value: ({ share }) => share, kind: "share" },
      { head: "with the store", value: (row) => row.withStore, kind: "temperature" },
      { head: "without", value: (row) => row.without, kind: "temperature" },
    ]),
  });
}

/** Hours in which plants die in every winter, the worst winter first, with the store and without. */
export function killingHoursOdds(odds: WinterOdds | null): DisplayItem {
  if (odds === null) return paragraph(NO_WINTERS);
  const killing = odds.limits.find(({ name }) => name === "killing")!;
  if (killing.limit <= NO_CROP) return paragraph("No crop is named, so no hours are counted.");
  const rows = odds.mostKillingFirst;
  return figure({
    height: 320,
    x: { label: "share of winters with at least so many, %", grid: true, domain: [0, 100] },
    y: { label: "hours below the killing limit", grid: true },
    marks: lines(rows),
  }, {
    title: "Hours in which plants die, winter by winter",
    alt:
      `Below ${shownBoth(killing.limit, "temperature")}: ${
        shown(killing.withStore.never.value, "share")
      } of the winters have no such hour with the store and ${
        shown(killing.without.never.value, "share")
      } without; one in ten has ${
        rareText(killing.withStore.hours.rare10, "hours")
      } or more with ` +
      `the store and ${rareText(killing.without.hours.rare10, "hours")} without.`,
    note: "Dotted: one winter in ten.",
    legend: LEGEND,
    table: dataTable(thinned(rows), [
      { head: "winters with at least so many", value: ({ share }) => share, kind: "share" },
      { head: "with the store", value: (row) => row.withStore, kind: "hours" },
      { head: "without", value: (row) => row.without, kind: "hours" },
    ]),
  });
}
