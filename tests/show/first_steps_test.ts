import { assert, assertEquals, assertMatch } from "@std/assert";
import { firstSteps, firstStepsWords } from "../../lib/show/study/first_steps.ts";
import type { Study } from "../../lib/study/mod.ts";
import { ranking, storeResult, ways } from "./sample.ts";

const study = (curtain: object | null) => ({ house: { curtain } }) as unknown as Study;
const sources = { store: storeResult, ranking, ways };

Deno.test("firstSteps() puts the store among the measures, largest saving first", () => {
  // Property: the store is credited with back-up heat saved, not with the heat it gives back
  const steps = firstSteps(study(null), sources);
  assertEquals(steps.map((step) => step.name), [
    "heat store, as planned",
    "sealing",
    "water barrels",
  ]);
  assertEquals(steps[0]!.saved, 24000 - 20000);
  assertEquals(steps[0]!.electricity, storeResult.fanEnergy);
});

Deno.test("firstSteps() counts a curtain the study has, against the same house without it", () => {
  // Property: the difference of the two houses without store
  const curtain = firstSteps(study({}), sources).find((step) => step.kind === "present");
  assertEquals(curtain?.saved, 12000);
  assertEquals(curtain?.coldestHourGain, 4);
});

Deno.test("firstStepsWords() names what saves more than the store, and says so where none is", () => {
  // Property: the verdict follows the numbers
  const steps = firstSteps(study(null), sources);
  assertMatch(firstStepsWords(steps)["text/plain"], /No remaining improvement/);
  const poor = { ...storeResult, backupHeat: 22500 };
  const words = firstStepsWords(firstSteps(study(null), { ...sources, store: poor }));
  assertMatch(words["text/plain"], /One improvement saves more heat .*: sealing\. Do that first/);
  const useless = { ...storeResult, backupHeat: 24100 };
  const none = firstStepsWords(firstSteps(study(null), { ...sources, store: useless }));
  assert(none["text/plain"].startsWith("The store saves no heat"));
});
