import { assert, assertEquals } from "@std/assert";
import { houseModel, withHeater } from "../../../lib/house/mod.ts";
import type { HouseYear } from "../../../lib/house/types.ts";
import {
  answer,
  cumulativeHeatChart,
  quartersChart,
  quartersWords,
  summaryTable,
} from "../../../lib/show/store/mod.ts";
import { storeChapter } from "../../../lib/store/compute.ts";
import { storeFigures } from "../../../lib/store/figures.ts";
import { summariseStore } from "../../../lib/store/summary.ts";
import { settledYear } from "../../../lib/store/seasons/settled_year.ts";
import { soilModel } from "../../../lib/store/seasons/soil_model.ts";
import type { StoreInputs } from "../../../lib/store/types.ts";
import { houseWays } from "../../../lib/store/variants/ways.ts";
import { standInRequest } from "../stand_in.ts";

/** No intake gets this hot, and no house of the stand-in this cold. */
const OUT_OF_REACH = { chargeAbove: 60, dischargeBelow: -60 } as const;

/** Nothing is charged, and no store may be discharged. */
const COLD_STORE = { maximumStore: -60, chargeSeason: "never", dischargeStart: 90 } as const;

const SMALL = { slices: 1, spinUpYears: 0 } as const;

/** Largest difference of two series; NaN in one alone counts as infinite. */
function apart(one: Float64Array, other: Float64Array): number {
  return one.reduce(
    (most, value, hour) =>
      Object.is(value, other[hour]) ? most : Math.max(most, difference(value, other[hour]!)),
    0,
  );
}

function difference(one: number, other: number): number {
  const size = Math.abs(one - other);
  return Number.isNaN(size) ? Infinity : size;
}

function request(change: Partial<StoreInputs>) {
  return standInRequest({ store: { ...SMALL, ...change } });
}

Deno.test("a fan that never starts is no store to the bit, free running and heated", () => {
  // Property: without air in the tubes only the ground is left
  for (const change of [OUT_OF_REACH, { fanSeason: "never" }, COLD_STORE]) {
    const given = request(change);
    const model = houseModel(given.houseInputs, given.climate);
    for (const heater of [0, 5000, Infinity]) {
      const house = withHeater(model, heater);
      const soil = soilModel(given, house);
      const [may, never] = [true, false].map((fan) =>
        settledYear({ request: given, model: soil, house, fan })
      );
      for (const key of Object.keys(may!.year) as (keyof HouseYear)[]) {
        assertEquals(apart(may!.year[key], never!.year[key]), 0, `${key}, heater of ${heater} W`);
      }
      assertEquals(apart(may!.soilState, never!.soilState), 0);
      assertEquals(may!.ledger, never!.ledger);
    }
  }
});

Deno.test("storeChapter() saves nothing and changes no hour where the fan never starts", () => {
  // Property: one baseline: the same house, fan never on
  const result = storeChapter(request({ fanSeason: "never" }));
  for (const key of Object.keys(result.noFan) as (keyof HouseYear)[]) {
    assertEquals(apart(result.year.house[key], result.noFan[key]), 0, key);
  }
  assertEquals(result.savedHeat, 0);
  assertEquals(result.fanEnergy, 0);
  assertEquals(result.crop, result.cropNoFan);
  assert(result.backupHeat > 0);
});

Deno.test("ratios of a store that moves nothing have no value, and their figures say why", () => {
  // Property: nothing over nothing is not 0
  const result = storeChapter(request({ fanSeason: "never" }));
  const reasons: Readonly<Record<string, string>> = {
    recovery: "no heat is charged",
    taggedReturn: "no heat is charged",
    carriedAcrossSeasons: "no heat is discharged",
    cop: "the fan never runs",
    savedHeatPerFanEnergy: "the fan never runs",
  };
  const figures = new Map(storeFigures(result));
  for (const [name, why] of Object.entries(reasons)) {
    assertEquals(result[name as "recovery"], null, name);
    const { value, label } = figures.get(`store.${name}`)!;
    assertEquals(value, null, name);
    assert(label.endsWith(`: ${why}`), label);
  }
  const summarised = summariseStore(request({ fanSeason: "never" }), result);
  assertEquals(summarised.summary.latentShare, null);
  assertEquals(summarised.summary.firstQuarter.ground.share, null);
  const shown = JSON.stringify([
    answer(summarised),
    summaryTable(result),
    cumulativeHeatChart(summarised),
    quartersChart(result),
    quartersWords(summarised),
  ]);
  assert(!/NaN|null|undefined|Infinity/.test(shown), shown);
});

Deno.test("houseWays() gives a store whose fan never starts nothing to save, under either curtain", () => {
  // Property: the same rule for all four houses
  const ways = houseWays(request({ fanSeason: "never" }));
  for (const { store, savedByStore } of ways) assertEquals(savedByStore, store ? 0 : null);
});
