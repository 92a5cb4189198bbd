/** Rare values in words. @module */
import { shown, shownBoth } from "../kit/reader.ts";
import type { WinterSpread } from "../../worth/mod.ts";

/** What stands where the odds would. */
export const NO_WINTERS = "No winters are counted: the study sets worth.winters to 0.";

/** A rare value in words; that there are too few winters where it is not stated. */
export function rareText(
  spread: WinterSpread["rare10"],
  kind: "temperature" | "hours" | "energy",
): string {
  if (spread === null) return "not stated from so few winters";
  return `${shownBoth(spread.value, kind)} (${shown(spread.low, kind)} to ${
    shown(spread.high, kind)
  })`;
}
