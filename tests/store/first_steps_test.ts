import { assertAlmostEquals, assertEquals } from "@std/assert";
import { firstSteps, variantsCompared, waysCompared } from "../../lib/store/mod.ts";
import { ranking, variants, ways } from "../show/sample.ts";

const store = { savedHeat: 4000, coldestHourGain: 3, fanEnergy: 525 };

Deno.test("firstSteps() puts the store among the measures, largest saving first", () => {
  // Property: the store is credited with back-up heat saved, not with the heat it gives back
  const steps = firstSteps({ curtain: false, store, ranking, ways });
  assertEquals(steps.map((step) => step.name), [
    "heat store, as planned",
    "sealing",
    "water barrels",
  ]);
  assertEquals([steps[0]!.saved, steps[0]!.electricity, steps[0]!.net], [4000, 525, 3475]);
});

Deno.test("firstSteps() counts a curtain the study has, against the same house without it", () => {
  // Property: the difference of the two houses without store
  const steps = firstSteps({ curtain: true, store, ranking, ways });
  const curtain = steps.find((step) => step.kind === "present");
  assertEquals(curtain?.saved, 12000);
  assertEquals(curtain?.coldestHourGain, 4);
});

Deno.test("waysCompared() sets each house against the bare one, and the store against its absence", () => {
  // Property: 40000 bare; store 4000 and curtain 12000 less, alone and together
  const found = waysCompared(ways).map((way) => [way.saved, way.savedByStore]);
  assertEquals(found, [[0, null], [12000, null], [4000, 4000], [16000, 4000]]);
});

Deno.test("variantsCompared() sets each store against the plan, which gains nothing", () => {
  // Property: differences of back-up heat and coldest hour
  assertEquals(variantsCompared(variants).map((row) => Math.round(row.saved)), [0, 150, -600]);
  const gains = variantsCompared(variants).map((row) => Math.round(10 * row.coldestHourGain));
  assertEquals(gains, [0, 4, -7]);
});

Deno.test("variantsCompared() sets differences of coarse years on the plan's own year", () => {
  // Property: the plan's row is the plan's own year, a variant's differs from it as the coarse ones do
  const own = { ...variants[0]!, backupHeat: 19990, coldestHour: -5.9, heatIn: 12100 };
  const [plan, longer] = variantsCompared(variants, own);
  assertEquals([plan!.backupHeat, plan!.coldestHour, plan!.heatIn], [19990, -5.9, 12100]);
  assertEquals(longer!.backupHeat, 19990 - longer!.saved);
  assertAlmostEquals(longer!.coldestHour, -5.9 + longer!.coldestHourGain, 1e-12);
  assertAlmostEquals(longer!.recovery!, longer!.heatOut / longer!.heatIn, 1e-12);
  assertEquals([longer!.savedResolution, plan!.savedResolved, longer!.savedResolved], [
    10,
    false,
    true,
  ]);
  assertAlmostEquals(longer!.gainResolution, 0.1, 1e-12);
});
