import { assertAlmostEquals, assertEquals, assertThrows } from "@std/assert";
import fc from "fast-check";
import {
  formatQuantity,
  type Kind,
  KINDS,
  parseQuantity,
  QuantityError,
} from "winterground/units/mod.ts";

const kinds = Object.keys(KINDS) as Kind[];

Deno.test("parseQuantity() reads back what formatQuantity() wrote, every kind, both systems", () => {
  // Property: inverse of inverse, to the digits written
  fc.assert(
    fc.property(
      fc.constantFrom(...kinds),
      fc.constantFrom("SI" as const, "US" as const),
      fc.double({ min: 1e-3, max: 1e5, noNaN: true }),
      (kind, system, value) => {
        const back = parseQuantity(formatQuantity(value, kind, system, 12), kind);
        const zero = kind === "temperature" ? 300 : 0;
        assertAlmostEquals(
          back,
          value,
          1e-10 * (Math.abs(value) + zero) + 1e-15,
          `${kind} ${system}`,
        );
      },
    ),
    { seed: 1 },
  );
});

Deno.test("parseQuantity() uses the factors of NIST SP 811 (2008) appendix B.8", () => {
  // Source: NIST Special Publication 811 (2008) [nist-sp811-2008], appendix B.8 and B.9, factors to
  // their printed digits
  const cases: [string, Kind, number, number][] = [
    ["1 cfm", "airFlow", 4.719474e-4, 5e-11],
    ["1 inH2O", "pressure", 249.0889, 5e-4],
    ["1 Btu/(h ft2 degF)", "transmittance", 5.678263, 5e-7],
    ["1 Btu/(h ft degF)", "conductivity", 1.730735, 5e-7],
    ["1 degF h ft2/Btu", "resistance", 0.1761102, 5e-8],
    ["1 lb/ft3", "density", 16.01846, 5e-6],
    ["1 gal", "volume", 3.785412e-3, 5e-10],
    ["1 Btu/h", "power", 0.2930711, 5e-8],
    ["1 mph", "speed", 0.44704, 5e-7],
    ["1 Btu/(lb degF)", "heatCapacity", 4186.8, 5e-2],
    ["1 therm", "energy", 1.055056e8 / 3.6e6, 5e-6],
    ["1 Btu/(h ft2)", "heatFlux", 3.154591, 5e-7],
    ["1 ft/min", "speed", 5.08e-3, 5e-9],
  ];
  for (const [text, kind, value, digit] of cases) {
    assertAlmostEquals(parseQuantity(text, kind), value, digit, text);
  }
});

Deno.test("parseQuantity() scales differences and shifts temperatures", () => {
  // Property: definition of the degree Fahrenheit: 32 degF = 0 degC, 180 degF = 100 K
  assertAlmostEquals(parseQuantity("32 degF", "temperature"), 0, 1e-9);
  assertAlmostEquals(parseQuantity("212 °F", "temperature"), 100, 1e-9);
  assertAlmostEquals(parseQuantity("-40 degF", "temperature"), -40, 1e-9);
  assertAlmostEquals(parseQuantity("180 degF", "temperatureDifference"), 100, 1e-9);
  assertAlmostEquals(parseQuantity("5 degC", "temperatureDifference"), 5, 1e-9);
});

Deno.test("parseQuantity() takes the spellings people use", () => {
  // Property: two spellings of one quantity give one number
  const pairs: [string, string, Kind][] = [
    ["0.5 1/h", "0.5 ach", "airChange"],
    ["0.5 /h", "0.5 ACH", "airChange"],
    ["0.3 in. w.g.", "0.3 inwg", "pressure"],
    ["0.3 inches of water", "0.3 inH2O", "pressure"],
    ["1.4 W/m/K", "1.4 W/(m·K)", "conductivity"],
    ["12 m²", "12 m2", "area"],
    ["1 h", "3600 s", "time"],
    ["0.1 ach/(m/s)", "0.1 1/h/(m/s)", "airChangePerSpeed"],
    ["30 %", "0.3", "share"],
    ["2 %", "0.02", "share"],
    ["R-10", "10 h ft2 degF/Btu", "resistance"],
    ["R19", "19 h ft2 degF/Btu", "resistance"],
    ["RSI 1.8", "1.8 m2 K/W", "resistance"],
    ["12 ft 6 in", "12.5 ft", "length"],
    ["12'6\"", "150 in", "length"],
  ];
  for (const [one, other, kind] of pairs) {
    assertAlmostEquals(parseQuantity(one, kind), parseQuantity(other, kind), 1e-12, one);
  }
});

Deno.test("parseQuantity() says what it expected and what it found", () => {
  // Property: wrong or missing units are refused, never guessed
  const message = (text: string, kind: Kind) =>
    assertThrows(() => parseQuantity(text, kind), QuantityError).message;
  assertEquals(
    message("26 kg", "length"),
    "expected a length such as 26 m or 85 ft; found 26 kg",
  );
  assertEquals(
    message("26", "length"),
    "expected a length such as 26 m or 85 ft; found 26 without a unit",
  );
  assertEquals(
    message("26 furlogs", "length"),
    'expected a length such as 26 m or 85 ft; found 26 furlogs (the unit "furlogs" is not known)',
  );
  assertEquals(
    message("long", "length"),
    'expected a length such as 26 m or 85 ft; found "long"',
  );
  assertEquals(
    message("2,5 m", "length"),
    "expected a length such as 26 m or 85 ft; found 2,5 m (use a point as the decimal mark and no thousands separator)",
  );
  assertThrows(() => parseQuantity("R-10", "length"), QuantityError);
  assertThrows(() => parseQuantity("5 K", "airChange"), QuantityError);
  assertThrows(() => parseQuantity("3 %", "number"), QuantityError);
  assertThrows(() => parseQuantity("5 m/s", "airChange"), QuantityError);
});

Deno.test("parseQuantity() refuses the unit of every other kind of dimension", () => {
  // Property: no kind accepts a mass unless it is a mass
  for (const kind of kinds) {
    if (kind === "mass") continue;
    assertThrows(() => parseQuantity("3 kg", kind), QuantityError);
  }
});

Deno.test("formatQuantity() and parseQuantity() agree with tables of both systems side by side", () => {
  // Source: definitions: 180 degF = 100 K, 32 degF = 0 degC; NIST SP 811 (2008) [nist-sp811-2008]
  // appendix B.8 for the rest, 1 W/(m² K) = 0.1761102, 1 W/(m K) = 0.5777893, 1 m² K/W = 5.678263
  // of the US unit, 1 Pa = 0.004014631 inH2O
  const cases: [number, Kind, string][] = [
    [5, "temperatureDifference", "9 degF"],
    [-20, "temperature", "-4 degF"],
    [10, "transmittance", "1.761 Btu/(h ft² degF)"],
    [10, "conductivity", "5.778 Btu/(h ft degF)"],
    [2, "resistance", "11.36 h ft² degF/Btu"],
    [100, "conductance", "189.6 Btu/(h degF)"],
    [1000, "pressure", "4.015 inH2O"],
    [1, "airFlow", "2119 cfm"],
    [2930.71, "energy", "100 therm"],
  ];
  for (const [value, kind, text] of cases) {
    assertEquals(formatQuantity(value, kind, "US"), text, kind);
  }
});

Deno.test("parseQuantity() refuses spaced thousands and fractions, and never takes their first digits", () => {
  // Property: "2 500 cfm" is not 2 cfm
  for (const text of ["2 500 cfm", "1 1/2 cfm", "1\u00a0000 cfm"]) {
    assertThrows(() => parseQuantity(text, "airFlow"), SyntaxError, "a single number");
  }
});

Deno.test("parseQuantity() takes W/mK, W/m2K and W/m2 K as they are written in catalogues", () => {
  // Property: the same number as with brackets; a minus sign of the typesetter is a minus
  assertEquals(parseQuantity("1.4 W/mK", "conductivity"), 1.4);
  for (const unit of ["W/m2K", "W/m²K", "W/m2 K", "W/(m2K)", "W/(m2 K)"]) {
    assertEquals(parseQuantity(`0.25 ${unit}`, "transmittance"), 0.25);
  }
  assertEquals(parseQuantity("0.5 m2K/W", "resistance"), 0.5);
  assertEquals(parseQuantity("\u22123 degC", "temperature"), -3);
});
