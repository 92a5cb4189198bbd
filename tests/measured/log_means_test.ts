import { assertAlmostEquals, assertEquals } from "@std/assert";
import { logMeans } from "../../lib/measured/mod.ts";

Deno.test("logMeans() gives one mean an hour and a day and leaves the rest out", () => {
  // Property: averages of a saw tooth of one hour, two days and five minutes long
  const series = (shift: number) =>
    Float64Array.from({ length: 2 * 288 + 1 }, (_, i) => i % 12 + shift);
  const { hours, days } = logMeans(
    { stepSeconds: 300, airTemperature: series(0), airHumidity: series(1) },
    { airTemperature: series(2), relativeHumidity: series(3) },
  );
  assertEquals([hours.length, days.length], [48, 2]);
  assertEquals(hours[0]!.day, 0.5 / 24);
  assertEquals(days.map((row) => row.day), [0.5, 1.5]);
  for (const row of [...hours, ...days]) {
    assertAlmostEquals(row.temperature, 5.5, 1e-12);
    assertAlmostEquals(row.humidity, 6.5, 1e-12);
    assertAlmostEquals(row.predictedTemperature, 7.5, 1e-12);
    assertAlmostEquals(row.predictedHumidity, 8.5, 1e-12);
  }
});
