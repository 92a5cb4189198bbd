import { assert, assertAlmostEquals, assertEquals } from "@std/assert";
import {
  FLOOR_COVERS,
  floorCoupling,
  floorEvaporation,
} from "../../../lib/house/floor/floor_cover.ts";
import { houseChapter, houseModel } from "../../../lib/house/mod.ts";
import { HOUSE, simpleSoil, simpleYear } from "../fixtures.ts";

const bare = { bedCover: "bare", pathCover: "bare", pathShare: 0 };
const air = (hour: number) =>
  3 - 18 * Math.cos(2 * Math.PI * (hour / 8760 - 0.05)) -
  4 * Math.cos(2 * Math.PI * (hour % 24 - 4) / 24);
const climate = simpleYear({ temperature: air, sun: 0.7 });

Deno.test("a bare floor is the plain film, and a path of bare earth changes nothing", () => {
  // Property: limits; a study without these keys stays as it was
  assertEquals(floorCoupling(bare), 8);
  assertEquals(floorEvaporation(bare), 1);
  assertEquals(floorCoupling({ ...bare, pathShare: 0.3 }), 8);
  assertAlmostEquals(floorEvaporation({ ...bare, pathShare: 0.3 }), 1, 1e-12);
});

Deno.test("mulch stands in series with the film, paths side by side with the beds", () => {
  // Property: by hand: 1/(1/8 + 0.7) = 1.212; with 30 % gravel 0.7·1.212 + 0.3/(1/8 + 0.12) = 2.073
  assertAlmostEquals(floorCoupling({ ...bare, bedCover: "straw" }), 1.2121, 1e-4);
  const mixed = { bedCover: "straw", pathCover: "gravel", pathShare: 0.3 };
  assertAlmostEquals(floorCoupling(mixed), 2.073, 1e-3);
  assertAlmostEquals(floorEvaporation(mixed), 0.7 * 0.5 + 0.3 * 0.2, 1e-12);
});

Deno.test("organic mulch all over halves what the soil evaporates (FAO-56 ch. 10)", () => {
  // Source: FAO-56 [fao56-1998] ch. 10 (from memory): about 5 % less evaporation for each 10 % of the
  // surface under organic mulch
  for (const id of ["straw", "wood-chips"]) {
    assertAlmostEquals(floorEvaporation({ ...bare, bedCover: id }), 1 - 10 * 0.05, 1e-12, id);
  }
  for (const cover of FLOOR_COVERS) {
    assert(cover.evaporation >= 0 && cover.evaporation <= 1 && cover.resistance >= 0, cover.id);
  }
});

Deno.test("straw on the beds keeps the soil from the house: less floor heat, colder nights", () => {
  // Property: direction over a year
  const soil = simpleSoil(4, 12);
  const [open, straw] = ["bare", "straw"].map((bedCover) =>
    houseChapter({ ...HOUSE, bedCover }, climate, soil)
  );
  const through = (result: typeof open) =>
    result!.freeRunning.floor.reduce((sum, heat) => sum + Math.abs(heat), 0);
  assert(through(straw) < 0.5 * through(open));
  const coldest = (result: typeof open) => Math.min(...result!.freeRunning.airTemperature);
  assert(coldest(straw) < coldest(open));
  assert(Math.abs(straw!.freeRunningLedger.residual) < 1e-9);
  assert(Math.abs(straw!.freeRunningWater.residual) < 1e-9);
});

Deno.test("houseModel() gives soil owners the covered film and keeps the air's own", () => {
  // Property: definition
  const model = houseModel({ ...HOUSE, bedCover: "straw" }, climate);
  assertAlmostEquals(model.floorFilm, 1.2121, 1e-4);
  assertEquals(model.surfaceFilm, 8);
  assertAlmostEquals(model.floorVapour / houseModel(HOUSE, climate).floorVapour, 0.5, 1e-12);
});
