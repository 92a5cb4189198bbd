/** What comes of it: with and without the store, odds, money, doubt. @module */
import type { ChapterResults } from "../../study/mod.ts";
import { showPower } from "../../units/mod.ts";
import type { LimitOdds, MeasureLadder, WinterOdds, WorthResult } from "../../worth/mod.ts";
import type { DisplayItem } from "../kit/figure.ts";
import { forReport } from "../kit/layout.ts";
import { shown } from "../kit/reader.ts";
import { type NamedNumber, numbers, paragraph, table } from "../kit/table.ts";
import { freezingText } from "../house/frost_words.ts";
import { durationChart } from "../store/charts.ts";
import { NO_CROP } from "../store/crop_words.ts";
import { monthlyHeatChart } from "../store/heat_charts.ts";
import { doubtChart, doubtWords } from "../worth/charts.ts";
import { ladderChart, ladderWords } from "../worth/ladder_charts.ts";
import { moneyText, priceText } from "../worth/money_words.ts";
import { coldestHourOdds } from "../worth/odds_charts.ts";
import { oddsWords } from "../worth/odds_tables.ts";
import { NO_WINTERS } from "../worth/odds_words.ts";
import { moneyTable as allMoney } from "../worth/tables.ts";

/** The year with the store and with its fan always off. */
export function withWithout({ store }: ChapterResults): DisplayItem {
  const { crop, cropNoFan } = store;
  const hours = (key: keyof typeof crop) => [crop[key].hours, cropNoFan[key].hours] as const;
  const grown = crop.killing.limit > NO_CROP;
  const limit = (key: keyof typeof crop) => `hours below ${shown(crop[key].limit, "temperature")}`;
  const rows = [
    ["coldest hour", "temperature", [store.coldestHour, store.coldestHourNoFan]],
    [`${limit("freezing")}, freezing`, "hours", hours("freezing")],
    ...(grown
      ? [
        [`${limit("damage")}, plants damaged`, "hours", hours("damage")],
        [`${limit("killing")}, plants die`, "hours", hours("killing")],
      ] as const
      : []),
    ["heat to hold the set point", "energy", [store.backupHeat, store.backupHeatNoFan]],
    ["lost at the edge of the floor", "energy", [store.edgeLoss, store.edgeLossNoFan]],
    ["air above 90 % humidity", "hours", [store.damp.humid, store.dampNoFan.humid]],
  ] as const;
  return forReport(() =>
    table(rows, [
      { head: "the settled year", value: ([name]) => name },
      { head: "with the store", value: ([, kind, [value]]) => shown(value, kind), right: true },
      { head: "without", value: ([, kind, [, value]]) => shown(value, kind), right: true },
    ], "The same house and ground, with the store and with its fan always off")
  );
}

/** The coldest hours of the year with the store and without. */
export function coldHours({ store }: ChapterResults): DisplayItem {
  return forReport(() => durationChart(store));
}

/** Heat by month. */
export function heatByMonth({ store }: ChapterResults): DisplayItem {
  return forReport(() => monthlyHeatChart(store));
}

/** The store's own year. */
export function storeTable({ store }: ChapterResults): DisplayItem {
  const rows: NamedNumber[] = [
    { label: "heat saved at the heater", value: store.savedHeat, kind: "energy" },
    {
      label: "electricity of the fans, saving it",
      value: store.backupFanEnergy,
      kind: "electricity",
    },
    { label: "heat charged", value: store.heatIn, kind: "energy" },
    { label: "of it condensing water", value: store.summary.latentShare, kind: "share" },
    { label: "heat discharged", value: store.heatOut, kind: "energy" },
    { label: "charged heat that comes back", value: store.taggedReturn, kind: "share" },
    {
      label: "discharge from an earlier quarter",
      value: store.carriedAcrossSeasons,
      kind: "share",
    },
    { label: "years until it repeats", value: store.yearsUntilPeriodic, kind: "count" },
    { label: "heat balance closes to", value: showPower(store.balanceResidual) },
  ];
  return forReport(() => numbers(rows, "The store in its settled year"));
}

/** Coldest hour of many winters. */
export function oddsChart(odds: WinterOdds | null): DisplayItem {
  return forReport(() => coldestHourOdds(odds));
}

const LIMITS: Readonly<Record<LimitOdds["name"], string>> = {
  freezing: "freezing",
  damage: "plants damaged",
  killing: "plants die",
  growth: "growth stops",
};

/** How many winters stay above each limit. */
export function oddsTable(odds: WinterOdds | null): DisplayItem {
  if (odds === null) return paragraph(NO_WINTERS);
  const percent = (value: number) => shown(value, "share");
  const never = ({ never: { value, low, high } }: LimitOdds["withStore"]) =>
    `${percent(value)} (${percent(low)} to ${percent(high)})`;
  return forReport(() =>
    table(odds.limits.filter(({ limit }) => limit > NO_CROP), [
      {
        head: "never below",
        value: ({ name, limit }) => `${shown(limit, "temperature")}, ${LIMITS[name]}`,
      },
      { head: "with the store", value: ({ withStore }) => never(withStore), right: true },
      { head: "without", value: ({ without }) => never(without), right: true },
    ], `Share of ${odds.winters} winters without an hour below each limit`)
  );
}

/** The odds in words, with what they rest on. */
export function oddsText(odds: WinterOdds | null): DisplayItem {
  return oddsWords(odds);
}

/** The store against a heater alone. */
export function moneyTable(worth: WorthResult): DisplayItem {
  return forReport(() => allMoney(worth));
}

/** What to build, one step after the other. */
export function ladder(ladder: MeasureLadder | null): DisplayItem {
  return forReport(() => ladderChart(ladder));
}

/** The steps of the ladder in numbers. */
export function ladderTable(ladder: MeasureLadder | null): DisplayItem {
  if (ladder === null || ladder.rungs.length === 0) return ladderWords(ladder);
  const { rungs, currency } = ladder;
  return forReport(() =>
    table(rungs, [
      { head: "step", value: ({ name, change }) => `${name}: ${change}` },
      { head: "first cost", value: ({ capital }) => moneyText(capital, currency), right: true },
      { head: "saves a year", value: ({ saved }) => saved, kind: "energy" },
      { head: "for", value: ({ costOfHeat }) => priceText(costOfHeat, currency), right: true },
    ], "The steps that pay, each on the house with those before it")
  );
}

/** What to find out first. */
export function doubtPicture(worth: WorthResult): DisplayItem {
  return forReport(() => doubtChart(worth));
}

/** How sure the money and the temperatures are. */
export function doubtText({ worth, store, soil }: ChapterResults): DisplayItem[] {
  const [low, high] = soil.properties.conductivityRange;
  return [
    doubtWords(worth),
    paragraph(
      `House temperatures are not known to better than a kelvin: ${
        freezingText(store.summary.freezingRange)
      }. Conductivity of the soil is plausible from ${shown(low, "conductivity")} to ${
        shown(high, "conductivity")
      }; leakage of a built house is often half or twice what was planned. The heat balance ` +
        `closes to ${
          showPower(store.balanceResidual)
        } of the heat moved: that says that the sums ` +
        "are right, not that the inputs are.",
    ),
  ];
}
