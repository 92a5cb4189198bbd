import { assert, assertAlmostEquals, assertEquals } from "@std/assert";
import { airHeat, estimates } from "../../../lib/measured/mod.ts";
import { hourlyHeat } from "../../../lib/measured/flows/hourly_heat.ts";
import { type HeatReadings, heatReadings } from "../../../lib/measured/flows/readings.ts";
import { heatSums } from "../../../lib/measured/flows/sums.ts";
import type { Log } from "../../../lib/measured/log/types.ts";
import { heatSensors, madeLog, mode, truth } from "./made_log.ts";

const PRESSURE = 95000;

function heatOf(log: Log, fanHeats = true) {
  const found = heatReadings(log);
  assert(!("missing" in found), "readings missing");
  const { readings, covariance } = found as HeatReadings;
  const heat = hourlyHeat({ readings, step: log.step, pressure: PRESSURE, fanHeats });
  const hours = Array.from(heat.running, (_, hour) => hour);
  return { heat, covariance, hours, sums: heatSums(heat, covariance, hours) };
}

/** kWh of a log without errors, summed step by step by `airHeat`, which does one step at a time. */
function byHand(log: Log, fanHeats: boolean): readonly [inward: number, outward: number] {
  const sums: [number, number] = [0, 0];
  for (let k = 0; k < log.count; k++) {
    const s = k * log.step;
    if (mode(s) === 0) continue;
    const readings = [
      truth.intake(s),
      truth.intakeHumidity(s),
      truth.outlet(s),
      truth.outletHumidity(s),
      truth.airFlow(s),
    ];
    const heat = airHeat(estimates(readings, [0, 0, 0, 0, 0]), PRESSURE).heat +
      (fanHeats ? truth.power(s) : 0);
    sums[heat > 0 ? 0 : 1] += Math.abs(heat) * log.step / 3.6e6;
  }
  return sums;
}

Deno.test("hourly heat of a clean log adds up to the heat of its steps, with and without the fan's", () => {
  // Property: nothing is lost between steps, hours and sums
  const log = madeLog(heatSensors());
  for (const fanHeats of [true, false]) {
    const { sums } = heatOf(log, fanHeats);
    const [inward, outward] = byHand(log, fanHeats);
    assertAlmostEquals(sums.heatIn.value, inward, 1e-9 * inward);
    assertAlmostEquals(sums.heatOut.value, outward, 1e-9 * outward);
    assertAlmostEquals(sums.recovery!.value, outward / inward, 1e-9);
    assertAlmostEquals(sums.cop!.value, outward / sums.fanEnergy.value, 1e-9);
  }
});

Deno.test("sums over days add up to those over all hours, and gaps are left out on every side", () => {
  // Property: conservation over any cut of the hours
  const whole = madeLog(heatSensors());
  const channels = whole.channels.map((channel) =>
    channel.sensor.name === "out"
      ? { ...channel, values: channel.values.map((v, k) => k >= 200 && k < 300 ? NaN : v) }
      : channel
  );
  const { heat, covariance, hours, sums } = heatOf({ ...whole, channels });
  const days = Array.from(
    { length: hours.length / 24 },
    (_, day) => heatSums(heat, covariance, hours.slice(24 * day, 24 * day + 24)),
  );
  const total = (of: (day: typeof sums) => number) => days.reduce((sum, day) => sum + of(day), 0);
  assertAlmostEquals(total((day) => day.heatIn.value), sums.heatIn.value, 1e-9);
  assertAlmostEquals(total((day) => day.heatOut.value), sums.heatOut.value, 1e-9);
  assertAlmostEquals(total((day) => day.fanEnergy.value), sums.fanEnergy.value, 1e-9);
  assertEquals(total((day) => day.hours), sums.hours);
  assert(sums.hours < hours.length, "the gap counts as logged");
  // the fan rests in some hours of the gap; those are known to have moved nothing
  assert(sums.hours > hours.length - 26);
});

Deno.test("a sensor that is off is off all season: the band does not shrink with more days", () => {
  // Property: relative band of forty days near that of ten; errors that averaged out would halve it
  const band = (count: number) => {
    const { value, high } = heatOf(madeLog(heatSensors(), { count })).sums.heatIn;
    return (high - value) / value;
  };
  assertAlmostEquals(band(96 * 40), band(96 * 10), 0.1 * band(96 * 10));
});

Deno.test("known heat lies inside its 95 % band in 90 to 99 of 100 winters of erring sensors", () => {
  // Property: coverage of heat in and out, electricity, recovery and COP
  const { sums: known } = heatOf(madeLog(heatSensors()));
  const held = { heatIn: 0, heatOut: 0, latentIn: 0, fanEnergy: 0, recovery: 0, cop: 0 };
  for (let seed = 0; seed < 100; seed++) {
    const { sums } = heatOf(madeLog(heatSensors(seed)));
    for (const name of Object.keys(held) as (keyof typeof held)[]) {
      const { low, high } = sums[name]!;
      if (known[name]!.value >= low && known[name]!.value <= high) held[name]++;
    }
  }
  for (const [name, count] of Object.entries(held)) {
    assert(count >= 90 && count <= 99, `${name}: ${count} of 100`);
  }
});

Deno.test("probes calibrated together make the heat surer than probes of their own", () => {
  // Property: what both are off by cancels in the difference
  const together = heatOf(madeLog(heatSensors())).sums.heatIn;
  const apart = heatOf(madeLog(
    heatSensors().map((one) => ({
      ...one,
      sensor: { ...one.sensor, correlatedWith: one.sensor.name },
    })),
  )).sums.heatIn;
  assertAlmostEquals(together.value, apart.value, 1e-9);
  assert(together.high - together.low < 0.95 * (apart.high - apart.low));
});

Deno.test("a log without a reading says which one", () => {
  // Property: named in the reader's words
  const log = madeLog(heatSensors().filter(({ sensor }) => sensor.name !== "outRh"));
  assertEquals(heatReadings(log), { missing: ["relative humidity at the outlet"] });
});
