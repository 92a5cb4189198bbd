import { assert, assertAlmostEquals, assertEquals } from "@std/assert";
import { liveStudy } from "winterground/live/build/study_data.ts";
import { changedSections } from "winterground/live/sum/changed.ts";
import { completedSections } from "winterground/live/sum/completed.ts";
import { liveSteps, liveYear } from "winterground/live/sum/year.ts";
import { defaultStudyPath, openStudy, startRun, type Study } from "winterground/study/mod.ts";
import { openSmallStudy } from "../harness/small_study.ts";
import { ALL_MOVED, AS_IT_IS, CASES, figuresOfRun } from "./case.ts";

const study = await openSmallStudy();
/** As a page carries it. */
const carried = JSON.parse(JSON.stringify(liveStudy(study)));
const plain = (data: unknown) => JSON.parse(JSON.stringify(data));
const sectionsOf = ({ soil, house, tubes, headers, fan, store }: Study) => {
  const { ownFans: _, ...inputs } = fan;
  return plain({ soil, house, tubes, headers, fan: inputs, store });
};

Deno.test("a moved value moves what follows from it, as in a study file", async () => {
  // Property: inputs of the page's case are those of the study file with the value written in
  for (const { name, changes, file } of [AS_IT_IS, ...CASES, ALL_MOVED]) {
    const opened = await openSmallStudy(file);
    const sections = completedSections(changedSections(carried.given, changes), null);
    assertEquals(plain(sections), sectionsOf(opened), name);
  }
});

Deno.test("the demo as a page carries it is the demo", async () => {
  // Property: sections, text and back
  const demo = await openStudy(defaultStudyPath());
  const { given, ownFans } = plain(liveStudy(demo));
  assertEquals(plain(completedSections(given, ownFans)), sectionsOf(demo));
});

Deno.test("a page's year is the year of the run, as it is and with every value moved", async () => {
  // Property: the same sums on the same inputs, to the bit; the run takes no other way than a study
  for (const { name, changes, file } of [AS_IT_IS, ALL_MOVED]) {
    const run = startRun(await openSmallStudy(file), { cacheFolder: null });
    const [fan, store] = await Promise.all([run.fan(), run.store()]);
    const year = liveYear({ study: carried, climate: study.climate, changes, resolution: "full" });
    assertEquals(year.figures, figuresOfRun({ fan, store }), name);
    assertEquals(year.months.store, store.months.map(({ backupHeat }) => backupHeat), name);
    assertEquals(Math.min(...year.days.store), store.coldestHour, name);
  }
});

Deno.test("the first chart comes before the whole year, with the same numbers", () => {
  // Property: parts are never taken back
  const given = {
    study: carried,
    climate: study.climate,
    changes: {},
    resolution: "full" as const,
  };
  const steps = [...liveSteps(given)];
  const year = liveYear(given);
  const shares = steps.map(({ share }) => share);
  assertEquals(shares, shares.toSorted((a, b) => a - b));
  assert(shares.every((share) => share > 0 && share < 1));
  const first = steps.find(({ part }) => part.days.store !== undefined)!;
  assertEquals(first.part.days.store, year.days.store);
  for (const { part } of steps) {
    for (const [key, value] of Object.entries(part.figures)) {
      assertEquals(value, year.figures[key as keyof typeof year.figures], key);
    }
  }
});

Deno.test("a quick year is near the full one", async () => {
  // Property: slices refine; docs/live.md says how far off three are on the demo
  const finer = await openSmallStudy((text) => text.replace("slices: 1", "slices: 5"));
  const given = { study: plain(liveStudy(finer)), climate: finer.climate, changes: {} };
  const quick = liveYear({ ...given, resolution: "screening" });
  const full = liveYear({ ...given, resolution: "full" });
  assertEquals([quick.slices, full.slices], [3, 5]);
  assertAlmostEquals(quick.figures.heatOut / full.figures.heatOut, 1, 0.03);
  assertAlmostEquals(quick.figures.backupHeat / full.figures.backupHeat, 1, 0.01);
  assertAlmostEquals(quick.figures.coldestHour, full.figures.coldestHour, 0.2);
  // the years with the fan always off know no slices: only the ports of their soil are fewer
  assertAlmostEquals(quick.figures.backupHeatNoFan / full.figures.backupHeatNoFan, 1, 1e-3);
  assertAlmostEquals(quick.figures.coldestHourNoFan, full.figures.coldestHourNoFan, 0.02);
});
