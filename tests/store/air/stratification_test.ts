import { assert, assertAlmostEquals } from "@std/assert";
import fc from "fast-check";
import { ridgeExcess, type TwoLayers, upperExcess, wallPlume } from "../../../lib/store/mod.ts";
import { houseModel, initialHouseState } from "../../../lib/house/mod.ts";
import { HOUSE, simpleYear } from "../../house/fixtures.ts";

const LAYERS: TwoLayers = {
  rising: 3000,
  below: 10000,
  leaving: 0.8,
  mixed: 0,
  length: 24,
  height: 1.6,
  skin: 300,
  heatCapacity: 1200,
  temperature: 20,
};

Deno.test("wallPlume() satisfies the plume equations it is solved from", () => {
  // Source: Morton, Taylor & Turner 1956 [morton-1956] (from memory) along a wall, α 0.068 of Parker et
  // al. 2020 [parker-2020]: dV/dz = α·w, dM/dz = B/w with V = w·b, M = w²·b, B = z·f, for each metre of
  // wall, followed upward in small steps.
  const [heat, length, height] = [4800, 24, 2];
  const force = 9.80665 * heat / (1200 * 293.15) / (length * height);
  let [flow, momentum] = [1e-7, 1e-9];
  const steps = 200000;
  for (let i = 0; i < steps; i++) {
    const z = (i + 0.5) * height / steps;
    const speed = momentum / flow;
    flow += 0.068 * speed * height / steps;
    momentum += force * z / speed * height / steps;
  }
  assertAlmostEquals(
    wallPlume(heat, length, height, 1200, 20),
    flow * length,
    2e-3 * flow * length,
  );
});

Deno.test("upperExcess() of a house whose air is drawn off fast is the heat over the air's flow", () => {
  // Source: emptying box, Linden, Lane-Serff & Smeed 1990 [linden-1990] (from memory): all heat leaves
  // with the upper layer, Q = ρc·V·ΔT by hand; half of it above the mean of two equal layers.
  const found = upperExcess({ ...LAYERS, below: 0, leaving: 5, skin: 0 });
  assertAlmostEquals(found, 3000 / (1200 * 5) / 2, 1e-12);
  assertAlmostEquals(
    upperExcess({ ...LAYERS, below: 0, leaving: 3, mixed: 2, skin: 0 }),
    found,
    1e-12,
  );
});

Deno.test("upperExcess() lies where sunlit houses were measured: between nothing and 8 K from floor to ridge", () => {
  // Source: Building Simulation 14 (6), 2021 [solar-greenhouses-2021], abstract: up to about 8.2 K
  // vertically in naturally ventilated houses with a sunlit back wall. Full height is twice the excess.
  // A band: their houses and vents are not known here.
  for (const rising of [1000, 3000, 8000]) {
    const most = 2 * upperExcess({ ...LAYERS, rising, below: 2 * rising, leaving: 0.1 });
    assert(most > 0.5 && most < 8.2, `${rising} W: ${most} K`);
  }
});

const heat = fc.double({ min: 0, max: 20000, noNaN: true });
const flow = fc.double({ min: 0, max: 10, noNaN: true });

Deno.test("upperExcess() falls with every flow that stirs or empties, rises with the heat, and has no jumps", () => {
  // Property: directions and continuity
  fc.assert(
    fc.property(heat, heat, flow, flow, (rising, below, leaving, mixed) => {
      const at = (change: Partial<TwoLayers>) =>
        upperExcess({ ...LAYERS, rising, below, leaving, mixed, ...change });
      const here = at({});
      assert(here >= 0);
      assert(at({ leaving: leaving + 1 }) <= here && at({ mixed: mixed + 1 }) <= here);
      assert(at({ below: below + 500 }) <= here && at({ rising: rising + 500 }) >= here);
      assert(Math.abs(at({ leaving: leaving + 1e-6 }) - here) < 1e-4);
      assert(Math.abs(at({ temperature: 20.001 }) - here) < 1e-4);
      // near nothing it goes as the power 2/3 of the heat
      assert(Math.abs(at({ rising: rising + 1e-3 }) - here) < 1e-3);
    }),
    { numRuns: 300, seed: 7 },
  );
});

Deno.test("ridgeExcess() is nothing without sun, less with open vents, with the fan's draught and with circulation fans", () => {
  // Property: directions in a house; noon of a sunny winter day
  const year = simpleYear({ temperature: () => -10, sun: 0.7 });
  const house = houseModel(HOUSE, year);
  const state = { ...initialHouseState(house), airTemperature: 18 };
  const noon = 12;
  const still = ridgeExcess(house, state, noon, 0, 0);
  assert(still > 0.2 && still < 4, `${still} K`);
  assertAlmostEquals(ridgeExcess(house, state, 0, 0, 0), 0, 1e-12);
  assert(ridgeExcess(house, { ...state, ventOpening: 0.5 }, noon, 0, 0) < still);
  assert(ridgeExcess(house, state, noon, 4000, 0) < still);
  assert(ridgeExcess(house, state, noon, 0, 1) < still);
  // a house glazed all round has no wall for a plume to rise along
  const open = { ...HOUSE, northWall: "glazed", northRoof: "glazed", kneeWallHeight: 0 } as const;
  const glass = houseModel({ ...HOUSE, ...open }, year);
  assertAlmostEquals(ridgeExcess(glass, state, noon, 0, 0), 0, 1e-9);
});
