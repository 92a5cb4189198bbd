// Property: the plan's list is a log map, its bands follow the law of propagation, its calendar the year.
import { assert, assertAlmostEquals, assertEquals } from "@std/assert";
import {
  maintenanceCalendar,
  parseSensorList,
  planCertainty,
  readLog,
  sensorPlan,
} from "../../../lib/measured/mod.ts";
import { readPriceList } from "../../../lib/worth/prices/price_list.ts";
import { field } from "../../headers/fields.ts";
import { madeYear } from "./made_year.ts";

const tubes = field();
const request = {
  tubes,
  shares: tubes.positions.map((_, tube) => 0.9 + 0.2 * tube / (tubes.count - 1)),
  houseAlong: 24,
  timeZone: -6,
  prices: null,
};

Deno.test("sensorPlan(): the log reader takes its list as a map", () => {
  const plan = sensorPlan(request);
  const map = parseSensorList(plan.list, "sensors.csv");
  const read = map.loggers.flatMap(({ sensors }) => sensors.map(({ sensor }) => sensor));
  assertEquals(read.map(({ name }) => name), plan.sensors.map(({ column }) => column.sensor.name));
  for (const [k, sensor] of read.entries()) {
    const planned = plan.sensors[k]!.column.sensor;
    assertAlmostEquals(sensor.accuracy, planned.accuracy, 1e-9, sensor.name);
    assertAlmostEquals(sensor.accuracy, plan.sensors[k]!.kind.accuracy, 1e-9, sensor.name);
    assertEquals(sensor.relativeAccuracy, planned.relativeAccuracy, sensor.name);
    assertEquals([sensor.zone, sensor.quantity, sensor.correlatedWith], [
      planned.zone,
      planned.quantity,
      planned.correlatedWith,
    ]);
    assertAlmostEquals(sensor.depth ?? -1, planned.depth ?? -1, 1e-3);
  }
  const duct = map.loggers.find(({ name }) => name === "duct")!;
  const heads = ["time", ...duct.sensors.map(({ column }) => column)].join(",");
  const row = (minute: number) =>
    [`2026-01-05 10:${minute}`, ...duct.sensors.map(() => "0.5")].join(",");
  const log = readLog([{
    file: "duct-january.csv",
    text: [heads, row(10), row(15), row(20)].join("\n"),
  }], map);
  assertEquals(log.files[0]!.read, 3);
  assertEquals(log.step, 300);
  assertEquals(log.start, Date.UTC(2026, 0, 5, 16, 5) / 1000);
});

Deno.test("sensorPlan(): probes the tubes with least and most air, and no soil probe touches a tube", () => {
  const { sensors } = sensorPlan(request);
  const names = sensors.map(({ column }) => column.sensor.name);
  assert(names.includes("tube_1_end") && names.includes(`tube_${tubes.count}_end`));
  for (const { column: { sensor } } of sensors) {
    if (sensor.zone !== "store") continue;
    for (const { x, depth } of tubes.positions) {
      const away = Math.hypot(sensor.y! - x, sensor.depth! - depth);
      assert(away > tubes.product.outsideDiameter / 2 + 0.02, `${sensor.name} at ${away} m`);
    }
  }
  for (const name of ["intake", "outlet"]) {
    const pair = sensors.find(({ column }) => column.sensor.name === `${name}_t`)!;
    assertEquals(pair.column.sensor.correlatedWith, "bath 1");
  }
});

Deno.test("sensorPlan(): costs what the price list says, and names what it does not price", () => {
  const prices = readPriceList(
    "id,price,unit,currency,life_years,date,source\n" +
      "sensor:air-temperature,40,pieces,crowns,,2026-01-01,invented\n",
    "prices.csv",
  );
  const plan = sensorPlan({ ...request, prices });
  const count = plan.sensors.filter(({ kind }) => kind.id === "air-temperature").length;
  assertEquals(plan.cost, 40 * count);
  assertEquals(plan.currency, "crowns");
  assert(plan.unpriced.includes("sensor:humidity"));
  assert(!plan.unpriced.includes("sensor:air-temperature"));
  assertEquals(sensorPlan(request).unpriced.length > 5, true);
});

Deno.test("planCertainty(): what a bath and a flow meter add is what propagation by hand gives", () => {
  // dry air, so that an error of temperature at one relative humidity moves no water
  const made = madeYear();
  const house = {
    ...made.year.house,
    relativeHumidity: made.year.house.relativeHumidity.map(() => 0.005),
  };
  const { heat, sums } = planCertainty({ ...made, year: { ...made.year, house } });
  const [all, noBath] = heat;
  const squares = (a: number, b: number) => Math.sqrt(a ** 2 - b ** 2);
  // a correlation r takes 2·r·u² off the variance of a difference: 0.8 of 0.15 K, of 8 K
  const byHand = 1.96 * Math.sqrt(2 * 0.8) * 0.15 / 8;
  assertAlmostEquals(squares(noBath!.heatIn, all!.heatIn), byHand, 0.08 * byHand);
  const noFlow = heat.find(({ name }) => name === "without air flow meter")!;
  assertAlmostEquals(squares(noFlow.heatIn, all!.heatIn), 1.96 * squares(0.15, 0.05), 2e-3);
  assertAlmostEquals(squares(noFlow.cop, all!.cop), 1.96 * squares(0.15, 0.05), 2e-3);
  const noMeter = heat.find(({ name }) => name === "without fan energy meter")!;
  assertAlmostEquals(noMeter.heatIn, all!.heatIn, 1e-9);
  assertAlmostEquals(squares(noMeter.cop, all!.cop), 1.96 * squares(0.1, 0.01), 2e-3);
  // in damp air an error of temperature is one of vapour too
  assert(planCertainty(made).heat[0]!.heatIn > all!.heatIn);
  // each sensor left out widens the band, never narrows it
  for (const row of heat.slice(1)) {
    assert(row.heatIn >= all!.heatIn - 1e-12 && row.heatOut >= all!.heatOut - 1e-12, row.name);
  }
  // 183 days of 8 h of 0.8 m³/s (1.12 kg/m³) cooled by 8 K
  assertAlmostEquals(sums.heatIn.value, 183 * 8 * 0.8 * 1.1 * 1.006 * 8, 0.05 * sums.heatIn.value);
});

Deno.test("planCertainty(): calibration is less sure with fewer probes", () => {
  const { calibration } = planCertainty(madeYear());
  for (const { withAll, without, name } of calibration) {
    for (const one of without) assert(one.half > withAll, `${name}: ${one.name}`);
  }
  const soil = calibration[1]!;
  assert(soil.without[1]!.half > 0.1, "two shallow probes say little of a yearly wave");
});

Deno.test("maintenanceCalendar(): months follow the fan, the frost and the water of the year", () => {
  const { year, outside } = madeYear();
  const months = maintenanceCalendar({ year, outside, perforated: true });
  assertEquals(months.length, 12);
  assertEquals(months[6]!.chargeHours, 31 * 8);
  assertEquals(months[0]!.dischargeHours, 31 * 6);
  const frosty = months.map(({ coldest }) => coldest < -2);
  const first = frosty.findIndex((frost, m) => m > 6 && frost);
  const tasks = (month: number) => months[month]!.tasks.map(({ task }) => task).join("; ");
  assert(tasks(first - 1).includes("frost alarm"), tasks(first - 1));
  assert(!tasks(first).includes("Test the frost alarm"));
  assert(months.some((_, m) => tasks(m).includes("filter")));
  assert(tasks(0).includes("mould") && !tasks(6).includes("mould"));
  assert(tasks(0).includes("radon") && !tasks(6).includes("radon"));
  // no water, no drains; with water, drains and, where it is warm, Legionella
  assert(!months.some((_, m) => tasks(m).includes("drains")));
  const wet = maintenanceCalendar({
    year: {
      ...year,
      condensate: year.condensate.map(() => 0.2),
      outletTemperature: year.outletTemperature.map((t) => t + 5),
    },
    outside,
    perforated: false,
  });
  assert(wet[6]!.tasks.some(({ task }) => task.includes("drains")));
  assert(wet[6]!.tasks.some(({ why }) => why.includes("Legionella")));
  assert(!wet[0]!.tasks.some(({ why }) => why.includes("Legionella")));
});
