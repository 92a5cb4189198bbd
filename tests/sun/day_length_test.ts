import { assert, assertEquals } from "@std/assert";
import { shortDays } from "winterground/sun/mod.ts";

Deno.test("the season of short days lies about the solstice and grows with the latitude", () => {
  // Property: symmetric about 21 December within the days the short formulas are off
  const { count, first, last } = shortDays(49.6, 10 * 3600);
  const before = 355 - first!;
  assert(Math.abs(before - (last! + 10)) <= 6, `${first} ${last}`);
  assertEquals(count, 365 - first! + 1 + last!);
  assert(shortDays(60, 10 * 3600).count > count);
  assertEquals(shortDays(10, 10 * 3600), { count: 0, first: null, last: null });
});
