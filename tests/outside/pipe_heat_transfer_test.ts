import { assert, assertAlmostEquals } from "@std/assert";
import {
  effectiveness,
  frictionFromManning,
  frictionPetukhov,
  nusseltGnielinski,
  nusseltTube,
  transferUnits,
} from "../../lib/tubes/mod.ts";

Deno.test("nusseltGnielinski() gives 254.6268 at Re 1e5, Pr 1.2, f 0.0185 (ht library test suite)", () => {
  // Source: Gnielinski 1976 [gnielinski-1976], value of the ht library's test suite [ht-2016],
  // recomputed
  assertAlmostEquals(nusseltGnielinski(1e5, 1.2, 0.0185), 254.6268275, 1e-6);
});

Deno.test("nusseltGnielinski() gives the table for air, Pr 0.71, smooth friction", () => {
  // Source: Gnielinski 1976 [gnielinski-1976] with Petukhov 1970 [petukhov-1970] friction,
  // recomputed from the formulas
  const rows: readonly [number, number][] = [
    [3e3, 10.05368],
    [4e3, 13.56474],
    [1e4, 30.02785],
    [2e4, 51.77180],
    [5e4, 105.08345],
    [1e5, 180.24278],
  ];
  for (const [reynolds, nusselt] of rows) {
    assertAlmostEquals(nusseltGnielinski(reynolds, 0.71), nusselt, 0.6e-5);
  }
});

Deno.test("nusseltGnielinski() stays within 10 % of Dittus–Boelter from Re 1e4 to 1e5", () => {
  // Source: Dittus & Boelter 1930 [dittus-boelter-1930] (0.023·Re^0.8·Pr^0.4), whose stated
  // accuracy is worse than 10 %
  for (const [reynolds, dittusBoelter] of [[1e4, 31.786], [2e4, 55.342], [5e4, 115.188]] as const) {
    assertAlmostEquals(nusseltTube(reynolds, 0.71), dittusBoelter, 0.1 * dittusBoelter);
  }
});

Deno.test("nusseltTube() keeps the smooth-tube value in corrugated tube (Sibley & Raghavan 1984)", () => {
  // Source: Sibley & Raghavan 1984 [sibley-raghavan-1984]; 51.77 at Re 2e4 within 1 %, not the
  // 130.5 of rough friction
  assertAlmostEquals(nusseltTube(2e4, 0.71), 51.77, 0.01 * 51.77);
  assertAlmostEquals(nusseltGnielinski(2e4, 0.71, 0.06), 130.5, 0.05);
  assert(frictionFromManning(0.015, 0.102) > 2 * frictionPetukhov(2e4));
});

Deno.test("effectiveness() gives NTU 1.46 and 0.77 for 15 m, 2.83 and 0.94 for 29 m of 4-inch tube", () => {
  // Source: recomputed from ε = 1 − exp(−UπDL/ṁc) with D 0.102 m, 2 m/s, U 6 W/(m² K), ρc 1207 J/(m³ K)
  const air = {
    density: 1.2,
    viscosity: 1.8e-5,
    conductivity: 0.0257,
    heatCapacity: 1006,
    prandtl: 0.71,
  };
  const airFlow = 2 * Math.PI * 0.102 ** 2 / 4;
  for (const [length, units, effect] of [[15, 1.46, 0.77], [29, 2.83, 0.94]] as const) {
    const found = transferUnits({ filmCoefficient: 6, diameter: 0.102, length, airFlow, air });
    assertAlmostEquals(found, units, 0.005);
    assertAlmostEquals(effectiveness(found), effect, 0.005);
  }
});

Deno.test("capacity ratio is speed ratio times effectiveness ratio, as Agrawal et al. 2020 measured", () => {
  // Source: Agrawal, Misra & Agrawal 2020 [agrawal-2020], abstract: 2 to 10 m/s; capacity +122,
  // +185, +220 % and effectiveness −55.4, −42.5, −36.2 % as rounded there
  const air = {
    density: 1.2,
    viscosity: 1.8e-5,
    conductivity: 0.0257,
    heatCapacity: 1006,
    prandtl: 0.71,
  };
  const tube = (airFlow: number, film: number) => {
    const units = transferUnits({ filmCoefficient: film, diameter: 0.1, length: 60, airFlow, air });
    const effect = effectiveness(units);
    return { effect, heat: air.density * air.heatCapacity * airFlow * effect };
  };
  for (const [capacity, loss] of [[1.22, 0.554], [1.85, 0.425], [2.20, 0.362]] as const) {
    const slow = tube(0.0157, 1);
    // the film coefficient at 5 times the flow that gives the published loss of effectiveness
    const sought = -Math.log(1 - slow.effect * (1 - loss));
    const unit = transferUnits({
      filmCoefficient: 1,
      diameter: 0.1,
      length: 60,
      airFlow: 5 * 0.0157,
      air,
    });
    const fast = tube(5 * 0.0157, sought / unit);
    assertAlmostEquals(fast.effect / slow.effect, 1 - loss, 1e-9);
    assertAlmostEquals(fast.heat / slow.heat - 1, capacity, 0.04);
  }
});
