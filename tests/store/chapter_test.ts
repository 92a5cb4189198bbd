import { assert, assertAlmostEquals, assertLess } from "@std/assert";
import { storeChapter } from "../../lib/store/mod.ts";
import { storeNotices } from "../../lib/store/notices.ts";
import type { StoreResult } from "../../lib/store/types.ts";
import { formulaClimate, standInRequest } from "./stand_in.ts";

const cold = storeChapter(standInRequest({ store: { slices: 3, spinUpYears: 1 } }));

Deno.test("storeChapter() closes the heat ledger to 1e-9 of its throughput", () => {
  // Property: energy is conserved
  assertLess(Math.abs(cold.balanceResidual), 1e-9);
});

Deno.test("storeChapter() attributes all heat: rows are what came back, columns what was put in", () => {
  // Property: tagged fields sum to the whole
  const back = cold.quarters.flat().reduce((sum, value) => sum + value, 0);
  assertAlmostEquals(back, cold.heatOut, 1e-9 * cold.heatIn);
  const putIn = cold.tagged.reduce((sum, tag) => sum + tag.putIn, 0);
  assertAlmostEquals(putIn, cold.heatIn, 1e-9 * cold.heatIn);
  cold.tagged.forEach((tag, k) => {
    const column = cold.quarters.reduce((sum, row) => sum + row[k]!, 0);
    assertAlmostEquals(column, tag.givenBack, 1e-9 * cold.heatIn);
    assertAlmostEquals(
      tag.putIn,
      tag.givenBack + tag.throughFloor + tag.lost + tag.remaining,
      1e-9 * cold.heatIn,
      `quarter ${k + 1}`,
    );
  });
});

Deno.test("storeChapter() reaches a year that repeats", () => {
  // Property: what remains of the heat put in is small in a periodic year
  for (const tag of cold.tagged) assertLess(Math.abs(tag.remaining), 0.005 * cold.heatIn);
});

Deno.test("storeChapter() sums its hourly series to its yearly figures", () => {
  // Property: series and sums are the same run
  const net = cold.year.sensible.reduce(
    (sum, value, hour) => sum + value + cold.year.latent[hour]!,
    0,
  );
  assertAlmostEquals(net / 1000, cold.heatIn - cold.heatOut, 1e-6 * cold.heatIn);
  const months = cold.months.reduce((sum, month) => sum + month.heatIn - month.heatOut, 0);
  assertAlmostEquals(months, cold.heatIn - cold.heatOut, 1e-6 * cold.heatIn);
});

Deno.test("storeChapter() says so where the store makes no sense", () => {
  // Property: a hot and a sunless climate run through with a notice
  for (const climate of [formulaClimate({ mean: 24, swing: 9 }), formulaClimate({ sun: 0.02 })]) {
    const result = storeChapter(standInRequest({ climate, store: { slices: 1, spinUpYears: 1 } }));
    assert(
      result.notices.some((notice) => notice.text.startsWith("The store makes no sense here")),
    );
    assertLess(Math.abs(result.balanceResidual), 1e-9);
  }
});

Deno.test("storeNotices() gives shares of the heat given back only where some comes back", () => {
  // Property: no "1059 %" of next to nothing, one year and two years in the right number
  const text = (changes: Partial<StoreResult>): string =>
    storeNotices({ ...cold, ...changes }, standInRequest(), 192).map((entry) => entry.text).join(
      "\n",
    );
  assert(text({ yearsUntilPeriodic: 1 }).includes("about 1 year until"));
  assert(text({ yearsUntilPeriodic: 2 }).includes("about 2 years until"));
  const idle = text({ heatOut: 0.002 * cold.heatIn });
  assert(!/The first year gives back|that the tubes never warmed/.test(idle), idle);
});
