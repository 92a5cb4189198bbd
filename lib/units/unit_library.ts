/** The unit library with the trade's units added, and spellings people use. @module */
import type { MathJsInstance, Unit } from "mathjs";
import inOneFile from "mathjs/lib/browser/math.js";

/** Read module by module, the same library takes half a second of every start. */
const library: Pick<MathJsInstance, "unit" | "createUnit"> = inOneFile;

/**
 * Units the library does not have. Water column: conventional inch of water, 249.08891 Pa (NIST SP
 * 811 [nist-sp811-2008], appendix B.8). The others follow from their definition.
 */
const ADDED: readonly (readonly [string, string])[] = [
  ["cfm", "1 ft^3/minute"],
  ["fpm", "1 ft/minute"],
  ["mph", "1 mile/hour"],
  ["kph", "1 km/hour"],
  ["gpm", "1 gallon/minute"],
  ["inH2O", "249.08891 Pa"],
  ["ach", "1 hour^-1"],
  ["therm", "100000 BTU"],
  ["kBTU", "1000 BTU"],
  ["MMBTU", "1000000 BTU"],
  ["clo", "0.155 m^2 K/W"],
];
for (const [name, definition] of ADDED) library.createUnit(name, definition, { override: true });

/** Whole words people write, and what the unit library calls them. */
const SPELLINGS: Readonly<Record<string, string>> = {
  Btu: "BTU",
  kBtu: "kBTU",
  MMBtu: "MMBTU",
  btu: "BTU",
  Btuh: "BTU/hour",
  BTUh: "BTU/hour",
  inwg: "inH2O",
  inwc: "inH2O",
  iwg: "inH2O",
  CFM: "cfm",
  FPM: "fpm",
  ACH: "ach",
  feet: "ft",
  foot: "ft",
  inches: "inch",
  in: "inch",
  sqft: "ft^2",
  gal: "gallon",
  min: "minute",
  hr: "hour",
  h: "hour",
  d: "day",
  Kd: "K day",
  Kh: "K hour",
  C: "degC",
  F: "degF",
  celsius: "degC",
  Celsius: "degC",
  fahrenheit: "degF",
  Fahrenheit: "degF",
  degrees: "deg",
  degree: "deg",
  m2: "m^2",
  m3: "m^3",
  ft2: "ft^2",
  ft3: "ft^3",
  in2: "inch^2",
  cm2: "cm^2",
  mm2: "mm^2",
  s2: "s^2",
};

/** Rewrites a unit as people write it (`m²·K/W`, `1/h`, `Btu/(h ft2 degF)`) for the unit library. */
export function spellUnit(text: string): string {
  const plain = text.trim()
    .replaceAll("°", "deg")
    .replaceAll("²", "^2").replaceAll("³", "^3")
    .replace(/[·⋅×]/g, " ")
    .replace(/\/\(?(m|m2|m\^2)\s?K\)?$/, "/($1 K)")
    .replace(/^(m2|m\^2)K\/W$/, "$1 K/W")
    .replace(/^1?\s*\/\s*h(r|our)?$/, "ach")
    .replace(/^per hour$/, "ach")
    .replace(/^\(1\s*\/\s*h\)/, "ach")
    .replace(/\bin(ch(es)?)?\.?\s+(of\s+)?(water|H2O|w\.?g\.?|w\.?c\.?)/, "inH2O");
  return plain.replace(/[A-Za-z][A-Za-z0-9]*/g, (word) => SPELLINGS[word] ?? word);
}

/** A value with a unit of the library; throws where the unit is unknown. */
export function withUnit(value: number, unit: string): Unit {
  return library.unit(value, unit);
}
