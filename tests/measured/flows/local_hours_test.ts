import { assertAlmostEquals, assertEquals } from "@std/assert";
import { hourlyMeans, localHour } from "../../../lib/measured/flows/local_hours.ts";

Deno.test("localHour(): hours of UTC stand on the house's clock, and 29 February has no hour of the year", () => {
  // Property: offsets either way, turn of the year, leap day
  const at = (text: string, zone: number) => localHour(Date.parse(`${text}Z`) / 1000, zone);
  assertEquals(at("2025-11-01T06:00", -6), { hourOfYear: 304 * 24, day: "2025-11-01", clock: 0 });
  assertEquals(at("2026-01-01T03:00", -6).hourOfYear, 364 * 24 + 21);
  assertEquals(at("2025-12-31T23:00", 2), { hourOfYear: 1, day: "2026-01-01", clock: 1 });
  assertEquals(at("2024-02-29T12:00", 0).hourOfYear, null);
  assertEquals(at("2024-03-01T00:00", 0).hourOfYear, 59 * 24);
});

Deno.test("hourlyMeans(): half an hour is enough for a mean, less is a gap", () => {
  // Property: means of what is there; an hour of a coarser series keeps its value
  const values = Float64Array.of(1, 2, NaN, NaN, 3, NaN, NaN, NaN, 4, 4, 4, 8);
  const means = hourlyMeans(values, 900);
  assertAlmostEquals(means[0]!, 1.5);
  assertEquals(means[1], NaN);
  assertAlmostEquals(means[2]!, 5);
  assertEquals([...hourlyMeans(Float64Array.of(7, NaN), 3600)], [7, NaN]);
});
