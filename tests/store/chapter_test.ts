import { assert, assertAlmostEquals, assertLess } from "@std/assert";
import { storeChapter } from "../../lib/store/mod.ts";
import { storeNotices } from "../../lib/store/notices.ts";
import type { StoreResult } from "../../lib/store/types.ts";
import { formulaClimate, standInRequest } from "./stand_in.ts";

const coldRequest = standInRequest({ store: { slices: 3, spinUpYears: 1 } });
const cold = storeChapter(coldRequest);

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

Deno.test("storeChapter() runs through a hot climate and says the store makes no sense", () => {
  // Property: no need, no use
  const climate = formulaClimate({ mean: 24, swing: 9 });
  const hot = storeChapter(standInRequest({ climate, store: { slices: 1, spinUpYears: 0 } }));
  assert(hot.notices.some((notice) => notice.text.startsWith("The store makes no sense here")));
  assertLess(Math.abs(hot.balanceResidual), 1e-9);
});

/** Texts of the notices of the cold year with some figures changed. */
function noticesWith(change: Partial<StoreResult>, request = coldRequest): string[] {
  return storeNotices({ ...cold, ...change }, request, 72).map((notice) => notice.text);
}

Deno.test("storeNotices() speaks up outside the limits of measured stores", () => {
  // Source: limits from published stores: heat over fan energy 1 to 30, lift up to 10 K, condensate not
  // above evaporation, seasonal recovery not above 1
  const says = (change: Partial<StoreResult>, part: string) =>
    assert(noticesWith(change).some((text) => text.includes(part)), part);
  says({ cop: 31 }, "measured stores reach 1 to 7");
  says({ cop: 0.8 }, "plain electric heater");
  says({ recovery: 1.1 }, "More heat comes out than goes in");
  says({ nightLift: 11 }, "lifts cold nights by 11.0 K");
  says({ condensed: cold.evaporated + 100 }, "More water condenses");
  says({ balanceResidual: 1e-8 }, "does not close");
  says({ heatIn: 300 }, "makes no sense here: only 300 kWh");
  says({ heatOut: 100, fanEnergy: 200 }, "makes no sense here: it gives back less");
  const dark = noticesWith(
    { heatIn: 300 },
    standInRequest({ climate: formulaClimate({ sun: 0.02 }) }),
  );
  assert(dark.some((text) => text.includes("too little sun")));
  const quiet = noticesWith({ freezing: null, drained: 0, cop: 6, recovery: 0.6 });
  assert(quiet.every((text) => !text.includes("makes no sense")));
});

Deno.test("storeNotices() gives shares of the heat given back only where some comes back", () => {
  // Property: no "1059 %" of next to nothing, one year and two years in the right number
  const text = (changes: Partial<StoreResult>): string => noticesWith(changes).join("\n");
  assert(text({ yearsUntilPeriodic: 1 }).includes("about 1 year until"));
  assert(text({ yearsUntilPeriodic: 2 }).includes("about 2 years until"));
  const idle = text({ heatOut: 0.002 * cold.heatIn });
  assert(!/The first year gives back|that the tubes never warmed/.test(idle), idle);
  const still = text({ heatOut: 0, heatIn: 0, fanEnergy: 0, earlyYears: cold.earlyYears });
  assert(!/NaN|gives back/.test(still), still);
});
