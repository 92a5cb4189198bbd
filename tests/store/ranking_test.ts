import { assert, assertAlmostEquals, assertEquals } from "@std/assert";
import { houseMeasures } from "../../lib/house/mod.ts";
import { rankMeasures, storeChapter } from "../../lib/store/mod.ts";
import { standInRequest } from "./stand_in.ts";

const request = standInRequest({
  house: { curtain: null, glazing: "single-glass" },
  store: { slices: 2, spinUpYears: 0 },
});
const chapter = storeChapter(request);
const wanted = houseMeasures(request.houseInputs).filter(({ name }) =>
  ["sealing", "night curtain"].includes(name)
);

Deno.test("the ranking's house as it is is the chapter's own with the fan always off, bit for bit", () => {
  // Property: one baseline
  const [asItIs, ...rows] = rankMeasures(request, undefined, []);
  assertEquals(rows, []);
  assertEquals(asItIs!.heatDemand, chapter.backupHeatNoFan);
  assertEquals(asItIs!.coldestHour, chapter.coldestHourNoFan);
  assertEquals(asItIs!.hoursBelowFreezing, chapter.cropNoFan.freezing.hours);
});

Deno.test("a change that changes nothing saves exactly nothing", () => {
  // Property: the same house has the same years
  const none = {
    id: "none",
    work: { amount: 1, unit: "pieces" },
    name: "none",
    change: "",
  } as const;
  const [, row] = rankMeasures(request, undefined, [{ ...none, inputs: request.houseInputs }]);
  assertEquals([row!.saved, row!.coldestHourGain], [0, 0]);
});

Deno.test("a measure's year from the ground of the house as it is is that from undisturbed ground", () => {
  // Property: both settle to the same year
  const [{ inputs }] = wanted as [typeof wanted[number], ...typeof wanted];
  const measured = rankMeasures(request, undefined, wanted);
  const [afar] = rankMeasures({ ...request, houseInputs: inputs }, undefined, []);
  const near = measured.find(({ name }) => name === wanted[0]!.name)!;
  assertAlmostEquals(near.heatDemand / afar!.heatDemand, 1, 1e-4);
  assertAlmostEquals(near.coldestHour, afar!.coldestHour, 0.01);
  assertAlmostEquals(near.hoursBelowFreezing, afar!.hoursBelowFreezing, 2);
});

Deno.test("rankMeasures() puts the house as it is first, then the best saving, the store among them", () => {
  // Property: order, arithmetic, and the sign that physics gives sealing, a curtain and a store
  const known = {
    asItIs: {
      heatDemand: chapter.backupHeatNoFan,
      coldestHour: chapter.coldestHourNoFan,
      hoursBelowFreezing: chapter.cropNoFan.freezing.hours,
      hoursBelowCropLimit: chapter.cropNoFan.killing.hours,
    },
    store: {
      heatDemand: chapter.backupHeat,
      coldestHour: chapter.coldestHour,
      hoursBelowFreezing: chapter.crop.freezing.hours,
      hoursBelowCropLimit: chapter.crop.killing.hours,
    },
  };
  const rows = rankMeasures(request, known, wanted);
  assertEquals(rows[0]!.name, "as it is");
  assertEquals(rows.map(({ name }) => name).toSorted(), [
    "as it is",
    "heat store",
    "night curtain",
    "sealing",
  ]);
  const base = rows[0]!;
  for (const [k, row] of rows.entries()) {
    if (k === 0) continue;
    assert(row.saved > 0 && row.coldestHourGain > 0, `${row.name} ${row.saved}`);
    assert(k === 1 || row.saved <= rows[k - 1]!.saved, row.name);
    assertAlmostEquals(row.heatDemand + row.saved, base.heatDemand, 1e-9 * base.heatDemand);
    assertAlmostEquals(row.savedShare!, row.saved / base.heatDemand, 1e-12);
  }
  const store = rows.find(({ kind }) => kind === "store")!;
  assertAlmostEquals(store.saved, chapter.savedHeat, 1e-9 * base.heatDemand);
});
