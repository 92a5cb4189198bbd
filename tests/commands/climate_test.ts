import { assert, assertEquals } from "@std/assert";
import { notice } from "winterground/basics/mod.ts";
import { compareClimates } from "winterground/climate/mod.ts";
import { comparisonReport } from "winterground/study/results/climate_report.ts";
import { sampleYear } from "../climate/sample.ts";

Deno.test("two climates are printed side by side, one line a figure, differences with their sign", () => {
  // Property: B - A of every row is what stands in its line; equal years differ by 0
  const a = sampleYear();
  const b = { ...a, source: "colder", dryBulb: a.dryBulb.map((value) => value - 2) };
  const rows = compareClimates(a, b);
  const text = comparisonReport([a, b], rows, [notice("info", "climate", "B: seen")]);
  const mean = text.split("\n").find((line) => line.startsWith("Mean temperature"))!;
  assert(mean.endsWith("-2.0"), mean);
  const sun = text.split("\n").find((line) => line.startsWith("Annual global radiation"))!;
  assert(/ 0$/.test(sun), sun);
  for (const row of rows) assert(text.includes(row.label), row.label);
  assert(text.includes("info: B: seen") && text.includes("B: colder"));
  const same = comparisonReport([a, a], compareClimates(a, a), []);
  assertEquals(/[+-]0\.0/.test(same), false);
});
