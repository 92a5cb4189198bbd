/** The first page of the report: verdict, five figures, the picture that decides, what to mend. @module */
import type { Figure, Figures, Notice } from "../../basics/mod.ts";
import type { ChapterResults } from "../../study/mod.ts";
import { showNumber } from "../../units/mod.ts";
import type { MeasureLadder, WorthResult } from "../../worth/mod.ts";
import { LIGHTS } from "../kit/answer.ts";
import { escapeMarkup } from "../kit/escape.ts";
import type { DisplayItem } from "../kit/figure.ts";
import { forReport } from "../kit/layout.ts";
import { inReadersOrder, shown, shownBoth } from "../kit/reader.ts";
import { table } from "../kit/table.ts";
import { killingText } from "../store/crop_words.ts";
import { durationChart } from "../store/charts.ts";
import { changesWith, VERDICT_LIGHTS, verdictSentence } from "../worth/answer.ts";
import { alternativesChart } from "../worth/charts.ts";
import { moneyText, priceText } from "../worth/money_words.ts";
import { wide } from "./wide.ts";

/** The verdict in large letters, why, what the store does, and what would change it. */
export function verdict({ worth, store }: ChapterResults): DisplayItem {
  const { word } = worth.verdict;
  const { sign, colour } = LIGHTS[VERDICT_LIGHTS[word]];
  const name = `${word.slice(0, 1).toUpperCase()}${word.slice(1)}`;
  const why = sentence(verdictSentence(worth).replace(/^[A-Z][a-z ]*: /, ""));
  const does = `With the store the house falls to ${
    shownBoth(store.coldestHour, "temperature")
  } in this year, without it to ${shownBoth(store.coldestHourNoFan, "temperature")}; ${
    killingText(store)
  }. It saves ${shownBoth(store.savedHeat, "energy")} of heat for ${
    shown(store.backupFanEnergy, "electricity")
  } of electricity a year.`;
  const turns = `It would change if ${changesWith(worth)}`;
  const lines = [why, does, turns].map((text) => `<p>${escapeMarkup(text)}</p>`).join("\n");
  return {
    "text/html": `<div class="verdict wide" style="border-left:8px solid ${colour};` +
      `padding:4px 14px"><span class="verdict-word"><span style="color:${colour}">${sign}</span> ` +
      `${name}</span>\n${lines}</div>`,
    "text/plain": [name, why, does, turns].join("\n"),
  };
}

function sentence(text: string): string {
  return `${text.slice(0, 1).toUpperCase()}${text.slice(1)}`;
}

/** One of the five figures, ready to be shown. */
interface KeyFigure {
  readonly name: string;
  readonly value: string;
  readonly band: string;
  readonly without: string;
}

/**
 * The five figures a client asks for, with bands where odds or doubt give them, and the same without
 * the store.
 *
 * @param results of the chapters
 * @param figures of the whole run, those of the odds among them
 */
export function keyFigures({ worth, store }: ChapterResults, figures: Figures): DisplayItem {
  const rows = [coldest(store, figures), killing(store, figures), saved(store, figures)];
  return wide(forReport(() =>
    table([...rows, ...money(worth)], [
      { head: "figure", value: ({ name }) => name },
      { head: "with the store", value: ({ value }) => value, right: true },
      { head: "from … to", value: ({ band }) => band, right: true },
      { head: "without", value: ({ without }) => without, right: true },
    ], "Five figures; ranges are 95 %")
  ));
}

/** The figure where it was counted. */
function counted(figures: Figures, key: string): Figure | null {
  const found = figures[key];
  return found === undefined || found.provisional === true || typeof found.value !== "number"
    ? null
    : found;
}

function coldest(store: ChapterResults["store"], figures: Figures): KeyFigure {
  const odds = counted(figures, "worth.coldestHour10Years");
  const without = counted(figures, "worth.coldestHour10YearsNoStore");
  const degrees = (value: number) => shown(value, "temperature");
  if (odds === null || without === null) {
    return {
      name: "coldest hour in the house, this year of weather",
      value: degrees(store.coldestHour),
      band: "–",
      without: degrees(store.coldestHourNoFan),
    };
  }
  return {
    name: "coldest hour in the house, one winter in ten",
    value: degrees(Number(odds.value)),
    band: bandText(odds, degrees),
    without: degrees(Number(without.value)),
  };
}

function killing(store: ChapterResults["store"], figures: Figures): KeyFigure {
  const odds = counted(figures, "worth.chanceOfKilling");
  const without = counted(figures, "worth.chanceOfKillingNoStore");
  const percent = (value: number) => shown(value, "share");
  if (odds === null || without === null) {
    return {
      name: "below freezing in the house, this year of weather",
      value: shown(store.crop.freezing.hours, "hours"),
      band: `${shown(store.summary.freezingRange.warmer, "hours")} to ${
        shown(store.summary.freezingRange.colder, "hours")
      }`,
      without: shown(store.cropNoFan.freezing.hours, "hours"),
    };
  }
  return {
    name: "winters with an hour in which plants die",
    value: percent(Number(odds.value)),
    band: bandText(odds, percent),
    without: percent(Number(without.value)),
  };
}

function saved(store: ChapterResults["store"], figures: Figures): KeyFigure {
  const winters = counted(figures, "worth.savedHeatOfWinters");
  const heat = (value: number) => shown(value, "energy");
  return winters === null
    ? { name: "heat saved in this year", value: heat(store.savedHeat), band: "–", without: "–" }
    : {
      name: "heat saved in a winter, on the mean",
      value: heat(Number(winters.value)),
      band: bandText(winters, heat),
      without: "–",
    };
}

function money({ earnings, doubt, currency, heatPrice }: WorthResult): readonly KeyFigure[] {
  const range = (band: readonly [number, number] | undefined) =>
    band === undefined ? "–" : `${showNumber(band[0], 0)} to ${moneyText(band[1], currency)}`;
  const cost = doubt?.costOfHeat ?? null;
  return [
    {
      name: "first cost",
      value: moneyText(earnings?.capital, currency),
      band: range(doubt?.capital),
      without: "–",
    },
    {
      name: "what a kilowatt-hour of heat costs",
      value: priceText(earnings?.costOfHeat, currency),
      band: cost === null ? "–" : `${showNumber(cost[0], 3)} to ${priceText(cost[1], currency)}`,
      without: priceText(heatPrice, currency),
    },
  ];
}

function bandText({ low, high }: Figure, text: (value: number) => string): string {
  return low === undefined || high === undefined ? "–" : `${text(low)} to ${text(high)}`;
}

/** The picture that decided the verdict: what heat costs by each way, or the cold hours. */
export function decidingPicture({ worth, store }: ChapterResults): DisplayItem {
  const cold = worth.earnings === null ||
    ["saves no heat", "faults"].includes(worth.verdict.reason);
  return forReport(() => cold ? durationChart(store) : alternativesChart(worth));
}

/** How many faults stand on the first page. */
const WORST = 3;

/**
 * What to mend first, the gravest first: faults of the design, then what puts a result in doubt, then
 * what can hurt somebody. What the logs of sensors have wrong comes last.
 *
 * @param worth with the verdict, which names the faults of the design
 * @param list notices of the whole run
 * @param ladder steps that pay; where a step comes before the store, it is named too
 */
export function faultsToMend(
  worth: WorthResult,
  list: readonly Notice[],
  ladder: MeasureLadder | null,
): DisplayItem {
  const { reason, first } = worth.verdict;
  const design = reason === "faults" || reason === "prices missing"
    ? first.map((fault) => sentence(`${fault}.`))
    : [];
  const before = ladder === null ? [] : ladder.rungs.filter(({ kind }) => kind === "house");
  const house = before.length === 0 || design.length > 0
    ? []
    : [`The house comes first: ${before.map(({ name }) => name).join(", then ")}.`];
  const rank = ({ level, chapter }: Notice) =>
    (chapter === "measured" ? 2 : 0) + (level === "warning" ? 0 : 1);
  const noticed = list.filter(({ level }) => level !== "info")
    .toSorted((a, b) => rank(a) - rank(b)).map(({ text }) => text);
  const worst = [...new Set([...design, ...house, ...noticed])].slice(0, WORST)
    .map(inReadersOrder);
  const title = worst.length === WORST ? "Three things to mend first" : "To mend first";
  return {
    "text/html": `<div><p><strong>${title}</strong></p>\n<ol>${
      worst.map((text) => `<li>${escapeMarkup(text)}</li>`).join("\n")
    }</ol></div>`,
    "text/plain": [title, ...worst.map((text, place) => `${place + 1}. ${text}`)].join("\n"),
  };
}
