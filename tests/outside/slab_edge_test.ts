import { assert, assertAlmostEquals } from "@std/assert";
import { edgeLoss, sectionHeat } from "../../lib/house/mod.ts";
import { slabHeat } from "../support/slab_loss.ts";

const STRIP = {
  wallWidth: 0.24,
  wallBase: "linear",
  conductivity: 1.9,
  insideFilm: Infinity,
  outsideFilm: Infinity,
  insulation: 0,
  insulationDepth: 0,
  insulationWing: 0,
} as const;

for (const [width, published] of [[12, 119.0697754], [6, 102.5386571]] as const) {
  Deno.test(`sectionHeat() meets the strip closed form, ${width} m wide: ${published} W/m`, () => {
    // Source: endless strip on a half-space, wall temperature falling evenly (limit of Delsante,
    // Stokes & Walsh 1983 [delsante-1983], Int. J. Heat Mass Transfer 26:121), 20 K; asked within 1
    // %.
    const found = 2 * 20 * sectionHeat({ ...STRIP, halfWidth: width / 2 }).perMetre;
    assertAlmostEquals(found, published, 0.01 * published);
  });
}

Deno.test("sectionHeat() comes nearer to the strip closed form on a finer mesh", () => {
  // Property: refinement. Source of 119.0697754 W/m as above.
  const heat = (finest: number, growth: number) =>
    2 * 20 * sectionHeat({ ...STRIP, halfWidth: 6, finest, growth }).perMetre;
  const error = (value: number) => Math.abs(value - 119.0697754);
  const [coarse, middle, fine] = [heat(0.04, 1.5), heat(0.02, 1.25), heat(0.01, 1.12)];
  assert(error(middle) < error(coarse) / 2, `${coarse} ${middle}`);
  assert(error(fine) < error(middle) / 2, `${middle} ${fine}`);
  assert(error(fine) < 0.002 * 119.07, `${fine}`);
});

Deno.test("sectionHeat() loses sideways what the floor gives", () => {
  // Property: conservation; nothing else leaves the plane under the floor's edge.
  for (const insulationDepth of [0, 0.6, 1.2]) {
    const section = sectionHeat({
      ...STRIP,
      halfWidth: 3,
      wallBase: "adiabatic",
      insideFilm: 8,
      outsideFilm: 20,
      insulation: insulationDepth > 0 ? 1.8 : 0,
      insulationDepth,
    });
    const out = section.sideways.reduce((sum, heat) => sum + heat, 0);
    assertAlmostEquals(out, section.perMetre, 1e-9 * out);
  }
});

const SLAB = {
  length: 12,
  width: 12,
  wallWidth: 0.24,
  conductivity: 1.9,
  finest: 0.01,
  growth: 1.25,
};
const BARE = { insideFilm: Infinity, outsideFilm: Infinity } as const;

Deno.test("slabHeat() meets GC10a, 2432.597 W, within 1 % (IEA/NREL TP-550-43388)", () => {
  // Source: closed form of Delsante, Stokes & Walsh 1983 [delsante-1983] as case GC10a of
  // NREL/TP-550-43388 (2008) [neymark-judkoff-2008].
  const found = 20 * slabHeat({ ...SLAB, ...BARE, wallBase: "linear", outside: 400, depth: 400 });
  assertAlmostEquals(found, 2432.597, 0.01 * 2432.597);
});

Deno.test("slabHeat() lies in the published range of GC30a, 2585 to 2695 W", () => {
  // Source: NREL/TP-550-43388 (2008) [neymark-judkoff-2008], verified numerical solutions of case
  // GC30a.
  const found = 20 *
    slabHeat({ ...SLAB, ...BARE, wallBase: "adiabatic", outside: 20, depth: 30 });
  assert(found > 2585 && found < 2695, `${found} W`);
});

Deno.test("slabHeat() lies in the published range of GC30b, 2504 to 2570 W", () => {
  // Source: NREL/TP-550-43388 (2008) [neymark-judkoff-2008], verified numerical solutions of case
  // GC30b.
  const found = 20 * slabHeat({
    ...SLAB,
    insideFilm: 100,
    outsideFilm: 100,
    wallBase: "adiabatic",
    outside: 15,
    depth: 15,
  });
  assert(found > 2504 && found < 2570, `${found} W`);
});

Deno.test("slabHeat() of a long floor comes to the strip of the same width", () => {
  // Property: limit. 60 m more of length brings 60 m more of strip.
  const ground = { wallBase: "linear", outside: 60, depth: 60, finest: 0.02, growth: 1.4 } as const;
  const lossOf = (length: number) => slabHeat({ ...SLAB, ...BARE, ...ground, width: 3, length });
  const strip = sectionHeat({ ...STRIP, halfWidth: 1.5, outside: 60, depth: 60 });
  const perMetre = (lossOf(120) - lossOf(60)) / 60;
  assertAlmostEquals(perMetre, 2 * strip.perMetre, 0.03 * perMetre);
});

Deno.test("edgeLoss() of a strip of half width area/perimeter stands for the rectangle within 2 %", () => {
  // Source: ISO 13370 [iso-13370-2017] characteristic dimension B' = A/(P/2) (from memory), against
  // our own three-dimensional solution that meets GC10a.
  for (const [length, width] of [[24, 8], [10, 5]] as const) {
    const perimeter = 2 * (length + width);
    const edge = { edgeInsulation: 0, edgeInsulationDepth: 0 };
    const strip = edgeLoss({ floorArea: length * width, perimeter }, edge, 1.5).perMetre *
      perimeter;
    const solid = slabHeat({
      length,
      width,
      wallWidth: 0.2,
      wallBase: "adiabatic",
      conductivity: 1.5,
      insideFilm: 8,
      outsideFilm: 20,
      outside: 100,
      depth: 100,
      finest: 0.02,
      growth: 1.3,
    });
    assertAlmostEquals(strip, solid, 0.02 * solid, `${length} × ${width} m`);
  }
});
