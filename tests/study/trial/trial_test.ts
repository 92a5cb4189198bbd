import { assert, assertEquals, assertRejects } from "@std/assert";
import { defaultStudyPath, openStudy, startRun, trialOf } from "winterground/study/mod.ts";

const study = await openStudy(defaultStudyPath());
const run = startRun(study, { cacheFolder: null });

Deno.test("trialOf() changes nothing where nothing is changed, and no figure that does not hang on it", async () => {
  // Property: the plan's own value gives the plan; depth has no part in the tubes' pressure
  const same = await trialOf(run, { "tubes.extraLosses": study.tubes.extraLosses }, "tubes");
  assertEquals(same.figures, []);
  const longer = await trialOf(run, { "tubes.length": "9 m" }, "tubes");
  assertEquals(longer.figures.find(({ key }) => key === "tubes.length")?.second?.value, 9);
  assert(longer.figures.every(({ key }) => key.startsWith("tubes.")));
  assert(!longer.figures.some(({ key }) => key === "tubes.count"));
  assertEquals(
    longer.figures.length + longer.same,
    Object.keys(await run.figures("tubes")).length,
  );
});

Deno.test("trialOf() and back again gives every change with the other sign", async () => {
  // Property: the trial of the trial is the plan
  const there = await trialOf(run, { "fan.riserLosses": 4 }, "fan");
  const power = there.figures.find(({ key }) => key === "fan.power");
  assert(power !== undefined && power.change !== 0);
  const back = await trialOf(run, { "fan.riserLosses": study.fan.riserLosses }, "fan");
  assertEquals(back.figures, []);
});

Deno.test("trialOf() tells a key that does not exist and a value that cannot be", async () => {
  // Property: the message names the key and what was expected
  await assertRejects(() => trialOf(run, { "tubes.lenght": "9 m" }, "tubes"), Error, "length");
  await assertRejects(() => trialOf(run, { "tubes.length": "9 kg" }, "tubes"), Error, "9 kg");
});
