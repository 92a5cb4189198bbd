import { assert, assertAlmostEquals, assertEquals } from "@std/assert";
import fc from "fast-check";
import { carriedShare, emptyTagLedger } from "winterground/store/ledger/tag_ledger.ts";

/** Heat of one quarter given back in the next, of its own quarter, and by the undisturbed ground, J. */
function year(earlier: number, same: number, ground: number) {
  const tags = emptyTagLedger();
  tags.back[1]!.set([earlier, same, 0, 0, ground]);
  tags.sameQuarter[1] = same;
  return carriedShare(tags, earlier + same + ground);
}

Deno.test("carriedShare() lies within 0 and 1, whatever the undisturbed ground gives or takes", () => {
  // Property: a share; hand arithmetic where the ground gives and where it takes
  assertAlmostEquals(year(20, 60, 120)!, 0.1, 1e-12);
  assertAlmostEquals(year(60, 20, -40)!, 0.75, 1e-12); // 1.5 of the 40 J that are left
  assertEquals(year(0, 0, 0), null);
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 1e12, noNaN: true }),
      fc.double({ min: 0, max: 1e12, noNaN: true }),
      fc.double({ min: -1e12, max: 1e12, noNaN: true }),
      (earlier, same, ground) => {
        const share = year(earlier, same, ground);
        assert(share === null || (share >= 0 && share <= 1 + 1e-12), `${share}`);
      },
    ),
  );
});

Deno.test("carriedShare() makes no jump where the ground turns from giving to taking", () => {
  // Property: continuity
  assertAlmostEquals(year(30, 70, 1e-6)!, year(30, 70, -1e-6)!, 1e-7);
});
