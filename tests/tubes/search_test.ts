import { assert, assertAlmostEquals, assertEquals, assertThrows } from "@std/assert";
import fc from "fast-check";
import { airProperties } from "../../lib/air/mod.ts";
import { InputError } from "../../lib/basics/mod.ts";
import {
  DEMO_SEARCH_PRICES,
  depthBesideFooting,
  type FieldCandidate,
  findTube,
  floorFit,
  heatLedCount,
  kneeLength,
  marginalHeat,
  paretoFront,
  pitVolume,
  readSearchPrices,
  searchAround,
  searchFields,
  type SearchLimits,
  type SearchSetting,
} from "../../lib/tubes/mod.ts";
import { HOUSE, PIT, STATE, TUBES } from "../headers/fields.ts";

const AROUND = {
  house: HOUSE,
  ...STATE,
  footingDepth: 0.9,
  soil: { conductivity: 1.3, heatCapacity: 2.2e6 },
  swing: 8,
  otherPressure: 20,
  fanEfficiency: 0.3,
  fanHours: 12,
  prices: DEMO_SEARCH_PRICES,
  pit: PIT,
};
const AIR = airProperties(20, 95000);
const LIMITS: SearchLimits = {
  airSpeedMin: 0.5,
  airSpeedMax: 3,
  pressureMax: 80,
  floor: {
    along: 24,
    across: 8,
    headerRoom: 0.5,
    footingDepth: 0.6,
    coverMin: 0.3,
    digMax: 2,
  },
};
const SETTING: SearchSetting = {
  airFlow: 0.3,
  air: AIR,
  soil: { conductivity: 1.3, heatCapacity: 2.2e6 },
  layerSpacing: 0.4,
  extraLosses: 0.5,
  swing: 8,
  period: 86400,
  otherPressure: 30,
  fanEfficiency: 0.35,
  fanHours: 12,
  prices: {
    tubePerMetre: { "corrugated-4in": 2.5, "corrugated-6in": 5 },
    perTube: 20,
    excavation: 12,
  },
  pit: PIT,
};
const CHOICES = {
  tubes: ["corrugated-4in", "corrugated-6in"],
  counts: [8, 12, 16, 24, 32],
  lengths: [8, 12, 16, 20, 22.5, 26],
  spacings: [0.3, 0.5],
  layers: [1, 2],
  depths: [0.6, 0.9, 1.4],
};

Deno.test("searchFields() works out the pit of each field at most once", () => {
  // Property: no field is asked for twice, refused or not
  const asked: string[] = [];
  const pit: SearchSetting["pit"] = (field) => {
    const { product, count, length, spacing, layers, depth } = field;
    asked.push([product.id, count, length, spacing, layers, depth].join());
    return PIT(field);
  };
  const result = searchFields(CHOICES, LIMITS, { ...SETTING, pit });
  assert(result.allowed > 0 && asked.length >= result.allowed);
  assertEquals(asked.length, new Set(asked).size);
});

Deno.test("searchFields() returns fields within all limits, and counts what it refused and why", () => {
  // Property: constraints hold; every combination is accounted for
  const result = searchFields(CHOICES, LIMITS, SETTING);
  assert(result.front.length > 3);
  for (const field of result.front) {
    assert(field.airSpeed >= 0.5 && field.airSpeed <= 3 && field.pressureDrop <= 80);
    const product = findTube(field.tube);
    const layout = { ...field, layerSpacing: SETTING.layerSpacing, product };
    assertEquals(floorFit(layout, LIMITS.floor, PIT(layout)), null);
    const { tubePerMetre, perTube, excavation } = SETTING.prices;
    const tubes = field.count * (field.length * tubePerMetre[field.tube]! + perTube);
    assertAlmostEquals(field.cost - tubes, pitVolume(PIT(layout)) * excavation, 1e-9 * field.cost);
  }
  const refused = Object.values(result.refused).reduce((sum, count) => sum + count, 0);
  assertEquals(result.allowed + refused, 2 * 5 * 6 * 2 * 2 * 3);
  assert(result.refused["too long for the floor"]! > 0);
  assert(result.refused["too close to the footing"]! > 0);
});

const candidates: fc.Arbitrary<FieldCandidate[]> = fc.array(
  fc.record({
    heat: fc.integer({ min: 0, max: 8 }),
    fanEnergy: fc.integer({ min: 0, max: 8 }),
    cost: fc.integer({ min: 0, max: 8 }),
  }).map((values) => ({
    ...values,
    tube: "any",
    count: 1,
    length: 1,
    spacing: 1,
    layers: 1,
    depth: 1,
    totalLength: 1,
    airSpeed: 1,
    pressureDrop: 1,
  })),
  { maxLength: 40 },
);
const beats = (a: FieldCandidate, b: FieldCandidate): boolean =>
  a.heat >= b.heat && a.fanEnergy <= b.fanEnergy && a.cost <= b.cost &&
  (a.heat > b.heat || a.fanEnergy < b.fanEnergy || a.cost < b.cost);

Deno.test("paretoFront() keeps what nothing beats and drops what something beats", () => {
  // Property: definition of the front, by comparing all pairs
  fc.assert(fc.property(candidates, (fields) => {
    const front = paretoFront(fields);
    for (const kept of front) assert(!fields.some((other) => beats(other, kept)));
    for (const field of fields) {
      const same = (kept: FieldCandidate): boolean =>
        kept.heat === field.heat && kept.cost === field.cost && kept.fanEnergy === field.fanEnergy;
      assert(front.some((kept) => same(kept) || beats(kept, field)));
    }
  }));
});

Deno.test("marginalHeat() falls along the tube and adds up to the heat", () => {
  // Property: derivative and integral; the air runs out of swing
  const question = {
    product: findTube("corrugated-4in"),
    soil: {
      conductivity: 1.3,
      heatCapacity: 2.2e6,
      outerRadius: Infinity,
      outside: "adiabatic",
    },
    airFlow: 0.015,
    air: AIR,
    extraLosses: 0,
    swing: 8,
    period: 86400,
  } as const;
  const lengths = Array.from({ length: 80 }, (_, i) => 0.25 + 0.5 * i);
  const rows = marginalHeat(question, lengths);
  const sum = rows.reduce((total, row) => total + 0.5 * row.marginalHeat, 0);
  const whole = marginalHeat(question, [40])[0]!.heat;
  assertAlmostEquals(sum, whole, 0.001 * whole);
  for (let i = 1; i < 40; i++) assert(rows[i]!.marginalHeat < rows[i - 1]!.marginalHeat);
  const knee = kneeLength(rows);
  assert(knee > 5 && knee < 25, `${knee}`);
});

Deno.test("kneeLength() finds the farthest point from the chord: ln 2-like knee of 1 − e^(−x)", () => {
  // Source: closed form: 1 − e^(−x) on 0…X bends farthest at x = ln[X/(1 − e^(−X))]
  const rows = Array.from({ length: 6001 }, (_, i) => {
    const length = i / 1000;
    return { length, heat: 1 - Math.exp(-length) };
  });
  assertAlmostEquals(kneeLength(rows), Math.log(6 / (1 - Math.exp(-6))), 0.001);
});

Deno.test("heatLedCount() rounds up and depthBesideFooting() follows 45 degrees", () => {
  // Property: definitions
  assertEquals(heatLedCount(100, 3), 34);
  assertEquals(heatLedCount(99, 3), 33);
  assertAlmostEquals(depthBesideFooting(0.6, 0.5), 1.1, 1e-12);
  assertAlmostEquals(depthBesideFooting(0.6, -1), 0.6, 1e-12);
});

Deno.test("searchAround() stays on the floor, beside the footing and among tubes of the same kind", () => {
  // Property: constraints hold; a shallower footing never allows more
  const inputs = { ...TUBES, count: 36, layers: 2, airFlow: 0.8 };
  const result = searchAround(inputs, AROUND);
  assert(result.front.length > 10);
  for (const field of result.front) {
    const product = findTube(field.tube);
    assert(product.wall === "corrugated" && product.perforated);
    assert(field.length <= 24 - 1.2 + 1e-9);
    assert(field.airSpeed >= 0.5 && field.airSpeed <= 4);
  }
  const shallow = searchAround(inputs, { ...AROUND, footingDepth: 0.4 });
  assert(shallow.allowed < result.allowed);
  const best = (heat: typeof result): number => Math.max(...heat.front.map((field) => field.heat));
  assert(best(shallow) <= best(result));
});

Deno.test("readSearchPrices() wants the ends and the digging, and no price below 0", () => {
  // Property: bad input
  const head = "item,price,unit,source\n";
  const good = "tube-ends,10,per tube,me\nexcavation,8,per m3,me\nsmooth-4in,5,per metre,me\n";
  assertEquals(readSearchPrices(head + good, "p.csv"), {
    tubePerMetre: { "smooth-4in": 5 },
    perTube: 10,
    excavation: 8,
  });
  assertThrows(
    () => readSearchPrices(head + "tube-ends,1,a,b\n", "p.csv"),
    InputError,
    "excavation",
  );
  assertThrows(
    () => readSearchPrices(head + good.replace(",8,", ",-8,"), "p.csv"),
    InputError,
    'p.csv:3 (column "price")',
  );
});
