import { assert, assertAlmostEquals, assertEquals } from "@std/assert";
import fc from "fast-check";
import { batteryFor, solarFan } from "../../lib/store/solar_fan.ts";
import { planeSeries } from "../../lib/house/mod.ts";
import { hourlySun } from "../../lib/sun/mod.ts";
import { solarFanChart, solarFanTable, solarFanWords } from "../../lib/show/fan/mod.ts";
import { hourly } from "../show/sample.ts";
import { formulaClimate } from "./stand_in.ts";

const climate = formulaClimate();
const load = hourly((hour) => hour % 24 < 6 ? 200 : 0);
const fan = { fanPower: load, fanShare: hourly((hour) => hour % 24 < 6 ? -1 : 0) };

Deno.test("batteryFor() is the night's load where the day refills it, and none where it cannot", () => {
  // Closed form: 14 h of load a night; by day what is over refills at 85 %
  const night = (hour: number) => hour % 24 < 7 || hour % 24 >= 17;
  const steady = hourly(() => 100);
  const made = (watts: number) => hourly((hour) => night(hour) ? 0 : watts);
  const enough = 100 + 14 * 100 / (10 * 0.85);
  assertAlmostEquals(batteryFor(made(enough * 1.01), steady)!, 1400, 1e-6);
  assertEquals(batteryFor(made(enough * 0.99), steady), null);
  assertEquals(batteryFor(hourly(() => 100), steady), 0);
});

Deno.test("batteryFor() leaves no hour without power, and one a little smaller does", () => {
  // Property: the battery run hour by hour from full, through a year that repeats
  const made = hourly((hour) =>
    hour % 24 > 8 && hour % 24 < 16 ? 900 + 300 * Math.cos(hour / 1400) : 0
  );
  const content = batteryFor(made, load)!;
  const unmet = (size: number) => {
    let [held, short] = [size, 0];
    for (let hour = 0; hour < 2 * load.length; hour++) {
      const over = made[hour % load.length]! - load[hour % load.length]!;
      held += over > 0 ? 0.85 * over : over;
      short += Math.max(0, -held);
      held = Math.min(size, Math.max(0, held));
    }
    return short;
  };
  assertAlmostEquals(unmet(content), 0, 1e-6);
  assert(unmet(0.99 * content) > 0);
});

Deno.test("a larger panel never needs a larger battery", () => {
  // Property: random weeks of sun and load
  const days = fc.array(fc.double({ min: 0, max: 1000, noNaN: true }), {
    minLength: 24,
    maxLength: 24,
  });
  fc.assert(
    fc.property(days, days, fc.double({ min: 1, max: 3, noNaN: true }), (sun, need, times) => {
      const [made, wanted] = [Float64Array.from(sun), Float64Array.from(need)];
      const small = batteryFor(made, wanted);
      const large = batteryFor(made.map((watt) => times * watt), wanted);
      assert(small === null || (large !== null && large <= small + 1e-9));
    }),
  );
});

Deno.test("solarFan() makes three quarters of the sun on its plane, and says what nights leave unmet", () => {
  // Property: the library's own plane; a fan that runs by night alone meets nothing without a battery
  const { plane, panels, months, fanPower, fanEnergy } = solarFan({ climate, year: fan });
  const sun = planeSeries(climate, hourlySun(climate.place))(plane);
  const all = sun.beam.reduce(
    (sum, beam, k) => sum + beam + sun.skyDiffuse[k]! + sun.groundReflected[k]!,
    0,
  );
  assertAlmostEquals(panels[0]!.energy, 0.75 * fanPower * all / 1e6, 1e-6 * panels[0]!.energy);
  assertAlmostEquals(months.reduce((sum, { panel }) => sum + panel, 0), panels[0]!.energy, 1e-6);
  assertAlmostEquals(fanEnergy, 365 * 6 * 0.2, 1e-9);
  assert(panels.every(({ chargeShare }) => chargeShare === null));
  assert(panels[0]!.dischargeShare! < 0.3);
  const batteries = panels.flatMap(({ battery }) => battery ?? []);
  assert(batteries.length > 0 && batteries.every((one, k) => k === 0 || one <= batteries[k - 1]!));
});

Deno.test("fans that never run need no panel, and that is said", () => {
  const still = solarFan({
    climate,
    year: { fanPower: hourly(() => 0), fanShare: hourly(() => 0) },
  });
  assertEquals(still.panels, []);
  for (const item of [solarFanTable(still), solarFanChart(still), solarFanWords(still)]) {
    assert(item["text/plain"].includes("never runs"));
  }
});
