import { assert, assertAlmostEquals, assertEquals } from "@std/assert";
import { houseMeasures } from "winterground/house/mod.ts";
import type { HouseInputs } from "../../lib/house/types.ts";
import { rankMeasures, storeChapter } from "winterground/store/mod.ts";
import { type LadderQuestion, readPriceList } from "winterground/worth/mod.ts";
import { ladderSteps } from "../../lib/worth/ladder.ts";
import { standInRequest } from "../store/stand_in.ts";
import { IDS, request as worthRequest } from "./example.ts";

const store = standInRequest({
  house: { curtain: null, glazing: "single-glass" },
  store: { slices: 1, spinUpYears: 0 },
});

/** The made-up list with measures, each at the given price. */
function listWith(
  measures: Readonly<Record<string, readonly [number, string]>>,
  heat = 1,
  rest = 100,
) {
  const rows = [
    ...IDS.map(([id, unit]) => `${id},${id === "fuel:propane" ? heat : rest},${unit}`),
    ...Object.entries(measures).map(([id, [price, unit]]) => `measure:${id},${price},${unit}`),
  ].map((row) => `${row},EUR,,2026-01-02,made up`);
  return readPriceList(
    ["id,price,unit,currency,life_years,date,source", ...rows].join("\n"),
    "p.csv",
  );
}

/** Years by task and house, which is all that differs between the ladders of this file. */
const years = new Map<string, unknown>();

function measureLadder(question: LadderQuestion) {
  const steps = ladderSteps(question);
  let turn = steps.next();
  while (turn.done !== true) {
    turn = steps.next(turn.value.map(({ task, question }) => {
      const { request, heated } = question as { request?: typeof store; heated?: boolean };
      const key = `${task.name} ${heated} ${JSON.stringify(request?.houseInputs ?? question)}`;
      if (!years.has(key)) years.set(key, task.run(question as never));
      return years.get(key);
    }));
  }
  return turn.value;
}

const TWO = ["sealing", "night curtain"];
const only = (names: readonly string[]) => (inputs: HouseInputs) =>
  houseMeasures(inputs).filter(({ name }) => names.includes(name));
const question = (prices: ReturnType<typeof listWith>): LadderQuestion => ({
  request: store,
  worth: worthRequest({ prices }),
  offered: only(TWO),
});
const cheap = listWith({ sealing: [1, "m2"], curtain: [2, "m2"] });
const ladder = measureLadder(question(cheap))!;

Deno.test("the ladder's steps add up to one run of the house with all of them", () => {
  // Property: what a step saves is counted on the house with those before it; that run settles from
  // undisturbed ground, those of the ladder from the ground of the house as it is
  assertEquals(ladder.rungs.map(({ name }) => name).toSorted(), TWO.toSorted());
  const [asItIs] = rankMeasures(store, undefined, []);
  const [combined] = rankMeasures({ ...store, houseInputs: ladder.house }, undefined, []);
  const saved = ladder.rungs.reduce((sum, rung) => sum + rung.saved, 0);
  assertEquals(ladder.asItIs.heat, asItIs!.heatDemand);
  const last = ladder.rungs.at(-1)!;
  assertAlmostEquals(last.after.heat / combined!.heatDemand, 1, 1e-4);
  assertAlmostEquals(last.after.hoursBelowCropLimit!, combined!.hoursBelowCropLimit, 2);
  assertAlmostEquals(saved, asItIs!.heatDemand - last.after.heat, 1e-9 * saved);
  assertAlmostEquals(last.savedSoFar, saved, 1e-9 * saved);
  const hours = ladder.rungs.reduce((sum, rung) => sum + rung.cropHoursAvoided, 0);
  assertEquals(hours, ladder.asItIs.hoursBelowCropLimit! - last.after.hoursBelowCropLimit!);
});

Deno.test("the first step is what the ranking says of the measure alone", () => {
  // Property: one number for one thing
  const measures = only(TWO)(store.houseInputs);
  const [first] = ladder.rungs;
  const row = rankMeasures(store, undefined, measures).find(({ name }) => name === first!.name)!;
  assertEquals(first!.saved, row.saved);
  assertEquals(first!.cropHoursAvoided, row.cropHoursAvoided);
});

Deno.test("the house at the top of the ladder is the same whichever measure was dearer", () => {
  // Property: the combined run does not hang on the order of the steps
  const other = measureLadder(question(listWith({ sealing: [0.01, "m2"], curtain: [2, "m2"] })))!;
  assert(other.rungs[0]!.name !== ladder.rungs[0]!.name);
  assertEquals(other.house, ladder.house);
  assertEquals(other.rungs.at(-1)!.after, ladder.rungs.at(-1)!.after);
});

Deno.test("every step pays, and the first is the cheapest kilowatt-hour of all alone", () => {
  // Property: the rule of the next step
  assert(ladder.rungs.every(({ netSavings }) => netSavings > 0));
  const alone = TWO.map((name) =>
    measureLadder({ ...question(cheap), offered: only([name]) })!.rungs[0]!
  ).toSorted((a, b) => a.costOfHeat - b.costOfHeat);
  assertEquals(ladder.rungs[0], alone[0]);
  assert(alone[0]!.costOfHeat < alone[1]!.costOfHeat);
});

Deno.test("doubling every price doubles every cost of the ladder and keeps its steps", () => {
  // Property: linear in money
  const twice = measureLadder(
    question(listWith({ sealing: [2, "m2"], curtain: [4, "m2"] }, 2, 200)),
  )!;
  assertEquals(twice.rungs.map(({ name }) => name), ladder.rungs.map(({ name }) => name));
  for (const [k, rung] of twice.rungs.entries()) {
    const once = ladder.rungs[k]!;
    assertEquals(rung.saved, once.saved);
    for (
      const key of [
        "capital",
        "capitalSoFar",
        "costOfHeat",
        "netSavings",
        "netSavingsSoFar",
      ] as const
    ) assertAlmostEquals(rung[key] / once[key], 2, 1e-12);
  }
});

Deno.test("no change costs and saves exactly nothing, and is no step", () => {
  // Property: the same house has the same years
  const none = { ...only(["sealing"])(store.houseInputs)[0]!, inputs: store.houseInputs };
  const empty = measureLadder({
    ...question(listWith({ sealing: [0, "m2"] })),
    offered: () => [none],
  })!;
  assertEquals(empty.rungs, []);
  const row = empty.rest.find(({ name }) => name === "sealing")!;
  assertEquals([row.capital, row.saved, row.costOfHeat], [0, 0, null]);
});

Deno.test("where no measure pays the ladder is empty, and a measure without a price is told", () => {
  // Property: borders of the choice
  const dear = measureLadder(question(listWith({ sealing: [1e6, "m2"] })))!;
  assertEquals(dear.rungs, []);
  assertEquals(dear.house, store.houseInputs);
  assertEquals(Object.fromEntries(dear.rest.map(({ name, why }) => [name, why])), {
    "heat store": "costs more than all heat still needed",
    "sealing": "costs more than all heat still needed",
    "night curtain": "no price",
  });
});

Deno.test("without prices there is no ladder", () => {
  // Property: a missing price is never nought
  assertEquals(
    measureLadder({ request: store, worth: worthRequest({ prices: null }), offered: only(TWO) }),
    null,
  );
});

Deno.test("a store that pays is a step, and what comes after it is run with it", () => {
  // Property: the store's step is what the store chapter says of it on the house of that step
  const bought = {
    ...question(listWith({ sealing: [1, "m2"] }, 9, 0.05)),
    offered: only(["sealing"]),
  };
  const { rungs, house, withStore } = measureLadder(bought)!;
  assertEquals(rungs.map(({ kind }) => kind).toSorted(), ["house", "store"]);
  assertEquals(withStore, true);
  const chapter = storeChapter({ ...store, houseInputs: house });
  const last = rungs.at(-1)!.after;
  assertAlmostEquals(last.heat / chapter.backupHeat, 1, 1e-9);
  assertAlmostEquals(last.fanEnergy / chapter.backupFanEnergy, 1, 1e-9);
  assertEquals(last.hoursBelowCropLimit, chapter.crop.killing.hours);
});

Deno.test("a store known already is not run again and gives the same ladder", () => {
  // Property: the store chapter's own year stands for it
  const prices = listWith({ sealing: [1e6, "m2"] }, 9, 0.05);
  const plain = { ...question(prices), offered: only(["sealing"]) };
  const { rungs } = measureLadder(plain)!;
  assertEquals(rungs.map(({ name }) => name), ["heat store"]);
  const withStore = { ...rungs[0]!.after, heat: rungs[0]!.after.heat + 1 };
  const known = measureLadder({ ...plain, withStore })!;
  assertAlmostEquals(known.rungs[0]!.saved, rungs[0]!.saved - 1, 1e-6);
});
