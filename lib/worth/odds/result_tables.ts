/** Tables of the odds for the files of a run. @module */
import { type ResultTable, resultTable } from "../../basics/mod.ts";
import type { WinterOdds } from "./types.ts";

/** Every winter, and the chances of each limit. */
export function oddsTables(odds: WinterOdds | null): readonly ResultTable[] {
  if (odds === null) return [];
  return [
    resultTable("worth-winters", odds.list, [
      ["winter", "", (row) => row.winter + 1],
      ["coldest hour outdoors", "degC", (row) => row.coldestOutdoors],
      ["coldest hour with the store", "degC", (row) => row.withStore.coldestHour],
      ["coldest hour without", "degC", (row) => row.without.coldestHour],
      ["frost with the store", "h", (row) => row.withStore.crop.freezing.hours],
      ["frost without", "h", (row) => row.without.crop.freezing.hours],
      ["killing cold with the store", "h", (row) => row.withStore.crop.killing.hours],
      ["killing cold without", "h", (row) => row.without.crop.killing.hours],
      ["back-up heat with the store", "kWh", (row) => row.withStore.backupHeat],
      ["back-up heat without", "kWh", (row) => row.without.backupHeat],
      ["heater peak with the store", "W", (row) => row.withStore.heaterPeak],
      ["heater peak without", "W", (row) => row.without.heaterPeak],
      ["fan electricity", "kWh", (row) => row.withStore.fanEnergy],
    ]),
    resultTable(
      "worth-odds",
      odds.limits.flatMap(({ name, limit, withStore, without }) => [
        { name, limit, store: "with", ...withStore },
        { name, limit, store: "without", ...without },
      ]),
      [
        ["limit", "", (row) => row.name],
        ["below", "degC", (row) => row.limit],
        ["store", "", (row) => row.store],
        ["winters without such an hour", "1", (row) => row.never.value],
        ["winters with more than 24 h", "1", (row) => row.overOneDay.value],
        ["winters with more than 72 h", "1", (row) => row.overThreeDays.value],
        ["return period", "years", (row) => row.returnPeriod],
        ["middle winter", "h", (row) => row.hours.median.value],
        ["one winter in ten", "h", (row) => row.hours.rare10?.value ?? null],
        ["one winter in thirty", "h", (row) => row.hours.rare30?.value ?? null],
      ],
    ),
  ];
}
