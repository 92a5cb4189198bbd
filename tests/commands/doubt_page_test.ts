import { assert, assertEquals, assertMatch, assertStringIncludes } from "@std/assert";
import type { AnyComputation } from "winterground/basics/mod.ts";
import { doubtPage } from "winterground/commands/doubt_page.ts";
import { ALL_NEEDS, QUICK_NEEDS } from "winterground/commands/study_needs.ts";
import { startRun } from "winterground/study/mod.ts";
import { fewComparisons } from "../harness/few_comparisons.ts";
import { inTemporary } from "../harness/in_temporary.ts";
import { openSmallStudy } from "../harness/small_study.ts";
import { task } from "../harness/task.ts";
import { resolution } from "../show/store/sample.ts";
import { pageFaults } from "../press/page_faults.ts";

/** Everything as it is, but for comparisons cut short and finer years made up. */
function shortComputations(): ReadonlyMap<string, AnyComputation> {
  const all = fewComparisons();
  const { steps: _, ...whole } = all.get("resolution")!;
  return new Map([...all, ["resolution", { ...whole, compute: () => resolution }]]);
}

Deno.test("the page for reviewers holds every part, from the study's own run", async () => {
  // Property: a coarse study; the figures on the page are those of the run
  const study = await openSmallStudy();
  const run = startRun(study, { cacheFolder: null, computations: shortComputations() });
  const page = await doubtPage(run);
  assertEquals(pageFaults(page), []);
  assert(!/NaN|undefined|Infinity/.test(page.replaceAll(/base64,[^"]*/g, "")));
  for (
    const words of [
      ...["Does the heat ledger of the soil close?", "made finer", "fan always off"],
      ...["Heat put in by quarter", "made from twelve monthly normals", "estimated from texture"],
      ...["How far the heat saved is known", "Values left to their defaults"],
    ]
  ) assertStringIncludes(page, words);
  assertMatch(page, /[0-9]+ as expected, [0-9]+ to look at/);
});

Deno.test("finer computations are no part of a whole or quick study, and --doubt is of a whole one", async () => {
  // Property: asked for by name only
  assert(!ALL_NEEDS.results.includes("resolution"));
  assert(!QUICK_NEEDS.results.includes("resolution"));
  await inTemporary(async (folder) => {
    const { code, stderr } = await task("study", ["--doubt", "--chapters", "1"], folder).output();
    assertEquals(code, 2);
    assertStringIncludes(new TextDecoder().decode(stderr), "--doubt looks at the whole study");
  });
});
