import { assert, assertAlmostEquals, assertEquals } from "@std/assert";
import fc from "fast-check";
import {
  footingLine,
  footingRemark,
  footingWarning,
  type Pit,
  pitVolume,
} from "../../lib/tubes/mod.ts";
import { fieldPit, pitNotices } from "../../lib/headers/mod.ts";
import { field, HEADERS } from "./fields.ts";

const PIT: Pit = { width: 5, length: 15, depth: 1.3, lowEnd: 1.4, batter: 0 };
const HOUSE = { along: 20, across: 8 };
const room = (footingDepth: number | null, pit = PIT) =>
  footingLine(pit, { footingDepth, house: HOUSE });

Deno.test("footingLine() falls by a metre for each metre below the footing", () => {
  // Property: 45° line; hand arithmetic: 1.5 m to the outline, 0.15 m of footing
  assertAlmostEquals(room(0.5).room!, 1.35 - 0.9, 1e-12);
  assertAlmostEquals(room(0.9).room! - room(0.5).room!, 0.4, 1e-12);
  assertAlmostEquals(room(0).room!, 1.35 - 1.4, 1e-12);
  assertAlmostEquals(room(2).room!, 1.35, 1e-12);
  assertAlmostEquals(room(null).footingNeeded!, 0.05, 1e-12);
});

Deno.test("footingLine() keeps the whole side of a battered pit off the footing", () => {
  // Property: hand arithmetic: at 1:1 the upper edge lies 1.4 m nearer than the lower, 0.05 m past it
  const battered = room(2, { ...PIT, batter: 1 });
  assertAlmostEquals(battered.topEdge, -0.05, 1e-12);
  assertAlmostEquals(battered.room!, -0.05, 1e-12);
  assertEquals(room(null, { ...PIT, batter: 1 }).footingNeeded, null);
  assertAlmostEquals(room(2, { ...PIT, batter: 0.5 }).room!, 1.35 - 0.7, 1e-12);
});

Deno.test("a footing of the depth that is needed leaves just no room, and less cuts", () => {
  // Property: footingNeeded inverts room
  fc.assert(fc.property(
    fc.double({ min: 0.5, max: 3, noNaN: true }),
    fc.double({ min: 1, max: 7.5, noNaN: true }),
    fc.double({ min: 0, max: 0.3, noNaN: true }),
    (lowEnd, width, batter) => {
      const pit = { ...PIT, lowEnd, width, batter };
      const { footingNeeded } = room(null, pit);
      if (footingNeeded === null) {
        assert(room(3, pit).room! < 0);
        return;
      }
      assert(room(footingNeeded + 1e-6, pit).room! >= 0);
      if (footingNeeded > 0.01) assert(room(footingNeeded - 0.01, pit).room! < 0);
    },
  ));
});

Deno.test("footingWarning() opens with the remark of the sheets and is silent only where there is room", () => {
  // Property: one result, one sentence
  for (const depth of [null, 0, 0.05, 0.5, 2]) {
    for (const batter of [0, 1]) {
      const line = room(depth, { ...PIT, batter });
      const warning = footingWarning(line);
      assertEquals(warning === null, line.room !== null && line.room >= 0);
      if (warning !== null) assert(warning.startsWith(footingRemark(line)));
    }
  }
});

Deno.test("pitVolume() of vertical sides is a box, of a batter a prismoid", () => {
  // Property: hand arithmetic; a square pyramid upside down of 2 m by 2 m by 1 m holds 4/3 m³
  assertAlmostEquals(pitVolume(PIT), 5 * 15 * 1.3, 1e-9);
  const pyramid = { width: 0, length: 0, depth: 1, lowEnd: 1, batter: 1 };
  assertAlmostEquals(pitVolume(pyramid), 4 / 3, 1e-12);
});

Deno.test("pitNotices() warns of trench walls from 1.2 m of pit, headers and fall counted", () => {
  // Property: hand arithmetic: tubes at 0.8 m, half of a 305 mm header, 0.1 m of bedding, 75 mm of fall
  const pit = fieldPit({ tubes: field(), slope: 0.01, headers: HEADERS });
  assertAlmostEquals(pit.depth, 0.8 + 0.1525 + 0.1, 1e-9);
  assertAlmostEquals(pit.lowEnd, pit.depth + 0.075, 1e-9);
  const house = { length: 24, width: 8, footingDepth: 3 };
  assertEquals(pitNotices(pit, house, "along"), []);
  const deep = fieldPit({ tubes: field({ depth: 1 }), slope: 0.01, headers: HEADERS });
  const [trench, ...others] = pitNotices(deep, house, "along");
  assertEquals(others, []);
  assert(trench!.text.includes("Trench walls collapse") && trench!.level === "caution");
  const [across] = pitNotices(deep, { ...house, footingDepth: 0.2 }, "across");
  assert(across!.text.includes("45° line"), "tubes of 15 m do not fit across 8 m");
});
