import { assert, assertAlmostEquals, assertEquals, assertStringIncludes } from "@std/assert";
import fc from "fast-check";
import {
  changeFan,
  curveValue,
  FANS,
  fansInParallel,
  fansInSeries,
  findFan,
  operatingPoint,
  shapedCurve,
  stallLimit,
} from "../../lib/fan/mod.ts";

const quadratic = (coefficient: number) => (airFlow: number): number => coefficient * airFlow ** 2;

Deno.test("operatingPoint() lies on both curves for every fan and any field it can serve", () => {
  // Property: definition of the operating point
  fc.assert(fc.property(
    fc.constantFrom(...FANS),
    fc.double({ min: 5, max: 3000, noNaN: true }),
    (curve, coefficient) => {
      const system = quadratic(coefficient);
      const point = operatingPoint(curve, system);
      assert(point.reached);
      assertAlmostEquals(point.pressure, system(point.airFlow), 1e-6 * point.pressure + 1e-9);
    },
  ));
});

Deno.test("operatingPoint() moves less air through a stiffer field", () => {
  // Property: monotone
  for (const curve of FANS) {
    const flows = [20, 80, 320, 1280].map((coefficient) => {
      const point = operatingPoint(curve, quadratic(coefficient));
      return point.reached ? point.airFlow : Number.NaN;
    });
    for (let i = 1; i < flows.length; i++) assert(flows[i]! < flows[i - 1]!, `${flows}`);
  }
});

Deno.test("operatingPoint() scales with speed on a square-law field: Q ∝ n, p ∝ n², P ∝ n³", () => {
  // Property: fan laws and a square-law system have similar points
  const fan = findFan("duct-400");
  const full = operatingPoint(fan, quadratic(400));
  const half = operatingPoint(changeFan(fan, { speed: 0.5 }), quadratic(400));
  assert(full.reached && half.reached);
  assertAlmostEquals(half.airFlow / full.airFlow, 0.5, 1e-9);
  assertAlmostEquals(half.pressure / full.pressure, 0.25, 1e-9);
  assertAlmostEquals(half.power / full.power, 0.125, 1e-9);
});

Deno.test("two fans in parallel move less than twice the air, two in series less than twice the pressure", () => {
  // Property: a rising system curve
  const fan = findFan("centrifugal-400");
  const one = operatingPoint(fan, quadratic(400));
  const parallel = operatingPoint(fansInParallel(fan, 2), quadratic(400));
  const series = operatingPoint(fansInSeries([fan, fan]), quadratic(400));
  assert(one.reached && parallel.reached && series.reached);
  assert(parallel.airFlow > one.airFlow && parallel.airFlow < 2 * one.airFlow);
  assert(series.pressure > one.pressure && series.pressure < 2 * one.pressure);
  assertAlmostEquals(series.pressure, 400 * series.airFlow ** 2, 1e-6);
});

Deno.test("operatingPoint() says that the fan is too weak where its curve lies below the field's", () => {
  // Property: a clear answer, not a number
  const weak = { ...findFan("booster-250") };
  const from = {
    ...weak,
    airFlow: weak.airFlow.slice(2),
    staticPressure: weak.staticPressure.slice(2),
    power: weak.power.slice(2),
  };
  const point = operatingPoint(from, quadratic(1e5));
  assert(!point.reached);
  assertStringIncludes(point.reason, "too weak");
  assertEquals("airFlow" in point, false);
});

Deno.test("operatingPoint() says that the curve ends where the field lies beyond its last point", () => {
  // Property: nothing is extrapolated
  const fan = findFan("duct-400");
  const cut = {
    ...fan,
    airFlow: fan.airFlow.slice(0, 5),
    staticPressure: fan.staticPressure.slice(0, 5),
    power: fan.power.slice(0, 5),
  };
  const point = operatingPoint(cut, quadratic(10));
  assert(!point.reached);
  assertStringIncludes(point.reason, "ends before");
});

Deno.test("operatingPoint() flags stall left of the hump and names several crossings", () => {
  // Property: stall region by definition
  const fan = findFan("propeller-500");
  const limit = stallLimit(fan)!;
  assertEquals(limit, 1.2);
  const stiff = operatingPoint(fan, quadratic(75 / 0.3 ** 2));
  assert(stiff.reached && stiff.stalled && stiff.airFlow < limit);
  const open = operatingPoint(fan, quadratic(5));
  assert(open.reached && !open.stalled);
  const flat = operatingPoint(fan, () => 59.4);
  assert(flat.reached && flat.crossings.length === 3, "a constant need meets the saddle 3 times");
  assert(flat.airFlow > limit);
});

Deno.test("shapedCurve() passes through its points and never overshoots between them", () => {
  // Property: shape-preserving
  const points = fc.array(fc.double({ min: -100, max: 100, noNaN: true }), {
    minLength: 2,
    maxLength: 12,
  });
  fc.assert(fc.property(points, (values) => {
    const at = values.map((_, i) => i + 0.3 * Math.sin(i));
    const curve = shapedCurve(at, values);
    values.forEach((value, i) => assertAlmostEquals(curveValue(curve, at[i]!), value, 1e-9));
    for (let i = 1; i < values.length; i++) {
      const low = Math.min(values[i - 1]!, values[i]!);
      const high = Math.max(values[i - 1]!, values[i]!);
      for (let k = 1; k < 10; k++) {
        const value = curveValue(curve, at[i - 1]! + (at[i]! - at[i - 1]!) * k / 10);
        assert(value >= low - 1e-9 && value <= high + 1e-9);
      }
    }
  }));
});

Deno.test("shapedCurve() gives a straight line through points of a straight line", () => {
  // Property: reproduces linear data
  const curve = shapedCurve([0, 1, 2.5, 4], [3, 5, 8, 11]);
  for (const place of [0.2, 1.7, 3.9]) assertAlmostEquals(curveValue(curve, place), 3 + 2 * place);
});
