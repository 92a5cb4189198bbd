import { assert, assertAlmostEquals, assertEquals } from "@std/assert";
import {
  chargeByQuarter,
  condensateOfYear,
  fanByMonth,
  fanHoursPerDay,
  firstQuarter,
  firstYears,
  heatByDay,
  heatByMonth,
  heaterPeaks,
  recoveryByDay,
  runningTotals,
  storeWeek,
  yearFlows,
} from "../../lib/store/mod.ts";
import { heatSeries } from "../show/made.ts";
import { climateYear, hourly, storeResult } from "../show/sample.ts";

const { year } = storeResult;
const net = year.sensible.reduce((sum, watt, hour) => sum + watt + year.latent[hour]!, 0) / 1000;

Deno.test("heatByMonth() splits the year's heat into in and out without losing any", () => {
  // Property: conservation
  const found = heatByMonth(year).reduce(
    (sum, row) => sum + row.sensibleIn + row.latentIn - row.sensibleOut - row.latentOut,
    0,
  );
  assertAlmostEquals(found, net, 1e-6 * Math.abs(net));
});

Deno.test("heatByDay() and recoveryByDay() keep the year's heat, wherever a day starts", () => {
  // Property: conservation
  const months = heatByMonth(year);
  const total = months.reduce((sum, row) => sum + row.sensibleIn + row.latentIn, 0);
  for (const start of [0, 6]) {
    const days = heatByDay(year, start);
    const heat = days.reduce((sum, row) => sum + row.sensibleIn + row.latentIn, 0);
    assertAlmostEquals(heat, total, 1e-9 * total);
  }
  const rows = recoveryByDay(year, 100);
  assertEquals(rows.map((row) => row.quarter), [0, 1, 2, 3, null]);
  const quarters = rows.slice(0, 4).reduce((sum, row) => sum + row.heatIn, 0);
  assertAlmostEquals(quarters, rows[4]!.heatIn, 1e-9 * total);
  assertAlmostEquals(rows[4]!.heatIn, total, 1e-9 * total);
});

Deno.test("recoveryByDay() takes the middle day, and ratios worked by hand", () => {
  // Property: 4 h of 3 kW by day and 4 h of 1 kW back by night, fan 100 W for 8 h: 1/3, 12 kWh, 5
  const clock = (hour: number) => hour % 24;
  const made = {
    ...year,
    ...heatSeries(
      hourly((hour) => clock(hour) >= 10 && clock(hour) < 14 ? 3000 : 0),
      hourly((hour) => clock(hour) < 4 ? -1000 : 0),
    ),
    fanPower: hourly((hour) =>
      clock(hour) < 4 || (clock(hour) >= 10 && clock(hour) < 14) ? 100 : 0
    ),
  };
  for (const row of recoveryByDay(made, 60)) {
    assertAlmostEquals(row.dayRecovery!, 1 / 3, 1e-12);
    assertAlmostEquals(row.recovery!, 1 / 3, 1e-12);
    assertAlmostEquals(row.heatPerDayAndMetre!, 0.2, 1e-12);
    assertAlmostEquals(row.heatPerFanEnergy!, 5, 1e-9);
  }
  assertEquals(recoveryByDay(made, 60)[4]!.chargeDays, 365);
  const idle = {
    ...year,
    ...heatSeries(hourly(() => 0), hourly(() => 0)),
    fanPower: hourly(() => 0),
  };
  const none = recoveryByDay(idle, 60)[4]!;
  assertEquals([none.dayRecovery, none.recovery, none.heatPerFanEnergy], [null, null, null]);
});

Deno.test("runningTotals() end at the sums of the year and their difference", () => {
  // Property: conservation, and never falling
  const { heatIn, heatOut, difference } = runningTotals(year);
  assertAlmostEquals(heatIn.at(-1)! - heatOut.at(-1)!, difference.at(-1)!, 1e-6);
  assertAlmostEquals(difference.at(-1)!, net, 1e-6 * Math.abs(net));
  assert(heatIn.every((value, hour) => hour === 0 || value >= heatIn[hour - 1]!));
});

Deno.test("yearFlows() takes the floor apart into two flows whose difference is its sum", () => {
  // Property: conservation, and no other flow is changed
  const flows = yearFlows(storeResult);
  const down = flows.find((flow) => flow.from.startsWith("house floor"))!.heat;
  const up = flows.find((flow) => flow.to.startsWith("house floor"))!.heat;
  const floor = year.floor.reduce((sum, watt) => sum + watt / 1000, 0);
  assert(Math.abs(down - up - floor) < 1e-9 * (down + up));
  assertEquals(flows.filter((flow) => !/floor/.test(flow.from + flow.to)).length, 2);
});

Deno.test("fanByMonth() splits the year's electricity and hours without losing any", () => {
  // Property: conservation
  const fanShare = hourly((hour) => hour % 24 < 8 ? 1 : hour % 24 < 12 ? -0.5 : 0);
  const { months, energy, hours } = fanByMonth({ ...year, fanShare });
  const expected = year.fanPower.reduce((sum, power) => sum + power / 1000, 0);
  assertAlmostEquals(energy, expected, 1e-9 * expected);
  assertAlmostEquals(hours, 365 * 10, 1e-6);
  assertAlmostEquals(months[1]!.hours, 28 * 10, 1e-9);
});

Deno.test("fanHoursPerDay() counts the days on which the fan runs", () => {
  // Property: ten days of six half hours
  const share = hourly((hour) => hour < 240 && hour % 24 < 6 ? 0.5 : 0);
  assertAlmostEquals(fanHoursPerDay(share), 3, 1e-9);
  assertEquals(fanHoursPerDay(hourly(() => 0)), 0);
});

Deno.test("heaterPeaks() finds the highest hour, day and three days, never rising with the span", () => {
  // Property: a single hour of 7200 W is 300 W over a day and 100 W over three
  const peaks = heaterPeaks(hourly((hour) => hour === 4000 ? 7200 : 0));
  assertEquals([peaks.hour, peaks.day, peaks.threeDays], [7200, 300, 100]);
  const flat = heaterPeaks(hourly(() => 500));
  for (const peak of [flat.hour, flat.day, flat.threeDays]) assertAlmostEquals(peak, 500, 1e-9);
});

Deno.test("condensateOfYear() nets the water and finds the wettest day", () => {
  // Property: 1 kg an hour by day 100, half a kilogram back an hour on the next
  const water = hourly((hour) => {
    const day = Math.floor(hour / 24);
    return day === 100 ? 1 : day === 101 ? -0.5 : 0;
  });
  assertEquals(condensateOfYear(water), { net: 12, wettestDay: 24 });
});

Deno.test("chargeByQuarter() keeps the mean between the ends, and the year's ends", () => {
  // Property: order
  const rows = chargeByQuarter(storeResult.stateOfCharge);
  assertEquals(rows.length, 4);
  for (const row of rows) assert(row.lowest <= row.mean && row.mean <= row.highest);
  assertEquals(Math.max(...rows.map((row) => row.highest)), Math.max(...storeResult.stateOfCharge));
});

Deno.test("firstQuarter() gives every kilowatt-hour an origin", () => {
  // Property: the shares of all origins add up to one
  const found = firstQuarter([1000, 50, 20, 300, 80]);
  assertEquals([found.heat, found.summer.heat, found.autumn.heat], [1450, 70, 300]);
  const { sameQuarter, autumn, summer, ground } = found;
  const shares = [sameQuarter, autumn, summer, ground].map((part) => part.share!);
  assertAlmostEquals(shares.reduce((sum, share) => sum + share, 0), 1, 1e-12);
  assertEquals(firstQuarter([0, 0, 0, 0, 0]).ground.share, null);
});

Deno.test("firstYears() sets the year that repeats last, at a share of one", () => {
  // Property: shares of the repeating year; none where it gives nothing back
  const earlyYears = [{ year: 1, heatIn: 13000, heatOut: 6000 }];
  const rows = firstYears({ earlyYears, yearsUntilPeriodic: 3, heatIn: 12000, heatOut: 8000 });
  assertEquals(rows.map((row) => [row.year, row.repeats, row.share]), [
    [1, false, 0.75],
    [4, true, 1],
  ]);
  const empty = firstYears({ earlyYears, yearsUntilPeriodic: 3, heatIn: 0, heatOut: 0 });
  assertEquals(empty.map((row) => row.share), [null, null]);
});

Deno.test("storeWeek() runs over New Year and holds the coldest hour unless told otherwise", () => {
  // Property: the lowest of its days is the lowest of the year with the fan never on
  const worst = storeWeek(storeResult, climateYear);
  const lowest = storeResult.noFan.airTemperature.reduce((low, value) => Math.min(low, value));
  assertEquals(Math.min(...worst.days.map((day) => day.noFanLowest)), lowest);
  const last = storeWeek(storeResult, climateYear, 8760 - 24);
  assertEquals(last.days.length, 7);
  const newYear = Math.min(...climateYear.dryBulb.subarray(0, 24));
  assertEquals(last.days[1]!.outdoorsLowest, newYear);
});

Deno.test("the summary counts the same hours as the chapter would", () => {
  // Property: one number for one thing
  const freezing = storeResult.summary.hoursBelow.find((row) => row.limit === 0)!;
  assertEquals(freezing.noFan, storeResult.cropNoFan.freezing.hours);
  assertEquals(freezing.store, storeResult.crop.freezing.hours);
});
