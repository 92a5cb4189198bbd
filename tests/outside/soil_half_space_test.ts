// Source: Carslaw & Jaeger 1959 [carslaw-jaeger-1959] §2.4 to 2.7, semi-infinite solid, recomputed
// from the formulas
import { assertAlmostEquals, assertLess } from "@std/assert";
import {
  buildColumn,
  columnStepper,
  dampingDepth,
  startColumn,
  temperatureAtDepth,
} from "../../lib/soil/mod.ts";
import type { SoilProperties } from "../../lib/soil/mod.ts";

/** λ 1.5 W/(m K), C 2 MJ/(m³ K), no water to freeze */
const SOIL: SoilProperties = {
  conductivity: 1.5,
  frozenConductivity: 1.5,
  heatCapacity: 2e6,
  frozenHeatCapacity: 2e6,
  diffusivity: 7.5e-7,
  latentHeat: 0,
  conductivityRange: [1.3, 1.7],
  porosity: 0.4,
  saturation: 0,
  freezingRange: 0.1,
};
const DAY = 86400;
const YEAR = 365 * DAY;
const FLOOR = { temperature: 0, conductance: 0 };

function column(firstCell: number, depth: number, growth = 1.05) {
  return buildColumn([{ thickness: depth, properties: SOIL }], {
    depth,
    firstCell,
    growth,
    largestCell: 0.5,
  });
}

/** Step of 1 K at the surface: profile and flux after some days. */
function stepResponse(conductance: number, days: number) {
  const soil = column(0.01, 12);
  const state = startColumn(soil, () => 0);
  const step = columnStepper(soil);
  const seconds = 300 * Math.sqrt(days);
  let flux = 0;
  for (let time = 0; time < days * DAY - 1; time += seconds) {
    const dt = Math.min(seconds, days * DAY - time);
    flux = step(state, { temperature: 1, conductance }, FLOOR, dt).surface / dt;
  }
  return { at: (depth: number) => temperatureAtDepth(soil, state.temperature, depth), flux };
}

Deno.test("Carslaw & Jaeger §2.5: step of surface temperature, 0.5 m down and flux", () => {
  const cases = [[1, 0.16486654, 3.324519], [10, 0.66051284, 1.0513052], [
    30,
    0.79982371,
    0.60697135,
  ]];
  for (const [days, temperature, flux] of cases) {
    const found = stepResponse(Infinity, days!);
    assertAlmostEquals(found.at(0.5), temperature!, 0.002);
    assertAlmostEquals(found.flux, flux!, 0.003 * flux!);
  }
});

Deno.test("Carslaw & Jaeger §2.7: step of air temperature behind h = 10 W/(m² K), one day", () => {
  const found = stepResponse(10, 1);
  assertAlmostEquals(1 - found.flux / 10, 0.70793371, 0.002);
  assertAlmostEquals(found.at(0.1), 0.5240318, 0.002);
  assertAlmostEquals(found.at(0.5), 0.0893016, 0.002);
});

/** Amplitude and lag in s of a sine after many periods, per unit at the outside. */
function periodicResponse(conductance: number, period: number, depth: number) {
  const reach = dampingDepth(SOIL.diffusivity, period);
  const soil = column(reach / 60, 8 * reach, 1.03);
  const state = startColumn(soil, () => 0);
  const step = columnStepper(soil);
  const count = 1440;
  const periods = 12;
  let [cosine, sine, fluxCosine, fluxSine] = [0, 0, 0, 0];
  for (let i = 1; i <= periods * count; i++) {
    const angle = (2 * Math.PI * i) / count;
    const surface = { temperature: Math.cos(angle), conductance };
    const flux = step(state, surface, FLOOR, period / count).surface * count / period;
    if (i <= (periods - 1) * count) continue;
    const value = depth === 0
      ? Math.cos(angle) - flux / conductance
      : temperatureAtDepth(soil, state.temperature, depth);
    cosine += (2 * value * Math.cos(angle)) / count;
    sine += (2 * value * Math.sin(angle)) / count;
    fluxCosine += (2 * flux * Math.cos(angle)) / count;
    fluxSine += (2 * flux * Math.sin(angle)) / count;
  }
  return {
    amplitude: Math.hypot(cosine, sine),
    lag: (Math.atan2(sine, cosine) / (2 * Math.PI)) * period,
    flux: Math.hypot(fluxCosine, fluxSine),
  };
}

Deno.test("Carslaw & Jaeger §2.6: periodic surface, amplitude, lag and flux, day and year", () => {
  const cases = [
    [DAY, 0.1, 0.49843323, 2.6596, 14.770449],
    [YEAR, 1, 0.69457679, 508.1, 0.77312062],
    [YEAR, 2, 0.48243691, 1016.2, 0.77312062],
  ];
  for (const [period, depth, amplitude, lag, flux] of cases) {
    const found = periodicResponse(Infinity, period!, depth!);
    assertAlmostEquals(found.amplitude, amplitude!, 0.004);
    assertAlmostEquals(found.lag / 3600, lag!, 0.01 * lag!);
    assertAlmostEquals(found.flux, flux!, 0.006 * flux!);
  }
});

Deno.test("Carslaw & Jaeger §2.6: periodic air behind h = 10, surface amplitude and lag", () => {
  const cases = [[DAY, 0.43558542, 1.8041], [YEAR, 0.94689459, 72.20]];
  for (const [period, amplitude, lag] of cases) {
    const found = periodicResponse(10, period!, 0);
    assertAlmostEquals(found.amplitude, amplitude!, 0.003);
    assertAlmostEquals(found.lag / 3600, lag!, 0.02 * lag!);
  }
});

Deno.test("Carslaw & Jaeger §2.6: damping depth gives exp(−x/d) and lag to the digit", () => {
  const daily = dampingDepth(SOIL.diffusivity, DAY);
  assertAlmostEquals(Math.exp(-0.1 / daily), 0.49843323, 6e-9);
  assertAlmostEquals(Math.exp(-0.5 / daily), 0.03076345, 6e-9);
  assertAlmostEquals((0.5 / daily / (2 * Math.PI)) * 24, 13.298, 6e-4);
  assertAlmostEquals(Math.exp(-2 / dampingDepth(SOIL.diffusivity)), 0.48243691, 6e-9);
  assertLess(daily, dampingDepth(SOIL.diffusivity));
});
