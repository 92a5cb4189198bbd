// Property: a made-up house whose balance is known; closed form of a cooling body
import { assert, assertAlmostEquals, assertEquals, assertLess, assertThrows } from "@std/assert";
import { InputError } from "../../../lib/basics/mod.ts";
import { type HouseRecord, quietHours, quietNights } from "../../../lib/measured/mod.ts";
import { timesOf } from "../../support/noise.ts";

const HOURS = 24 * 12;
const TRUTH = { loss: 240, wind: 14, sky: 60, capacity: 4e6 };

/** Twelve days: a heater that holds 8 to 12 degC, hourly means from steps of a minute. */
function madeHouse(normal: () => number, noise: number, heated = true): HouseRecord {
  const make = (of: (hour: number) => number) =>
    Float64Array.from({ length: HOURS }, (_, i) => of(i));
  const outside = make((hour) =>
    -6 + 5 * Math.sin(hour / 37) + 4 * Math.cos(2 * Math.PI * (hour - 15) / 24)
  );
  const wind = make((hour) => 3 + 2.5 * Math.sin(hour / 11 + 1));
  const skyLoss = make((hour) => 55 + 35 * Math.sin(hour / 19));
  const radiation = make((hour) => Math.max(0, 400 * Math.sin(2 * Math.PI * (hour % 24 - 6) / 24)));
  const [inside, heater] = [new Float64Array(HOURS), new Float64Array(HOURS)];
  let air = heated ? 9 : 15;
  for (let hour = 0; hour < HOURS; hour++) {
    for (let minute = 0; minute < 60; minute++) {
      const set = 8 + 4 * Math.sin(hour / 23);
      const power = heated ? Math.max(0, Math.min(15000, 3000 * (set - air) + 5000)) : 0;
      const gap = air - outside[hour]!;
      const sun = heated ? 20 * radiation[hour]! : 0;
      const lost = TRUTH.loss * gap +
        (heated ? TRUTH.wind * wind[hour]! * gap + TRUTH.sky * skyLoss[hour]! : 0);
      inside[hour]! += air / 60;
      heater[hour]! += power / 60;
      air += (power + sun - lost) * 60 / TRUTH.capacity;
    }
    if (!heated && hour % 24 === 17) air = 15;
  }
  return {
    step: 3600,
    inside: inside.map((one) => one + noise * normal()),
    outside: outside.map((one) => one + noise * normal()),
    radiation,
    heater,
    wind,
    skyLoss,
  };
}

Deno.test("quietNights(): loss coefficient, wind and sky of a made-up house", () => {
  // Property: without noise the terms come back; the hourly means leave a few parts in a hundred
  const stage = quietNights(madeHouse(() => 0, 0), { commonDoubt: 0 });
  const of = (name: string) => stage.estimates.find((one) => one.name === name)!.value;
  assertAlmostEquals(of("loss coefficient") / TRUTH.loss, 1, 0.02);
  assertAlmostEquals(of("loss coefficient by wind") / TRUTH.wind, 1, 0.05);
  assertAlmostEquals(of("loss to the sky") / TRUTH.sky, 1, 0.05);
  assertAlmostEquals(of("heat held by air and structure") / TRUTH.capacity, 1, 0.1);
  assert(stage.places.length > 50);
});

Deno.test("quietNights(): truth inside the interval", () => {
  // Property: 90 to 99 of 100 seeds, probes with noise of 0.1 K
  const times = timesOf(100, (normal) => {
    const { low, high } = quietNights(madeHouse(normal, 0.1), { commonDoubt: 0 }).estimates[0]!;
    return low <= TRUTH.loss && TRUTH.loss <= high;
  });
  assert(times >= 90 && times <= 99, `${times}`);
});

Deno.test("quietNights(): nights that only cool tell the time constant and not UA", () => {
  // Source: exact, a body that cools with one time constant: dT/dt = -(T - T_out)/tau
  const record = madeHouse(() => 0, 0, false);
  const stage = quietNights({ ...record, outside: record.outside }, { leastDifference: 2 });
  assertEquals(stage.estimates.map(({ name, unit }) => [name, unit]), [["time constant", "h"]]);
  assertAlmostEquals(stage.estimates[0]!.value, TRUTH.capacity / TRUTH.loss / 3600, 0.15);
  assert(stage.cannotTell[0]!.includes("UA itself is not"));
});

Deno.test("quietNights(): terms that the nights cannot tell are left out and named", () => {
  // Property: a wind that never changes cannot be told from the loss itself
  const record = madeHouse(() => 0, 0);
  const stage = quietNights({ ...record, wind: record.wind!.map(() => 3) });
  assert(!stage.estimates.some(({ name }) => name.includes("wind")));
  assert(stage.cannotTell.some((one) => one.includes("What wind adds")));
  assertThrows(
    () => quietNights({ ...record, radiation: record.radiation.map(() => 100) }),
    InputError,
    "hold the fan off for some nights",
  );
});

Deno.test("quietHours(): dark, settled, fan off, vents shut, whole", () => {
  // Property: each place passes every rule, and so do its neighbours
  const record = madeHouse(() => 0, 0);
  const fan = record.inside.map((_, i) => i % 24 === 2 ? 1 : 0);
  const holed = record.inside.slice();
  holed[100] = NaN;
  const { places, nights } = quietHours({ ...record, inside: holed, fan });
  assertEquals(places.length, nights.length);
  for (const place of places) {
    for (const i of [place - 1, place, place + 1]) {
      assert(record.radiation[i]! < 2 && fan[i] === 0 && i !== 100, `${i}`);
    }
    assert([1, 2, 3].every((back) => record.radiation[place - back]! < 2));
  }
  assertLess(places.length, quietHours(record).places.length);
});
