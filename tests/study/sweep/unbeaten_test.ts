import { assert, assertEquals } from "@std/assert";
import fc from "fast-check";
import {
  betterThanFirst,
  fieldSweepText,
  judgedRows,
  readSweep,
  type SweepPlan,
  unbeatenText,
} from "../../../lib/study/sweep/mod.ts";
import { openSmallStudy } from "../../harness/small_study.ts";
import { spreadOver } from "winterground/worth/mod.ts";

const KEYS = [
  "worth.capital",
  "store.savedHeat",
  "store.hoursBelowCropLimit",
  "worth.designFaults",
];
const FIGURES = KEYS.map((key) => ({ key, unit: "1", label: key, unchanged: 0 }));
const PLAN: SweepPlan = {
  form: "zip",
  rows: 0,
  points: "sobol",
  seed: 1,
  chapters: ["worth"],
  keys: [{
    key: "tubes.count",
    path: ["tubes", "count"],
    kind: "count",
    axis: { form: "list", values: [] },
  }],
};

type Facts = readonly [capital: number, heat: number, hours: number, faults: number];

function judge(all: readonly Facts[]) {
  const rows = new Map(all.map((facts, k) => [k + 1, `${k + 1},9,${facts.join(",")},`]));
  return judgedRows(PLAN, FIGURES, rows);
}

Deno.test("a row is unbeaten where nobody sound has as much for as little, and more of one: brute force", () => {
  // Property: the definition, over all pairs; a row with a fault is neither unbeaten nor beats
  const facts = fc.tuple(
    fc.integer({ min: 1, max: 6 }),
    fc.integer({ min: -3, max: 3 }),
    fc.integer({ min: 0, max: 4 }),
    fc.integer({ min: 0, max: 1 }),
  );
  fc.assert(fc.property(fc.array(facts, { minLength: 1, maxLength: 12 }), (all) => {
    const judged = judge(all);
    judged.forEach((one) => {
      let beaten = one.faults > 0;
      let late = one.faults > 0;
      for (const other of judged) {
        if (other.faults > 0 || other.capital > one.capital) continue;
        const cheaper = other.capital < one.capital;
        const { savedHeat, cropHours } = other;
        if (savedHeat > one.savedHeat || cheaper && savedHeat === one.savedHeat) beaten = true;
        if (cropHours < one.cropHours || cheaper && cropHours === one.cropHours) late = true;
      }
      assertEquals([one.unbeatenByHeat, one.unbeatenByHours], [!beaten, !late]);
    });
  }));
});

Deno.test("what betters the study's own field costs no more and saves no less", () => {
  // Property: the cheapest of those that better it; nobody where nobody does
  const better = betterThanFirst(
    judge([[5, 10, 3, 0], [4, 10, 9, 0], [3, 12, 9, 0], [2, 9, 0, 0]]),
  );
  assertEquals(better?.row, 3);
  assertEquals(betterThanFirst(judge([[5, 10, 3, 0], [4, 9, 3, 0], [3, 11, 3, 1]])), null);
  const text = unbeatenText(PLAN, FIGURES, judge([[5, 10, 3, 0], [4, 10, 9, 0]]));
  assertEquals(text.split("\n")[1], "2,9,4,10,9,0,yes,yes");
});

Deno.test("fields of the quick search make a sweep file that is read, the study's own first", async () => {
  // Property: each row is a field; the cheapest and the dearest are among them
  const study = await openSmallStudy();
  const field = (count: number) => ({
    ...study.tubes,
    count,
    totalLength: 1,
    airSpeed: 1,
    pressureDrop: 1,
    heat: 1,
    fanEnergy: 1,
    cost: count,
  });
  const front = [2, 3, 4, 5, 6, 7, 8].map(field);
  const chosen = spreadOver(front, 3);
  assertEquals(chosen.map(({ count }) => count), [2, 5, 8]);
  assertEquals(spreadOver(front, 9), front);
  const plan = readSweep(fieldSweepText(study, chosen), "fields.yaml");
  assertEquals([plan.form, plan.rows], ["zip", 4]);
  const counts = plan.keys.find(({ key }) => key === "tubes.count")!.axis;
  assert(counts.form === "list");
  assertEquals(counts.values, [study.tubes.count, 2, 5, 8]);
  assert(!plan.keys.some(({ key }) => key.startsWith("fan.")));
  const air = {
    airFlow: 0.123,
    diameter: 0.3,
    returnDiameter: 0.4,
    groups: 1,
    fan: study.fan.fan,
    fans: 3,
    speed: 0.7,
  };
  const withAir = readSweep(
    fieldSweepText(study, chosen.map((one) => ({ ...one, air }))),
    "fields.yaml",
  );
  const values = (key: string) => {
    const { axis } = withAir.keys.find((one) => one.key === key)!;
    assert(axis.form === "list");
    return axis.values;
  };
  assertEquals(values("fan.count"), [study.fan.count, 3, 3, 3]);
  assertEquals(values("tubes.airFlow").slice(1), ["0.123 m³/s", "0.123 m³/s", "0.123 m³/s"]);
});
