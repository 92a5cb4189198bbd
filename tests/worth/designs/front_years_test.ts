// Property: what the search calls unbeaten is not beaten in the settled year by designs drawn at random
import { assert, assertEquals } from "@std/assert";
import { alone } from "../../../lib/basics/mod.ts";
import { ALL_KEYS, ownChoice } from "../../../lib/worth/designs/choices.ts";
import { type BuiltDesign, designJudge } from "../../../lib/worth/designs/judge.ts";
import { designRows } from "../../../lib/worth/designs/rows.ts";
import { designSteps } from "../../../lib/worth/designs/search.ts";
import type { DesignQuestion } from "../../../lib/worth/designs/types.ts";
import { settledDesigns } from "../../../lib/worth/designs/years.ts";
import { drawnDesigns, smallQuestion } from "./demo.ts";

const { request, worth } = smallQuestion;
const question: DesignQuestion = {
  ...smallQuestion,
  request: { ...request, inputs: { ...request.inputs, slices: 1 } },
  worth: { ...worth, inputs: { ...worth.inputs, searchRuns: 14 } },
};

Deno.test("of 12 drawn designs none stands above the stairs of 14 settled years", () => {
  const search = alone(designSteps(question))!;
  const front = search.rows.filter(({ breaks }) => breaks === null);
  assertEquals(search.runs, 14);
  const designs = [
    designJudge(question)(ownChoice(question)) as BuiltDesign,
    ...drawnDesigns(question, 6, ALL_KEYS),
    ...drawnDesigns(question, 6, ALL_KEYS, "between"),
  ];
  const runs = alone(settledDesigns(question.request)(designs));
  const rows = designRows(designs.map((design, k) => ({ design, run: runs[k]! })), question)
    .filter(({ own }) => !own);
  assertEquals(rows.length, 12);
  const most = (capital: number) =>
    front.reduce((best, row) => row.capital <= capital ? Math.max(best, row.saved) : best, 0);
  for (const { capital, saved } of rows) {
    assert(saved > 0, "a drawn design saves nothing");
    assert(saved <= most(capital), `${saved} kWh for ${capital} against ${most(capital)} kWh`);
  }
  assert(front.some(({ saved, own }) => !own && saved > rows[0]!.saved));
});
