/** Temperatures written where a difference of temperatures belongs. @module */
import { formatQuantity, parseQuantity } from "./quantity.ts";

const DEGREES = /\s*(?:deg|°)?\s*(c|f|celsius|fahrenheit)$/i;

/**
 * Why a text is a temperature rather than a difference; undefined where it may be a difference.
 *
 * A difference is written in K. One in degF is taken up to the largest usual one, since a thermostat's
 * temperatures in degF lie above that. One in degC is never taken: differences and temperatures of the
 * same size are both usual there, and K says the same.
 *
 * @returns the reason with what to write instead, or undefined
 * @example
 * ```ts
 * import { assertEquals } from "@std/assert";
 * import { readsAsTemperature } from "./difference.ts";
 *
 * assertEquals(readsAsTemperature("9 degF", 15), undefined);
 * assertEquals(
 *   readsAsTemperature("80 degF", 15),
 *   "80 degF looks like a temperature (26.7 degC): write the difference between the two " +
 *     "temperatures, such as 5 K or 9 degF; if you mean 44.4 K, write 44.4 K",
 * );
 * ```
 *
 * @param text what the user wrote
 * @param usualMost largest difference usual here, K
 */
export function readsAsTemperature(text: string | number, usualMost: number): string | undefined {
  const found = String(text).trim();
  const scale = DEGREES.exec(found)?.[1]?.[0]?.toLowerCase();
  if (scale === undefined) return undefined;
  const difference = parseQuantity(found, "temperatureDifference");
  if (scale === "f" && Math.abs(difference) <= usualMost * (1 + 1e-9)) {
    return difference < 0 ? temperatureWords(found, difference) : undefined;
  }
  return temperatureWords(found, difference);
}

function temperatureWords(found: string, difference: number): string {
  const temperature = parseQuantity(found, "temperature");
  const apart = formatQuantity(Math.abs(difference), "temperatureDifference", "SI", 3);
  return `${found} looks like a temperature (${
    formatQuantity(temperature, "temperature", "SI", 3)
  }): ` +
    "write the difference between the two temperatures, such as 5 K or 9 degF; " +
    `if you mean ${apart}, write ${apart}`;
}
