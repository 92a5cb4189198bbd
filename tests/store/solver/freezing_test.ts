import { sum } from "d3-array";
import { assert, assertAlmostEquals, assertEquals, assertLess } from "@std/assert";
import { penetrationDepth, PRODUCTION_MESH, sliceMesh } from "../../../lib/store/ground/mesh.ts";
import { sliceOperator } from "../../../lib/store/ground/operator.ts";
import { type FreezingZone, freezingZones } from "../../../lib/store/ground/zones.ts";
import {
  airDifference,
  fastEngine,
  fullEngine,
  runWinter,
  type WinterCase,
  winterSite,
} from "../../support/freezing_runs.ts";
import { standInRequest } from "../stand_in.ts";

const CASE: WinterCase = {
  request: standInRequest({ store: { slices: 2 } }),
  steps: [900, 3600],
  shortSteps: false,
  heater: 0,
};
/** The zones of each side as one: what freezes first and what never freezes are told apart no more. */
function allInOne(zones: readonly FreezingZone[]): FreezingZone[] {
  return [true, false].map((inside) => {
    const own = zones.filter((zone) => zone.inside === inside);
    const total = sum(own, (zone) => zone.latent);
    return {
      ...own[0]!,
      cells: Int32Array.from(own.flatMap(({ cells }) => [...cells])),
      weights: Float64Array.from(
        own.flatMap(({ weights, latent }) => Array.from(weights, (w) => w * latent / total)),
      ),
      latent: total,
      area: sum(own, (zone) => zone.area),
      capacity: sum(own, (zone) => zone.capacity),
      frozenCapacity: sum(own, (zone) => zone.frozenCapacity),
    };
  });
}

const fast = runWinter(CASE, fastEngine(CASE));
const linear = runWinter(CASE, fastEngine(CASE, () => []));

Deno.test("the fast engine closes the heat ledger to 1e-9 with latent heat", () => {
  // Property: energy is conserved while the soil freezes and thaws
  assertLess(Math.abs(fast.residual), 1e-9);
  const halfWay = fastEngine(CASE);
  assertLess(Math.abs(runWinter(CASE, halfWay, 120 * 24).residual), 1e-9);
  assert(Math.max(...halfWay.ice()) > 1e6, "soil is frozen at the end of January");
});

Deno.test("the fast engine freezes like the full model, house air within 0.06 K", () => {
  // Property: lumps against cells, one winter in steps of 300 s. 0.06 K of 99 % of the hours claimed, and 1.5 %
  // of the heat of half a year, in which one afternoon more of charging is 1 %;
  // without freezing the house is off by more than 0.2 K.
  const even = { ...CASE, steps: [300], shortSteps: true };
  const full = runWinter(even, fullEngine(even));
  const fast = runWinter(even, fastEngine(even));
  assertLess(Math.abs(full.residual), 1e-9);
  assertLess(airDifference(fast, full).rms, 0.06);
  assertLess(airDifference(fast, full).p95, 0.2);
  assertAlmostEquals(fast.heatIn / full.heatIn, 1, 0.015, "heat in");
  assertAlmostEquals(fast.heatOut / full.heatOut, 1, 0.01, "heat out");
  assert(airDifference(linear, full).rms > 0.2, "freezing matters here");
  const lumped = runWinter(even, fastEngine(even, allInOne));
  assert(airDifference(lumped, full).rms > 0.06, "one lump under the floor is not enough");
});

Deno.test("with the latent heat set to next to nothing the fast engine is the linear one", () => {
  // Property: continuity in the water; more states and the ports of the zones change next to nothing
  const almost = runWinter(
    CASE,
    fastEngine(CASE, (zones) =>
      zones.map((zone) => ({
        ...zone,
        latent: 1e-9 * zone.latent,
        frozenCapacity: zone.capacity,
        ratio: 1,
      }))),
  );
  assertLess(airDifference(almost, linear).rms, 0.01);
  assertAlmostEquals(almost.heatIn / linear.heatIn, 1, 0.01, "one start more or less");
  assertAlmostEquals(almost.heatOut / linear.heatOut, 1, 0.005);
});

Deno.test("soil without water has no zones, so the fast engine is the linear one to the bit", () => {
  // Property: a dry soil freezes nothing
  const { site } = winterSite(CASE);
  const dry = sliceOperator(site.mesh, {
    conductivity: 1,
    heatCapacity: 2e6,
    freezing: { latentHeat: 0, freezingRange: 0.5, frozenHeatCapacity: 2e6 },
    zones: [],
    boards: [],
    floorFilm: 8,
    outdoorFilm: Infinity,
    deepHeld: false,
    tubeRadius: 0.055,
  });
  assertEquals(dry.freezing, null);
  assertEquals(freezingZones(site.mesh, dry), []);
});

Deno.test("freezingZones() keep soils apart and leave a dry bed of gravel out", () => {
  // Property: cells of a zone share one soil; a soil without water is in none
  const mesh = sliceMesh({
    floorWidth: 6,
    outsideSoil: 3,
    depth: 8,
    tubes: [{ x: -1, depth: 0.6 }, { x: 1, depth: 0.6 }],
    tubeRadius: 0.055,
    half: true,
    ...PRODUCTION_MESH,
    penetration: penetrationDepth({ conductivity: 1.2, heatCapacity: 2e6 }),
    faces: [0.3],
  });
  const water = (latentHeat: number) => ({
    latentHeat,
    freezingRange: 0.5,
    frozenHeatCapacity: 1.6e6,
  });
  const soil = { conductivity: 1.2, heatCapacity: 2e6 };
  const operator = sliceOperator(mesh, {
    ...soil,
    freezing: water(8e7),
    zones: [
      { within: Infinity, from: 0, to: 0.3, ...soil, freezing: water(3e7) },
      { within: 1.3, from: 0.4, to: 0.8, ...soil },
    ],
    boards: [],
    floorFilm: 8,
    outdoorFilm: Infinity,
    deepHeld: false,
    tubeRadius: 0.055,
  });
  const zones = freezingZones(mesh, operator);
  const latent = operator.freezing!.latent;
  for (const zone of zones) {
    const kinds = new Set(
      Array.from(zone.cells, (c) => (latent[c]! / operator.capacity[c]!).toFixed(6)),
    );
    assertEquals(kinds.size, 1);
    assert(zone.cells.every((cell) => latent[cell]! > 0));
    assertAlmostEquals(zone.weights.reduce((sum, weight) => sum + weight, 0), 1, 1e-12);
  }
  const all = zones.flatMap((zone) => Array.from(zone.cells));
  assertEquals(new Set(all).size, all.length);
});

Deno.test("an engine loaded from what another saved goes on as that one does", () => {
  // Property: states and ice are the memory of the soil; the first step's guesses alone differ
  const hours = 120 * 24;
  const [one, other] = [fastEngine(CASE), fastEngine(CASE)];
  runWinter(CASE, one, hours);
  other.load(one.save());
  assertEquals(other.content(), one.content());
  assertEquals(other.ice(), one.ice());
  const [on, again] = [runWinter(CASE, one, hours), runWinter(CASE, other, hours)];
  assertLess(airDifference(on, again).rms, 1e-3);
  assertAlmostEquals(again.heatOut / on.heatOut, 1, 1e-5);
});
