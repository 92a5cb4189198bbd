import { assert, assertEquals, assertLess } from "@std/assert";
import { flowShares } from "../../../lib/store/air/flow_shares.ts";
import { storeSite } from "../../../lib/store/site.ts";
import { reducedEngine } from "../../../lib/store/solver/reduced/engine.ts";
import { reducedState } from "../../../lib/store/solver/reduced/fields.ts";
import { reduceSlice } from "../../../lib/store/solver/reduced/reduction.ts";
import { runHours } from "../../bench/store_case.ts";
import { standInRequest } from "../stand_in.ts";

/** Two layers of ten tubes, the flows of each mirrored pair that far apart. */
function tilted(difference: number, rough?: boolean): ReturnType<typeof standInRequest> {
  const request = standInRequest({});
  const { positions } = request.tubes;
  const shares = Float64Array.from(positions, ({ x }) => 1 + Math.sign(x) * difference / 2);
  return { ...request, headers: { shares }, rough };
}

Deno.test("flowShares() take a mirrored pair at its mean flow up to a tenth, 15 % where stores are compared", () => {
  // Property: the mean of all flows stays; half a slice up to the difference, the whole beyond
  for (
    const [difference, rough, half] of [
      [0.09, undefined, true],
      [0.12, undefined, false],
      [0.14, true, true],
      [0.16, true, false],
    ] as const
  ) {
    const found = flowShares(tilted(difference, rough));
    assertEquals(found.half, half, `${difference} ${rough}`);
    const total = found.shares.reduce((sum, share) => sum + share, 0);
    assertLess(Math.abs(total / found.shares.length - 1), 1e-12);
  }
});

Deno.test("pairs of tubes 15 % apart at their mean flow give the outlet of the whole slice within 0.02 K", () => {
  // Property: what the mean flow misses is of second order in the difference; air comes in at 5 and at
  // 18 to 30 degC, into ground of 8 degC
  const outlets = (rough: boolean) => {
    const site = storeSite(tilted(0.149, rough), 8, 72);
    assertEquals(site.field.copies, rough ? 2 : 1);
    const slice = reduceSlice(site.operator);
    const engine = reducedEngine(slice, site.lengths.length, [3600]);
    engine.load(reducedState(slice, engine.lanes, site.operator.capacity.map(() => 8)));
    return runHours(site, engine, 480);
  };
  const [half, whole] = [outlets(true), outlets(false)];
  const apart = Array.from(half, (outlet, hour) => Math.abs(outlet - whole[hour]!))
    .filter((difference) => !Number.isNaN(difference));
  assert(apart.length > 200);
  assert(Math.max(...apart) > 0);
  assertLess(Math.max(...apart), 0.02);
});
