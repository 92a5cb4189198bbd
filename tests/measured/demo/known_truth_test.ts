// Property: what was built otherwise shows in every part of the request that the store is run from.
import { assertAlmostEquals, assertEquals } from "@std/assert";
import { builtRequest, DEMO_TRUTH } from "../../../lib/measured/demo/known_truth.ts";
import { soilZones } from "../../../lib/store/ground/site_soil.ts";
import { storeRequest } from "../../../lib/store/takes.ts";
import { defaultStudyPath, openStudy, startRun } from "../../../lib/study/mod.ts";

const study = await openStudy(defaultStudyPath());
const run = startRun(study);
const plan = storeRequest(study, {
  soil: await run.soil(),
  tubes: await run.tubes(),
  headers: await run.headers(),
  fan: await run.fan(),
});

Deno.test("builtRequest(): the soil about the tubes conducts as the truth says, and holds the same heat", () => {
  const built = builtRequest(plan, DEMO_TRUTH);
  const [before, after] = [soilZones(plan), soilZones(built)];
  assertEquals(after.length, before.length);
  after.forEach((zone, k) => {
    assertAlmostEquals(zone.conductivity / before[k]!.conductivity, DEMO_TRUTH.diffusivity, 1e-12);
    assertEquals(zone.heatCapacity, before[k]!.heatCapacity);
  });
  assertAlmostEquals(
    built.soil.properties.conductivity,
    after.find(({ from }) => from === 0)!.conductivity,
    1e-12,
  );
  assertAlmostEquals(
    built.fan.charge!.airFlow / plan.fan.charge!.airFlow,
    DEMO_TRUTH.airFlow,
    1e-12,
  );
  assertEquals(built.tubes, plan.tubes);
});

Deno.test("builtRequest(): a truth without changes is the plan", () => {
  const same = builtRequest(plan, { leakage: 1, diffusivity: 1, airFlow: 1 });
  const thermal = (request: typeof plan) =>
    soilZones(request).map(({ from, to, conductivity, heatCapacity }) => [
      from,
      to,
      conductivity,
      heatCapacity,
    ]);
  assertEquals(thermal(same), thermal(plan));
  assertEquals(same.houseInputs, plan.houseInputs);
  assertEquals(same.soil, plan.soil);
});
