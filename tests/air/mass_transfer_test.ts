import { assert, assertAlmostEquals } from "@std/assert";
import { lewisNumber, massTransferCoefficient, vapourDiffusivity } from "winterground/air/mod.ts";

const PRESSURE = 101325;

Deno.test("lewisNumber() lies near 0.85 and the diffusivity near 2.5e-5 m²/s at 25 °C", () => {
  // Source: water vapour in air at 25 °C, D 2.5e-5 to 2.6e-5 m²/s and Le 0.84 to 0.87, a band about
  // the 0.26e-4 m²/s and 0.865 of Incropera & DeWitt 2002 [incropera-dewitt-2002], tables A.4, A.8
  const diffusivity = vapourDiffusivity(25, PRESSURE);
  assert(diffusivity > 2.5e-5 && diffusivity < 2.6e-5, `${diffusivity}`);
  const lewis = lewisNumber(25, PRESSURE);
  assert(lewis > 0.83 && lewis < 0.88, `${lewis}`);
});

Deno.test("massTransferCoefficient() is a ninth to an eighth above h/c for water vapour (Chilton & Colburn 1934)", () => {
  // Source: Chilton & Colburn 1934 [chilton-colburn-1934] with Lewis numbers 0.84 to 0.87, a band
  // about the 0.865 of Incropera & DeWitt 2002 [incropera-dewitt-2002]: g = h/(c·Le^(2/3)),
  // Le^(2/3) 0.890 to 0.911, so 1.098 to 1.124 times h/c
  const ratio = massTransferCoefficient(10, 25, PRESSURE) * 1006 / 10;
  assert(ratio > 1.098 && ratio < 1.124, String(ratio));
});

Deno.test("massTransferCoefficient() does not hang on pressure and moves by less than a per cent from 0 to 30 °C", () => {
  // Property: diffusivity goes with 1/p as the thermal one does; the powers of temperature are close
  const at = (temperature: number, pressure: number) =>
    massTransferCoefficient(10, temperature, pressure);
  assertAlmostEquals(at(15, 70000) / at(15, PRESSURE), 1, 1e-9);
  assertAlmostEquals(at(0, PRESSURE) / at(30, PRESSURE), 1, 0.008);
});
