import { assert, assertEquals } from "@std/assert";
import fc from "fast-check";
import { thin } from "../../../lib/show/kit/thin.ts";

Deno.test("thin() keeps first, last, lowest and highest point, in order, within the limit", () => {
  // Property: nothing a reader looks for is lost
  fc.assert(
    fc.property(
      fc.array(fc.double({ noNaN: true, min: -1e6, max: 1e6 }), { minLength: 1, maxLength: 3000 }),
      fc.integer({ min: 4, max: 500 }),
      (values, limit) => {
        const points = values.map((y, x) => ({ x, y }));
        const kept = thin(points, limit);
        assert(kept.length <= Math.max(limit, 1));
        assertEquals(kept[0], points[0]);
        assertEquals(kept[kept.length - 1], points[points.length - 1]);
        for (let i = 1; i < kept.length; i++) assert(kept[i]!.x > kept[i - 1]!.x);
        assertEquals(Math.max(...kept.map((p) => p.y)), Math.max(...values));
        assertEquals(Math.min(...kept.map((p) => p.y)), Math.min(...values));
      },
    ),
    { numRuns: 60 },
  );
});
