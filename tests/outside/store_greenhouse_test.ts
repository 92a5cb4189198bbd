import { assert } from "@std/assert";
import { storeChapter } from "../../lib/store/mod.ts";
import { formulaClimate, standInRequest } from "../store/stand_in.ts";

Deno.test("sanity band only: a store like the 24-pipe one near Geneva stores 0.1 to 0.6 kWh/m² a day", () => {
  // Source: geometry from Hollmuller & Lachal 2001 [hollmuller-lachal-2001] (24 PVC pipes, 0.16 m,
  // 11 m long, 0.33 m apart, 0.8 m deep, reversed at night), read in the abstract; the bands are
  // from published stores (heat a sunny day 0.1 to 0.6 kWh/m² of floor, coefficient of performance
  // 1 to 7, air 3 to 12 K through the tubes) and weather is by formula, so this says "plausible",
  // no more.
  const base = standInRequest({
    climate: formulaClimate({ mean: 10, swing: 9 }),
    tubes: { count: 24, layers: 1, length: 11, spacing: 0.33, depth: 0.8, airFlow: 1.2 },
    house: { length: 12, width: 9 },
    store: { slices: 3, spinUpYears: 1 },
  });
  const result = storeChapter({
    ...base,
    tubes: {
      ...base.tubes,
      diameter: 0.16,
      filmCoefficient: 9,
      product: { ...base.tubes.product, insideDiameter: 0.16, outsideDiameter: 0.168 },
    },
    fan: { ...base.fan, power: 450 },
  });
  const floorArea = 108;
  const perDay = Array.from({ length: 365 }, (_, day) => {
    let sum = 0;
    for (let hour = 24 * day; hour < 24 * day + 24; hour++) {
      const heat = result.year.sensible[hour]! + result.year.latent[hour]!;
      if (result.year.fanShare[hour]! > 0) sum += heat / 1000;
    }
    return sum / floorArea;
  }).filter((heat) => heat > 0.02).sort((a, b) => a - b);
  const median = perDay[Math.floor(perDay.length / 2)]!;
  assert(median > 0.1 && median < 0.6, `median day ${median} kWh/m²`);
  assert(result.cop! > 1 && result.cop! < 7, `coefficient of performance ${result.cop}`);
});
