import { assert, assertAlmostEquals } from "@std/assert";
import fc from "fast-check";
import {
  beamLanding,
  houseGeometry,
  type HouseInputs,
  type RoomSurface,
  type SunDirection,
  sunDirection,
} from "../../../lib/house/mod.ts";
import { HOUSE } from "../fixtures.ts";

function room(inputs: HouseInputs): { surfaces: RoomSurface[]; names: string[] } {
  const { parts, floorOutline } = houseGeometry(inputs);
  return {
    surfaces: [
      ...parts.map(({ outline, kind }) => ({ outline, glazed: kind === "glazed" })),
      { outline: floorOutline, glazed: false },
    ],
    names: [...parts.map(({ name }) => name), "floor"],
  };
}

/** Share of the beam through one surface that falls on another. */
function share(inputs: HouseInputs, sun: SunDirection, from: string, to: string): number {
  const { surfaces, names } = room(inputs);
  return beamLanding(surfaces)(sun).get(names.indexOf(from))?.[names.indexOf(to)] ?? NaN;
}

const LEAN_TO: HouseInputs = { ...HOUSE, shape: "lean-to", eaveHeight: 1, ridgeHeight: 4 };

Deno.test("beamLanding() puts the sun from straight above on the floor", () => {
  // Source: geometry by hand; every ray that comes in through a roof falls plumb.
  for (const shape of ["gable", "lean-to", "hoop"] as const) {
    const { surfaces, names } = room({ ...HOUSE, shape, northRoof: "glazed" });
    const landing = beamLanding(surfaces)([0, 0, 1]);
    assert(landing.size > 0);
    for (const [from, shares] of landing) {
      assert(names[from]!.includes("roof"), names[from]);
      assertAlmostEquals(shares[names.indexOf("floor")]!, 1, 1e-9);
    }
  }
});

Deno.test("beamLanding() draws the shadow line of a low southern sun on the back wall as by hand", () => {
  // Source: geometry by hand. A ray that passes the front at height c meets the back wall, 8 m behind,
  // at c − 8·tan e. The roof spans c from the eave, 1 m, to 4 + 8·tan e.
  for (const elevation of [8, 20, 35]) {
    const sun = sunDirection(elevation, 180, 180);
    const drop = 8 * Math.tan(elevation * Math.PI / 180);
    const all = 4 + drop - 1;
    const onWall = (4 + drop - Math.max(1, drop)) / all;
    assertAlmostEquals(share(LEAN_TO, sun, "front roof", "back wall"), onWall, 1e-9);
    assertAlmostEquals(share(LEAN_TO, sun, "front roof", "floor"), 1 - onWall, 1e-9);
    // the front wall, glazed from 0.6 to 1 m, sends its beam below 1 m − drop on the wall or on the floor
    const front = share(LEAN_TO, sun, "front wall", "floor");
    assertAlmostEquals(front, Math.min(1, Math.max(0, (drop - 0.6) / 0.4)), 1e-9);
  }
});

Deno.test("beamLanding() sends the end of a slanting beam to the end wall as by hand", () => {
  // Source: geometry by hand. Sun 45° to the left, 30° up: a ray at height z runs z·sin 45°/tan 30°
  // along the house before it meets the floor; the window is 24 m long, from 0.6 to 2 m.
  const sun = sunDirection(30, 225, 180);
  assert(sun[0] > 0, "the left end is in the sun");
  const run = 1.3 * Math.SQRT1_2 / Math.tan(Math.PI / 6);
  const floor = share(HOUSE, sun, "front wall", "floor");
  assertAlmostEquals(floor, 1 - run / 24, 1e-9);
  const right = share(HOUSE, sun, "front wall", "right end wall") +
    share(HOUSE, sun, "front wall", "right end wall knee wall");
  assertAlmostEquals(floor + right, 1, 1e-9);
});

Deno.test("beamLanding() turns with the house", () => {
  // Property: only the sun's bearing from the front counts.
  for (const facing of [0, 130, 250]) {
    const turned = { ...HOUSE, facing };
    const sun = sunDirection(20, facing + 25, facing);
    const same = sunDirection(20, 205, 180);
    for (const to of ["floor", "back wall", "back roof"]) {
      assertAlmostEquals(
        share(turned, sun, "front roof", to),
        share(HOUSE, same, "front roof", to),
        1e-9,
      );
    }
  }
});

const anyHouse = fc.record({
  shape: fc.constantFrom("gable", "lean-to", "hoop"),
  length: fc.double({ min: 4, max: 60, noNaN: true }),
  width: fc.double({ min: 3, max: 15, noNaN: true }),
  eaveHeight: fc.double({ min: 0.7, max: 3, noNaN: true }),
  rise: fc.double({ min: 0.5, max: 5, noNaN: true }),
  northWall: fc.constantFrom(0.3, "glazed"),
  northRoof: fc.constantFrom(0.3, "glazed"),
}).map(({ rise, ...rest }) =>
  ({ ...HOUSE, ...rest, ridgeHeight: rest.eaveHeight + rise }) as HouseInputs
);
const elevation = fc.double({ min: 0.5, max: 89.5, noNaN: true });
const azimuth = fc.double({ min: 0, max: 360, noNaN: true });

Deno.test("beamLanding() loses no beam and makes none, for any house and any sun", () => {
  // Property: a closed convex room. Shares add up to 1, and what falls on a surface is no more than the
  // sun shows of it: the shadows of all panes and walls in front cover it once.
  fc.assert(
    fc.property(anyHouse, elevation, azimuth, (inputs, up, round) => {
      const { parts } = houseGeometry(inputs);
      const { surfaces } = room(inputs);
      const open = surfaces.map(({ outline }) => ({ outline, glazed: true }));
      const sun = sunDirection(up, round, inputs.facing);
      const landing = beamLanding(open)(sun);
      const cosine = (part: typeof parts[number]) => {
        const [tilt, turn, high] = [part.plane.tilt, round - part.plane.azimuth, up].map((angle) =>
          angle * Math.PI / 180
        ) as [number, number, number];
        return Math.sin(high) * Math.cos(tilt) + Math.cos(high) * Math.sin(tilt) * Math.cos(turn);
      };
      let onFloor = 0;
      for (const [from, shares] of landing) {
        assertAlmostEquals(shares.reduce((sum, one) => sum + one, 0), 1, 1e-9);
        onFloor += parts[from]!.area * cosine(parts[from]!) * shares[shares.length - 1]!;
      }
      const shown = inputs.length * inputs.width * Math.sin(up * Math.PI / 180);
      // a hoop's strips are a little longer than their chords
      assertAlmostEquals(onFloor, shown, (inputs.shape === "hoop" ? 0.03 : 1e-6) * shown + 1e-6);
    }),
    { numRuns: 200, seed: 5 },
  );
});

Deno.test("beamLanding() moves without jumps from moment to moment", () => {
  // Property: continuity; a thousandth of a degree, a quarter of a second of sun, above the horizon's
  // haze. Beam through a pane counts by what the pane shows the sun: near its plane its sliver of beam
  // sweeps fast, but holds no light.
  fc.assert(
    fc.property(anyHouse, elevation, azimuth, (inputs, low, round) => {
      const up = Math.max(4, low);
      const { surfaces } = room(inputs);
      const land = beamLanding(surfaces);
      const before = land(sunDirection(up, round, inputs.facing));
      const after = land(sunDirection(up + 0.001, round + 0.001, inputs.facing));
      for (const [from, shares] of before) {
        const later = after.get(from);
        const { outline } = surfaces[from]!;
        const [shown, next] = [0, 0.001].map((more) =>
          seen(outline, up + more, round + more, inputs.facing)
        ) as [number, number];
        if (later === undefined) assertAlmostEquals(shown, 0, 1e-3);
        else {
          shares.forEach((one, to) => assertAlmostEquals(one * shown, later[to]! * next, 3e-3));
        }
      }
    }),
    { numRuns: 200, seed: 6 },
  );
});

/** Share of its area that a surface shows the sun. */
function seen(
  outline: RoomSurface["outline"],
  up: number,
  round: number,
  facing: number,
): number {
  const sun = sunDirection(up, round, facing);
  let normal = [0, 0, 0];
  outline.forEach((a, i) => {
    const b = outline[(i + 1) % outline.length]!;
    normal = [
      normal[0]! + (a[1] - b[1]) * (a[2] + b[2]),
      normal[1]! + (a[2] - b[2]) * (a[0] + b[0]),
      normal[2]! + (a[0] - b[0]) * (a[1] + b[1]),
    ];
  });
  return Math.abs(normal[0]! * sun[0] + normal[1]! * sun[1] + normal[2]! * sun[2]) /
    Math.hypot(...normal);
}
