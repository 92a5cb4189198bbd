/**
 * Does a doc comment say in which unit a number is?
 *
 * @module
 */

/** Units as doc comments write them; a product or quotient is known by its first unit. */
const UNITS = [
  "degC",
  "degF",
  "K",
  "µm|mm|cm|km|m[²³]?|litres?",
  "s|min|minutes?|h|hours?|days?|months?|quarters?|years?",
  "m?W|kW|MW|[kM]?Wh",
  "[kM]?J",
  "[kM]?Pa",
  "kg|g",
  "ppm|dB",
  "px|ms",
  "degrees?|rad|radians?",
  "[1-9](?=/(?:h|m|s|K|year))",
];

/** How doc comments say that a number has no unit, or counts something. */
const PLAIN = [
  "dimensionless",
  "0 to 1|−1 to 1",
  "shares?|ratios?|factors?|exponents?|fractions?|efficiency|emissivity|per cent",
  "numbers? of|count|counted|times",
  "currency|money",
  "over (?:the )?(?:mean|rated|all|standard)|relative",
  "velocity heads?|cosines?",
  "(?:Reynolds|Prandtl|Nusselt|Lewis) numbers?|refractive index",
  "from [01]\\b",
  "index|indices|place of|seed",
  "same unit|unit (?:of|the kind has)",
  "air changes",
  "plain number",
  "coefficient of variation",
  "trials",
  "lines?|columns?|digits?|decimals|characters?",
];

const alone = (words: readonly string[]): string =>
  `(?<![\\w'’.])(?:${words.join("|")})(?![\\w'’])`;
const UNIT = new RegExp(`${alone(UNITS)}|[%°]`);
const NO_UNIT = new RegExp(alone(PLAIN));

/** True where the words name a unit. */
export function namesUnit(words: string): boolean {
  return UNIT.test(words);
}

/** True where the words name a unit, or say that the number is a share, a count or a place. */
export function saysUnit(words: string): boolean {
  return namesUnit(words) || NO_UNIT.test(words);
}
