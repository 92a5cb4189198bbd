import { assert, assertEquals } from "@std/assert";
import {
  ALL_CHAPTERS,
  ALL_NEEDS,
  needsOf,
  notebookNeeds,
  withEarlier,
} from "winterground/commands/study_needs.ts";
import { listNotebooks } from "winterground/commands/notebook_files.ts";
import { parseNotebook } from "winterground/press/mod.ts";
import { tinyNotebook } from "../press/tiny.ts";

Deno.test("notebookNeeds() finds what cells ask the run for", () => {
  // Property: results by name, figures of one chapter and of all
  const needs = (...cells: string[]) => [...notebookNeeds(tinyNotebook(...cells))].sort();
  assertEquals(needs("const a = await run.soil();\nawait show(await run.ways());"), [
    "soil",
    "ways",
  ]);
  assertEquals(needs('const f = await run.figures("climate");'), ["climate"]);
  assertEquals(needs('await run.figures("house", "store");'), ["house", "store"]);
  assertEquals(needs("const f = await run.figures();"), [...ALL_CHAPTERS].sort());
  assertEquals(needs("const s = run.study; const y = other.soil();"), []);
});

Deno.test("in a whole study a notebook that shows figures of worth waits for the odds and the ladder", () => {
  // Property: its figures are those of results.json
  const needs = (cell: string, whole: boolean) => notebookNeeds(tinyNotebook(cell), whole);
  for (const cell of ["await run.figures();", 'await run.figures("worth");']) {
    assert(needs(cell, true).has("odds") && needs(cell, true).has("ladder"), cell);
    assert(!needs(cell, false).has("odds"), cell);
  }
  assert(!needs('await run.figures("store");', true).has("odds"));
  assert(!needs("await run.worth();", true).has("odds"));
});

Deno.test("withEarlier() adds what results are computed from", () => {
  // Property: the order of the job, worked out by hand
  assertEquals([...withEarlier(["fan"])].sort(), ["fan", "headers", "tubes"]);
  assertEquals([...withEarlier(["climate"])], ["climate"]);
  assert(withEarlier(["variants"]).has("fan"));
});

Deno.test("each notebook says what it needs: its own chapter is among it, and the first three chapters' extras stay out of each other", async () => {
  // Property: the committed notebooks
  const files = await Promise.all((await listNotebooks()).map(async ({ name, path }) => ({
    name,
    notebook: parseNotebook(await Deno.readTextFile(path), path),
  })));
  const of = (number: number) => files.filter(({ name }) => Number(name.slice(0, 2)) === number);
  assertEquals(needsOf(of(1)).chapters, ["climate"]);
  assert(!needsOf(of(1)).results.includes("house"), needsOf(of(1)).results.join(" "));
  assertEquals(needsOf(of(2)), { results: ["soil"], chapters: ["soil"] });
  assert(!needsOf(of(5)).results.includes("store"), "headers need no store");
  assertEquals(needsOf(of(7)).chapters, ALL_CHAPTERS.slice(0, ALL_CHAPTERS.indexOf("store") + 1));
  assertEquals(needsOf(of(0)).chapters, ALL_CHAPTERS);
  assertEquals(needsOf(files).results.filter((name) => !ALL_NEEDS.results.includes(name)), []);
});
