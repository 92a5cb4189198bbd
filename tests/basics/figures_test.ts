import { assert, assertEquals } from "@std/assert";
import fc from "fast-check";
import { numberFigure, withRange } from "winterground/basics/figures.ts";

const ANY = fc.oneof(
  fc.double(),
  fc.constantFrom(null, undefined, NaN, Infinity, -Infinity),
);

Deno.test("a figure is a finite number, or none with the reason; its range is finite or left out", () => {
  // Property: no NaN, Infinity or undefined, whatever a chapter hands over
  fc.assert(
    fc.property(ANY, fc.option(fc.tuple(fc.double(), fc.double())), (value, range) => {
      const [key, figure] = withRange(
        numberFigure("store.a", value, "kWh", "heat", "the fan never ran"),
        range,
      );
      assertEquals(key, "store.a");
      const given = typeof value === "number" && Number.isFinite(value);
      assertEquals(figure.value, given ? value : null);
      assertEquals(figure.label, given ? "heat" : "heat: the fan never ran");
      const ranged = given && range !== null && range.every(Number.isFinite);
      assertEquals([figure.low, figure.high], ranged ? range : [undefined, undefined]);
      assert(Object.values(figure).every((one) => one !== undefined));
    }),
  );
});
