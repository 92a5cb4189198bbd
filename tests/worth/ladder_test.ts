import { assert, assertAlmostEquals, assertEquals } from "@std/assert";
import { houseMeasures } from "winterground/house/mod.ts";
import type { HouseInputs } from "../../lib/house/types.ts";
import { rankMeasures } from "winterground/store/mod.ts";
import { type LadderQuestion, readPriceList } from "winterground/worth/mod.ts";
import { ladderSteps } from "../../lib/worth/ladder.ts";
import { standInRequest } from "../store/stand_in.ts";
import { IDS, request as worthRequest } from "./example.ts";

const store = standInRequest({
  house: { curtain: null, glazing: "single-glass" },
  store: { slices: 1, spinUpYears: 0 },
});

/** The made-up list with measures, each at the given price. */
function listWith(measures: Readonly<Record<string, readonly [number, string]>>, heat = 1) {
  const rows = [
    ...IDS.map(([id, unit]) => `${id},${id === "fuel:propane" ? heat : 100},${unit}`),
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
      const { request } = question as { readonly request?: typeof store };
      const key = `${task.name} ${JSON.stringify(request?.houseInputs ?? question)}`;
      if (!years.has(key)) years.set(key, task.run(question as never));
      return years.get(key);
    }));
  }
  return turn.value;
}

const TWO = ["sealing", "night curtain"];
const offered = (inputs: HouseInputs) =>
  houseMeasures(inputs).filter(({ name }) => TWO.includes(name));
const question = (prices: ReturnType<typeof listWith>): LadderQuestion => ({
  request: store,
  worth: worthRequest({ prices }),
  offered,
});
const cheap = listWith({ sealing: [1, "m2"], curtain: [2, "m2"] });
const ladder = measureLadder(question(cheap))!;

Deno.test("the ladder's steps add up to one run of the house with all of them", () => {
  // Property: what a step saves is counted on the house with those before it
  assertEquals(ladder.rungs.map(({ name }) => name).toSorted(), TWO.toSorted());
  const [asItIs, combined] = rankMeasures(store, undefined, [{
    id: "all",
    work: { amount: 1, unit: "pieces" },
    name: "all",
    change: "all",
    inputs: ladder.house,
  }]);
  const saved = ladder.rungs.reduce((sum, rung) => sum + rung.saved, 0);
  assertAlmostEquals(ladder.heatAsItIs, asItIs!.heatDemand, 1e-9 * ladder.heatAsItIs);
  assertAlmostEquals(saved, combined!.saved, 1e-9 * ladder.heatAsItIs);
  assertAlmostEquals(ladder.rungs.at(-1)!.heatNeeded, combined!.heatDemand, 1e-6);
});

Deno.test("the house at the top of the ladder is the same whichever measure was dearer", () => {
  // Property: the combined run does not hang on the order of the steps
  const other = measureLadder(question(listWith({ sealing: [5, "m2"], curtain: [0.01, "m2"] })))!;
  assertEquals(other.house, ladder.house);
  assertEquals(other.rungs.at(-1)!.heatNeeded, ladder.rungs.at(-1)!.heatNeeded);
});

Deno.test("every step pays, and the first is the best measure alone", () => {
  // Property: greedy choice by net savings
  assert(ladder.rungs.every(({ netSavings }) => netSavings > 0));
  const alone = TWO.map((name) =>
    measureLadder({
      ...question(cheap),
      offered: (inputs) => offered(inputs).filter((one) => one.name === name),
    })!.rungs[0]!
  ).toSorted((a, b) => b.netSavings - a.netSavings);
  assertEquals(ladder.rungs[0], alone[0]);
});

Deno.test("where no measure pays the ladder is empty, and a measure without a price is told", () => {
  // Property: borders of the choice
  const dear = measureLadder(question(listWith({ sealing: [1e6, "m2"] })))!;
  assertEquals(dear.rungs, []);
  assertEquals(dear.house, store.houseInputs);
  assertEquals(dear.unpriced, ["night curtain"]);
});

Deno.test("without prices there is no ladder", () => {
  // Property: a missing price is never nought
  assertEquals(
    measureLadder({ request: store, worth: worthRequest({ prices: null }), offered }),
    null,
  );
});
