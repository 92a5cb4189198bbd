import { assertLess } from "@std/assert";
import { tubeCoupling } from "../../../lib/store/air/coupling.ts";
import { storeSite } from "../../../lib/store/site.ts";
import { reducedEngine } from "../../../lib/store/solver/reduced/engine.ts";
import { reduceSlice } from "../../../lib/store/solver/reduced/reduction.ts";
import { standInRequest } from "../stand_in.ts";

Deno.test("tubeCoupling(): where all air grows warmer alike every wall does, tubes taken together too", () => {
  // Property: sixty like tubes in a row, the mirror half of thirty in fifteen groups of one to four;
  // a tube of a group of n takes up a part 1/n of the group's heat. Neighbours that are heated too
  // never cool a wall.
  const request = standInRequest({
    tubes: { count: 60, layers: 1, airFlow: 1.35 },
    house: { width: 28, ridgeHeight: 8 },
    store: { slices: 4 },
  });
  const site = storeSite(request, 8, 28 * 12);
  const engine = reducedEngine(reduceSlice(site.operator), site.lengths.length, [300]);
  const { together } = tubeCoupling(engine, site.field, site.tubeLengthFactor, 0);
  const ofOneTube = Array.from(together, (value, k) => value * site.operator.tubes[k]!.part);
  const mean = ofOneTube.reduce((sum, value) => sum + value, 0) / ofOneTube.length;
  for (const value of ofOneTube) assertLess(Math.abs(value - mean), 0.1 * mean);
});
