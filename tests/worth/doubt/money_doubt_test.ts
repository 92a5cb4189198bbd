// Property: bands follow the ranges, and nothing else
import { assert, assertAlmostEquals, assertEquals } from "@std/assert";
import { worthChapter } from "winterground/worth/mod.ts";
import { NO_DOUBT, request } from "../example.ts";

Deno.test("without ranges the bands are the values and the verdict never flips", () => {
  const { doubt, earnings } = worthChapter(request(NO_DOUBT));
  for (const end of [0, 1] as const) {
    assertAlmostEquals(doubt!.netSavings[end], earnings!.netSavings, 1e-6);
    assertAlmostEquals(doubt!.capital[end], earnings!.capital, 1e-6);
    assertAlmostEquals(doubt!.costOfHeat![end], earnings!.costOfHeat!, 1e-9);
  }
  assertEquals(doubt!.chanceVerdictFlips, 0);
  for (const { first, total } of doubt!.shares) assertEquals([first, total], [0, 0]);
});

Deno.test("one range alone: its input has all of the scatter, and the band is the triangle's", () => {
  const { doubt, earnings } = worthChapter(request({ ...NO_DOUBT, doubtFirstCost: 0.2 }));
  assertEquals(doubt!.shares[0]!.input, "first cost");
  assertAlmostEquals(doubt!.shares[0]!.total, 1, 0.05);
  assertEquals(doubt!.shares.slice(1).every(({ total }) => total === 0), true);
  // 2.5 % of a triangle of half width h lie below -h(1 - sqrt(0.05))
  const half = 0.2 * (1 - Math.sqrt(0.05));
  assertAlmostEquals(doubt!.capital[0] / earnings!.capital, 1 - half, 3e-3);
  assertAlmostEquals(doubt!.capital[1] / earnings!.capital, 1 + half, 3e-3);
});

Deno.test("wider ranges give wider bands; the value lies inside", () => {
  const narrow = worthChapter(request()).doubt!;
  const wide = worthChapter(request({ doubtFuelPrice: 0.6, doubtHeatSaved: 0.6 })).doubt!;
  const width = ([low, high]: readonly [number, number]) => high - low;
  assert(width(wide.netSavings) > 1.3 * width(narrow.netSavings));
  const { netSavings } = worthChapter(request()).earnings!;
  assert(narrow.netSavings[0] < netSavings && netSavings < narrow.netSavings[1]);
});

Deno.test("net savings are straight in the first cost: their band lies evenly about the value", () => {
  const base = worthChapter(request(NO_DOUBT));
  const dearer = worthChapter(request({ ...NO_DOUBT, doubtFirstCost: 0.1 })).doubt!;
  const middle = (dearer.netSavings[0] + dearer.netSavings[1]) / 2;
  assertAlmostEquals(middle, base.earnings!.netSavings, 0.01 * base.earnings!.capital);
});

Deno.test("near its border the verdict flips in about half of the cases", () => {
  const open = worthChapter(request(NO_DOUBT));
  const factor = open.earnings!.breakEvenFuel!;
  const list = request().inputs.prices!;
  const atBorder = {
    ...list,
    prices: list.prices.map((one) =>
      one.id === "fuel:propane" ? { ...one, price: one.price * factor } : one
    ),
  };
  const { doubt } = worthChapter(request({ prices: atBorder }));
  assert(doubt!.chanceVerdictFlips > 0.3 && doubt!.chanceVerdictFlips < 0.7);
});
