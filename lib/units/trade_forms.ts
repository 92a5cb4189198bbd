/** Forms of the building trade that are not number and unit: `R-10`, `96'`, `6 1/2 in`. @module */

const R_VALUE = /^R[- ]?(\d+(?:\.\d+)?)$/i;
const RSI_VALUE = /^RSI[- ]?(\d+(?:\.\d+)?)$/i;

const NUMBER = String.raw`\d+(?:\.\d+)?`;
const FRACTION = String.raw`(?:(?:\d+(?:\s*-\s*|\s+))?\d+\s*\/\s*[1-9]\d*)`;
const FOOT = String.raw`(?:ft\.?|feet|foot|')`;
const INCH = String.raw`(?:inches|inch|in\.?|")`;
const FEET_AND_INCHES = new RegExp(
  `^([+-]?)(${NUMBER})\\s*${FOOT}[\\s,-]*(${FRACTION}|${NUMBER})\\s*${INCH}$`,
  "i",
);
const FEET = new RegExp(`^([+-]?)(${FRACTION}|${NUMBER})\\s*${FOOT}$`, "i");
const INCHES = new RegExp(`^([+-]?)(${FRACTION}|${NUMBER})\\s*${INCH}$`, "i");

/** Marks that word processors and telephones put in place of ', " and 1/2. */
function plainMarks(text: string): string {
  return text.trim()
    .replaceAll(/[\u2032\u2019\u00b4]/g, "'")
    .replaceAll(/[\u2033\u201d\u201c]|''/g, '"')
    .replaceAll(
      /[\u00bc-\u00be\u2150-\u215e]/g,
      (mark) => ` ${mark.normalize("NFKD").replace("\u2044", "/")}`,
    )
    .trim();
}

/** "6 1/2", "6-1/2", "3/4" or "6.5" as a number. */
function amount(text: string): number {
  const [, whole, top, bottom] = /^(?:(\d+)(?:\s*-\s*|\s+))?(\d+)\s*\/\s*(\d+)$/.exec(text) ?? [];
  return top === undefined ? Number(text) : Number(whole ?? 0) + Number(top) / Number(bottom);
}

/**
 * Rewrites such a form as number and unit; any other text comes back as it was.
 *
 * @example
 * ```ts
 * import { assertEquals } from "@std/assert";
 * import { plainForm } from "./trade_forms.ts";
 *
 * assertEquals(plainForm("R-10"), "10 h ft2 degF/Btu");
 * assertEquals(plainForm("12 ft 6 in"), "150 in");
 * assertEquals(plainForm("96'"), "96 ft");
 * assertEquals(plainForm("6 1/2 in"), "6.5 in");
 * assertEquals(plainForm("26 m"), "26 m");
 * ```
 */
export function plainForm(text: string): string {
  const plain = plainMarks(text);
  const rValue = R_VALUE.exec(plain);
  if (rValue !== null) return `${rValue[1]} h ft2 degF/Btu`;
  const rsiValue = RSI_VALUE.exec(plain);
  if (rsiValue !== null) return `${rsiValue[1]} m2 K/W`;
  return plainLength(plain) ?? text.trim();
}

/** A length in feet, inches or both; undefined where the text is none. */
function plainLength(plain: string): string | undefined {
  const both = FEET_AND_INCHES.exec(plain);
  if (both !== null) return `${both[1]}${Number(both[2]) * 12 + amount(both[3]!)} in`;
  const feet = FEET.exec(plain);
  if (feet !== null) return `${feet[1]}${amount(feet[2]!)} ft`;
  const inches = INCHES.exec(plain);
  return inches === null ? undefined : `${inches[1]}${amount(inches[2]!)} in`;
}
