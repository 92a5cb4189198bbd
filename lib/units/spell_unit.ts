/** Spellings of units that people use. @module */

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
