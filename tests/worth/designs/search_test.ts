// Property: no design of the search breaks a limit, and what it calls the best is not beaten
import { assert, assertEquals } from "@std/assert";
import { coarseRequest } from "winterground/store/mod.ts";
import { openStudy, startRun } from "winterground/study/mod.ts";
import { alone, type Steps } from "../../../lib/basics/mod.ts";
import { designAir } from "../../../lib/tubes/mod.ts";
import {
  choiceKey,
  designAxes,
  ownChoice,
  QUICK_KEYS,
} from "../../../lib/worth/designs/choices.ts";
import { type BuiltDesign, judgeDesign } from "../../../lib/worth/designs/judge.ts";
import { type DesignRun, designSteps } from "../../../lib/worth/designs/search.ts";
import type { DesignChoice, DesignQuestion } from "../../../lib/worth/designs/types.ts";
import { unbeaten } from "../../../lib/worth/designs/unbeaten.ts";
import { takeOffInputs } from "../../../lib/worth/take_off_inputs.ts";

const demo = new URL("../../../data/studies/demo/harrow-bend.yaml", import.meta.url);
const study = await openStudy(decodeURIComponent(demo.pathname));
const run = startRun(study, { cacheFolder: null });
const earlier = {
  soil: await run.soil(),
  tubes: await run.tubes(),
  headers: await run.headers(),
  fan: await run.fan(),
};

/** The demo's design with a made-up year, so that no year is run. */
const question: DesignQuestion = {
  wanted: true,
  request: coarseRequest(study, earlier),
  tubes: study.tubes,
  headers: study.headers,
  fan: study.fan,
  house: study.house,
  air: designAir(study),
  worth: {
    inputs: { ...study.worth, search: true, searchRuns: 12 },
    field: takeOffInputs(study, earlier),
    energy: { backupHeat: 8000, backupHeatNoFan: 12_000, fanEnergy: 1500 },
    faults: [],
    measures: [],
    coldestHourGain: 4,
    cropHoursAvoided: 60,
    runsFree: true,
  },
  own: { saved: 4000, cropHoursAvoided: 60, hours: 10, fanEnergy: 1500, power: earlier.fan.power },
};

/** The quick estimate in place of the year. */
// deno-lint-ignore require-yield
function* standIn(designs: readonly BuiltDesign[]): Steps<DesignRun[]> {
  return designs.map(({ estimate }) => ({
    heat: 12_000 - estimate.saved,
    hours: 70 - estimate.cropHoursAvoided,
    fanEnergy: estimate.fanEnergy,
  }));
}

const search = alone(designSteps(question, standIn))!;

Deno.test("no design of the search breaks a limit, and none but the own one may", () => {
  assert(search.rows.length > 1 && search.rows.length <= 12);
  for (const row of search.rows) {
    const judged = judgeDesign(row.choice, question);
    assert(typeof judged !== "string");
    assertEquals(judged.breaks, row.breaks);
    if (!row.own) assertEquals(row.breaks, null, choiceKey(row.choice));
  }
});

Deno.test("500 drawn designs within the limits do not beat the best, by the estimate", () => {
  const axes = designAxes(question);
  let state = 7;
  const random = () => (state = (48_271 * state) % 2_147_483_647) / 2_147_483_647;
  let [found, most] = [0, -Infinity];
  for (let tries = 0; found < 500 && tries < 60_000; tries++) {
    const drawn: Record<string, unknown> = { ...ownChoice(question) };
    for (const key of QUICK_KEYS) {
      const values: readonly unknown[] = axes[key];
      drawn[key] = values[Math.floor(random() * values.length)];
    }
    const judged = judgeDesign(drawn as unknown as DesignChoice, question);
    if (typeof judged === "string" || judged.breaks !== null) continue;
    found++;
    most = Math.max(most, judged.money(judged.estimate)!.netSavings);
  }
  assertEquals(found, 500);
  assert(search.best!.netSavings >= most, `${search.best!.netSavings} < ${most}`);
});

Deno.test("the own row has the study's own figures", () => {
  const own = search.rows.find((row) => row.own)!;
  assertEquals([own.saved, own.cropHoursAvoided, own.fanEnergy], [4000, 60, 1500]);
});

Deno.test("the unbeaten designs are those that the definition names", () => {
  const within = search.rows.filter(({ breaks }) => breaks === null);
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

Deno.test("a search that was not asked for, or a study without prices, gives none", () => {
  assertEquals(alone(designSteps({ ...question, wanted: false }, standIn)), null);
  const inputs = { ...question.worth.inputs, prices: null };
  const bare = { ...question, worth: { ...question.worth, inputs } };
  assertEquals(alone(designSteps(bare, standIn)), null);
});
