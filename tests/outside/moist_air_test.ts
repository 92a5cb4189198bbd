import { assertAlmostEquals } from "@std/assert";
import {
  airDensity,
  airProperties,
  dewPoint,
  dewPointOverWater,
  humidityRatio,
  humidityRatioFromRelativeHumidity,
  moistEnthalpy,
  moistVolume,
  relativeHumidityFromDewPoint,
  relativeHumidityFromRatio,
  saturationHumidityRatio,
  saturationPressure,
  saturationPressureOverWater,
  standardPressure,
  vapourPressure,
} from "winterground/air/mod.ts";

const STANDARD = 101325;

Deno.test("saturation pressure: ASHRAE Fundamentals 2017 ch. 1 table 3", () => {
  // Source: ASHRAE Fundamentals 2017 [ashrae-2017] ch. 1 table 3; 0.03 % is the table's own
  // distance to its formula.
  const rows = [[-60, 1.08], [-20, 103.24], [-5, 401.74], [5, 872.6], [25, 3169.7], [50, 12351.3]];
  for (const [temperature, pressure] of rows) {
    const allowed = Math.max(0.0003 * pressure!, 0.005);
    assertAlmostEquals(saturationPressure(temperature!), pressure!, allowed, `${temperature} degC`);
  }
});

Deno.test("saturation over ice and over supercooled water: Hyland & Wexler 1983", () => {
  // Source: Hyland & Wexler 1983 [hyland-wexler-1983], recomputed from the formulas with high
  // precision.
  const rows = [[-5, 401.76, 421.83], [-10, 259.90, 286.56], [-20, 103.26, 125.63]];
  for (const [temperature, ice, water] of rows) {
    assertAlmostEquals(saturationPressure(temperature!), ice!, 0.01);
    assertAlmostEquals(saturationPressureOverWater(temperature!), water!, 0.01);
  }
});

Deno.test("humidity ratio and enthalpy of saturated air: ASHRAE Fundamentals 2017 ch. 1 table 2", () => {
  // Source: ASHRAE Fundamentals 2017 [ashrae-2017] ch. 1 table 2. The table holds real-gas values;
  // the perfect-gas formulas lie 0.4 to 0.6 % below (enhancement factor 1.004 to 1.006).
  const rows = [[-20, 0.0006373, -18.542], [-5, 0.0024863, 1.164], [5, 0.005425, 18.639], [
    25,
    0.020173,
    76.504,
  ]];
  for (const [temperature, ratio, enthalpy] of rows) {
    const own = saturationHumidityRatio(temperature!, STANDARD);
    assertAlmostEquals(own, ratio!, 0.006 * ratio!, `W at ${temperature}`);
    const latentGap = 0.006 * ratio! * 2501;
    const ownEnthalpy = moistEnthalpy(temperature!, own) / 1000;
    assertAlmostEquals(ownEnthalpy, enthalpy!, latentGap + 0.06, `h at ${temperature}`);
  }
  assertAlmostEquals(moistEnthalpy(30, 0.02) / 1000, 81.316, 1e-3);
});

Deno.test("40 degC dry bulb with W 0.0065: ASHRAE Fundamentals 2017 ch. 1 example 1", () => {
  // Source: ASHRAE Fundamentals 2017 [ashrae-2017] ch. 1 example 1; chart readings, hence the
  // chart's accuracy.
  const ratio = 0.0065;
  assertAlmostEquals(dewPoint(vapourPressure(ratio, STANDARD)), 7, 0.8);
  assertAlmostEquals(relativeHumidityFromRatio(40, ratio, STANDARD), 0.14, 0.005);
  assertAlmostEquals(moistEnthalpy(40, ratio) / 1000, 56.7, 0.5);
  assertAlmostEquals(moistVolume(40, ratio, STANDARD), 0.896, 0.001);
});

Deno.test("heating 10 m³/s of saturated air: ASHRAE Fundamentals 2017 ch. 1 example 2", () => {
  // Source: ASHRAE Fundamentals 2017 [ashrae-2017] ch. 1 example 2: v 0.784 m³/kg read from the
  // chart to three digits, 492 kW; readings of ±0.001 in v (0.13 %) and ±0.1 of 38.6 kJ/kg (0.26 %)
  // allow 1.9 kW.
  const ratio = saturationHumidityRatio(2, STANDARD);
  const massFlow = 10 / moistVolume(2, ratio, STANDARD);
  assertAlmostEquals(10 / massFlow, 0.784, 0.001);
  const heat = massFlow * (moistEnthalpy(40, ratio) - moistEnthalpy(2, ratio)) / 1000;
  assertAlmostEquals(heat, 492, 1.9);
});

Deno.test("cooling with condensation: ASHRAE Fundamentals 2017 ch. 1 example 3", () => {
  // Source: ASHRAE Fundamentals 2017 [ashrae-2017] ch. 1 example 3: 0.0325 kg/s and 197 to 198.2
  // kW; 1 % for the perfect-gas formulas.
  const inlet = humidityRatioFromRelativeHumidity(30, 0.5, STANDARD);
  const outlet = saturationHumidityRatio(10, STANDARD);
  const massFlow = 5 / moistVolume(30, inlet, STANDARD);
  assertAlmostEquals(massFlow, 5.70, 0.01);
  const condensate = massFlow * (inlet - outlet);
  assertAlmostEquals(condensate, 0.0325, 0.000325);
  const heat = massFlow * (moistEnthalpy(30, inlet) - moistEnthalpy(10, outlet)) -
    condensate * 42010;
  assertAlmostEquals(heat / 1000, 198.18, 1.98);
});

Deno.test("adiabatic mixing of two streams: ASHRAE Fundamentals 2017 ch. 1 example 4", () => {
  // Source: ASHRAE Fundamentals 2017 [ashrae-2017] ch. 1 example 4: 19.5 degC, mass share of the
  // warm stream 0.742 to 0.744. The cold stream is given by its wet bulb of 2 degC: W = 0.0036
  // (chart).
  const cold = { flow: 2, temperature: 4, ratio: 0.0036 };
  const warmRatio = humidityRatioFromRelativeHumidity(25, 0.5, STANDARD);
  const coldMass = cold.flow / moistVolume(cold.temperature, cold.ratio, STANDARD);
  const warmMass = 6.25 / moistVolume(25, warmRatio, STANDARD);
  const share = warmMass / (coldMass + warmMass);
  assertAlmostEquals(share, 0.743, 0.0015);
  assertAlmostEquals(cold.temperature + share * (25 - cold.temperature), 19.5, 0.15);
});

Deno.test("standard atmosphere: ASHRAE Fundamentals 2017 ch. 1 table 1", () => {
  // Source: ASHRAE Fundamentals 2017 [ashrae-2017] ch. 1 table 1 and eq. 3.
  for (const [elevation, pressure] of [[500, 95461], [1000, 89875], [4000, 61640]]) {
    assertAlmostEquals(standardPressure(elevation!), pressure!, 5);
  }
});

Deno.test("air viscosity, conductivity, Prandtl number: Incropera & DeWitt table A.4", () => {
  // Source: Incropera & DeWitt 2002 [incropera-dewitt-2002], table A.4; 0.5 % for Sutherland's
  // formulas, 1 % for the Prandtl number.
  const rows = [[250, 159.6e-7, 22.3e-3, 0.720], [300, 184.6e-7, 26.3e-3, 0.707], [
    350,
    208.2e-7,
    30.0e-3,
    0.700,
  ]];
  for (const [kelvin, viscosity, conductivity, prandtl] of rows) {
    const air = airProperties(kelvin! - 273.15, STANDARD);
    assertAlmostEquals(air.viscosity, viscosity!, 0.005 * viscosity!);
    assertAlmostEquals(air.conductivity, conductivity!, 0.005 * conductivity!);
    assertAlmostEquals(air.prandtl, prandtl!, 0.01 * prandtl!);
  }
});

Deno.test("latent share of cooled greenhouse air, recomputed from the enthalpy formula", () => {
  // Source: ASHRAE Fundamentals 2017 [ashrae-2017] ch. 1 eq. 30, recomputed: 28 degC/80 % to
  // saturated 18 degC gives 6.19 g/kg and 26.1 kJ/kg, 61 % latent; from 60 % 1.31 g/kg, 13.6 kJ/kg,
  // 26 %.
  for (const [humidity, water, heat] of [[0.8, 6.19, 26.1], [0.6, 1.31, 13.6]]) {
    const inlet = humidityRatioFromRelativeHumidity(28, humidity!, STANDARD);
    const outlet = saturationHumidityRatio(18, STANDARD);
    assertAlmostEquals((inlet - outlet) * 1000, water!, 0.03);
    const drop = moistEnthalpy(28, inlet) - moistEnthalpy(18, outlet);
    assertAlmostEquals(drop / 1000, heat!, 0.1);
  }
});

Deno.test("humidity ratio and vapour pressure are inverse", () => {
  // Property: inverse functions.
  for (const pressure of [10, 500, 2000, 7000]) {
    assertAlmostEquals(vapourPressure(humidityRatio(pressure, 95000), 95000), pressure, 1e-9);
  }
});

Deno.test("relative humidity below freezing is told over water: ice holds 95.2, 90.7, 82.2 % at -5, -10, -20 degC (Hyland & Wexler 1983)", () => {
  // Source: Hyland & Wexler 1983 [hyland-wexler-1983], over ice 401.76, 259.90, 103.26 Pa and over
  // supercooled water 421.83, 286.56, 125.63 Pa, worked out from the formulas with another program;
  // Murphy & Koop 2005 [murphy-koop-2005], give 0.953, 0.907, 0.823, recomputed from their
  // equations 7 and 10. 0.001
  for (const [temperature, ice, water] of [[-5, 401.76, 421.83], [-10, 259.9, 286.56]] as const) {
    const ratio = saturationHumidityRatio(temperature, STANDARD);
    const found = relativeHumidityFromRatio(temperature, ratio, STANDARD);
    assertAlmostEquals(found, ice / water, 0.0005, `${temperature} degC`);
  }
  const cold = saturationHumidityRatio(-20, STANDARD);
  assertAlmostEquals(relativeHumidityFromRatio(-20, cold, STANDARD), 103.26 / 125.63, 0.0005);
  assertAlmostEquals(relativeHumidityFromDewPoint(-5, -10), 286.56 / 421.83, 0.0005);
  assertAlmostEquals(relativeHumidityFromDewPoint(-10, -20), 125.63 / 286.56, 0.0005);
});

Deno.test("density of moist air counts the vapour: 1.0841 kg/m³ at 30 degC, 0.02 kg/kg, 95 461 Pa (tests of the psychrolib package)", () => {
  // Source: tests of psychrolib, which quote ASHRAE Fundamentals 2017 [ashrae-2017]: volume
  // 0.940855 m³ a kilogram of dry air, density 1.08411986 kg/m³; printed digits
  assertAlmostEquals(moistVolume(30, 0.02, 95461), 0.940855, 1e-6);
  assertAlmostEquals(airDensity(30, 0.02, 95461), 1.084120, 1e-6);
});

Deno.test("dewPointOverWater() inverts the saturation pressure over water", () => {
  // Property: inverse functions, from deep cold to a hot house.
  for (const temperature of [-45, -30, -10, -1, 0, 0.005, 0.02, 5, 20, 45]) {
    const pressure = saturationPressureOverWater(temperature);
    assertAlmostEquals(dewPointOverWater(pressure), temperature, 1e-6, `${temperature} degC`);
  }
});
