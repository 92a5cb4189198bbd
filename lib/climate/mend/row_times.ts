/** Rows that are not whole clock hours: sums over parts of an hour, rows across two hours. @module */
import { type Notice, notice } from "../../basics/mod.ts";
import type { HourSeries } from "./fill_gaps.ts";
import type { HourRows } from "../read/hour_rows.ts";
import { QUANTITY_RULES } from "../read/quantities.ts";
import type { TableLayout } from "../read/table.ts";

/** Adds up sums over parts of an hour, and says so. */
export function sumsOfPartHours(
  layout: TableLayout,
  hours: HourRows,
  series: HourSeries,
): Notice[] {
  const sums = layout.columns.filter(({ sum }) => sum === true);
  if (hours.perHour === 1 || sums.length === 0) return [];
  for (const { quantity } of sums) {
    series[quantity] = series[quantity]!.map((value) => value * hours.perHour);
  }
  const names = sums.map(({ quantity, unit }) => `${QUANTITY_RULES[quantity].words} (${unit})`);
  return [notice(
    "info",
    "climate",
    `${names.join(", ")}: taken as sums over ${Math.round(60 / hours.perHour)} min, ` +
      `${hours.perHour} per hour; if they are means, give their unit as W/m2`,
  )];
}

/** Rows that do not fill clock hours, with what to write. */
export function rowsOffTheHour(
  { stampAt, layout }: TableLayout,
  { early, perHour }: HourRows,
): Notice[] {
  const minutes = Math.round(Math.abs(early));
  if (layout !== "columns" || minutes < LEAST_OFFSET) return [];
  const from = minutes * perHour === 30 && perHour === 1
    ? "from half past to half past"
    : `from ${early > 0 ? minutes : Math.round(60 / perHour) - minutes} min past the hour`;
  return [notice(
    "warning",
    "climate",
    `Rows run ${from} (time.stamp: ${stampAt}) and are assigned to clock hours: everything is ` +
      `${minutes} min too ${early > 0 ? "early" : "late"}. Write stamp: ` +
      `${stampAt === "middle" ? "start or end" : "middle"} if that is what the stamps mark, or ` +
      "export rows that start on the hour",
  )];
}

/** Minutes off the clock hour that are worth a word. */
const LEAST_OFFSET = 3;
