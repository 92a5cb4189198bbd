/** Tables of the climate notebook: soundness of the file, design hours, crop limits, short days. @module */
import { dayName, MONTHS } from "../kit/calendar.ts";
import type { DisplayItem } from "../kit/figure.ts";
import { showNumber } from "../../units/mod.ts";
import { type ClimateQuality, hoursText, type ShortDayRow } from "../../climate/mod.ts";
import type { ClimateResult } from "../../climate/types.ts";
import type { OutdoorLimit } from "../../house/mod.ts";
import { shown } from "../kit/reader.ts";
import { type NamedNumber, numbers, table } from "../kit/table.ts";

/** How the radiation of each month fits the sun, and as the file would stand an hour off. */
export function qualityTable(quality: ClimateQuality): DisplayItem {
  return table(quality.fits, [
    { head: "month", value: (fit) => MONTHS[fit.month - 1]! },
    { head: "misfit as read", value: (fit) => fit.misfit, kind: "heatFlux", digits: 1, us: false },
    {
      head: "shifted an hour earlier",
      value: (fit) => fit.misfitEarlier,
      kind: "heatFlux",
      digits: 1,
      us: false,
    },
    {
      head: "shifted an hour later",
      value: (fit) => fit.misfitLater,
      kind: "heatFlux",
      digits: 1,
      us: false,
    },
    {
      head: "misfit of",
      value: (fit) => fit.against === "closure" ? "the three series" : "global to height",
    },
    {
      head: "verdict",
      value: ({ late }) =>
        late === 0 ? "in time" : `${hoursText(Math.abs(late))} ${late > 0 ? "late" : "early"}`,
    },
  ], "Radiation against the sun");
}

/** The hours and sums a house is designed by. */
export function designTable(result: ClimateResult): DisplayItem {
  const rows: NamedNumber[] = [
    { label: "coldest hour", value: result.coldestHour, kind: "temperature" },
    {
      label: "design temperature, strict",
      value: result.design99_6,
      kind: "temperature",
      note: "99.6 % of the hours are warmer; about 35 are not",
    },
    {
      label: "design temperature, usual",
      value: result.design99,
      kind: "temperature",
      note: "99 % of the hours are warmer; about 88 are not",
    },
    {
      label: `degree-days below ${shown(18, "temperature", 0)}`,
      value: result.heatingDegreeDays18,
      kind: "degreeDays",
      note: "from daily means",
    },
    {
      label: "degree-days below 18.3 degC (65 degF)",
      value: result.heatingDegreeDays18_3,
      kind: "degreeDays",
      note: "from hourly values; the base of US tables",
    },
    {
      label: "radiation, December to February",
      value: result.winterRadiation,
      kind: "radiation",
      note: "horizontal",
    },
    {
      label: "radiation, the whole year",
      value: result.globalRadiation,
      kind: "radiation",
      note: "horizontal",
    },
  ];
  return numbers(rows);
}

/** Hours and degree-hours outdoors below what the crop bears, and below the heating set point. */
export function cropLimitTable(limits: readonly OutdoorLimit[]): DisplayItem {
  return table(limits, [
    { head: "limit", value: ({ name }) => name },
    { head: "at", value: ({ limit }) => limit, kind: "temperature" },
    { head: "hours outdoors below", value: ({ hours }) => hours, kind: "hours" },
    { head: "degree-hours below, K h", value: (row) => row.degreeHours, digits: 0 },
    { head: "degree-hours below, degF h", value: (row) => row.degreeHours * 1.8, digits: 0 },
  ], "Outdoors below the limits of the crop");
}

/** The season of days shorter than some lengths at a place. */
export function shortDayTable(rows: readonly ShortDayRow[]): DisplayItem {
  const day = (one: number | null) => one === null ? "–" : dayName(one - 1);
  return table(rows, [
    { head: "days shorter than", value: ({ hours }) => `${showNumber(hours, 0)} h`, right: true },
    { head: "number", value: ({ count }) => count, kind: "days" },
    { head: "first", value: ({ first }) => day(first), right: true },
    { head: "last", value: ({ last }) => day(last), right: true },
  ], "Short days");
}
