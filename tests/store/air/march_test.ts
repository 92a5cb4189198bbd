import { assert, assertAlmostEquals, assertEquals, assertLess } from "@std/assert";
import { HEAT_OF_VAPORISATION } from "../../../lib/air/mod.ts";
import { marchTube } from "../../../lib/tubes/mod.ts";
import { bookWater, marchAir } from "../../../lib/store/air/air_march.ts";
import { type MarchInput, marchOutput, marchSlopes } from "../../../lib/store/air/march_buffers.ts";
import { annulusOperator } from "../../support/annulus.ts";
import type { TubeCoupling } from "../../../lib/store/air/coupling.ts";
import { saturatedRatio, saturationTable } from "../../../lib/store/air/saturation.ts";
import { tubeField } from "../../../lib/store/air/tube_field.ts";

const operator = annulusOperator({
  innerRadius: 0.05,
  outerRadius: 1,
  conductivity: 1.5,
  heatCapacity: 2e6,
  rings: 20,
  outer: "insulated",
});
const saturation = saturationTable(101325);

function rig(change: { film?: number; own?: number; wall?: number; water?: number } = {}) {
  const field = tubeField({
    operator,
    slices: 12,
    length: 20,
    half: false,
    perimeter: 0.314,
    filmWater: 0.1,
    pressure: 101325,
    tubes: [{ heatRate: 20, airRate: 20 / 1017, film: 0.314 * (change.film ?? 15) }],
  });
  const own = Float64Array.of(change.own ?? 0.03);
  const coupling: TubeCoupling = { own, cross: null, inverse: null, together: own };
  const input: MarchInput = {
    field,
    saturation,
    block: new Float64Array(12).fill(change.wall ?? 18),
    coupling,
    temperature: 28,
    ratio: 0.8 * saturatedRatio(saturation, 28) * 0.99,
    reversed: false,
    water: new Float64Array(12).fill(change.water ?? 0),
    seconds: 900,
  };
  return { field, coupling, input, output: marchOutput(field) };
}

Deno.test("marchAir() leaves heat and vapour balanced, wet or dry", () => {
  // Property: what the walls get is what the air loses, heat and water alike
  for (const water of [0, 0.05]) {
    for (const wall of [8, 18, 33]) {
      const { field, input, output } = rig({ wall, water });
      marchAir(input, output);
      const walls = output.heat.reduce((sum, value) => sum + value, 0) * field.segment;
      assertAlmostEquals(walls - output.latent, -output.toAir, 1e-9 * Math.abs(walls) + 1e-9);
      assertAlmostEquals(output.latent, -output.vapour * HEAT_OF_VAPORISATION, 1e-6);
    }
  }
});

Deno.test("marchAir() splits 28 °C, 80 % air cooled to an 18 °C wall as moist-air tables do", () => {
  // Source: ASHRAE Fundamentals 2017 [ashrae-2017] ch. 1, humidity ratios at sea level: 28 °C 80 %
  // 19.2 g/kg, 18 °C saturated 12.9 g/kg: 6.2 g/kg condense, 61 % of the heat is latent
  const { input, output } = rig({ film: 1e4, own: 1e-9 });
  marchAir({ ...input, ratio: 0.0192 }, output);
  const condensed = -output.vapour / (20 / 1017);
  assertAlmostEquals(condensed, 0.0062, 0.0001);
  assertAlmostEquals(output.latent / (output.latent - output.toAir), 0.61, 0.01);
});

Deno.test("store and tubes condense alike: one Lewis rule (Chilton & Colburn 1934)", () => {
  // Source: Chilton & Colburn 1934 [chilton-colburn-1934]; marchTube() applies it piece by piece at the
  // film's own temperature. The walls are held at one temperature; 0.5 % is the heat of the moist air
  // that the two count in different places, and the Lewis number between 8 and 28 °C
  for (const wall of [8, 13, 18, 21]) {
    for (const film of [5, 10, 20]) {
      const { field, input, output } = rig({ wall, film, own: 1e-9 });
      marchAir(input, output);
      const tube = marchTube({
        inlet: { temperature: input.temperature, humidityRatio: input.ratio },
        wallTemperatures: new Array(field.slices).fill(wall),
        waterSupply: 0,
        diameter: 0.314 / Math.PI,
        length: 20,
        filmCoefficient: film,
        dryAirFlow: 20 / 1017,
        pressure: 101325,
      });
      const condensed = -output.vapour;
      assert(condensed > 0);
      assertAlmostEquals(condensed / tube.condensate, 1, 0.005, `${wall} degC, ${film} W/(m2 K)`);
    }
  }
});

Deno.test("marchAir() evaporates no more than the water on the wall", () => {
  // Property: water is not made from nothing
  const { field, input, output } = rig({ wall: 35, water: 0.0005 });
  marchAir({ ...input, ratio: 0.004 }, output);
  const most = 12 * 0.0005 / 900;
  assert(output.vapour > 0 && output.vapour <= most * (1 + 1e-12));
  bookWater({ ...input, ratio: 0.004 }, output);
  for (const left of input.water) assert(left >= 0 && left <= field.waterHeld[0]!);
});

Deno.test("bookWater() drains what the wall cannot hold", () => {
  // Property: condensate = held + drained
  const { field, input, output } = rig({ wall: 5, water: 0.04 });
  let condensed = 0;
  let drained = 0;
  for (let step = 0; step < 60; step++) {
    marchAir(input, output);
    condensed -= output.vapour * 900;
    drained += bookWater(input, output);
  }
  const held = input.water.reduce((sum, value) => sum + value, 0) - 12 * 0.04;
  assertAlmostEquals(condensed, held + drained, 1e-9);
  assert(drained > 0 && input.water.every((value) => value <= field.waterHeld[0]! + 1e-12));
});

Deno.test("marchAir() gives how heat and vapour answer the entering air", () => {
  // Property: numeric derivative; walls dry, wet with water to give off, and condensing. The table
  // of saturated air has corners, so that wet walls meet it within a hundredth.
  for (const [wall, ratio, water] of [[35, 0, 0], [25, 0.006, 1], [10, 0.018, 0]] as const) {
    const { field, input, output } = rig({ wall });
    const wet = { ...input, water: new Float64Array(field.slices).fill(water) };
    const at = (warmer: number, damper: number) => {
      marchAir({ ...wet, temperature: 20 + warmer, ratio: ratio + damper }, output);
      return [output.toAir, output.vapour] as const;
    };
    const slopes = marchSlopes();
    marchAir({ ...wet, temperature: 20, ratio }, output, slopes);
    const [kelvin, damp] = [1e-3, ratio > 0 ? 1e-6 : 0];
    const byTemperature = [0, 1].map((k) =>
      (at(kelvin, 0)[k]! - at(-kelvin, 0)[k]!) / (2 * kelvin)
    );
    assertAlmostEquals(slopes.heatByTemperature / byTemperature[0]!, 1, 0.01, `${wall} heat`);
    if (damp === 0) {
      assertEquals(slopes.vapourByTemperature, 0);
      assertEquals(slopes.vapourByRatio, 0);
      continue;
    }
    const byRatio = [0, 1].map((k) => (at(0, damp)[k]! - at(0, -damp)[k]!) / (2 * damp));
    assertAlmostEquals(slopes.vapourByTemperature / byTemperature[1]!, 1, 0.01, `${wall} vapour`);
    assertAlmostEquals(slopes.heatByRatio / byRatio[0]!, 1, 0.01, `${wall} heat by ratio`);
    assertAlmostEquals(slopes.vapourByRatio / byRatio[1]!, 1, 0.01, `${wall} vapour by ratio`);
  }
});

Deno.test("marchAir() reversed is the mirror image of forward", () => {
  // Property: symmetry along the tube
  const { input, output } = rig();
  const block = Float64Array.from({ length: 12 }, (_, k) => 10 + k);
  marchAir({ ...input, block, ratio: 0 }, output);
  const forward = output.outletTemperature;
  const mirrored = block.toReversed();
  marchAir({ ...input, block: mirrored, reversed: true, ratio: 0 }, output);
  assertLess(Math.abs(output.outletTemperature - forward), 1e-12);
});
