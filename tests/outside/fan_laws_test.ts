import { assertAlmostEquals } from "@std/assert";
import {
  changeFan,
  type FanCurve,
  operatingPoint,
  STANDARD_DENSITY,
  systemPressure,
} from "../../lib/fan/mod.ts";

const RATED: FanCurve = {
  id: "worked",
  name: "worked example",
  airFlow: [2, 2.4, 2.8],
  staticPressure: [380, 340, 280],
  power: [1700, 1800, 1850],
  outletArea: 0.4,
  source: "Stoecker & Jones",
};

Deno.test("changeFan() gives 2.4 m³/s, 318.29 Pa and 1.685 kW at 40 °C (Stoecker & Jones, fan chapter)", () => {
  // Source: Stoecker & Jones 1982 [stoecker-jones-1982], fan chapter, worked density example: 2.4
  // m³/s, 340 Pa, 1.8 kW at 20 °C; same speed at 40 °C; printed answer 1.685 kW; 0.1 %
  const warm = changeFan(RATED, { density: 293.15 / 313.15 });
  assertAlmostEquals(warm.airFlow[1]!, 2.4, 1e-12);
  assertAlmostEquals(warm.staticPressure[1]!, 318.29, 0.001 * 318.29);
  assertAlmostEquals(warm.power[1]!, 1685, 0.001 * 1685);
});

Deno.test("changeFan() follows Q ∝ nD³, p ∝ ρn²D², P ∝ ρn³D⁵ (fan laws)", () => {
  // Source: fan laws, Stoecker & Jones [stoecker-jones-1982]; exact
  const [speed, size, density] = [0.7, 1.25, 0.93];
  const changed = changeFan(RATED, { speed, size, density });
  assertAlmostEquals(changed.airFlow[1]! / 2.4, speed * size ** 3, 1e-12);
  assertAlmostEquals(changed.staticPressure[1]! / 340, density * speed ** 2 * size ** 2, 1e-12);
  assertAlmostEquals(changed.power[1]! / 1800, density * speed ** 3 * size ** 5, 1e-12);
});

Deno.test("shaft power is Q·p/η: 0.5 m³/s, 200 Pa, 0.55 give 181.8 W", () => {
  // Source: exact definition of fan efficiency; the curve's own figures must give it back
  const curve: FanCurve = {
    ...RATED,
    airFlow: [0.4, 0.5, 0.6],
    staticPressure: [230, 200, 150],
    power: [170, 181.818, 190],
  };
  const point = operatingPoint(curve, (airFlow) => 800 * airFlow ** 2);
  if (!point.reached) throw new Error(point.reason);
  assertAlmostEquals(point.airFlow, 0.5, 1e-9);
  assertAlmostEquals(point.airFlow * point.pressure / 0.55, 181.8, 0.05);
  assertAlmostEquals(point.power, 181.818, 1e-6);
});

Deno.test("systemPressure() counts the exit head once: P_s = P_t − P_v2 (AMCA 210)", () => {
  // Source: AMCA 210 [amca-210-2016] convention; a fan that blows through a riser of its own outlet
  // area needs, as fan static pressure, the losses without any exit head, and as fan total pressure
  // one head more
  const area = Math.PI * 0.4 ** 2 / 4;
  const path = {
    field: [0.25, 0.5, 1].map((airFlow) => ({ airFlow, pressure: 100 * airFlow ** 2 })),
    riserDiameter: 0.4,
    riserLosses: 0,
    filterPressure: 0,
    designFlow: 0.5,
    fanCount: 1,
    outletArea: area,
    density: STANDARD_DENSITY,
  };
  const staticPressure = systemPressure(path)(0.5);
  assertAlmostEquals(staticPressure, 25, 1e-9);
  // half the outlet area: the fan's larger velocity pressure less Borda–Carnot's loss is regained
  const small = systemPressure({ ...path, outletArea: area / 2 })(0.5);
  const fast = 2 * 0.5 / area;
  const slow = 0.5 / area;
  assertAlmostEquals(small, 25 - STANDARD_DENSITY * slow * (fast - slow), 1e-9);
});

Deno.test("standard air is 1.2 kg/m³ (AMCA 210)", () => {
  // Source: AMCA 210 [amca-210-2016], 0.075 lb/ft³
  assertAlmostEquals(STANDARD_DENSITY, 0.075 * 0.45359237 / 0.3048 ** 3, 0.002);
});
