// Source: FAO-56 (1998) [fao56-1998], Prata 1996 [prata-1996], Brutsaert 2015 [brutsaert-2015],
// recomputed from the formulas
import { assertAlmostEquals } from "@std/assert";
import { LATENT_HEAT, saturationPressureOverWater } from "../../lib/air/mod.ts";
import { evaporationHeat, longwaveLoss, windCoefficient } from "../../lib/soil/surface.ts";

Deno.test("FAO-56 eq. 4: aerodynamic resistance of 0.12 m grass is 208/u for wind at 2 m", () => {
  const air = { wind: 2, measuredAt: 2, plantHeight: 0.12, density: 1.2 };
  assertAlmostEquals(windCoefficient(air), 1.2 * 1013 * 2 / 208, 0.03);
});

Deno.test("Prata 1996: clear sky over air of 15 °C and 10 hPa has emissivity 0.776", () => {
  const loss = longwaveLoss({ air: 15, vapour: 1000, clear: 1 });
  const black = 5.670374419e-8 * 288.15 ** 4;
  assertAlmostEquals(1 - loss / (0.97 * black), 0.776, 5e-4);
});

Deno.test("Crawford & Duchon 1999: under full cloud nothing is lost to the sky", () => {
  assertAlmostEquals(longwaveLoss({ air: 15, vapour: 1000, clear: 0 }), 0);
});

Deno.test("Brutsaert 2015: the two limits of the complementary relation", () => {
  const day = { net: 150, air: 20, wind: 3, pressure: 101325 };
  const saturation = saturationPressureOverWater(20);
  const slope = 4098 * saturation / 257.3 ** 2;
  const share = slope / (slope + 0.665e-3 * 101325);
  const wet = evaporationHeat({ ...day, vapour: saturation });
  assertAlmostEquals(wet, share * 150, 1e-9);
  const drying = 0.26 * (1 + 0.54 * 0.748 * 3) * (saturation - 800) / 100 * LATENT_HEAT / 86400;
  const apparent = share * 150 + (1 - share) * drying;
  const x = 1.13 * share * 150 / apparent;
  assertAlmostEquals(evaporationHeat({ ...day, vapour: 800 }), apparent * (2 - x) * x * x, 1e-9);
});
