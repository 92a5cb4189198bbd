// Property: conservation, bounds, refinement and inverse of the freezing column
import { assert, assertAlmostEquals, assertLess, assertThrows } from "@std/assert";
import fc from "fast-check";
import { InputError } from "../../lib/basics/mod.ts";
import {
  apparentCapacity,
  buildColumn,
  columnHeat,
  columnStepper,
  findSoil,
  frostFront,
  heatContent,
  soilProperties,
  SOILS,
  startColumn,
  temperatureAtDepth,
  temperatureOf,
} from "../../lib/soil/mod.ts";
import { drivenColumn } from "../support/driven.ts";

const make = (texture: string) =>
  soilProperties({ ...findSoil(texture), measuredConductivity: null });
const texture = fc.constantFrom(...SOILS.map((soil) => soil.texture));
const temperature = fc.double({ min: -30, max: 40, noNaN: true });

Deno.test("temperature follows from heat content and back, for every texture", () => {
  fc.assert(fc.property(texture, temperature, (name, value) => {
    const soil = make(name);
    assertAlmostEquals(temperatureOf(soil, heatContent(soil, value)), value, 1e-9);
    const slope = (heatContent(soil, value + 1e-7) - heatContent(soil, value)) / 1e-7;
    const kinks = [0, -soil.freezingRange].some((kink) => Math.abs(value - kink) < 1e-6);
    if (!kinks) assertAlmostEquals(apparentCapacity(soil, value) / slope, 1, 1e-3);
  }));
});

Deno.test("heat through both ends equals the gain of the column, to 1e-9 of what crossed", () => {
  const forced = fc.array(
    fc.record({
      outside: temperature,
      base: temperature,
      conductance: fc.double({ min: 0.1, max: 30, noNaN: true }),
    }),
    { minLength: 3, maxLength: 40 },
  );
  fc.assert(
    fc.property(texture, texture, temperature, forced, (top, below, start, steps) => {
      const layers = [{ thickness: 0.4, properties: make(top) }, {
        thickness: 1,
        properties: make(below),
      }];
      const column = buildColumn(layers, {
        depth: 2,
        firstCell: 0.03,
        growth: 1.15,
        largestCell: 0.4,
      });
      const state = startColumn(column, () => start);
      const before = columnHeat(column, state);
      const step = columnStepper(column);
      let [net, crossed] = [0, 0];
      for (const { outside, base, conductance } of steps) {
        const flow = step(
          state,
          { temperature: outside, conductance },
          { temperature: base, conductance: 2 },
          21600,
        );
        net += flow.surface + flow.base;
        crossed += Math.abs(flow.surface) + Math.abs(flow.base);
      }
      const gain = columnHeat(column, state) - before;
      assert(Math.abs(net - gain) <= 1e-9 * (crossed + Math.abs(before)));
    }),
    { numRuns: 60 },
  );
});

Deno.test("no temperature leaves the span of its start and its surroundings", () => {
  const series = fc.array(temperature, { minLength: 5, maxLength: 40 });
  fc.assert(
    fc.property(texture, temperature, series, (name, start, outside) => {
      const column = buildColumn([{ thickness: 3, properties: make(name) }], {
        depth: 3,
        firstCell: 0.03,
        growth: 1.1,
        largestCell: 0.3,
      });
      const state = startColumn(column, () => start);
      const step = columnStepper(column);
      for (const value of outside) {
        const surface = { temperature: value, conductance: 15 };
        step(state, surface, { temperature: start, conductance: 0 }, 43200);
      }
      const low = Math.min(start, ...outside) - 1e-6;
      const high = Math.max(start, ...outside) + 1e-6;
      assert(state.temperature.every((value) => value >= low && value <= high));
    }),
    { numRuns: 60 },
  );
});

/** Profile after 60 cold days that freeze a moist loam from +6 degC. */
function frozenProfile(cell: number, seconds: number): (depth: number) => number {
  const column = buildColumn([{ thickness: 6, properties: make("loam") }], {
    depth: 6,
    firstCell: cell,
    growth: 1,
    largestCell: cell,
  });
  const state = startColumn(column, () => 6);
  const step = columnStepper(column);
  for (let time = 0; time < 60 * 86400; time += seconds) {
    step(state, { temperature: -8, conductance: 5 }, { temperature: 0, conductance: 0 }, seconds);
  }
  return (depth) => temperatureAtDepth(column, state.temperature, depth);
}

Deno.test("finer cells and shorter steps close in on one answer while the soil freezes", () => {
  const depths = [0.25, 0.5, 1, 2];
  const finest = frozenProfile(0.0125, 1800);
  const error = (cell: number, seconds: number) => {
    const profile = frozenProfile(cell, seconds);
    return Math.max(...depths.map((depth) => Math.abs(profile(depth) - finest(depth))));
  };
  const coarse = error(0.1, 43200);
  const fine = error(0.025, 7200);
  assertLess(coarse, 0.3);
  assertLess(fine, coarse / 2);
});

Deno.test("layers are found by depth, the last reaches the bottom", () => {
  const [sand, clay] = [make("fine sand"), make("clay")];
  const layers = [{ thickness: 0.5, properties: sand }, { thickness: 0.1, properties: clay }];
  const mesh = { depth: 5, firstCell: 0.05, growth: 1.2, largestCell: 0.5 };
  const column = buildColumn(layers, mesh);
  assertAlmostEquals(column.thickness.reduce((sum, cell) => sum + cell, 0), 5, 1e-12);
  column.depth.forEach((depth, i) => assert(column.soil[i] === (depth < 0.5 ? sand : clay)));
  assertThrows(() => buildColumn([], mesh), InputError);
});

Deno.test("in steady state layers share the fall of temperature by their resistance", () => {
  const [sand, peat] = [make("coarse sand"), make("peat")];
  const layers = [{ thickness: 0.5, properties: peat }, { thickness: 0.5, properties: sand }];
  const column = buildColumn(layers, { depth: 1, firstCell: 0.05, growth: 1, largestCell: 0.05 });
  const state = startColumn(column, () => 10);
  const step = columnStepper(column);
  let flow = { surface: 0, base: 0 };
  for (let i = 0; i < 4000; i++) {
    flow = step(
      state,
      { temperature: 20, conductance: 4 },
      { temperature: 5, conductance: Infinity },
      86400,
    );
  }
  const flux = 15 / (1 / 4 + 0.5 / peat.conductivity + 0.5 / sand.conductivity);
  assertAlmostEquals(flow.surface / 86400, flux, 1e-6);
  assertAlmostEquals(flow.base / 86400, -flux, 1e-6);
});

Deno.test("frost front: none above zero, interpolated below, not moved by rounding", () => {
  const column = buildColumn([{ thickness: 1, properties: make("loam") }], {
    depth: 1,
    firstCell: 0.1,
    growth: 1,
    largestCell: 0.1,
  });
  const profile = (cold: number[]) => Float64Array.from({ length: 10 }, (_, i) => cold[i] ?? 5);
  assertAlmostEquals(frostFront(column, profile([])), 0);
  assertAlmostEquals(frostFront(column, profile([-5])), 0.1, 1e-12);
  assertAlmostEquals(frostFront(column, profile([-5, -1e-9])), 0.1, 1e-6);
});

Deno.test("a driven column refuses records that run backwards", () => {
  const column = buildColumn([{ thickness: 1, properties: make("loam") }], {
    depth: 1,
    firstCell: 0.1,
    growth: 1,
    largestCell: 0.1,
  });
  const question = { column, upper: [5, 6], lower: [5, 5], start: () => 5, longestStep: 3600 };
  assertThrows(() => drivenColumn({ ...question, times: [3600, 0] }), InputError, "not later");
});
