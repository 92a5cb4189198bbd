import { assert, assertAlmostEquals, assertEquals, assertLess } from "@std/assert";
import fc from "fast-check";
import { siteField } from "../../../lib/store/air/site_tubes.ts";
import type { ConductionOperator } from "../../../lib/store/ground/operator.ts";
import { tubeGroups, withGroups } from "../../../lib/store/ground/tube_groups.ts";
import { tubePlaces, tubePorts } from "../../../lib/store/ground/tube_ports.ts";
import { type StoreSite, storeSite } from "../../../lib/store/site.ts";
import { reducedEngine } from "../../../lib/store/solver/reduced/engine.ts";
import { reducedState } from "../../../lib/store/solver/reduced/fields.ts";
import { reduceSlice } from "../../../lib/store/solver/reduced/reduction.ts";
import { runHours } from "../../bench/store_case.ts";
import { standInRequest } from "../stand_in.ts";

/** A slice that has tubes and nothing else: rows of them, ten cells apart. */
function rows(perRow: readonly number[]): ConductionOperator {
  const columns = 10 * Math.max(...perRow) + 10;
  const tubes = perRow.flatMap((count, row) =>
    Array.from({ length: count }, (_, k) => ({
      cells: Int32Array.of(5 * row * columns + 10 * k, 5 * row * columns + 10 * k + 1),
      weights: Float64Array.of(0.5, 0.5),
      resistance: 0.01,
      part: 1,
    }))
  );
  return { columns, tubes } as unknown as ConductionOperator;
}

Deno.test("tubeGroups() hold each tube once, neighbours of one row, the nine or three at an end alone", () => {
  // Property: a division of the tubes
  fc.assert(fc.property(
    fc.array(fc.integer({ min: 1, max: 120 }), { minLength: 1, maxLength: 3 }),
    fc.boolean(),
    fc.boolean(),
    (perRow, half, rough) => {
      const operator = rows(perRow);
      const count = operator.tubes.length;
      const groups = tubeGroups(operator, new Array<number>(count).fill(1), half, rough);
      const alone = rough ? 3 : 9;
      assertEquals(
        groups.flat().toSorted((a, b) => a - b),
        Array.from({ length: count }, (_, k) => k),
      );
      let first = 0;
      for (const row of perRow) {
        for (const group of groups.filter((g) => g[0]! >= first && g[0]! < first + row)) {
          const [from, to] = [Math.min(...group) - first, Math.max(...group) - first];
          assertEquals(to - from, group.length - 1);
          if (row - 1 - to < alone || (!half && from < alone)) assertEquals(group.length, 1);
        }
        first += row;
      }
      const joined = withGroups(operator, groups);
      assertAlmostEquals(joined.tubes.reduce((sum, tube) => sum + tube.part, 0), count, 1e-9);
      for (const { weights } of joined.tubes) {
        assertAlmostEquals(weights.reduce((sum, weight) => sum + weight, 0), 1, 1e-12);
      }
    },
  ));
});

Deno.test("tubeGroups() leave a tube of another flow to itself", () => {
  // Property: flows that differ by more than a fifth are not taken together
  const shares = new Array<number>(60).fill(1);
  const alike = tubeGroups(rows([60]), shares, true);
  const odd = alike.find((group) => group.length > 4)![2]!;
  shares[odd] = 0.7;
  const apart = tubeGroups(rows([60]), shares, true).find((group) => group.includes(odd))!;
  assertEquals(apart, [odd]);
});

/** The site with every tube for itself. */
function ungrouped(site: StoreSite, request: ReturnType<typeof standInRequest>): StoreSite {
  const tubes = tubePorts({
    mesh: site.mesh,
    places: tubePlaces(site.mesh),
    radius: request.tubes.product.outsideDiameter / 2,
    conductivity: site.operator.capacity.map(() => request.soil.properties.conductivity),
  });
  const operator = { ...site.operator, tubes };
  const field = siteField(request, operator, { half: true, shares: tubes.map(() => 1) });
  return { ...site, operator, field };
}

Deno.test("tubes taken together give the outlet that they give one by one, within 0.01 K", () => {
  // Property: neighbours far from the ends of a row differ in the second order; sixty tubes in a
  // house of 28 m, its mirror half of thirty in fifteen groups
  const request = standInRequest({
    tubes: { count: 60, layers: 1, airFlow: 1.35 },
    house: { width: 28, ridgeHeight: 8 },
    store: { slices: 4 },
  });
  const together = storeSite(request, 8, 28 * 12);
  const single = ungrouped(together, request);
  assertEquals([together.operator.tubes.length, single.operator.tubes.length], [15, 30]);
  const [one, other] = [together, single].map((site) => {
    const slice = reduceSlice(site.operator);
    const engine = reducedEngine(slice, 4, [3600]);
    engine.load(reducedState(slice, 4, site.operator.capacity.map(() => 8)));
    return runHours(site, engine, 480);
  });
  let most = 0;
  one!.forEach((outlet, hour) => {
    if (!Number.isNaN(outlet)) most = Math.max(most, Math.abs(outlet - other![hour]!));
  });
  assert(most > 0);
  assertLess(most, 0.01);
});
