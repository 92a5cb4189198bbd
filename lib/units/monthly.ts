/** One quantity for the year, or twelve by month, as a study file writes them. @module */
import { MONTH_ABBREVIATIONS } from "../basics/series/calendar.ts";
import type { Kind } from "./kinds.ts";
import { formatQuantity } from "./quantity.ts";

/**
 * A quantity as text; of twelve, those that differ from the month before, by name.
 *
 * @param value in SI: one for the year or twelve, January first
 * @param kind of quantity
 */
export function formatMonthly(value: number | readonly number[], kind: Kind): string {
  if (typeof value === "number") return formatQuantity(value, kind);
  return value.flatMap((one, month) =>
    month > 0 && one === value[month - 1]
      ? []
      : [`${MONTH_ABBREVIATIONS[month]}: ${formatQuantity(one, kind)}`]
  ).join(", ");
}
