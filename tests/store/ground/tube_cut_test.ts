import { assert, assertAlmostEquals } from "@std/assert";
import { fillGap } from "../../../lib/store/ground/graded.ts";
import { betweenCells, cutMesh, wallByCell } from "../../../lib/store/ground/tube_cut.ts";

const RADIUS = 0.1;
const sizes = [0.08, 0.05, 0.05, 0.05, 0.05, 0.08];
const tube = {
  columns: [1, 5] as const,
  rows: [1, 5] as const,
  x: 0.18,
  y: 0.18,
};

Deno.test("cutMesh() leaves the square less the circle, and its middle in the middle", () => {
  // Property: area and first moments of a plane figure; a thousandth of it stays in the tube's cells
  const cut = cutMesh(sizes, sizes, [tube], RADIUS);
  const area = cut.area.reduce((sum, value) => sum + value, 0);
  assertAlmostEquals(area, 0.36 ** 2 - Math.PI * RADIUS ** 2, 2e-5);
  const edges = [0, 0.08, 0.13, 0.18, 0.23, 0.28];
  let moment = 0;
  cut.area.forEach((value, c) => moment += value * (edges[c % 6]! + cut.across[c]!));
  assertAlmostEquals(moment / area, 0.18, 1e-9);
});

Deno.test("cutMesh() closes the faces inside the tube and opens those outside", () => {
  // Property: a face in the middle of the tube conducts a thousandth, one outside all; mirror images
  // conduct alike
  const cut = cutMesh(sizes, sizes, [tube], RADIUS);
  const right = (row: number, column: number) =>
    betweenCells(sizes, sizes, cut, row * 6 + column).right;
  assert(right(2, 2) < 0.01);
  assertAlmostEquals(right(0, 0), 0.08 / 0.065, 1e-12);
  assertAlmostEquals(right(1, 1), right(4, 3), 1e-9);
  assertAlmostEquals(right(1, 0), right(1, 4), 1e-9);
});

Deno.test("wallByCell() shares the wall out as the arcs do, whole and in halves", () => {
  // Property: shares sum to 1; the arc of the outermost corner cell runs from 30° to 60°
  const edges = [-0.1, -0.05, 0, 0.05, 0.1];
  const whole = wallByCell(edges, edges, RADIUS);
  assertAlmostEquals(whole.reduce((sum, value) => sum + value, 0), 1, 1e-12);
  assertAlmostEquals(whole[0]!, 1 / 12, 1e-12);
  assertAlmostEquals(whole[1]!, 1 / 12, 1e-12);
  const half = wallByCell([0, 0.05, 0.1], edges, RADIUS, true);
  assertAlmostEquals(half.reduce((sum, value) => sum + value, 0), 1, 1e-12);
  assertAlmostEquals(half[1]!, 1 / 6, 1e-12);
});

Deno.test("fillGap() grows small cells more slowly than large ones", () => {
  // Property: neighbours below the limit differ by the small ratio, the others by no more than 1.4
  const growth = { ratio: 1.4, largest: 1.6, fine: { ratio: 1.2, below: 0.1 } };
  const cells = fillGap(6, 0.02, Infinity, growth);
  cells.slice(1).forEach((size, k) => {
    assertAlmostEquals(size / cells[k]!, k < 9 ? 1.2 : Math.min(1.4, size / cells[k]!), 1e-9);
  });
  assert(cells.length > 12);
});
