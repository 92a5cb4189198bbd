/** Pairs of an SI value and the same in US units, turned for a reader of US units. @module */
import { KINDS } from "./kinds.ts";
import type { UnitSystem } from "./quantity.ts";

const escaped = (unit: string) => unit.replaceAll(/[.*+?^${}()|[\]\\/]/g, "\\$&");
/** Labels of units, the longer first, so that "m" does not take the start of "m²". */
const labels = (of: "si" | "us") =>
  [...new Set(Object.values(KINDS).flatMap(({ shown }) => shown[of]?.[1] ?? []))]
    .filter((label) => label !== "" && label !== "–")
    .sort((a, b) => b.length - a.length)
    .map(escaped).join("|");
const NUMBER = "[−-]?[\\d\u202f]+(?:\\.\\d+)?";
/** Before a unit; a picture writes the hard one as a number. */
const SPACE = "(?:[ \u00a0]|&#160;)";
const side = (of: "si" | "us") => `${NUMBER}(?: to ${NUMBER})?${SPACE}(?:${labels(of)})`;
const PAIR = new RegExp(`(?<![\\d.,−-])(${side("si")}) \\((${side("us")})\\)`, "g");

/**
 * "2.5 degC (36.6 degF)" in every place of a text, with the units of the reader first.
 *
 * @param units whose units stand first
 * @param text as the chapters write it, SI first
 */
export function inOrderOf(units: UnitSystem, text: string): string {
  return units === "SI" ? text : text.replace(PAIR, "$2 ($1)");
}
