import { assert, assertEquals } from "@std/assert";
import fc from "fast-check";
import { samePlain } from "../../lib/basics/mod.ts";

const plain = fc.oneof(
  fc.jsonValue(),
  fc.record({
    list: fc.array(fc.double()),
    series: fc.array(fc.double()).map((values) => Float64Array.from(values)),
  }),
);

Deno.test("samePlain() finds a copy the same, and a changed number not", () => {
  // Property: copies hold the same; one entry changed does not
  fc.assert(fc.property(plain, (data) => samePlain(data, structuredClone(data))));
  fc.assert(
    fc.property(
      fc.array(fc.double({ noNaN: true, min: -1e6, max: 1e6 }), { minLength: 1 }),
      fc.nat(),
      (values, place) => {
        const one = { series: Float64Array.from(values) };
        const other = structuredClone(one);
        other.series[place % values.length]! += 1;
        return !samePlain(one, other);
      },
    ),
  );
});

Deno.test("samePlain() tells kinds, lengths and keys apart", () => {
  // Property: by hand
  assertEquals(samePlain(Float64Array.of(1), Float32Array.of(1)), false);
  assertEquals(samePlain([1, 2], [1]), false);
  assertEquals(samePlain({ a: undefined }, { b: undefined }), false);
  assertEquals(samePlain(null, {}), false);
  assert(samePlain({ a: NaN }, { a: NaN }));
});
