import { assert, assertAlmostEquals, assertEquals, assertRejects } from "@std/assert";
import {
  defaultStudyPath,
  type Driver,
  DRIVER_STEP,
  figureDrivers,
  openStudy,
  startRun,
  type Study,
  trialRun,
} from "winterground/study/mod.ts";
import { formatQuantity } from "winterground/units/mod.ts";

const study: Study = await openStudy(defaultStudyPath());
const run = startRun(study, { cacheFolder: null });

const named = (list: readonly Driver[], key: string) => list.find((one) => one.key === key)!;

Deno.test("figureDrivers() finds the fan's flow nearly in proportion to its speed, by the fan laws", async () => {
  // Source: fan laws, Stoecker & Jones 1982 [stoecker-jones-1982], ch. 6: in a system whose
  // pressure goes with the square of the flow, flow goes with speed; filter and friction are a little flatter
  const { figure, drivers } = await figureDrivers(run, "fan.airFlow");
  const { lower, higher } = named(drivers, "fan.speed");
  for (const [end, share] of [[lower, -DRIVER_STEP], [higher, DRIVER_STEP]] as const) {
    if (end === null) continue;
    assertAlmostEquals(end.figure / figure.value - 1, share, 0.02);
  }
  assert(lower !== null);
});

Deno.test("figureDrivers() finds pressure up and effectiveness down with more air, the other way round with more tubes", async () => {
  // Property: directions that friction (faster air) and heat exchange (more surface) fix
  const pressure = await figureDrivers(run, "tubes.pressureDrop");
  const effectiveness = await figureDrivers(run, "tubes.effectiveness");
  const slope = ({ drivers }: typeof pressure, key: string) => {
    const { lower, higher } = named(drivers, key);
    return Math.sign(higher!.figure - lower!.figure);
  };
  const keys = ["tubes.airFlow", "tubes.count", "tubes.length"];
  assertEquals(keys.map((key) => slope(pressure, key)), [1, -1, 1]);
  assertEquals(keys.map((key) => slope(effectiveness, key)), [-1, 1, 1]);
  assert(pressure.still.includes("tubes.depth"), "depth moves no pressure");
});

Deno.test("an end of figureDrivers() is what the study gives with that number in it", async () => {
  // Property: no short cut of its own
  const { drivers } = await figureDrivers(run, "headers.flowMin");
  const { higher } = named(drivers, "tubes.length");
  const trial = await trialRun(study, {
    "tubes.length": formatQuantity(higher!.input, "length", "SI", 12),
  });
  const { value } = (await trial.figures("headers"))["headers.flowMin"]!;
  assertAlmostEquals(higher!.figure, value as number, 1e-6);
});

Deno.test("figureDrivers() orders by reach and refuses what is no number of its chapters", async () => {
  // Property: the strongest comes first; a wrong name is told
  const { drivers } = await figureDrivers(run, "fan.power");
  const reach = drivers.map((one) => one.reach);
  assertEquals(reach, reach.toSorted((a, b) => b - a));
  assert(reach.every((one) => one > 0));
  await assertRejects(
    () => figureDrivers(run, "house.floorArea"),
    RangeError,
    "tubes, headers, fan",
  );
  await assertRejects(
    () => figureDrivers(run, "fan.nothing"),
    RangeError,
    "no figure of that name",
  );
});
