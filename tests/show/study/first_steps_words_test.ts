import { assert, assertMatch } from "@std/assert";
import { firstSteps } from "../../../lib/store/mod.ts";
import { firstStepsWords } from "../../../lib/show/study/first_steps_words.ts";
import { ranking, ways } from "../store/sample.ts";

Deno.test("firstStepsWords() names what saves more than the store, and says so where none is", () => {
  // Property: the verdict follows the numbers
  const words = (savedHeat: number) =>
    firstStepsWords(firstSteps({
      curtain: false,
      store: { savedHeat, coldestHourGain: 3, fanEnergy: 525 },
      ranking,
      ways,
    }))["text/plain"];
  assertMatch(words(4000), /No remaining improvement/);
  assertMatch(
    words(1500),
    /One improvement saves more heat .*: sealing\. What comes first for the money/,
  );
  assert(words(-100).startsWith("The store saves no heat"));
});
