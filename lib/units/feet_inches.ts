/** Lengths as a builder with a tape in feet and inches reads them. @module */

/** m in an inch, exactly [nist-sp811-2008]. */
const INCH = 0.0254;

/**
 * A length in feet, inches and a binary fraction of an inch, rounded to the nearest, such as
 * `12'-7 1/2"`; below a foot without feet, such as `4 5/8"`.
 *
 * @example
 * ```ts
 * import { feetInches } from "./feet_inches.ts";
 *
 * feetInches(3.8481); // 12'-7 1/2"
 * ```
 *
 * @param metres the length, m
 * @param finest denominator of the finest fraction of an inch: a power of two, count
 */
export function feetInches(metres: number, finest = 8): string {
  const parts = Math.round(Math.abs(metres) / INCH * finest);
  const inches = Math.floor(parts / finest);
  const [feet, over] = [Math.floor(inches / 12), inches % 12];
  const fraction = fractionText(parts % finest, finest);
  const whole = over > 0 || feet > 0 || fraction === "" ? [`${over}`] : [];
  const words = `${[...whole, ...fraction === "" ? [] : [fraction]].join(" ")}"`;
  const sign = metres < 0 && parts > 0 ? "−" : "";
  return `${sign}${feet > 0 ? `${feet}'-` : ""}${words}`;
}

function fractionText(part: number, of: number): string {
  if (part === 0) return "";
  return part % 2 === 0 ? fractionText(part / 2, of / 2) : `${part}/${of}`;
}
