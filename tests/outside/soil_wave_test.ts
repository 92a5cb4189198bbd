// Source: Kusuda & Achenbach 1965 [kusuda-achenbach-1965], annual wave, recomputed from the formula
import { assert, assertAlmostEquals } from "@std/assert";
import {
  dampingDepth,
  findSoil,
  soilProperties,
  undisturbedTemperature,
} from "../../lib/soil/mod.ts";

const WAVE = { mean: 8, amplitude: 14, minimumDay: 30, diffusivity: 0.05 / 86400 };
const DAYS = [15, 30, 105, 196, 212, 288];
/** depth m, amplitude K, lag d, then degC on each of DAYS */
const TABLE = [
  [0, 14.0000, 0, -5.5359, -6.0000, 4.1346, 21.4391, 21.9995, 11.7494],
  [0.5, 11.3772, 12.051, -2.1658, -3.1332, 2.6739, 18.0305, 19.1126, 13.2393],
  [1, 9.2457, 24.102, 0.7709, -0.4613, 2.0818, 15.0778, 16.4289, 13.8568],
  [2, 6.1059, 48.204, 5.1654, 3.8784, 2.5322, 10.6941, 12.0827, 13.4442],
  [3, 4.0324, 72.307, 7.7265, 6.7082, 3.9720, 8.1696, 9.2588, 12.0263],
  [5, 1.7587, 120.511, 9.2140, 8.8489, 6.7540, 6.7535, 7.1379, 9.2566],
];

Deno.test("Kusuda & Achenbach 1965: temperature by depth and day, every digit", () => {
  for (const [depth, , , ...row] of TABLE) {
    row.forEach((expected, i) => {
      const found = undisturbedTemperature(WAVE, depth!, DAYS[i]!);
      assertAlmostEquals(found, expected, 5.01e-5, `${depth} m, day ${DAYS[i]}`);
    });
  }
});

Deno.test("Kusuda & Achenbach 1965: amplitude and lag by depth", () => {
  for (const [depth, amplitude, lag] of TABLE) {
    const minimum = undisturbedTemperature(WAVE, depth!, 30 + lag!);
    const dampingDepths = depth! / dampingDepth(WAVE.diffusivity);
    assertAlmostEquals(8 - minimum, amplitude!, 5.1e-5);
    assertAlmostEquals((dampingDepths * 365) / (2 * Math.PI), lag!, 5.1e-4);
  }
});

Deno.test("crude measured profile (web page, origin not stated): seasons change places at 4 to 6 m", () => {
  const diffusivity = soilProperties({ ...findSoil("fine sand"), measuredConductivity: null })
    .diffusivity;
  const wave = { mean: 9.5, amplitude: 9, minimumDay: 20, diffusivity };
  const season = (depth: number, first: number) =>
    Array.from({ length: 90 }, (_, i) => undisturbedTemperature(wave, depth, first + i))
      .reduce((sum, value) => sum + value / 90, 0);
  const summerLead = (depth: number) => season(depth, 152) - season(depth, -31);
  for (const depth of [0, 2, 4]) assert(summerLead(depth) > 0);
  for (const depth of [6, 8, 10]) assert(summerLead(depth) < 0);
});
