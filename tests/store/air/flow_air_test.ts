import { assert, assertAlmostEquals, assertEquals } from "@std/assert";
import { flowAirs } from "../../../lib/store/air/flow_air.ts";
import { reducedEngine } from "../../../lib/store/solver/reduced/engine.ts";
import { reduceSlice } from "../../../lib/store/solver/reduced/reduction.ts";
import { storeSite } from "../../../lib/store/site.ts";
import { YEAR_STEPS } from "../../../lib/store/step_report.ts";
import { standInRequest } from "../stand_in.ts";

const base = standInRequest({ store: { slices: 1 } });
const site = storeSite({ ...base, fan: { ...base.fan, density: 1.204 } }, 8, 72);
const engine = reducedEngine(reduceSlice(site.operator), site.lengths.length, YEAR_STEPS);
const airAt = flowAirs(site, engine);

Deno.test("a fan moves 11.4 % more mass at -10 than at 20 degC: dry air of 1.341 and 1.204 kg/m³", () => {
  // Source: density of dry air at 101325 Pa, ASHRAE Fundamentals 2017 [ashrae-2017] ch. 1 (perfect
  // gas): 293.15/263.15 = 1.1140; fan laws: power goes with density. Densities are told apart to 1 %.
  const [cold, warm] = [airAt(-10, 0, 101325), airAt(20, 0, 101325)];
  assertAlmostEquals(cold.heatRate / warm.heatRate, 1.114, 0.011);
  assertAlmostEquals(cold.airRate / warm.airRate, 1.114, 0.011);
  assertAlmostEquals(cold.fanPower / warm.fanPower, 1.114, 0.011);
  assertAlmostEquals(warm.heatRate, site.heatRate, 1e-9, "at the fan's own density");
  assert(warm.field === site.field);
  // and 700 hPa of a mountain valley carry 31 % less
  assertAlmostEquals(airAt(20, 0, 70000).heatRate / warm.heatRate, 0.691, 0.007);
});

Deno.test("denser air exchanges more in all, and less for each kilogram", () => {
  // Property: N = film over flow goes with mass flow^(0.8 − 1) (Dittus & Boelter 1930
  // [dittus-boelter-1930])
  const [cold, warm] = [airAt(-10, 0, 101325), airAt(20, 0, 101325)];
  const units = ({ field }: typeof cold) =>
    -Math.log(1 - field.sensible[0]! * field.segment / field.heatRate[0]!);
  const ratio = cold.heatRate / warm.heatRate;
  assertAlmostEquals(units(cold) / units(warm), ratio ** -0.2, 1e-9);
  assert(cold.field.sensible[0]! > warm.field.sensible[0]!);
  assert(cold.field.latent[0]! > warm.field.latent[0]!);
});

Deno.test("air of nearly one density is one air, worked out once", () => {
  // Property: steps of a hundredth
  assert(airAt(12, 0.005, 95000) === airAt(12.1, 0.005, 95000));
  assertEquals(airAt(12, 0.005, 95000).coupling(0), airAt(12, 0.005, 95000).coupling(0));
  for (let degrees = -30; degrees < 45; degrees++) {
    const step = airAt(degrees + 1, 0, 95000).heatRate / airAt(degrees, 0, 95000).heatRate;
    assert(step <= 1 && step > 0.985, `${degrees}`);
  }
});

Deno.test("a fan slowed for discharge moves its share of the air at its own power", () => {
  // Property: rates go with the flow, N with flow^(0.8 − 1) (Dittus & Boelter 1930
  // [dittus-boelter-1930]); power is the fan's at that point, times density
  const fan = { ...base.fan, density: 1.204 };
  const slow = { airFlow: 0.6 * fan.airFlow, pressure: 20, power: 31 };
  const slowed = flowAirs(storeSite({ ...base, fan: { ...fan, discharge: slow } }, 8, 72), engine);
  const [charge, discharge] = [slowed(20, 0, 101325, 1), slowed(20, 0, 101325, -1)];
  assertAlmostEquals(discharge.heatRate / charge.heatRate, 0.6, 1e-12);
  assertAlmostEquals(discharge.airRate / charge.airRate, 0.6, 1e-12);
  assertEquals([charge.fanPower, discharge.fanPower], [110, 31]);
  const units = ({ field }: typeof charge) =>
    -Math.log(1 - field.sensible[0]! * field.segment / field.heatRate[0]!);
  assertAlmostEquals(units(discharge) / units(charge), 0.6 ** -0.2, 1e-9);
  const one = airAt(20, 0, 101325);
  assertEquals([charge.heatRate, charge.fanPower], [one.heatRate, one.fanPower]);
  assert(airAt(20, 0, 101325, -1) === one, "one speed, one air");
});
