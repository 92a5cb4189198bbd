import { assert, assertAlmostEquals, assertEquals, assertThrows } from "@std/assert";
import { InputError } from "../../../lib/basics/mod.ts";
import { houseGeometry, type HouseInputs, lossParts } from "../../../lib/house/mod.ts";
import { HOUSE } from "../fixtures.ts";

const skin = (inputs: HouseInputs) =>
  houseGeometry(inputs).parts.reduce((sum, part) => sum + part.area, 0);

Deno.test("houseGeometry() gives a semicircular hoop 30 × 96 ft its hand-worked areas", () => {
  // Source: recomputed by hand, r 4.572 m, length 29.26 m: floor 267.6, skin 420.3 + 65.7 m², 960.7 m³.
  const hoop = houseGeometry({
    ...HOUSE,
    shape: "hoop",
    length: 29.26,
    width: 9.144,
    eaveHeight: 0,
    ridgeHeight: 4.572,
    kneeWallHeight: 0,
    northRoof: "glazed",
    northWall: "glazed",
  });
  const of = (word: string) =>
    hoop.parts.filter((part) => part.name.includes(word)).reduce((sum, part) => sum + part.area, 0);
  assertAlmostEquals(hoop.floorArea, 267.6, 0.06);
  assertAlmostEquals(of("roof"), 420.3, 0.06);
  assertAlmostEquals(of("end"), 65.7, 0.06);
  assertAlmostEquals(hoop.volume, 960.7, 0.1);
});

Deno.test("houseGeometry() closes: every shape's outward areas add up to nothing", () => {
  // Property: the area vectors of a closed surface, floor included, sum to 0.
  for (const shape of ["gable", "hoop", "lean-to"] as const) {
    for (const facing of [0, 160, 200]) {
      const geometry = houseGeometry({ ...HOUSE, shape, facing });
      const sum = [0, 0, -geometry.floorArea];
      for (const { area, plane } of geometry.parts) {
        const [tilt, azimuth] = [plane.tilt * Math.PI / 180, plane.azimuth * Math.PI / 180];
        sum[0]! += area * Math.sin(tilt) * Math.sin(azimuth);
        sum[1]! += area * Math.sin(tilt) * Math.cos(azimuth);
        sum[2]! += area * Math.cos(tilt);
      }
      const allowed = shape === "hoop" ? 0.01 * geometry.floorArea : 1e-9 * geometry.floorArea;
      for (const side of sum) assertAlmostEquals(side, 0, allowed, `${shape} ${sum}`);
    }
  }
});

Deno.test("houseGeometry() gives a gable its volume and its knee walls", () => {
  // Property: volume = length × end wall; knee wall and glazing share the wall.
  const geometry = houseGeometry(HOUSE);
  assertAlmostEquals(geometry.volume, 24 * (8 * 2 + 8 * 2 / 2), 1e-9);
  assertEquals(geometry.perimeter, 64);
  const area = (name: string) => geometry.parts.find((part) => part.name === name)?.area ?? NaN;
  assertAlmostEquals(area("front wall") + area("front wall knee wall"), 48, 1e-9);
  assertAlmostEquals(area("front wall knee wall"), 24 * 0.6, 1e-9);
  const back = geometry.parts.find((part) => part.name === "back wall");
  assertEquals(back?.kind, "opaque");
});

Deno.test("houseGeometry() of a hoop that rises steeply is half an ellipse", () => {
  // Property: ellipse area πab/2; its arc lies between the circle's and the box's.
  const inputs = {
    ...HOUSE,
    shape: "hoop",
    eaveHeight: 0,
    ridgeHeight: 6,
    kneeWallHeight: 0,
  } as const;
  const geometry = houseGeometry(inputs);
  assertAlmostEquals(geometry.volume, 24 * Math.PI * 4 * 6 / 2, 1e-9);
  const [a, b] = [4, 6];
  const h = ((a - b) / (a + b)) ** 2;
  const arc = Math.PI * (a + b) * (1 + 3 * h / (10 + Math.sqrt(4 - 3 * h))) / 2;
  const roof = skin(inputs) - 2 * Math.PI * 4 * 6 / 2;
  assertAlmostEquals(roof, 24 * arc, 0.001 * 24 * arc);
});

Deno.test("houseGeometry() ends the knee wall of a hoop where the arc begins", () => {
  // Property: a hoop that stands on the ground has no side wall to insulate.
  const hoop = houseGeometry({ ...HOUSE, shape: "hoop", eaveHeight: 0, kneeWallHeight: 0.6 });
  assert(hoop.parts.every((part) => !part.name.startsWith("front wall")));
  assert(hoop.parts.some((part) => part.name === "left end wall knee wall"));
});

Deno.test("houseGeometry() refuses a ridge below the eave and a knee wall above it", () => {
  // Property: bad input
  assertThrows(() => houseGeometry({ ...HOUSE, ridgeHeight: 1 }), InputError, "ridge");
  assertThrows(() => houseGeometry({ ...HOUSE, kneeWallHeight: 3 }), InputError, "knee");
  assertThrows(() => houseGeometry({ ...HOUSE, width: 0 }), InputError, "width");
  assert(
    assertThrows(() => houseGeometry({ ...HOUSE, glazing: "ice" }), InputError).message
      .includes("twin-wall-8mm"),
  );
});

Deno.test("a part is known by side and element, whatever its name says", () => {
  // Property: renaming every part leaves the loss coefficient as it was
  const inputs = { ...HOUSE, northWall: 0.4, northRoof: 0.5, northEarthHeight: 1 };
  const geometry = houseGeometry(inputs);
  const renamed = { ...geometry, parts: geometry.parts.map((part) => ({ ...part, name: "x" })) };
  const given = { inputs, dryAirMass: 700, edgeLossFactor: 1, difference: 30, windSpeed: 3 };
  assertEquals(lossParts({ ...given, geometry: renamed }), lossParts({ ...given, geometry }));
  const bare = lossParts({ ...given, geometry, inputs: { ...inputs, northEarthHeight: 0 } });
  assert(bare[1]!.conductance > lossParts({ ...given, geometry })[1]!.conductance);
  assert(bare[2]!.conductance > 0);
});
