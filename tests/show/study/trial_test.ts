import { assertEquals, assertStringIncludes } from "@std/assert";
import type { FigureDrivers, StudyRun, Trial } from "winterground/study/mod.ts";
import { driversChart } from "winterground/show/study/drivers.ts";
import { trialItems, whatIf } from "winterground/show/study/what_if.ts";
import { checkFigures } from "../figure_rules.ts";

const found: FigureDrivers = {
  key: "fan.airFlow",
  figure: { value: 0.8, unit: "m3/s", label: "air flow at the operating point" },
  drivers: [{
    key: "fan.speed",
    kind: "number",
    planned: 1,
    lower: { input: 0.9, figure: 0.72 },
    higher: null,
    reach: 0.08,
  }],
  still: ["tubes.depth"],
};

const figure = (value: number) => ({ value, unit: "Pa", label: "pressure drop" });
const trial: Trial = {
  changes: { "tubes.length": "9 m" },
  chapter: "tubes",
  figures: [{
    key: "tubes.pressureDrop",
    first: figure(60),
    second: figure(75),
    change: 15,
    share: 0.25,
    beyondDoubt: null,
  }],
  same: 7,
};

checkFigures({
  driversChart: [() => driversChart(found), ["per cent", "fan.speed"]],
  trialItems: [() => trialItems(trial)[0]!, ["per cent", "tubes.pressureDrop"]],
});

Deno.test("driversChart() says what is not possible and what was tried without effect", () => {
  // Property: nothing tried is left unsaid
  const text = driversChart(found)["text/plain"];
  for (const words of ["not possible", "tubes.depth", "0.720"]) {
    assertStringIncludes(text, words);
  }
  const none = driversChart({ ...found, drivers: [] })["text/plain"];
  assertStringIncludes(none, "No number of these sections moves");
});

Deno.test("trialItems() says so where nothing changes", () => {
  // Property: an empty table is no answer
  const [only, ...rest] = trialItems({ ...trial, figures: [] });
  assertEquals(rest, []);
  assertStringIncludes(only!["text/plain"], "tubes.length: 9 m changes no figure of tubes");
});

Deno.test("whatIf() computes nothing as long as every value is null", async () => {
  // Property: a lesson that nobody has touched costs nothing
  const [only] = await whatIf({} as StudyRun, { "tubes.length": null }, "tubes");
  assertStringIncludes(only!["text/plain"], "in place of null");
});
