import { assert, assertAlmostEquals, assertEquals } from "@std/assert";
import {
  displayUnit,
  type Kind,
  KINDS,
  parseQuantity,
  showBoth,
  showFigures,
  showNumber,
  showPower,
  showRange,
  showSi,
  showUs,
} from "../../lib/units/mod.ts";

const kinds = Object.keys(KINDS) as Kind[];

/**
 * US value for one unit inside the library, and what is added to it: foot 0.3048 m, inch 25.4 mm,
 * mile 1609.344 m and pound 0.45359237 kg exactly, Btu (International Table) 1055.05585262 J, inch of
 * water (conventional) 249.0889 Pa; app. B.8 and B.9.
 */
const US_FACTORS: Readonly<Partial<Record<Kind, readonly [factor: number, offset: number]>>> = {
  temperature: [1.8, 32],
  temperatureDifference: [1.8, 0],
  length: [3.280839895013123, 0],
  depth: [3.280839895013123, 0],
  smallLength: [39.37007874015748, 0],
  area: [10.76391041670972, 0],
  volume: [35.31466672148859, 0],
  airFlow: [2118.8800032893155, 0],
  tubeFlow: [2118.8800032893155, 0],
  speed: [196.8503937007874, 0],
  windSpeed: [2.2369362920544025, 0],
  pressure: [0.004014630920928231, 0],
  density: [0.06242796057614461, 0],
  soilDensity: [0.06242796057614461, 0],
  power: [3.412141633127942, 0],
  heatFlow: [0.003412141633127942, 0],
  energy: [3.412141633127942, 0],
  radiation: [0.3169983306281505, 0],
  energyPerArea: [0.3169983306281505, 0],
  dailyRadiation: [0.3169983306281505, 0],
  conductance: [1.895634240626634, 0],
  transmittance: [0.1761101836823056, 0],
  conductivity: [0.5777893165430303, 0],
  volumetricHeatCapacity: [0.00001491066, 0],
  latentHeat: [0.00002683919, 0],
  diffusivity: [930001.86, 0],
  degreeDays: [1.8, 0],
  specificPower: [0.0004719474432, 0],
  mass: [2.2046226218487757, 0],
  heatFlux: [0.3169983306281505, 0],
  heatPerLength: [1.0400207697773969, 0], // 1 Btu/h = 0.29307107 W, 1 ft = 0.3048 m
  resistance: [5.678263341113489, 0],
  heatCapacity: [0.0002388458966, 0],
  airChangePerSpeed: [0.44704, 0],
};
const SI_FACTORS: Readonly<Partial<Record<Kind, number>>> = {
  smallLength: 1000,
  tubeFlow: 1000,
  heatFlow: 0.001,
  volumetricHeatCapacity: 0.000001,
  latentHeat: 0.000001,
  diffusivity: 1000000,
  share: 100,
  sharePrecise: 100,
};

Deno.test("US units have the sizes that NIST SP 811 gives them, for every kind that is shown", () => {
  // Source: NIST SP 811 (2008) [nist-sp811-2008] app. B.8 and B.9; 2e-6 because two factors are
  // printed with seven digits
  for (const kind of kinds) {
    const { si, us } = displayUnit(kind);
    assertAlmostEquals(si.factor, SI_FACTORS[kind] ?? 1, 1e-12 * si.factor, kind);
    assertEquals(si.offset, 0);
    assertEquals(us === null, US_FACTORS[kind] === undefined, `${kind} is not checked`);
    if (us === null) continue;
    const [factor, offset] = US_FACTORS[kind]!;
    assertAlmostEquals(us.factor, factor, 2e-6 * factor, kind);
    assertAlmostEquals(us.offset, offset, 1e-9);
  }
});

Deno.test("what is shown reads back as the same quantity", () => {
  // Property: parse ∘ show is the identity to the decimals shown
  const plain = (text: string) => text.replaceAll("\u00a0", " ").replaceAll("\u202f", "");
  for (const kind of kinds) {
    const { si, us } = displayUnit(kind);
    for (const [text, scale] of [[showSi(7, kind), si], [showUs(7, kind), us]] as const) {
      if (scale === null) continue;
      const half = 0.51 * 10 ** -scale.digits / scale.factor;
      assertAlmostEquals(parseQuantity(plain(text), kind), 7, half, `${kind}: ${text}`);
    }
  }
});

Deno.test("showRange() gives both ends in both systems, each unit once", () => {
  // Property: form
  assertEquals(
    showRange(0.6, 1.2, "speed"),
    "0.60 to 1.20\u00a0m/s (118 to 236\u00a0ft/min)",
  );
  assertEquals(showRange(0.1, 0.2, "share"), "10 to 20\u00a0%");
});

Deno.test("a kind means one thing: no two kinds are written and shown alike", () => {
  // Property: a kind that another one repeats in all but its name would be a second word for it
  const seen = new Map<string, string>();
  for (const kind of kinds) {
    const { examples: _examples, phrase, ...rest } = KINDS[kind] as {
      examples: unknown;
      phrase: string;
    };
    const key = JSON.stringify([phrase, rest]);
    assert(!seen.has(key), `${kind} repeats ${seen.get(key)}`);
    seen.set(key, kind);
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

Deno.test("showSi() scales, and a share has one unit", () => {
  // Property: form
  assertEquals(showSi(0.314, "share"), "31\u00a0%");
  assertEquals(showUs(0.314, "share"), "");
});

Deno.test("significant figures: nought decimals that say nothing, a true minus, no power of ten", () => {
  // Property: what a reader would write with so many figures
  assertEquals(showFigures(0.5249, 2), "0.52");
  assertEquals(showFigures(12, 4), "12");
  assertEquals(showFigures(1234.5, 2), "1200");
  assertEquals(showFigures(-0.00010001, 3), "−0.0001");
  assertEquals(showFigures(9.996, 3), "10");
  assertEquals(showFigures(0, 3), "0");
  assertEquals(showFigures(NaN, 3), "–");
  assertEquals([NaN, Infinity, -Infinity].map(showPower), ["–", "–", "–"]);
});
