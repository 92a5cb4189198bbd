/** A year against the limits of a crop. @module */
import type { CropYear, YearBelow } from "../../house/mod.ts";
import { hourName } from "../kit/calendar.ts";
import type { DisplayItem } from "../kit/figure.ts";
import { table } from "../kit/table.ts";

/** One air whose year is counted. */
export interface CountedAir {
  /** where the air is, such as "with the store" */
  readonly where: string;
  /** its year against the crop's limits */
  readonly year: CropYear;
}

/** Table of hours below freezing and below each limit of a crop, for one or more airs. */
export function cropTable(crop: string, airs: readonly CountedAir[]): DisplayItem {
  const limits: readonly (readonly [keyof CropYear, string])[] = [
    ["killing", `${crop}: plants die`],
    ["damage", `${crop}: plants are damaged`],
    ["freezing", "freezing"],
    ["growth", `${crop}: growth stops`],
  ];
  const rows = limits.flatMap(([limit, words]) =>
    airs.map(({ where, year }) => ({ words, where, ...year[limit] }))
  );
  const moment = (hour: number | null) => hour === null ? "never" : hourName(hour);
  return table<YearBelow & { readonly words: string; readonly where: string }>(rows, [
    { head: "limit", value: (row) => row.words },
    { head: "below", value: (row) => row.limit, kind: "temperature" },
    { head: "air", value: (row) => row.where },
    { head: "in a year", value: (row) => row.hours, kind: "hours" },
    { head: "longest spell", value: (row) => row.longestSpell, kind: "hours" },
    { head: "degree-hours, K h", value: (row) => row.degreeHours, digits: 0 },
    { head: "first hour after 1 July", value: (row) => moment(row.first), right: true },
    { head: "last hour before 1 July", value: (row) => moment(row.last), right: true },
  ]);
}
