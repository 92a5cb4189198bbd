/** Tables of the climate notebook: soundness of the file, design hours, crop limits, short days. @module */
import { dayName, MONTHS } from "../kit/calendar.ts";
import type { DisplayItem } from "../kit/figure.ts";
import { showNumber } from "../../units/mod.ts";
import { hoursBelow } from "../../basics/mod.ts";
import { type ClimateQuality, degreeHoursBelow, hoursText } from "../../climate/mod.ts";
import type { ClimateResult, ClimateYear } from "../../climate/types.ts";
import { findCrop, type HouseInputs } from "../../house/mod.ts";
import { shortDays } from "../../sun/mod.ts";
import { type NamedNumber, numbers, table } from "../kit/table.ts";

/** How the radiation of each month fits the sun, and as the file would stand an hour off. */
export function qualityTable(quality: ClimateQuality): DisplayItem {
  return table(quality.fits, [
    { head: "month", value: (fit) => MONTHS[fit.month - 1]! },
    { head: "misfit as read, W/m²", value: (fit) => fit.misfit, digits: 1 },
    { head: "shifted an hour earlier, W/m²", value: (fit) => fit.misfitEarlier, digits: 1 },
    { head: "shifted an hour later, W/m²", value: (fit) => fit.misfitLater, digits: 1 },
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
  const sum = (months: readonly number[]) =>
    months.reduce((all, month) => all + result.months[month - 1]!.globalRadiation, 0);
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
      label: "degree-days below 18 degC",
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
      value: sum([12, 1, 2]),
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
export function cropLimitTable(climate: ClimateYear, house: HouseInputs): DisplayItem {
  const crop = findCrop(house.crop);
  const limits = [
    [`${crop.name}: plants die below`, crop.killingLimit],
    [`${crop.name}: plants are damaged below`, crop.damageLimit],
    [`${crop.name}: growth stops below`, crop.growthLimit],
    ["freezing", 0],
    ["heating set point of the study", house.heatSetPoint],
    ["5 degC", 5],
  ] as const;
  const rows = limits.filter(([, limit], index) =>
    limits.findIndex(([, other]) => other === limit) === index
  ).sort(([, a], [, b]) => a - b);
  const degreeHours = (limit: number) => degreeHoursBelow(climate.dryBulb, limit);
  return table(rows, [
    { head: "limit", value: ([name]) => name },
    { head: "at", value: ([, limit]) => limit, kind: "temperature" },
    {
      head: "hours outdoors below",
      value: ([, limit]) => hoursBelow(climate.dryBulb, limit),
      kind: "hours",
    },
    { head: "degree-hours below, K h", value: ([, limit]) => degreeHours(limit), digits: 0 },
    {
      head: "degree-hours below, degF h",
      value: ([, limit]) => degreeHours(limit) * 1.8,
      digits: 0,
    },
  ], "Outdoors below the limits of the crop");
}

const DAY_LENGTHS = [8, 9, 10, 11, 12];

/** The season of days shorter than some lengths at a place. */
export function shortDayTable(place: { readonly latitude: number }): DisplayItem {
  const rows = DAY_LENGTHS.map((hours) => ({
    hours,
    ...shortDays(place.latitude, hours * 3600),
  }));
  const day = (one: number | null) => one === null ? "–" : dayName(one - 1);
  return table(rows, [
    { head: "days shorter than", value: ({ hours }) => `${showNumber(hours, 0)} h`, right: true },
    { head: "number", value: ({ count }) => count, kind: "days" },
    { head: "first", value: ({ first }) => day(first), right: true },
    { head: "last", value: ({ last }) => day(last), right: true },
  ], "Short days");
}
