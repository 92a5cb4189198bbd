// Property: conservation of length, and cases that can be done by hand
import { assert, assertAlmostEquals, assertEquals, assertThrows } from "@std/assert";
import fc from "fast-check";
import { coilCuts, cutCoils } from "winterground/worth/mod.ts";

Deno.test("coilCuts() cuts whole tubes where a coil holds one", () => {
  assertEquals(coilCuts(36, 22, 76), {
    coils: 12,
    joints: 0,
    offCut: 120,
    words: "3 tubes from each, no joints",
  });
  assertEquals(coilCuts(4, 25, 100).coils, 1);
  assertEquals(coilCuts(5, 25, 100).coils, 2);
});

Deno.test("coilCuts() joins pieces where a tube is longer than a coil", () => {
  const { coils, joints, offCut } = coilCuts(3, 40, 30);
  assertEquals([coils, joints, offCut], [4, 3, 0]);
  assertEquals(coilCuts(1, 90, 30).joints, 2);
  assertEquals(coilCuts(3, 45, 30).joints, 3);
});

Deno.test("coils hold the tubes and no coil too many is bought", () => {
  const lengths = fc.double({ min: 1, max: 80, noNaN: true });
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 300 }), lengths, lengths, (count, length, coil) => {
      const cuts = coilCuts(count, length, coil);
      assertAlmostEquals(cuts.coils * coil, count * length + cuts.offCut, 1e-6);
      assert(cuts.offCut > -1e-6);
      const each = Math.max(1, Math.floor(coil / length));
      assert((cuts.coils - 1) * (coil >= length ? each : coil / length) < count + 1e-6);
      if (coil >= length) assertEquals(cuts.joints, 0);
    }),
  );
});

Deno.test("a coil without length is refused", () => {
  assertThrows(() => coilCuts(1, 10, 0), Error, "coils of 0 m");
});

Deno.test("cutCoils() names the tubes of each coil", () => {
  const tubes = cutCoils(4, 22, 50).map(({ pieces }) => pieces.map(({ tube }) => tube));
  assertEquals(tubes, [[1, 2], [3, 4]]);
  assertEquals(cutCoils(2, 40, 30).map(({ pieces }) => pieces), [
    [{ tube: 1, length: 30 }],
    [{ tube: 1, length: 10 }, { tube: 2, length: 20 }],
    [{ tube: 2, length: 20 }],
  ]);
});

Deno.test("the list of cuts gives every tube its length and no coil more than it holds", () => {
  const lengths = fc.double({ min: 1, max: 80, noNaN: true });
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 60 }), lengths, lengths, (count, length, coil) => {
      const cuts = cutCoils(count, length, coil);
      const { coils, offCut } = coilCuts(count, length, coil);
      assertEquals(cuts.length, coils);
      const pieces = cuts.flatMap((one) => one.pieces);
      for (let tube = 1; tube <= count; tube++) {
        const own = pieces.filter((piece) => piece.tube === tube);
        assertAlmostEquals(own.reduce((sum, piece) => sum + piece.length, 0), length, 1e-4);
        if (coil >= length) assertEquals(own.length, 1);
      }
      assertAlmostEquals(cuts.reduce((sum, { left }) => sum + left, 0), offCut, 1e-4);
      for (const { pieces, left } of cuts) {
        assertAlmostEquals(pieces.reduce((sum, one) => sum + one.length, left), coil, 1e-4);
      }
    }),
  );
});
