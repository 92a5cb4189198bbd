/** What a live page shows of a state: the same markup while publishing and in the page. @module */
import type { UnitSystem } from "../../units/quantity.ts";
import type { LivePart, LiveYear, Resolution } from "../types.ts";
import { dayChart, keyOf, monthChart } from "./charts.ts";
import { figureTable, keyMarkup, monthTable } from "./tables.ts";

/** What is shown. */
export interface View {
  /** the study as it is, at the resolution shown */
  readonly study: LiveYear;
  /** the reader's case as far as it is known; null where nothing is moved */
  readonly own: LivePart | null;
  readonly resolution: Resolution;
  readonly units: UnitSystem;
  /** the reader's own weather, by the names of its files; null or absent for that of the study */
  readonly weather?: { readonly names: string } | null;
}

/** Markup of each part of the page, by the id of its element. */
export type ViewParts = Readonly<
  Record<"days" | "days-key" | "months" | "months-key" | "figures" | "table", string>
>;

/**
 * Draws a view.
 *
 * @param view state of the page
 * @param widths of the pictures, px: drawn once for each
 */
export function viewParts(view: View, widths: readonly number[]): ViewParts {
  const { study, own, units } = view;
  const year = own ?? study;
  const behind = own === null ? null : study;
  const drawn = widths.map((width) => ({ year, study: behind, units, width }));
  return {
    days: drawn.map(dayChart).join(""),
    "days-key": keyMarkup(keyOf("days", own !== null)),
    months: drawn.map(monthChart).join(""),
    "months-key": keyMarkup(keyOf("months", own !== null)),
    figures: figureTable(view),
    table: monthTable(year, units),
  };
}
