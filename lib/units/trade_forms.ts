/** Forms of the building trade that are not number and unit: `R-10`, `RSI 1.8`, `12 ft 6 in`. @module */

const R_VALUE = /^R[- ]?(\d+(?:\.\d+)?)$/;
const RSI_VALUE = /^RSI[- ]?(\d+(?:\.\d+)?)$/;
const FEET_AND_INCHES = /^(\d+)\s*(?:ft|feet|foot|')\s*(\d+(?:\.\d+)?)\s*(?:in|inches|inch|")$/;

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
 * assertEquals(plainForm("26 m"), "26 m");
 * ```
 */
export function plainForm(text: string): string {
  const trimmed = text.trim();
  const rValue = R_VALUE.exec(trimmed);
  if (rValue !== null) return `${rValue[1]} h ft2 degF/Btu`;
  const rsiValue = RSI_VALUE.exec(trimmed);
  if (rsiValue !== null) return `${rsiValue[1]} m2 K/W`;
  const feet = FEET_AND_INCHES.exec(trimmed);
  if (feet !== null) return `${Number(feet[1]) * 12 + Number(feet[2])} in`;
  return trimmed;
}
