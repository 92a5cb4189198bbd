import { assert, assertAlmostEquals, assertEquals } from "@std/assert";
import {
  GROUND_PRIOR,
  groundPrior,
  groundRanges,
  soilChapter,
  STATION_SCORES,
  STUDENT_975,
} from "winterground/soil/mod.ts";
import { findSoil } from "winterground/soil/mod.ts";
import { soilFigures } from "../../lib/soil/figures.ts";
import { sampleYear } from "../climate/sample.ts";

const RESULT = soilChapter(
  { ...findSoil("loam"), measuredConductivity: null, waterTableDepth: 6, snowDepth: 0.25 },
  sampleYear(),
  0.8,
);

/** Share of Student's distribution between -t and t, by Simpson's rule. */
function within(t: number, freedom: number): number {
  const density = (x: number) => (1 + x * x / freedom) ** (-(freedom + 1) / 2);
  const area = (to: number, steps: number) => {
    let sum = density(0) + density(to);
    for (let i = 1; i < steps; i++) sum += (i % 2 === 1 ? 4 : 2) * density(i * to / steps);
    return sum * to / steps / 3;
  };
  // the tail in u = 1/x, so that the whole area has an end
  const tail = (from: number) => {
    const steps = 2000;
    const high = 1 / from;
    const f = (u: number) => u === 0 ? (freedom === 1 ? 1 : 0) : density(1 / u) / (u * u);
    let sum = f(0) + f(high);
    for (let i = 1; i < steps; i++) sum += (i % 2 === 1 ? 4 : 2) * f(i * high / steps);
    return sum * high / steps / 3;
  };
  const inside = area(t, 20000);
  return inside / (inside + tail(t));
}

Deno.test("Student's t of the table keeps 95 % of the distribution inside (its density, integrated)", () => {
  // Source: density of Student's distribution, Abramowitz & Stegun 1964 [abramowitz-stegun-1964] 26.7.1;
  // three decimals of the table are 5e-5 of the share at most
  STUDENT_975.forEach((t, index) => {
    assertAlmostEquals(within(t, index + 1), 0.95, 1e-4, `${index + 1} degrees of freedom`);
  });
});

Deno.test("every depth figure of the soil carries the range of the stations", () => {
  // Property: low < value < high but for the bias; frost depth not below 0; other figures have none
  const figures = new Map(soilFigures(RESULT));
  for (
    const key of [
      "soil.meanTemperature",
      "soil.frostDepth",
      "soil.temperatureAtTubeDepthMin",
      "soil.temperatureAtTubeDepthMax",
    ]
  ) {
    const { value, low, high } = figures.get(key)!;
    assert(typeof value === "number" && low! < value && value < high!, key);
    assert(low! >= 0 || key !== "soil.frostDepth", key);
  }
  assertEquals(figures.get("soil.conductivity")!.low, undefined);
});

Deno.test("the range is centred on the value less the mean error and as wide as the spread asks", () => {
  // Property: by hand for the lowest of 1 m: t of n - 1 degrees of freedom, √(1 + 1/n)
  const { stations, depths } = GROUND_PRIOR;
  const { bias, spread } = depths.at(-1)!.lowest;
  const [low, high] = groundRanges({ ...RESULT, tubeDepth: 1 }).lowest;
  const reach = STUDENT_975[stations - 2]! * Math.sqrt(1 + 1 / stations) * spread;
  assertAlmostEquals((low + high) / 2, RESULT.temperatureAtTubeDepthMin - bias, 1e-9);
  assertAlmostEquals((high - low) / 2, reach, 1e-9);
});

Deno.test("ranges run on steadily with depth and stay as at 1 m below it", () => {
  // Property: no step in the doubt between depths scored
  const width = (tubeDepth: number) => {
    const [low, high] = groundRanges({ ...RESULT, tubeDepth }).highest;
    return high - low;
  };
  for (let depth = 0.1; depth < 2; depth += 0.01) {
    assert(Math.abs(width(depth + 0.01) - width(depth)) < 0.3, String(depth));
  }
  assertEquals(width(1), width(3));
});

Deno.test("ground that does not freeze has no range of a frost depth", () => {
  // Property: nothing is nothing
  assertEquals(groundRanges({ ...RESULT, frostDepth: 0 }).frostDepth, null);
});

Deno.test("the doubt of the frost depth goes with the depth computed", () => {
  // Property: a share of it, as the stations' errors are
  const deep = groundRanges({ ...RESULT, frostDepth: 1 }).frostDepth!;
  const shallow = groundRanges({ ...RESULT, frostDepth: 0.1 }).frostDepth!;
  assertAlmostEquals(shallow[1], deep[1] / 10, 1e-12);
});

Deno.test("stations without error leave no doubt", () => {
  // Property: a prior of rows that agree has no spread
  const [row] = STATION_SCORES;
  const prior = groundPrior([row!, row!, row!]);
  const [low, high] = groundRanges(RESULT, prior).lowest;
  assertAlmostEquals(low, high, 1e-12);
});
