import { assertEquals } from "@std/assert";
import fc from "fast-check";
import { packSeries, unpackSeries } from "winterground/live/packed.ts";

Deno.test("a year of weather comes out of a page as it went in, to the last bit", async () => {
  // Property: pack and unpack, with every kind of number
  await fc.assert(
    fc.asyncProperty(
      fc.array(fc.float64Array({ minLength: 24, maxLength: 24 }), { minLength: 1, maxLength: 9 }),
      async (series) => {
        const back = await unpackSeries(await packSeries(series), series.length);
        assertEquals(back.length, series.length);
        back.forEach((one, k) =>
          assertEquals(
            new Uint8Array(one.buffer),
            new Uint8Array(Float64Array.from(series[k]!).buffer),
          )
        );
      },
    ),
    { numRuns: 30 },
  );
});
