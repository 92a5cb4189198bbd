// Source: Neumann's solution, Carslaw & Jaeger 1959 [carslaw-jaeger-1959] §11.2 and Crank 1984 eq.
// 3.14, recomputed
import { assertAlmostEquals, assertLess } from "@std/assert";
import {
  buildColumn,
  columnStepper,
  frostFront,
  startColumn,
  temperatureAtDepth,
} from "../../lib/soil/mod.ts";
import type { SoilProperties } from "../../lib/soil/mod.ts";

const DAY = 86400;
const BOTTOM = { temperature: 0, conductance: 0 };
/** frozen λ 2.0, C 1.9e6; unfrozen λ 1.5, C 2.6e6; 300 kg/m³ of water at 334 kJ/kg */
const SOIL: SoilProperties = {
  conductivity: 1.5,
  frozenConductivity: 2,
  heatCapacity: 2.6e6,
  frozenHeatCapacity: 1.9e6,
  diffusivity: 1.5 / 2.6e6,
  latentHeat: 1.002e8,
  conductivityRange: [1.3, 1.7],
  porosity: 0.4,
  saturation: 0.75,
  freezingRange: 0.1,
};

/** Freezes a deep column from the top. */
function freeze(
  question: { soil: SoilProperties; start: number; surface: number; days: number; cell: number },
) {
  const depth = 12;
  const column = buildColumn([{ thickness: depth, properties: question.soil }], {
    depth,
    firstCell: question.cell,
    growth: 1,
    largestCell: question.cell,
  });
  const state = startColumn(column, () => question.start);
  const step = columnStepper(column);
  const seconds = 1800;
  let flux = 0;
  for (let time = 0; time < question.days * DAY; time += seconds) {
    const surface = { temperature: question.surface, conductance: Infinity };
    flux = step(state, surface, BOTTOM, seconds).surface / seconds;
  }
  return {
    front: frostFront(column, state.temperature),
    at: (z: number) => temperatureAtDepth(column, state.temperature, z),
    flux,
  };
}

Deno.test("Neumann: two-phase freezing of soil, front 0.8735 m at 30 days, temperatures, flux", () => {
  const cell = 0.025;
  const found = freeze({ soil: SOIL, start: 5, surface: -10, days: 30, cell });
  assertAlmostEquals(found.front, 0.87351182, cell);
  const profile = [[0.25, -7.0767226], [0.5, -4.1867043], [1, 0.4106589], [2, 2.9829747]];
  for (const [depth, temperature] of profile) {
    assertAlmostEquals(found.at(depth!), temperature!, 0.15);
  }
  assertAlmostEquals(found.flux, -23.43087, 0.3);
});

Deno.test("Neumann: the front after 1 and 120 days lies within one cell", () => {
  const cell = 0.025;
  for (const [days, front] of [[1, 0.15948071], [120, 1.7470236]]) {
    const found = freeze({ soil: SOIL, start: 5, surface: -10, days: days!, cell });
    assertAlmostEquals(found.front, front!, cell);
  }
});

Deno.test("Neumann: freezing spread over 0.5 K still puts the front within a 5 cm cell", () => {
  const soil = { ...SOIL, freezingRange: 0.5 };
  const found = freeze({ soil, start: 5, surface: -10, days: 30, cell: 0.05 });
  assertAlmostEquals(found.front, 0.87351182, 0.05);
  for (const [depth, temperature] of [[0.25, -7.0767226], [0.5, -4.1867043], [1, 0.4106589]]) {
    assertAlmostEquals(found.at(depth!), temperature!, 0.15);
  }
});

Deno.test("Stefan: ice on water at 0 °C, thickness after 30 days by cold of 5, 10, 20 K", () => {
  const ice: SoilProperties = {
    ...SOIL,
    frozenConductivity: 2.22,
    conductivity: 0.57,
    frozenHeatCapacity: 917 * 2050,
    heatCapacity: 4.18e6,
    latentHeat: 917 * 333600,
    freezingRange: 0.02,
  };
  for (const [cold, thickness] of [[5, 0.4315117], [10, 0.6072160], [20, 0.8504360]]) {
    const found = freeze({ soil: ice, start: 0, surface: -cold!, days: 30, cell: 0.02 });
    assertAlmostEquals(found.front, thickness!, 0.02);
    const simple = Math.sqrt((2 * 2.22 * cold! * 30 * DAY) / (917 * 333600));
    assertLess(thickness!, simple);
  }
});

Deno.test("Crank 1984 eq. 3.14: λ of the one-phase front for Stefan numbers 0.05 to 1", () => {
  const table = [[0.05, 0.1568209], [0.1, 0.2200163], [0.2, 0.3064239], [0.5, 0.4647859], [
    1,
    0.6200626,
  ]];
  const cell = 0.02;
  const days = 20;
  const capacity = 2e6;
  const reach = 2 * Math.sqrt(2 / capacity * days * DAY);
  for (const [stefan, lambda] of table) {
    const soil = {
      ...SOIL,
      frozenHeatCapacity: capacity,
      latentHeat: capacity * 10 / stefan!,
      freezingRange: 0.02,
    };
    const found = freeze({ soil, start: 0, surface: -10, days, cell });
    assertAlmostEquals(found.front / reach, lambda!, cell / reach);
  }
});
