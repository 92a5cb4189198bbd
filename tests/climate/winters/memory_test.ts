// Property: closed forms of autoregressions; lags that two daily records show (docs/climate.md)
import { assert, assertAlmostEquals, assertEquals } from "@std/assert";
import { deviation, mean } from "d3-array";
import {
  dailyMemory,
  shareBetweenMonths,
  slowShareFor,
} from "../../../lib/climate/winters/memory.ts";
import { normalDraws } from "../../../lib/climate/winters/streams.ts";

const stream = (winter: number, quantity: "temperature" | "slow", seed = 1) =>
  normalDraws({ seed, winter, quantity });
const long = dailyMemory(
  0.2,
  { fast: stream(0, "temperature"), slow: stream(0, "slow") },
  400_000,
);

Deno.test("lags 1 to 5 of the memory are .709 .444 .289 .212 .177", () => {
  const square = mean(long, (value) => value ** 2)!;
  assertAlmostEquals(square, 1, 0.02);
  [0.709, 0.444, 0.289, 0.212, 0.177].forEach((wanted, place) => {
    const lag = place + 1;
    let sum = 0;
    for (let day = lag; day < long.length; day++) sum += long[day]! * long[day - lag]!;
    assertAlmostEquals(sum / (long.length - lag) / square, wanted, 0.015);
  });
});

Deno.test("the share between months is that of the closed form, and of made months", () => {
  assertAlmostEquals(shareBetweenMonths(0), 0.1045, 5e-5);
  assertAlmostEquals(shareBetweenMonths(1), 0.6842, 5e-5);
  assertAlmostEquals(shareBetweenMonths(0.2), 0.2204, 5e-5);
  const months = Array.from(
    { length: Math.floor(long.length / 31) },
    (_, month) => mean(long.subarray(31 * month, 31 * month + 31))!,
  );
  assertAlmostEquals(deviation(months)! ** 2, 0.2204, 0.01);
});

Deno.test("slowShareFor() turns a published deviation of monthly means into the slow part", () => {
  // within a month w shows sqrt((1 - v) 31/30), between months sqrt(v): s/w = 0.523 at f = 0.2
  const v = shareBetweenMonths(0.2);
  assertAlmostEquals(slowShareFor(Math.sqrt(v / ((1 - v) * 31 / 30)), 1), 0.2, 1e-9);
  assertAlmostEquals(slowShareFor(0.523, 1), 0.2, 2e-3);
  assertEquals(slowShareFor(0, 1), 0);
  assertEquals(slowShareFor(5, 1), 0.6);
});

Deno.test("streams of different keys do not hang together, neighbours least of all", () => {
  // |r| < 0.1 over 400 values: 0.1 is twice the standard error
  const values = (draw: () => number) => Float64Array.from({ length: 4000 }, () => draw());
  const keys = [
    stream(0, "temperature"),
    stream(1, "temperature"),
    stream(2, "temperature"),
    stream(0, "slow"),
    stream(4, "slow"),
    stream(0, "temperature", 2),
    stream(0, "temperature", 5),
  ].map(values);
  for (const [place, one] of keys.entries()) {
    assertAlmostEquals(mean(one)!, 0, 0.06);
    assertAlmostEquals(deviation(one)!, 1, 0.05);
    for (const other of keys.slice(place + 1)) {
      const together = mean(one, (value, index) => value * other[index]!)!;
      assert(Math.abs(together) < 0.06, `correlation ${together}`);
    }
  }
});

Deno.test("the same key gives the same draws", () => {
  const [one, again] = [stream(7, "slow"), stream(7, "slow")];
  for (let draw = 0; draw < 100; draw++) assertEquals(one(), again());
});
