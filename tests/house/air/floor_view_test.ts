import { assert, assertAlmostEquals, assertEquals } from "@std/assert";
import { Matrix, solve } from "ml-matrix";
import { houseModel, stepHouse } from "../../../lib/house/mod.ts";
import { openSky } from "../../../lib/house/crop/canopy_cover.ts";
import type { HouseModel } from "../../../lib/house/types.ts";
import { HOUSE, NO_FLOOR, simpleYear } from "../fixtures.ts";

const dry = {
  ...HOUSE,
  crop: "bare",
  leafArea: 0,
  curtain: null,
  waterVolume: 0,
  leakage: 0,
  leakageWind: 0,
};
const climate = simpleYear({ temperature: () => -15 });
const black = { ...houseModel(dry, climate), floorVapour: 0 };
const clear = { ...houseModel({ ...dry, glazing: "single-film" }, climate), floorVapour: 0 };
const start = {
  airTemperature: 0,
  humidityRatio: 0.0005,
  massTemperature: 0,
  masonryTemperature: 0,
  ventOpening: 0,
};
const area = black.geometry.floorArea;

/** Night over soil of 5 degC, until all is steady. */
function night(model: HouseModel, share: number, seconds = 1e9) {
  const boundary = {
    ...NO_FLOOR,
    floorConductance: 0.5 * model.floorFilm * area,
    floorTemperature: 5,
  };
  const seen = { ...model, floorView: new Float64Array(8760).fill(share) };
  return stepHouse(seen, start, 0, seconds, boundary).flows;
}

Deno.test("openSky() is what a canopy of leaves at all angles lets through of a grey sky (Abramowitz & Stegun 1964)", () => {
  // Source: Abramowitz & Stegun 1964 [abramowitz-stegun-1964] table 5.4: E3(0.5) 0.2216, E3(1)
  // 0.1097, E3(2) 0.0301 (from memory); the share is 2·E3(L/2)
  for (const [leaves, e3] of [[1, 0.2216], [2, 0.1097], [4, 0.0301]] as const) {
    assertAlmostEquals(openSky(leaves), 2 * e3, 2e-4, `leaf area ${leaves}`);
  }
  assertAlmostEquals(openSky(0), 1, 1e-6);
  for (let leaves = 0; leaves < 8; leaves += 0.05) {
    const fall = openSky(leaves) - openSky(leaves + 0.05);
    assert(fall > 0 && fall < 0.05, `leaf area ${leaves}`);
  }
});

Deno.test("the floor that sees the cover loses heat to it as three nodes worked by hand do", () => {
  // Property: steady air, floor surface and cover's inner face solved as a network of their own;
  // glazing that lets no long wave through
  const share = 0.3;
  const flows = night(black, share);
  const [film, inside] = [black.floorFilm * area, black.coverFilm * black.coverArea];
  const straight = black.coverArea * share * (black.coverFilm - 3.3);
  const glazing = black.glazingConductance[0]!;
  const outer = glazing * inside / (inside - glazing);
  const opaque = black.opaqueConductance[0]!;
  const soil = 1 / (1 / (0.5 * film) - 1 / film);
  const [toAir, coverToAir] = [film - straight, inside - straight];
  const [air, floor, cover] = solve(
    new Matrix([
      [toAir + coverToAir + opaque, -toAir, -coverToAir],
      [-toAir, toAir + straight + soil, -straight],
      [-coverToAir, -straight, coverToAir + straight + outer],
    ]),
    Matrix.columnVector([
      opaque * black.opaqueDriving[0]!,
      soil * 5,
      outer * black.glazingDriving[0]!,
    ]),
  ).to1DArray() as [number, number, number];
  assertAlmostEquals(flows.floor, soil * (5 - floor), 0.01 * flows.floor * 1e-3);
  assertAlmostEquals(flows.glazing, outer * (black.glazingDriving[0]! - cover), 0.01);
  assert(air < floor && cover < air);
});

Deno.test("leaves over the floor keep heat in the soil by night, more under clear film", () => {
  // Property: direction and limits; a floor that sees nothing of the cover is the plain film
  const drawn = (model: HouseModel, share: number) => night(model, share).floor;
  assert(drawn(black, 0.4) > drawn(black, 0.2) && drawn(black, 0.2) > drawn(black, 0));
  const more = (model: HouseModel) => drawn(model, 0.4) / drawn(model, 0);
  assert(more(clear) > more(black), `${more(clear)} ${more(black)}`);
  for (const model of [black, clear]) {
    const flows = night(model, 0.4, 900);
    const sum = flows.solar + flows.glazing + flows.opaque + flows.leakage + flows.vent +
      flows.heater + flows.floor + flows.store + flows.evaporation + flows.mass;
    assertAlmostEquals(sum, flows.air, 1e-6);
  }
});

Deno.test("houseModel() shows the cover less floor the more leaves stand over it", () => {
  // Property: the share of the skin's view that is floor, 1 − the shade of the leaves
  const skin = black.geometry.parts.reduce((sum, part) => sum + part.area, 0);
  assertAlmostEquals(black.floorView[0]!, area / skin, 1e-6);
  const grown = houseModel({ ...dry, crop: "spinach", leafArea: 2 }, climate);
  assertAlmostEquals(grown.floorView[0]!, openSky(2) * area / skin, 1e-6);
  assertEquals(grown.floorView.length, 8760);
});
