// Property: the table of soils, overrides, limits and refusals of the soil properties
import { assert, assertAlmostEquals, assertLess, assertThrows } from "@std/assert";
import fc from "fast-check";
import { InputError, OutOfRangeError } from "../../lib/basics/mod.ts";
import {
  conductivityEstimates,
  findSoil,
  saturatedSoil,
  soilProperties,
  SOILS,
  soilWithMoisture,
} from "../../lib/soil/mod.ts";
import type { SoilMake } from "../../lib/soil/mod.ts";

const LOAM: SoilMake = {
  texture: "loam",
  dryDensity: 1450,
  moisture: 0.25,
  quartz: 0.4,
  measuredConductivity: null,
};
const made = (texture: string): SoilMake => ({
  ...findSoil(texture),
  measuredConductivity: null,
});

Deno.test("every soil of the table gives properties whose range holds both models and the value", () => {
  for (const soil of SOILS) {
    const found = soilProperties(made(soil.texture));
    const estimates = conductivityEstimates(made(soil.texture), "unfrozen");
    const [low, high] = found.conductivityRange;
    for (const value of [found.conductivity, estimates.coteKonrad, estimates.johansen]) {
      if (value !== null) assert(low <= value && value <= high, soil.texture);
    }
    assert(high - low >= 0.35 || soil.texture === "peat", soil.texture);
    assertAlmostEquals(found.diffusivity, found.conductivity / found.heatCapacity);
    assertLess(found.frozenHeatCapacity, found.heatCapacity);
    assert(soil.source.length > 20);
  }
});

Deno.test("a measured conductivity overrides the estimate and keeps the frozen ratio", () => {
  const estimate = soilProperties(LOAM);
  const measured = soilProperties({ ...LOAM, measuredConductivity: 1.6 });
  assertAlmostEquals(measured.conductivity, 1.6);
  assertAlmostEquals(measured.conductivityRange[0], 1.44);
  assertAlmostEquals(measured.conductivityRange[1], 1.76);
  assertAlmostEquals(
    measured.frozenConductivity / 1.6,
    estimate.frozenConductivity / estimate.conductivity,
  );
  assertAlmostEquals(measured.heatCapacity, estimate.heatCapacity);
});

Deno.test("heat capacity and latent heat grow with the water by its own values", () => {
  const dry = soilProperties({ ...LOAM, moisture: 0 });
  const wet = soilProperties({ ...LOAM, moisture: 0.3 });
  assertAlmostEquals(wet.heatCapacity - dry.heatCapacity, 0.3 * 4.186e6, 1);
  assertAlmostEquals(wet.latentHeat, 0.3 * 334e6, 1);
  assertAlmostEquals(dry.latentHeat, 0);
  assertAlmostEquals(dry.conductivity, dry.frozenConductivity, 1e-12);
});

Deno.test("conductivity rises with moisture up to saturation, for every texture", () => {
  fc.assert(fc.property(
    fc.constantFrom(...SOILS.map((soil) => soil.texture)),
    fc.double({ min: 0, max: 1, noNaN: true }),
    fc.double({ min: 0, max: 1, noNaN: true }),
    (texture, one, other) => {
      const { porosity } = soilProperties(made(texture));
      const [dry, wet] = [Math.min(one, other) * porosity, Math.max(one, other) * porosity];
      const at = (moisture: number) => soilWithMoisture(made(texture), moisture).conductivity;
      assert(at(dry) <= at(wet) + 1e-12);
    },
  ));
});

Deno.test("saturated soil has its pores full and scales a measured conductivity up", () => {
  const wet = saturatedSoil({ ...LOAM, measuredConductivity: 1.6 });
  const ratio = saturatedSoil(LOAM).conductivity / soilProperties(LOAM).conductivity;
  assertAlmostEquals(wet.saturation, 1);
  assertAlmostEquals(wet.conductivity, 1.6 * ratio);
});

Deno.test("more water than pores, unknown textures and absurd densities are refused", () => {
  assertThrows(() => soilProperties({ ...LOAM, moisture: 0.6 }), InputError, "pores");
  assertThrows(() => findSoil("moon dust"), InputError, "gravel, coarse sand");
  assertThrows(() => soilProperties({ ...LOAM, dryDensity: 3000 }), OutOfRangeError);
  assertThrows(() => soilProperties({ ...LOAM, measuredConductivity: -1 }), OutOfRangeError);
  assertThrows(() => soilProperties({ ...LOAM, quartz: NaN }), OutOfRangeError);
});
