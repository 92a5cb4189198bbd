import { assert, assertAlmostEquals, assertEquals } from "@std/assert";
import { type LoggedSeason, loggedSeason } from "../../lib/measured/logged_season.ts";
import { planBesideLog, type PlannedYear } from "../../lib/measured/plan_beside_log.ts";
import { loggedBalance } from "../../lib/measured/balance.ts";
import { localHour } from "../../lib/measured/flows/local_hours.ts";
import { clock, heatSensors, madeLog, type MadeSensor, mode } from "./flows/made_log.ts";

const SETTING = { pressure: 95000, timeZone: 0, step: 900, fanHeats: true, fanOff: "never" };
const store = (s: number) => 10 + s / (30 * 86400);

const SURROUNDINGS: readonly MadeSensor[] = [
  {
    sensor: { name: "air", quantity: "airTemperature", zone: "inside", accuracy: 0.1 },
    value: (s) => clock(s) < 8 || clock(s) > 17 ? 5 + Math.sin(s / 2e5) : 20,
  },
  {
    sensor: { name: "control", quantity: "airTemperature", zone: "control house", accuracy: 0.1 },
    value: (s) => clock(s) < 8 || clock(s) > 17 ? 2 + Math.sin(s / 2e5) : 22,
  },
  {
    sensor: { name: "out", quantity: "outsideTemperature", zone: "outside", accuracy: 0.1 },
    value: (s) => -5 + 3 * Math.cos(s / 1e5),
  },
  {
    sensor: { name: "sun", quantity: "globalRadiation", zone: "outside", accuracy: 5 },
    value: (s) => clock(s) >= 8 && clock(s) <= 17 ? 300 : 0,
  },
  {
    sensor: {
      name: "probe",
      quantity: "soilTemperature",
      zone: "store",
      accuracy: 0.1,
      depth: 0.8,
    },
    value: store,
  },
];

function seasonOf(days = 20): LoggedSeason {
  const found = loggedSeason(
    madeLog([...heatSensors(), ...SURROUNDINGS.filter(({ sensor }) => sensor.name !== "out"), {
      ...SURROUNDINGS[2]!,
      sensor: { ...SURROUNDINGS[2]!.sensor, name: "outdoors" },
    }], { count: 96 * days }),
    SETTING,
  );
  assert(!("reason" in found), "no season");
  return found;
}

/** A plan that is the log itself, times a factor. */
function planOf(season: LoggedSeason, factor: number): PlannedYear {
  const year = (series: Float64Array, scale = 1) => {
    const all = new Float64Array(8760);
    series.forEach((value, hour) => {
      all[localHour(season.start + 3600 * hour, 0).hourOfYear!] = scale * value;
    });
    return all;
  };
  const { flows, running } = season.heat;
  return {
    heatIn: year(flows.heatIn, factor),
    heatOut: year(flows.heatOut, factor),
    fanPower: year(flows.fanPower),
    running: year(running),
    inside: year(season.inside),
    store: year(season.store),
    outside: year(season.outside),
    airFlow: 0.7 * factor,
  };
}

Deno.test("a plan that is the log has no bias and no scatter; one a tenth too low has a bias of a tenth", () => {
  // Property: sign and size of NMBE: measured less planned over measured
  const season = seasonOf();
  const same = planBesideLog(season, planOf(season, 1))!;
  assertAlmostEquals(same.hourly.nmbe, 0, 1e-12);
  assertAlmostEquals(same.hourly.cvRmse, 0, 1e-12);
  assert(same.hourly.within && same.rows.every(({ apart }) => !apart), "apart from itself");
  assertAlmostEquals(same.weatherApart!, 0, 1e-12);
  const low = planBesideLog(season, planOf(season, 0.9))!;
  const { nmbe, count, nmbeRange } = low.hourly;
  assertAlmostEquals(nmbe, 0.1 * count / (count - 1), 1e-9);
  assert(nmbeRange[0] < nmbe && nmbe < nmbeRange[1]);
  assertAlmostEquals(low.daily.nmbe, 0.1 * low.daily.count / (low.daily.count - 1), 1e-9);
  const flow = low.rows.find(({ name }) => name.startsWith("air flow"))!;
  assertAlmostEquals(flow.measured.value, 0.7, 1e-9);
  assert(flow.apart, "0.63 for 0.70 ± 0.06");
});

Deno.test("days, nights and balance of a log hold what was put into it", () => {
  // Property: sums of days are the season's; the lift is the one made; the store gains what its probes say
  const season = seasonOf();
  assertEquals(season.days.length, 20);
  const total = season.days.reduce((sum, day) => sum + day.heatIn.value, 0);
  assertAlmostEquals(total, season.sums.heatIn.value, 1e-9);
  assertAlmostEquals(season.lift.control!.value, 3, 1e-9);
  assert(season.lift.control!.real);
  assertEquals(season.lift.fanOff, null);
  const { left, gained, rest } = loggedBalance(season, { volume: 100, heatCapacity: 2e6 });
  assertAlmostEquals(left.value, season.sums.heatIn.value - season.sums.heatOut.value, 1e-9);
  // three days at either end lie 17 days apart
  assertAlmostEquals(gained!.value, 17 / 30 * 100 * 2e6 / 3.6e6, 0.1);
  assertAlmostEquals(rest!.value, left.value - gained!.value, 1e-9);
  assertAlmostEquals(
    season.heat.running.reduce((sum, one) => sum + one, 0),
    20 * [...Array(24).keys()].filter((hour) => mode(hour * 3600) !== 0).length,
    1e-9,
  );
});

Deno.test("a log that cannot tell the heat says why", () => {
  // Property: missing sensor, odd step, too short
  const reason = (log: Parameters<typeof loggedSeason>[0]) => {
    const found = loggedSeason(log, SETTING);
    return "reason" in found ? found.reason : "";
  };
  assert(reason(madeLog(SURROUNDINGS)).includes("no air flow"));
  assert(reason(madeLog(heatSensors(), { step: 1000 })).includes("does not divide"));
  assert(reason(madeLog(heatSensors(), { count: 20 })).includes("shorter than a day"));
});
