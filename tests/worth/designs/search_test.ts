// Property: no design of the search breaks a limit, and what it calls the best is not beaten
import { assert, assertEquals } from "@std/assert";
import { alone, type Steps } from "../../../lib/basics/mod.ts";
import { choiceKey, QUICK_KEYS } from "../../../lib/worth/designs/choices.ts";
import { type BuiltDesign, designJudge } from "../../../lib/worth/designs/judge.ts";
import { designSteps } from "../../../lib/worth/designs/search.ts";
import { unbeaten } from "../../../lib/worth/designs/unbeaten.ts";
import type { DesignRun } from "../../../lib/worth/designs/years.ts";
import { drawnDesigns, smallQuestion } from "./demo.ts";

const question = smallQuestion;

/** The quick estimate in place of the year. */
// deno-lint-ignore require-yield
function* standIn(designs: readonly BuiltDesign[]): Steps<DesignRun[]> {
  return designs.map(({ estimate }) => ({
    heat: 12_000 - estimate.saved,
    fanEnergy: estimate.fanEnergy,
    fanRanHeld: true,
    hours: 70 - estimate.cropHoursAvoided,
    fanRanFree: true,
  }));
}

const judge = designJudge(question);
const search = alone(designSteps(question, standIn))!;
const own = search.rows.find((row) => row.own)!;
const within = search.rows.filter(({ breaks }) => breaks === null);

Deno.test("no design of the search breaks a limit, and none but the own one may", () => {
  assert(search.rows.length > 1 && search.rows.length <= 12);
  for (const row of search.rows) {
    const judged = judge(row.choice);
    assert(typeof judged !== "string");
    assertEquals(judged.breaks, row.breaks);
    if (!row.own) assertEquals(row.breaks, null, choiceKey(row.choice));
  }
});

Deno.test("500 drawn designs within the limits do not beat the best, by the estimate", () => {
  const drawn = drawnDesigns(question, 500, QUICK_KEYS);
  const most = Math.max(...drawn.map(({ money, estimate }) => money(estimate)!.netSavings));
  assert(search.best!.netSavings >= most, `${search.best!.netSavings} < ${most}`);
});

Deno.test("the own row has the study's own figures", () => {
  assertEquals([own.saved, own.cropHoursAvoided, own.fanEnergy], [4000, 60, 1500]);
});

Deno.test("the unbeaten designs are those that the definition names", () => {
  for (const row of within) {
    const beaten = within.some((other) =>
      other.capital <= row.capital && other.saved >= row.saved &&
      (other.capital < row.capital || other.saved > row.saved)
    );
    assertEquals(row.bestForHeat, !beaten, choiceKey(row.choice));
  }
  assertEquals(
    unbeaten([{ cost: 1, gain: 1 }, { cost: 1, gain: 1 }, { cost: 2, gain: 1 }, {
      cost: 0,
      gain: 0,
    }]),
    [true, true, false, true],
  );
});

Deno.test("what the own design gives up betters it, and nothing betters it by more", () => {
  const { moreHeat, sameHeat } = search.givesUp;
  const others = within.filter((row) => !row.own);
  const heats = others.filter(({ capital }) => capital <= own.capital).map(({ saved }) => saved);
  const most = Math.max(...heats);
  assertEquals(moreHeat?.saved ?? null, most > own.saved + search.savedResolution ? most : null);
  const costs = others.filter(({ saved }) => saved >= own.saved).map(({ capital }) => capital);
  const least = Math.min(...costs);
  assertEquals(sameHeat?.capital ?? null, least < own.capital ? least : null);
});

Deno.test("a budget is kept, and doubling every price doubles what a design costs", () => {
  const { inputs } = question.worth;
  const design = judge(own.choice) as BuiltDesign;
  const { capital } = design.money(design.estimate)!;
  const asked = (changes: Partial<typeof inputs>) => ({
    ...question,
    worth: { ...question.worth, inputs: { ...inputs, ...changes } },
  });
  const poor = designJudge(asked({ budget: capital - 1 }))(own.choice) as BuiltDesign;
  assertEquals([design.breaks, poor.breaks], [null, "dearer than the budget"]);
  const dear = inputs.prices!.prices.map((one) => ({ ...one, price: 2 * one.price }));
  const doubled = designJudge(asked({ prices: { ...inputs.prices!, prices: dear } }))(own.choice);
  const twice = (doubled as BuiltDesign).money(design.estimate)!;
  assert(Math.abs(twice.capital - 2 * capital) < 1e-9 * capital);
});

Deno.test("a search that was not asked for, or a study without prices, gives none", () => {
  assertEquals(alone(designSteps({ ...question, wanted: false }, standIn)), null);
  const inputs = { ...question.worth.inputs, prices: null };
  const bare = { ...question, worth: { ...question.worth, inputs } };
  assertEquals(alone(designSteps(bare, standIn)), null);
});
