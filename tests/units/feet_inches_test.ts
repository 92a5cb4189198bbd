import { assert, assertEquals } from "@std/assert";
import fc from "fast-check";
import { feetInches } from "winterground/units/mod.ts";

Deno.test("feet and inches of lengths that are exact by definition (NIST SP 811, appendix B)", () => {
  // Source: [nist-sp811-2008], B.8: 1 in = 0.0254 m, 1 ft = 0.3048 m, 1 yd = 0.9144 m, exactly
  assertEquals(feetInches(0.0254), '1"');
  assertEquals(feetInches(0.3048), `1'-0"`);
  assertEquals(feetInches(0.9144), `3'-0"`);
  assertEquals(feetInches(0.3048 + 0.0254 / 2), `1'-0 1/2"`);
  assertEquals(feetInches(0.0254 * 151.5), `12'-7 1/2"`);
  assertEquals(feetInches(0.0254 * 4.625), '4 5/8"');
  assertEquals(feetInches(0.0254 / 16, 16), '1/16"');
  assertEquals(feetInches(0), '0"');
  assertEquals(feetInches(-0.3048), `−1'-0"`);
});

Deno.test("feet and inches come back within half of their finest fraction", () => {
  // Property: reading them aloud gives the length
  fc.assert(
    fc.property(
      fc.double({ min: -500, max: 500, noNaN: true }),
      fc.constantFrom(2, 4, 8, 16, 32),
      (length, finest) => {
        const found = /^(−?)(?:(\d+)'-)?(?:(\d+)(?: (?=\d+\/)|(?=")))?(?:(\d+)\/(\d+))?"$/.exec(
          feetInches(length, finest),
        );
        assert(found !== null, feetInches(length, finest));
        const [, sign, feet = "0", inches = "0", part = "0", of = "1"] = found;
        const read = 12 * Number(feet) + Number(inches) + Number(part) / Number(of);
        assert(Number(inches) < 12 && Number(of) <= finest && Number(part) < Number(of));
        const back = (sign === "" ? 1 : -1) * read * 0.0254;
        assert(Math.abs(back - length) <= 0.0254 / finest / 2 * (1 + 1e-9), `${length}: ${back}`);
      },
    ),
  );
});
