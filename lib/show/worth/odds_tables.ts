/** Odds of many winters in tables and words. @module */
import { shown, shownBoth } from "../kit/reader.ts";
import type { LimitChance, LimitOdds, WinterOdds, WinterSpread } from "../../worth/mod.ts";
import type { DisplayItem } from "../kit/figure.ts";
import { paragraph, table } from "../kit/table.ts";
import { NO_CROP } from "../store/crop_words.ts";
import { moneyText } from "./money_words.ts";
import { NO_WINTERS, rareText } from "./odds_words.ts";

const LIMIT_WORDS: Readonly<Record<LimitOdds["name"], string>> = {
  freezing: "freezing",
  damage: "plants are damaged",
  killing: "plants die",
  growth: "growth stops",
};

/** Chances of falling below each limit, with the store and without. */
export function limitsTable(odds: WinterOdds | null): DisplayItem {
  if (odds === null) return paragraph(NO_WINTERS);
  const rows = odds.limits.filter(({ limit }) => limit > NO_CROP).flatMap((limit) => [
    { ...limit, way: "without", chance: limit.without },
    { ...limit, way: "with the store", chance: limit.withStore },
  ]);
  const share = (of: (chance: LimitChance) => number) => (row: typeof rows[number]) =>
    of(row.chance);
  return table(rows, [
    { head: "limit", value: ({ name }) => LIMIT_WORDS[name] },
    { head: "below", value: ({ limit }) => limit, kind: "temperature" },
    { head: "store", value: ({ way }) => way },
    { head: "winters without an hour", value: share(({ never }) => never.value), kind: "share" },
    { head: "over 24 h", value: share(({ overOneDay }) => overOneDay.value), kind: "share" },
    { head: "over 72 h", value: share(({ overThreeDays }) => overThreeDays.value), kind: "share" },
    { head: "middle winter", value: share(({ hours }) => hours.median.value), kind: "hours" },
    {
      head: "one in ten",
      value: ({ chance }) => chance.hours.rare10?.value ?? null,
      kind: "hours",
    },
    {
      head: "longest spell, one in ten",
      value: ({ chance }) => chance.longestSpell.rare10?.value ?? null,
      kind: "hours",
    },
    { head: "first, middle winter", value: ({ chance }) => dayText(chance.first), right: true },
    { head: "last, middle winter", value: ({ chance }) => dayText(chance.last), right: true },
  ], `Hours below the limits of the crop in ${odds.winters} winters`);
}

/** Day of the winter without its year. */
function dayText(date: string | null): string {
  return date === null ? "–" : date.slice(5);
}

/** Middle and rare winters of temperature and heat. */
export function rareTable(odds: WinterOdds | null): DisplayItem {
  if (odds === null) return paragraph(NO_WINTERS);
  const kinds = [
    ["coldest hour", "temperature", odds.coldestHour],
    ["back-up heat", "energy", odds.backupHeat],
    ["heater at its peak", "power", odds.heaterPeak],
  ] as const;
  const rows = kinds.flatMap(([name, kind, pair]) => [
    { name, kind, way: "without", spread: pair.without },
    { name, kind, way: "with the store", spread: pair.withStore },
  ]);
  const cell = (of: (spread: WinterSpread) => WinterSpread["rare10"]) =>
  (
    { kind, spread }: typeof rows[number],
  ) => {
    const value = of(spread);
    return value === null
      ? "–"
      : `${shownBoth(value.value, kind)} [${shown(value.low, kind)} to ${shown(value.high, kind)}]`;
  };
  return table(rows, [
    { head: "", value: ({ name }) => name },
    { head: "store", value: ({ way }) => way },
    { head: "middle winter", value: cell(({ median }) => median), right: true },
    { head: "one winter in ten", value: cell(({ rare10 }) => rare10), right: true },
    { head: "one winter in thirty", value: cell(({ rare30 }) => rare30), right: true },
  ], "In brackets: band of 90 %. It covers sampling only, not normals, model or climate");
}

/** What the odds say in a few sentences, and what they rest on. */
export function oddsWords(odds: WinterOdds | null): DisplayItem {
  if (odds === null) return paragraph(NO_WINTERS);
  const { coldestHour, coldestHourGain: gain, savedHeat: saved, cropLoss, colderThanYear } = odds;
  const loss = cropLoss === null
    ? "The study gives no value of the crop (worth.cropValue), so its loss has no price."
    : `Crop lost in a winter on the mean, chance times value: ${
      moneyText(cropLoss.withStore, cropLoss.currency)
    } with the store, ${moneyText(cropLoss.without, cropLoss.currency)} without.`;
  return paragraph(
    `One winter in ten the house falls to ${
      rareText(coldestHour.withStore.rare10, "temperature")
    } or lower with the store, and to ${
      rareText(coldestHour.without.rare10, "temperature")
    } without. In the same winters the store adds ${
      shown(gain.mean, "temperatureDifference")
    } to the coldest hour and saves ${shownBoth(saved.mean, "energy")} of heat; a tenth of the ` +
      `winters save less than ${shown(saved.low, "energy")}, a tenth more than ${
        shown(saved.high, "energy")
      }. ${shown(colderThanYear.withStore, "share")} of the winters have a colder hour with the ` +
      `store than the year of this study. ${loss} ${basisWords(odds)}`,
  );
}

function basisWords({ spread, normalsOfOneYear, winters }: WinterOdds): string {
  if (spread === "measured winters") {
    return `${winters} measured winters, run as they are, each July to December of one file and ` +
      "January to June of the next. The ranges in brackets are bands of 90 % and cover sampling only: " +
      "few winters say little of rare ones.";
  }
  const between = spread === "published deviations"
    ? "the published deviations of monthly means"
    : "the usual rule (0.52 of the spread within months), as the normals give no deviations of " +
      "monthly means";
  const normals = normalsOfOneYear
    ? " The normals were taken from the one year of the weather file, so the spread within months " +
      "is uncertain by some 13 %."
    : "";
  return `${winters} winters; their spread from year to year follows ${between}.${normals} The ranges ` +
    "in brackets are bands of 90 % and cover sampling only.";
}
