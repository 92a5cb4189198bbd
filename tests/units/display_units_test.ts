import { assert, assertAlmostEquals, assertEquals, assertThrows } from "@std/assert";
import { unit } from "mathjs";
import {
  displayKinds,
  displayUnit,
  showBoth,
  showNumber,
  showSi,
  showUs,
} from "../../lib/units/display_units.ts";

// kind: SI unit as stored, US unit, as mathjs spells them
const SPELLED: Readonly<Record<string, readonly [string, string]>> = {
  length: ["m", "ft"],
  depth: ["m", "ft"],
  diameter: ["m", "inch"],
  area: ["m^2", "ft^2"],
  volume: ["m^3", "ft^3"],
  airFlow: ["m^3/s", "ft^3/minute"],
  tubeFlow: ["m^3/s", "ft^3/minute"],
  airSpeed: ["m/s", "ft/minute"],
  windSpeed: ["m/s", "mile/hour"],
  density: ["kg/m^3", "lbm/ft^3"],
  power: ["W", "BTU/hour"],
  energy: ["kWh", "BTU"],
  radiation: ["kWh/m^2", "BTU/ft^2"],
  energyPerArea: ["kWh/m^2", "BTU/ft^2"],
  dailyRadiation: ["kWh/m^2/day", "BTU/ft^2/day"],
  heatFlow: ["W", "BTU/hour"],
  conductance: ["W/K", "BTU/hour/degR"],
  transmittance: ["W/m^2/K", "BTU/hour/ft^2/degR"],
  conductivity: ["W/m/K", "BTU/hour/ft/degR"],
  heatCapacity: ["J/m^3/K", "BTU/ft^3/degR"],
  latentHeat: ["J/m^3", "BTU/ft^3"],
  diffusivity: ["m^2/s", "ft^2/day"],
  specificPower: ["W s/m^3", "W minute/ft^3"],
  waterMass: ["kg", "lbm"],
};
// shown in thousands
const THOUSANDS = new Set([
  "dailyRadiation",
  "energy",
  "radiation",
  "energyPerArea",
  "heatFlow",
]);

Deno.test("US factors agree with the mathjs unit tables", () => {
  // Source: mathjs 15 unit definitions; 2e-6 because two NIST SP 811 [nist-sp811-2008] factors
  // print seven digits
  for (const [kind, [si, us]] of Object.entries(SPELLED)) {
    const expected = unit(1, si).toNumber(us) / (THOUSANDS.has(kind) ? 1000 : 1);
    const found = displayUnit(kind).us!.factor;
    assertAlmostEquals(found, expected, 2e-6 * expected, kind);
  }
});

Deno.test("an inch of water is 249.0889 Pa (NIST SP 811, 2008, appendix B.8)", () => {
  // Source: NIST SP 811 (2008) [nist-sp811-2008] app. B.8: inch of water, conventional, 2.490889
  // E+02 Pa
  assertAlmostEquals(displayUnit("pressure").us!.factor * 249.0889, 1, 1e-6);
});

Deno.test("every kind with a US unit is checked against an outside value", () => {
  // Property: no unchecked row
  const elsewhere = ["temperature", "temperatureDifference", "degreeDays", "pressure"];
  for (const kind of displayKinds()) {
    if (displayUnit(kind).us === null) continue;
    assert(kind in SPELLED || elsewhere.includes(kind), kind);
  }
});

Deno.test("temperatures: −40 is the same on both scales, 100 degC boils at 212 degF (NIST SP 811)", () => {
  // Source: NIST SP 811 (2008) [nist-sp811-2008] app. B.9, t/°F = 1.8 t/°C + 32
  assertEquals(showBoth(-40, "temperature"), "−40.0\u00a0degC (−40.0\u00a0degF)");
  assertEquals(showUs(100, "temperature"), "212.0\u00a0degF");
  assertEquals(showUs(10, "temperatureDifference"), "18.0\u00a0degF");
  assertEquals(displayUnit("degreeDays").us!.factor, 1.8);
});

Deno.test("showNumber() groups, rounds and never shows a negative zero", () => {
  // Property: form of a number
  assertEquals(showNumber(-0.04, 1), "0.0");
  assertEquals(showNumber(12345.6, 0), "12\u202f346");
  assertEquals(showNumber(1234.5, 1), "1234.5");
  assertEquals(showNumber(-1234567, 0), "−1\u202f234\u202f567");
  assertEquals(showNumber(NaN, 1), "–");
});

Deno.test("showSi() scales, and an unknown kind lists the known ones", () => {
  // Property: form and message
  assertEquals(showSi(0.314, "share"), "31\u00a0%");
  assertEquals(showUs(0.314, "share"), "");
  assertThrows(() => showSi(1, "colour"), RangeError, "temperature");
});
