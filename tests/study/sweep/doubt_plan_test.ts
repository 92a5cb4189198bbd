import { assert, assertAlmostEquals, assertEquals } from "@std/assert";
import { readDataTable } from "winterground/basics/mod.ts";
import { doubtSweepText, readSweep } from "../../../lib/study/sweep/mod.ts";
import { openSmallStudy } from "../../harness/small_study.ts";
import table from "../../../data/studies/doubt.csv" with { type: "text" };

Deno.test("the usual doubts make a sweep file that is read, about the study's own values", async () => {
  // Property: every range holds the study's own value, stays within the key's limits, and names its source
  const study = await openSmallStudy((text) => `${text}soil: {moisture: 3 %}\n`);
  const text = doubtSweepText(study, 32);
  const plan = readSweep(text, "doubt.yaml");
  assertEquals([plan.form, plan.rows, plan.points], ["sample", 32, "sobol"]);
  const axis = (key: string) => plan.keys.find((one) => one.key === key)?.axis;
  const moisture = axis("soil.moisture");
  assert(moisture?.form === "range");
  assertEquals(moisture.low, 0);
  assertAlmostEquals(moisture.high, 0.09, 1e-9);
  const leakage = axis("house.leakage");
  assert(leakage?.form === "range");
  assert(leakage.low < study.house.leakage && study.house.leakage < leakage.high);
  const leaves = axis("house.leafArea");
  assert(leaves?.form === "list" && leaves.values.length === 9);
  assertEquals(axis("soil.measuredConductivity"), undefined);
  assert(axis("house.curtain.edgeLeak") !== undefined);
  const known = readDataTable(table, "data/studies/doubt.csv", [
    "key",
    "change",
    "low",
    "high",
    "source",
  ]);
  assert(known.length > plan.keys.length - 1);
  assertEquals(text.match(/common practice, no source/g)!.length, plan.keys.length);
});

Deno.test("a section that the study does not have is not doubted", async () => {
  // Property: no key within a section that is none
  const study = await openSmallStudy((text) =>
    text.replace("curtain: {coverage: 80 %}", "curtain: none")
  );
  const plan = readSweep(doubtSweepText(study, 10), "doubt.yaml");
  assertEquals(plan.points, "latin");
  assert(plan.keys.every(({ key }) => !key.startsWith("house.curtain")));
});
