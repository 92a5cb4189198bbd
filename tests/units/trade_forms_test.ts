import { assertAlmostEquals, assertThrows } from "@std/assert";
import { type Kind, parseQuantity, QuantityError } from "winterground/units/mod.ts";

Deno.test("parseQuantity() takes feet, inches and fractions as a tape measure shows them", () => {
  // Source: NIST SP 811 (2008) [nist-sp811-2008] appendix B.8: inch = 25.4 mm, foot = 0.3048 m,
  // exactly
  const inches: [string, number][] = [
    ["96'", 96 * 12],
    ["96 ft", 96 * 12],
    ["96\u2032", 96 * 12],
    ["96\u2019", 96 * 12],
    ['10"', 10],
    ["10\u2033", 10],
    ["10 in.", 10],
    ["6 1/2 in", 6.5],
    ['6 1/2"', 6.5],
    ['6-1/2"', 6.5],
    ["6½ in", 6.5],
    ["3/4 in", 0.75],
    ['¾"', 0.75],
    ["1/2'", 6],
    ["2 1/2 ft", 30],
    ["5' 6\"", 66],
    ["5'6\"", 66],
    ["5'-6\"", 66],
    ["5' 6 1/2\"", 66.5],
    ["5 ft 6 1/2 in", 66.5],
    ["5 ft. 6 in.", 66],
    ["5 feet, 6 inches", 66],
    ["-5' 6\"", -66],
    ["12 FT 6 IN", 150],
  ];
  for (const [text, value] of inches) {
    for (const kind of ["length", "smallLength"] as const) {
      assertAlmostEquals(parseQuantity(text, kind), value * 0.0254, 1e-12, text);
    }
  }
});

Deno.test("parseQuantity() takes an R-value where a U-value is wanted, as its reciprocal", () => {
  // Source: NIST SP 811 (2008) [nist-sp811-2008] appendix B.8: 1 h ft² degF/Btu = 0.1761102 m² K/W
  const cases: [string, number][] = [
    ["R-19", 1 / (19 * 0.1761102)],
    ["R19", 1 / (19 * 0.1761102)],
    ["r-19", 1 / (19 * 0.1761102)],
    ["R 2.5", 1 / (2.5 * 0.1761102)],
    ["19 h ft2 degF/Btu", 1 / (19 * 0.1761102)],
    ["RSI 3.35", 1 / 3.35],
    ["rsi-3.35", 1 / 3.35],
    ["3.35 m2 K/W", 1 / 3.35],
  ];
  for (const [text, value] of cases) {
    assertAlmostEquals(parseQuantity(text, "transmittance"), value, 1e-6 * value, text);
  }
  assertAlmostEquals(parseQuantity("r-10", "resistance"), 1.761102, 1e-6);
});

Deno.test("trade forms are refused where they mean nothing", () => {
  // Property: a form of one kind is never taken for another, a fraction never for its first digits
  const cases: [string, Kind][] = [
    ["R-0", "transmittance"],
    ["R-19", "length"],
    ["R-19", "conductivity"],
    ["96'", "temperature"],
    ['10"', "pressure"],
    ["6 1/2 cfm", "airFlow"],
    ["6 1/0 in", "length"],
    ["1/2", "length"],
    ["5'6", "length"],
    ["5 1/2' 6\"", "length"],
    ["0.3 W/(m2 K)", "resistance"],
  ];
  for (const [text, kind] of cases) {
    assertThrows(() => parseQuantity(text, kind), QuantityError, "expected");
  }
});
