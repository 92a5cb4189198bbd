/** Leaf area through the year: constant, by month, or by the calendar of a crop. @module */
import calendarText from "../../../data/crops/leaf_area.csv" with { type: "text" };
import { findById, HOURS_PER_YEAR, MONTH_ABBREVIATIONS, readDataTable } from "../../basics/mod.ts";
import type { Monthly } from "../../basics/fields.ts";
import { curveThrough } from "../../climate/normals/monthly_curve.ts";

interface LeafCalendar {
  readonly id: string;
  readonly months: readonly number[];
}

const HEADS = MONTH_ABBREVIATIONS.map((month) => `${month} (m2/m2)`);

const CALENDARS: readonly LeafCalendar[] = readDataTable(
  calendarText,
  "data/crops/leaf_area.csv",
  ["id", ...HEADS, "source"],
).map((row): LeafCalendar => ({
  id: row.text("id"),
  months: HEADS.map((head) => row.number(head)),
}));

/**
 * Leaf area over floor area that a crop usually has, by month.
 *
 * Source: common practice, no source (`data/crops/leaf_area.csv`).
 *
 * @param crop id in `data/crops/crops.csv`
 * @returns twelve ratios of leaf area to floor area, January first
 */
export function leafAreaOfCrop(crop: string): readonly number[] {
  return findById(CALENDARS, crop, "leaf calendar").months;
}

/**
 * Leaf area hour by hour: constant, or straight lines between the middles of the months.
 *
 * @param leafArea ratio of leaf area to floor area, or twelve of them, January first
 * @returns 8760 ratios of leaf area to floor area
 */
export function leafAreaByHour(leafArea: Monthly): Float64Array {
  return typeof leafArea === "number"
    ? new Float64Array(HOURS_PER_YEAR).fill(leafArea)
    : curveThrough(leafArea);
}
