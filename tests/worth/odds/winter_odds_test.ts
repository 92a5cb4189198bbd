// Property: counts by hand, the same design twice differs by nought, bad winters lie at the bad end
import { assert, assertAlmostEquals, assertEquals, assertThrows } from "@std/assert";
import { OutOfRangeError } from "winterground/basics/mod.ts";
import type { PairedWinter } from "../../../lib/store/mod.ts";
import { winterOdds } from "../../../lib/worth/mod.ts";
import { oddsFigures } from "../../../lib/worth/odds/figures.ts";
import { oddsTables } from "../../../lib/worth/odds/result_tables.ts";
import { madeHouseWinter } from "../../support/made_winter.ts";

const FACTS = {
  spread: "usual rule" as const,
  normalsOfOneYear: false,
  cropValue: null,
  currency: null,
  year: { withStore: -5, without: -9 },
};

/** Winters in an order that is not that of their cold. */
function winters(count: number, alike = false): PairedWinter[] {
  return Array.from({ length: count }, (_, winter) => {
    const place = (winter * 37) % count;
    const hours = Math.max(0, place - count / 2);
    const withStore = madeHouseWinter(place, 0, hours);
    const without = alike ? withStore : madeHouseWinter(place, 4, 2 * hours + 30);
    return { winter, coldestOutdoors: -30 - place / 10, withStore, without };
  });
}

Deno.test("winterOdds() puts rare winters at the bad end, by the place (n + 1)p", () => {
  // 199 winters: the coldest hour of one in ten is the 20th coldest, heat the 20th highest
  const odds = winterOdds(winters(199), FACTS);
  assertAlmostEquals(odds.coldestHour.withStore.rare10!.value, -17.9, 1e-9);
  assertAlmostEquals(odds.backupHeat.withStore.rare10!.value, 5000 + 10 * 179, 1e-9);
  assertAlmostEquals(odds.coldestHour.withStore.median.value, -9.9, 1e-9);
  const { low, value, high } = odds.coldestHour.withStore.rare30!;
  assert(low < value && value < high);
  assertAlmostEquals(odds.coldestHourGain.mean, 4, 1e-9);
  assertAlmostEquals(odds.savedHeat.mean, 4000, 1e-9);
  assertAlmostEquals(odds.savedHeat.error, 0, 1e-9);
});

Deno.test("winterOdds() counts winters below a limit, and the days of the middle one", () => {
  const { limits } = winterOdds(winters(200), FACTS);
  const killing = limits.find(({ name }) => name === "killing")!;
  // hours are place - 100 where above 0: 101 winters have none, 75 over 24 h, 27 over 72 h
  assertAlmostEquals(killing.withStore.never.value, 101 / 200, 1e-12);
  assertAlmostEquals(killing.withStore.overOneDay.value, 75 / 200, 1e-12);
  assertAlmostEquals(killing.withStore.overThreeDays.value, 27 / 200, 1e-12);
  assertAlmostEquals(killing.withStore.returnPeriod!, 200 / 99, 1e-12);
  assertEquals([killing.withStore.first, killing.withStore.last], ["2001-12-29", "2002-01-05"]);
  assertEquals(killing.without.never.value, 0);
});

Deno.test("the same design twice differs by nought", () => {
  const odds = winterOdds(winters(60, true), FACTS);
  for (const one of [odds.coldestHourGain, odds.savedHeat]) {
    assertEquals(one, { mean: 0, error: 0, low: 0, high: 0 });
  }
  assertEquals(odds.limits.map(({ without }) => without), odds.limits.map((one) => one.withStore));
});

Deno.test("crop loss is chance times value, and none without a value", () => {
  const odds = winterOdds(winters(200), { ...FACTS, cropValue: 1000, currency: "crowns" });
  assertAlmostEquals(odds.cropLoss!.withStore, 1000 * 99 / 200, 1e-9);
  assertAlmostEquals(odds.cropLoss!.without, 1000, 1e-9);
  assertEquals(winterOdds(winters(200), FACTS).cropLoss, null);
});

Deno.test("rare winters are not stated from too few, and nothing from fewer than ten", () => {
  const odds = winterOdds(winters(49), FACTS);
  assertEquals(odds.coldestHour.withStore.rare10, null);
  assertEquals(winterOdds(winters(149), FACTS).coldestHour.withStore.rare30, null);
  assertThrows(() => winterOdds(winters(9), FACTS), OutOfRangeError);
});

Deno.test("figures have a band, or say why they have no value", () => {
  const figure = (odds: Parameters<typeof oddsFigures>[0], key: string) =>
    Object.fromEntries(oddsFigures(odds))[key]!;
  const rare = figure(winterOdds(winters(199), FACTS), "worth.coldestHour10Years");
  assertAlmostEquals(rare.value as number, -17.9, 1e-9);
  assert(rare.low! < -17.9 && rare.high! > -17.9);
  const stated = winterOdds(winters(199), FACTS).coldestHour.withStore.rare10!;
  assert(rare.low! < stated.low && rare.high! > stated.high, "95 % reach further than 90 %");
  for (
    const [odds, words] of [
      [undefined, "when asked for"],
      [null, "no winters"],
      [winterOdds(winters(20), FACTS), "too few"],
    ] as const
  ) {
    const none = figure(odds, "worth.coldestHour10Years");
    assertEquals(none.value, null);
    assert(none.label.includes(words), none.label);
  }
  assert(figure(winterOdds(winters(20), FACTS), "worth.cropLossAvoided").label.includes("value"));
});

Deno.test("every winter stands in the table", () => {
  const [list, odds] = oddsTables(winterOdds(winters(60), FACTS));
  assertEquals([list!.name, odds!.name], ["worth-winters", "worth-odds"]);
  assertEquals(oddsTables(null), []);
});
