/** One climate file summarised as text for a terminal. @module */
import { showBoth } from "../../units/mod.ts";
import { MONTH_ABBREVIATIONS } from "../../basics/mod.ts";
import type { ClimateDifference } from "../../climate/mod.ts";
import type { ClimateResult, ClimateYear } from "../../climate/types.ts";
import type { Notice } from "../../basics/mod.ts";

interface TableColumn {
  readonly head: string;
  readonly unit: string;
}

const COLUMNS: readonly TableColumn[] = [
  { head: "month", unit: "" },
  { head: "mean", unit: "degC" },
  { head: "min", unit: "degC" },
  { head: "max", unit: "degC" },
  { head: "global", unit: "kWh/m2" },
  { head: "diffuse", unit: "%" },
  { head: "humidity", unit: "%" },
  { head: "wind", unit: "m/s" },
  { head: "HDD18", unit: "K d" },
];

function monthRows(result: ClimateResult): string[][] {
  return result.months.map((month) => [
    MONTH_ABBREVIATIONS[month.month - 1] ?? String(month.month),
    month.meanTemperature.toFixed(1),
    month.minTemperature.toFixed(1),
    month.maxTemperature.toFixed(1),
    month.globalRadiation.toFixed(0),
    (month.diffuseShare * 100).toFixed(0),
    (month.meanRelativeHumidity * 100).toFixed(0),
    month.meanWindSpeed.toFixed(1),
    month.heatingDegreeDays18.toFixed(0),
  ]);
}

/** Lines of a table, numbers right under their head. */
function alignTable(rows: readonly (readonly string[])[]): string[] {
  const widths = rows[0]!.map((_, column) => Math.max(...rows.map((row) => row[column]!.length)));
  return rows.map((row) => row.map((cell, column) => cell.padStart(widths[column]!)).join("  "));
}

function placeLine({ place }: ClimateYear): string {
  const zone = place.timeZone < 0 ? `${place.timeZone}` : `+${place.timeZone}`;
  return `${place.name}: latitude ${place.latitude} deg, longitude ${place.longitude} deg, ` +
    `${place.elevation} m, UTC${zone}`;
}

function dayOfYear(day: number): string {
  const date = new Date(Date.UTC(2001, 0, 1 + day));
  return `${date.getUTCDate()} ${MONTH_ABBREVIATIONS[date.getUTCMonth()]}`;
}

/**
 * Text of the summary: place, months, design temperatures, cold spells, notices.
 *
 * @param year the weather
 * @param result its summary
 * @param notices what was noticed while reading and checking
 */
export function climateReport(
  year: ClimateYear,
  result: ClimateResult,
  notices: readonly Notice[],
): string {
  const lines = [
    `${year.source} (layout: ${year.layout})`,
    placeLine(year),
    "",
    ...alignTable([
      COLUMNS.map(({ head }) => head),
      COLUMNS.map(({ unit }) => unit),
      ...monthRows(result),
    ]),
    "",
    `mean temperature            ${showBoth(result.meanTemperature, "temperature")}`,
    `coldest hour                ${showBoth(result.coldestHour, "temperature")}`,
    `exceeded 99.6 % of the time ${showBoth(result.design99_6, "temperature")}`,
    `exceeded 99 % of the time   ${showBoth(result.design99, "temperature")}`,
    `degree-days below 18 degC   ${showBoth(result.heatingDegreeDays18, "degreeDays")}`,
    `degree-days below 18.3 degC ${
      showBoth(result.heatingDegreeDays18_3, "degreeDays")
    } (from hours)`,
    `global radiation            ${showBoth(result.globalRadiation, "radiation")} a year`,
    "",
    ...result.coldSpells.map((spell) =>
      `worst cold sunless spell of ${spell.length} d: from ${dayOfYear(spell.startDay)}, mean ` +
      `${showBoth(spell.meanTemperature, "temperature")}, lowest ${
        showBoth(spell.minTemperature, "temperature")
      }, ` +
      `${showBoth(spell.globalRadiation, "dailyRadiation")}`
    ),
  ];
  const marks = notices.map(({ level, text }) => `${level}: ${text}`);
  return [...lines, ...(marks.length > 0 ? ["", ...marks] : [])].join("\n") + "\n";
}

function signed(value: number, digits: number): string {
  const text = Math.abs(value).toFixed(digits);
  if (Number(text) === 0) return text;
  return `${value > 0 ? "+" : "-"}${text}`;
}

/**
 * Text of the comparison of two climates: one line a figure, and what was noticed in the second.
 *
 * @param years both years, the first one first
 * @param rows from `compareClimates`
 * @param notices what was noticed in either
 */
export function comparisonReport(
  years: readonly [ClimateYear, ClimateYear],
  rows: readonly ClimateDifference[],
  notices: readonly Notice[],
): string {
  const digits = (row: ClimateDifference) =>
    Math.abs(row.first) >= 100 ? 0 : row.unit.startsWith("kWh") ? 2 : 1;
  const cells = rows.map((row) => [
    row.label.padEnd(Math.max(...rows.map(({ label }) => label.length))),
    row.unit,
    row.first.toFixed(digits(row)),
    row.second.toFixed(digits(row)),
    signed(row.difference, digits(row)),
  ]);
  const marks = notices.map(({ level, text }) => `${level}: ${text}`);
  return [
    `A: ${years[0].source} (layout: ${years[0].layout})`,
    `   ${placeLine(years[0])}`,
    `B: ${years[1].source} (layout: ${years[1].layout})`,
    `   ${placeLine(years[1])}`,
    "",
    ...alignTable([["", "", "A", "B", "B - A"], ...cells]),
    ...(marks.length > 0 ? ["", ...marks] : []),
  ].join("\n") + "\n";
}
