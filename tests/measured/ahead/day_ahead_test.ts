// Property: the coming days against the store's own year, and directions that must hold
import { assert, assertAlmostEquals, assertEquals, assertGreater, assertThrows } from "@std/assert";
import { InputError } from "../../../lib/basics/mod.ts";
import { storeRequest } from "../../../lib/store/mod.ts";
import { chargingSpells, dayAhead, type WeatherSpan } from "../../../lib/measured/mod.ts";
import { startRun } from "../../../lib/study/mod.ts";
import { openSmallStudy } from "../../harness/small_study.ts";

const study = await openSmallStudy();
const run = startRun(study);
const earlier = {
  soil: await run.soil(),
  tubes: await run.tubes(),
  headers: await run.headers(),
  fan: await run.fan(),
};
const request = storeRequest(study, earlier);

function spanOf(start: number, count: number, colder = 0): WeatherSpan {
  const cut = (series: Float64Array) =>
    Float64Array.from({ length: count }, (_, k) => series[(start + k) % 8760]!);
  const { climate } = study;
  return {
    start,
    dryBulb: cut(climate.dryBulb).map((one) => one - colder),
    relativeHumidity: cut(climate.relativeHumidity),
    globalHorizontal: cut(climate.globalHorizontal),
    windSpeed: cut(climate.windSpeed),
  };
}

const NOW = 60 * 24;
const past = spanOf(NOW - 21 * 24, 21 * 24);
const ahead = dayAhead({
  request,
  past,
  forecast: spanOf(NOW, 200),
  heaterPower: 0,
  residuals: [],
});
const of = (fan: boolean, heater: boolean) =>
  ahead.courses.find((one) => one.fan === fan && one.heater === heater)!;

Deno.test("dayAhead(): with the study's own weather it goes on as the study's own year does", async () => {
  // Property: past and forecast cut from the year; the split of sun and sky of a made year is the same
  const year = (await run.store()).year.house.airTemperature.slice(NOW, NOW + 168);
  assertEquals([ahead.start, ahead.hours], [NOW, 168]);
  const misses = year.map((one, k) => Math.abs(one - of(true, false).air[k]!));
  assert(Math.max(...misses) < 0.3, `${Math.max(...misses)}`);
});

Deno.test("dayAhead(): heater, fan and cold go the way they must", () => {
  // Property: a heater never leaves the house colder; without one no heat is given; a colder forecast
  // never gives a warmer house or a later frost
  for (const fan of [true, false]) {
    of(fan, true).air.forEach((one, k) => assertGreater(one, of(fan, false).air[k]! - 0.05));
    assertEquals(of(fan, false).heaterEnergy, 0);
    assertGreater(of(fan, true).heaterEnergy, 0);
  }
  assert(of(false, false).fanPower.every((one) => one === 0));
  const colder = dayAhead({
    request,
    past,
    forecast: spanOf(NOW, 200, 6),
    heaterPower: 0,
    residuals: [],
  });
  for (const [k, warning] of colder.warnings.entries()) {
    const before = ahead.warnings[k]!;
    if (before.likely === null) continue;
    assert(warning.likely !== null && warning.likely <= before.likely);
  }
  assertGreater(
    of(false, false).coldestHour,
    colder.courses.find((c) => !c.fan && !c.heater)!.coldestHour,
  );
});

Deno.test("dayAhead(): the band brings the first possible hour forward and the certain one back", () => {
  // Property: order of the three, quantiles of the residuals
  const residuals = Float64Array.from({ length: 101 }, (_, i) => (i - 50) / 25);
  const banded = dayAhead({ request, past, forecast: spanOf(NOW, 200), heaterPower: 0, residuals });
  assertAlmostEquals(banded.band.low, -1.8, 1e-9);
  assertAlmostEquals(banded.band.high, 1.8, 1e-9);
  for (const { possible, likely, nearlyCertain } of banded.warnings) {
    if (likely !== null) assert(possible !== null && possible <= likely);
    if (nearlyCertain !== null) assert(likely !== null && likely <= nearlyCertain);
  }
  assertEquals(banded.warnings.length, 12);
  const limits = banded.warnings.map(({ limit }) => limit);
  assertEquals(limits, limits.toSorted((a, b) => b - a));
});

Deno.test("dayAhead(): the logged state now", () => {
  // Property: the first hour starts from the air as logged; the gap of the store is told
  const warm = dayAhead({
    request,
    past,
    forecast: spanOf(NOW, 200),
    heaterPower: 0,
    residuals: [],
    airNow: { temperature: 25, humidity: 0.6 },
    storeNow: ahead.store - 1.5,
  });
  assertAlmostEquals(warm.storeGap!, 1.5, 1e-9);
  assertEquals(ahead.storeGap, null);
  assertGreater(warm.courses[0]!.air[0]!, ahead.courses[0]!.air[0]!);
  assertThrows(
    () =>
      dayAhead({
        request,
        past: spanOf(NOW - 100, 100),
        forecast: spanOf(NOW, 99),
        heaterPower: 0,
        residuals: [],
      }),
    InputError,
    "100 logged hours",
  );
  assertThrows(
    () => dayAhead({ request, past, forecast: spanOf(NOW + 5, 99), heaterPower: 0, residuals: [] }),
    InputError,
    "starts 5 hours after",
  );
});

Deno.test("chargingSpells(): spells by heat for each kilowatt-hour of the fan", () => {
  // Property: sums by hand
  const heat = Float64Array.of(0, 1000, 3000, 0, -500, 2000, 20);
  const fan = Float64Array.of(0, 100, 100, 0, 50, 100, 0);
  assertEquals(chargingSpells(heat, fan), [
    { from: 1, to: 3, heat: 4, fanEnergy: 0.2, ratio: 20 },
    { from: 5, to: 6, heat: 2, fanEnergy: 0.1, ratio: 20 },
  ]);
});
