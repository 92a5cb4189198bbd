/** Pieces that take the whole width of the report. @module */
import type { DisplayItem } from "../kit/figure.ts";

/** The same over the whole width; a drawing moves sideways, and keys break, where they do not fit. */
export function wide(
  item: DisplayItem,
  what: "wide" | "wide drawing" | "wide keys" = "wide",
): DisplayItem {
  return { ...item, "text/html": `<div class="${what}">${item["text/html"]}</div>` };
}
