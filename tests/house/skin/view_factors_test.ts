import { assert, assertAlmostEquals } from "@std/assert";
import {
  houseGeometry,
  type RoomSurface,
  spotViewFactor,
  viewFactors,
} from "../../../lib/house/mod.ts";
import { HOUSE } from "../fixtures.ts";

type Point = readonly [number, number, number];

/** The six faces of a box: floor, ceiling, and four walls. */
function box(length: number, width: number, height: number): RoomSurface[] {
  const face = (...outline: Point[]) => ({ outline, glazed: false });
  const [x, y, z] = [length, width, height];
  return [
    face([0, 0, 0], [x, 0, 0], [x, y, 0], [0, y, 0]),
    face([0, 0, z], [x, 0, z], [x, y, z], [0, y, z]),
    face([0, 0, 0], [x, 0, 0], [x, 0, z], [0, 0, z]),
    face([0, y, 0], [x, y, 0], [x, y, z], [0, y, z]),
    face([0, 0, 0], [0, y, 0], [0, y, z], [0, 0, z]),
    face([x, 0, 0], [x, y, 0], [x, y, z], [x, 0, z]),
  ];
}

/** Aligned parallel rectangles, sides over distance. Incropera & DeWitt 2002 [incropera-dewitt-2002], table 13.2. */
function parallel(x: number, y: number): number {
  const [a, b] = [Math.hypot(1, x), Math.hypot(1, y)];
  return 2 / (Math.PI * x * y) * (
    0.5 * Math.log((1 + x * x) * (1 + y * y) / (1 + x * x + y * y)) +
    x * b * Math.atan(x / b) + y * a * Math.atan(y / a) - x * Math.atan(x) - y * Math.atan(y)
  );
}

Deno.test("viewFactors() of a cube are 0.1998 to the opposite face and 0.2000 to each other", () => {
  // Source: Incropera & DeWitt 2002 [incropera-dewitt-2002], table 13.2, aligned parallel rectangles
  // (from memory; 0.1998 for squares one side apart); the four others share the rest.
  const [floor] = viewFactors(box(1, 1, 1));
  assertAlmostEquals(parallel(1, 1), 0.1998, 5e-5);
  assertAlmostEquals(floor![1]!, 0.1998, 1e-3);
  for (const wall of [2, 3, 4, 5]) assertAlmostEquals(floor![wall]!, 0.2, 1e-3);
});

Deno.test("viewFactors() of long and flat rooms follow the formula of parallel rectangles", () => {
  // Source: Incropera & DeWitt 2002 [incropera-dewitt-2002], table 13.2 (from memory).
  for (const [length, width, height] of [[24, 8, 3], [12, 6, 2.5], [40, 9, 4]] as const) {
    const factors = viewFactors(box(length, width, height));
    assertAlmostEquals(factors[0]![1]!, parallel(length / height, width / height), 6e-3);
    assertAlmostEquals(factors[2]![3]!, parallel(length / width, height / width), 6e-3);
  }
});

Deno.test("viewFactors() of a house add up to 1, see nothing of their own plane, and are mutual", () => {
  // Property: closed room; A_i·F_ij = A_j·F_ji within the mean over spots.
  for (const shape of ["gable", "lean-to", "hoop"] as const) {
    const { parts, floorOutline, floorArea } = houseGeometry({ ...HOUSE, shape });
    const surfaces = [...parts, { outline: floorOutline, kind: "opaque", area: floorArea }];
    const factors = viewFactors(surfaces.map(({ outline }) => ({ outline, glazed: false })));
    const knee = parts.findIndex(({ name }) => name === "front wall knee wall");
    const pane = parts.findIndex(({ name }) => name === "front wall");
    if (knee >= 0) assertAlmostEquals(factors[knee]![pane]!, 0, 1e-9);
    factors.forEach((row, from) => {
      assertAlmostEquals(row.reduce((sum, one) => sum + one, 0), 1, 1e-12);
      row.forEach((one, to) => {
        const [there, back] = [
          surfaces[from]!.area * one,
          surfaces[to]!.area * factors[to]![from]!,
        ];
        assert(
          Math.abs(there - back) < 1e-3 + 0.02 * there,
          `${shape} ${from} ${to} ${there} ${back}`,
        );
      });
    });
  }
});

Deno.test("spotViewFactor() of a square over its middle follows the closed formula", () => {
  // Source: exact; four quarter rectangles seen from a corner, Incropera & DeWitt 2002
  // [incropera-dewitt-2002] (from memory).
  const half = 1.5;
  const quarter = half / Math.hypot(1, half) * Math.atan(half / Math.hypot(1, half)) / Math.PI;
  const square: Point[] = [[-half, -half, 1], [half, -half, 1], [half, half, 1], [-half, half, 1]];
  assertAlmostEquals(spotViewFactor([0, 0, 0], [0, 0, 1], square), 4 * quarter, 1e-12);
});
