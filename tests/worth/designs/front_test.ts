// Property: what the search calls unbeaten is not beaten by designs drawn at random
import { assert } from "@std/assert";
import { alone, type Steps } from "../../../lib/basics/mod.ts";
import { ALL_KEYS } from "../../../lib/worth/designs/choices.ts";
import type { BuiltDesign } from "../../../lib/worth/designs/judge.ts";
import { designRows } from "../../../lib/worth/designs/rows.ts";
import { designSteps } from "../../../lib/worth/designs/search.ts";
import type { DesignQuestion, DesignRow } from "../../../lib/worth/designs/types.ts";
import type { DesignRun } from "../../../lib/worth/designs/years.ts";
import { drawnDesigns, smallQuestion } from "./demo.ts";
import { madeUpYear } from "./made_up_year.ts";

const question: DesignQuestion = {
  ...smallQuestion,
  worth: {
    ...smallQuestion.worth,
    inputs: { ...smallQuestion.worth.inputs, searchRuns: 60 },
  },
};

const year = madeUpYear(question);
// deno-lint-ignore require-yield
function* madeUp(designs: readonly BuiltDesign[]): Steps<DesignRun[]> {
  return designs.map((design) => {
    const { saved, hours } = year(design);
    const { fanEnergy } = design.estimate;
    return { heat: 12_000 - saved, fanEnergy, fanRanHeld: true, hours, fanRanFree: true };
  });
}

Deno.test("of 200 drawn designs, on the axes and between, 2 at most stand above the stairs of 60 made-up years", () => {
  // first costs go in steps of whole coils and days, so that stairs of 60 years leave slivers open
  const search = alone(designSteps(question, madeUp))!;
  const front = search.rows.filter(({ bestForHeat }) => bestForHeat);
  const drawn = [
    ...drawnDesigns(question, 100, ALL_KEYS),
    ...drawnDesigns(question, 100, ALL_KEYS, "between"),
  ];
  const [own] = drawnDesigns(question, 1, []);
  const designs = [own!, ...drawn];
  const runs = alone(madeUp(designs));
  const rows = designRows(designs.map((design, k) => ({ design, run: runs[k]! })), question)
    .filter((row) => !row.own);
  const above = rows.filter((row) =>
    !front.some(({ capital, saved }) =>
      capital <= row.capital && saved >= row.saved - search.savedResolution
    )
  );
  assert(above.length <= 2, `${above.length} of ${rows.length}`);
  const most = (all: readonly DesignRow[], value: (row: DesignRow) => number) =>
    Math.max(...all.map(value));
  for (
    const value of [({ netSavings }: DesignRow) => netSavings, (r: DesignRow) => -r.costOfHeat!]
  ) {
    assert(most(search.rows, value) >= most(rows, value));
  }
});
