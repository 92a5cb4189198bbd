import { assert, assertEquals } from "@std/assert";
import { type ClimateYear, DEFAULT_WIND_SPEED } from "winterground/climate/mod.ts";
import { startRun, type Study, type StudyRun } from "winterground/study/mod.ts";
import { openSmallStudy } from "../harness/small_study.ts";

/** The small study in another climate, told hour by hour. */
async function studyIn(change: (climate: ClimateYear) => Partial<ClimateYear>): Promise<Study> {
  const study = await openSmallStudy();
  return { ...study, climate: { ...study.climate, ...change(study.climate) } };
}

const UP_TO_STORE = ["climate", "soil", "house", "tubes", "headers", "fan", "store"] as const;

/** Everything a run says, what it is worth apart: that asks for the measures' years as well. */
async function wordsOf(run: StudyRun): Promise<string> {
  const part = run.only(UP_TO_STORE);
  for (const figure of Object.values(await part.figures())) {
    const words = figure.unit === "date" || figure.unit === "text";
    assert(figure.value === null || words || Number.isFinite(figure.value));
  }
  return (await part.notices()).map(({ text }) => text).join("\n");
}

Deno.test("a winter of six weeks without sun runs through and says so", async () => {
  // Property: no figure is NaN; the weather chapter names the dark
  const dark = (series: Float64Array) => series.map((value, hour) => hour < 42 * 24 ? 0 : value);
  const study = await studyIn((climate) => ({
    globalHorizontal: dark(climate.globalHorizontal),
    directNormal: dark(climate.directNormal),
    diffuseHorizontal: dark(climate.diffuseHorizontal),
  }));
  const words = await wordsOf(startRun(study, { cacheFolder: null }));
  assert(/without sun|no sun|sunless|dark/i.test(words), words);
});

Deno.test("a site with polar night runs through and says what does not hold there", async () => {
  // Property: no figure is NaN at any latitude; the dark days and the limits of the sums are named
  for (const latitude of [68, 90, -77.8]) {
    const study = await openSmallStudy((text) =>
      text.replace("latitude: 49 deg", `latitude: ${latitude} deg`)
    );
    const words = await wordsOf(startRun(study, { cacheFolder: null }));
    assert(/polar circle/.test(words), words);
    assert(/days in a row almost without sun/.test(words), words);
    assert(
      /normals give more radiation than is possible: .* in (December|June)/.test(words),
      words,
    );
  }
});

Deno.test("a hot climate runs through and says that a store makes no sense there", async () => {
  // Property: no figure is NaN where nothing is heated; dates that do not occur are null
  const study = await studyIn((climate) => ({
    dryBulb: climate.dryBulb.map((value) => 27 + value / 4),
    windSpeed: climate.windSpeed.map(() => DEFAULT_WIND_SPEED),
  }));
  const run = startRun(study, { cacheFolder: null });
  const words = await wordsOf(run);
  assert(/little use for stored heat|makes no sense|no use/i.test(words), words);
  const figures = await run.only(UP_TO_STORE).figures();
  assertEquals(figures["store.firstFreeze"]!.value, null);
  assertEquals(figures["house.firstFreezeNoStore"]!.value, null);
});
