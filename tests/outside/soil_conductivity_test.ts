// Source: Johansen 1975 [johansen-1975] and Côté & Konrad 2005 [cote-konrad-2005], recomputed from
// the formulas
import { assertAlmostEquals } from "@std/assert";
import { coteKonradConductivity, johansenConductivity } from "../../lib/soil/mod.ts";

const POROSITY = 1 - 1500 / 2700;
/** saturation, fine with 40 % quartz, coarse with 80 %; W/(m K), seven decimals */
const JOHANSEN = [
  [0.25, 0.7404229, 1.2938527],
  [0.5, 1.1425562, 1.6890364],
  [0.75, 1.3777891, 1.9202041],
  [1, 1.5446895, 2.0842202],
] as const;
/** saturation, silty clay (κ 1.90, solids 2.9), sand (κ 3.55, solids 5) */
const COTE_KONRAD = [
  [0.25, 0.6927506, 1.1567004],
  [0.5, 1.0190280, 1.5685914],
  [0.75, 1.2576488, 1.8001697],
  [1, 1.4397541, 1.9485754],
] as const;

Deno.test("Johansen 1975: unfrozen conductivity by saturation, fine and coarse", () => {
  for (const [saturation, fine, coarse] of JOHANSEN) {
    const soil = { dryDensity: 1500, porosity: POROSITY, saturation, state: "unfrozen" } as const;
    const fineFound = johansenConductivity({ ...soil, quartz: 0.4, grain: "fine" });
    const coarseFound = johansenConductivity({ ...soil, quartz: 0.8, grain: "coarse" });
    assertAlmostEquals(fineFound, fine, 6e-8);
    assertAlmostEquals(coarseFound, coarse, 6e-8);
  }
});

Deno.test("Johansen 1975: dry conductivity and frozen fine soil", () => {
  const soil = { dryDensity: 1500, porosity: POROSITY, quartz: 0.4, grain: "fine" } as const;
  const dry = johansenConductivity({ ...soil, saturation: 0, state: "frozen" });
  const frozen = johansenConductivity({ ...soil, saturation: 0.5, state: "frozen" });
  assertAlmostEquals(dry, 0.2088316, 6e-8);
  assertAlmostEquals(frozen, 1.5120802, 6e-8);
});

Deno.test("Côté & Konrad 2005: conductivity by saturation, silty clay and sand", () => {
  for (const [saturation, clay, sand] of COTE_KONRAD) {
    const soil = {
      porosity: POROSITY,
      saturation,
      dryFactor: 0.75,
      dryExponent: 1.2,
      state: "unfrozen",
    } as const;
    const clayFound = coteKonradConductivity({ ...soil, ratio: 1.9, solidConductivity: 2.9 });
    const sandFound = coteKonradConductivity({ ...soil, ratio: 3.55, solidConductivity: 5 });
    assertAlmostEquals(clayFound, clay, 1e-7);
    assertAlmostEquals(sandFound, sand, 1e-7);
  }
});

Deno.test("Côté & Konrad 2005: dry conductivity of natural mineral soil", () => {
  const dry = coteKonradConductivity({
    porosity: POROSITY,
    saturation: 0,
    dryFactor: 0.75,
    dryExponent: 1.2,
    ratio: 1.9,
    solidConductivity: 2.9,
    state: "unfrozen",
  });
  assertAlmostEquals(dry, 0.2196483, 6e-8);
});
