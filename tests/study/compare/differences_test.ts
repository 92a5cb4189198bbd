import { assert, assertAlmostEquals, assertEquals } from "@std/assert";
import fc from "fast-check";
import type { Figure, ResultsFile } from "../../../lib/study/mod.ts";
import { compareResults } from "../../../lib/study/mod.ts";

const FIGURE: fc.Arbitrary<Figure> = fc.record({
  value: fc.oneof(
    fc.double({ min: -1e6, max: 1e6, noNaN: true }),
    fc.constantFrom("dig", "no", null),
  ),
  unit: fc.constantFrom("kWh", "degC"),
  label: fc.string(),
}).chain((figure) =>
  typeof figure.value !== "number" ? fc.constant(figure) : fc.option(
    fc.record({ below: fc.nat(1000), above: fc.nat(1000) }),
    { nil: undefined },
  ).map((range) =>
    range === undefined ? figure : {
      ...figure,
      low: figure.value as number - range.below,
      high: figure.value as number + range.above,
    }
  )
);

const RESULTS: fc.Arbitrary<ResultsFile> = fc.record({
  figures: fc.dictionary(fc.constantFrom("store.a", "store.b", "worth.c", "house.d"), FIGURE),
  inputs: fc.record({
    soil: fc.record({ moisture: fc.double({ noNaN: true }), layers: fc.array(fc.nat()) }),
    worth: fc.record({
      prices: fc.uniqueArray(
        fc.record({ id: fc.constantFrom("tube", "fan"), price: fc.nat(), line: fc.nat() }),
        { selector: ({ id }) => id },
      ),
    }),
  }),
  notices: fc.array(fc.record({
    level: fc.constantFrom("info" as const, "caution" as const),
    chapter: fc.constantFrom("soil" as const, "store" as const),
    text: fc.constantFrom("one", "two", "three"),
  })),
  hash: fc.constantFrom("a", "b"),
}).map(({ figures, inputs, notices, hash }) => ({
  study: { name: "n", title: "t", author: "a", question: "q", units: "SI" },
  inputs,
  provenance: {
    studyHash: hash,
    climateHash: hash,
    library: { version: "1", hash },
    deno: "2",
    time: hash,
  },
  figures,
  notices,
}));

Deno.test("compareResults() finds nothing between a run and itself", () => {
  // Property: identity; the moment of the run does not count
  fc.assert(fc.property(RESULTS, (run) => {
    const again = { ...run, provenance: { ...run.provenance, time: "later" } };
    const { inputs, figures, same, gained, lost, provenance } = compareResults(run, again);
    assertEquals([inputs, figures, gained, lost, provenance], [[], [], [], [], []]);
    assertEquals(same, Object.keys(run.figures).length);
  }));
});

Deno.test("compareResults() is antisymmetric: the other way round every change has the other sign", () => {
  // Property: antisymmetry
  fc.assert(fc.property(RESULTS, RESULTS, (one, other) => {
    const [there, back] = [compareResults(one, other), compareResults(other, one)];
    const byKey = new Map(back.figures.map((figure) => [figure.key, figure]));
    assertEquals(there.figures.length, back.figures.length);
    for (const { key, change, first, second, beyondDoubt } of there.figures) {
      const mirrored = byKey.get(key)!;
      assertEquals(mirrored.first, second);
      assertEquals(mirrored.second, first);
      assertEquals(mirrored.change, change === null ? null : -change);
      assertEquals(mirrored.beyondDoubt, beyondDoubt);
    }
    assertEquals(there.gained, back.lost);
    assertEquals(there.inputs.length, back.inputs.length);
    assertEquals(there.provenance.length, back.provenance.length);
  }));
});

Deno.test("compareResults() calls a change beyond doubt where it is more than both ranges explain", () => {
  // Property: borders; half ranges of 3 and 4 make 5 together
  const figure = (value: number, half?: number): Figure => ({
    value,
    unit: "kWh",
    label: "heat saved",
    ...(half === undefined ? {} : { low: value - half, high: value + half }),
  });
  const [empty] = fc.sample(RESULTS, { numRuns: 1, seed: 1 });
  const doubt = (a: Figure, b: Figure) =>
    compareResults({ ...empty!, figures: { "store.a": a } }, {
      ...empty!,
      figures: { "store.a": b },
    }).figures[0]!;
  assertEquals(doubt(figure(10, 3), figure(14.9, 4)).beyondDoubt, false);
  assertEquals(doubt(figure(10, 3), figure(15.1, 4)).beyondDoubt, true);
  assertEquals(doubt(figure(10), figure(15.1)).beyondDoubt, null);
  assertAlmostEquals(doubt(figure(-10), figure(-15)).share!, -0.5);
  assertEquals(doubt(figure(0), figure(-15)).share, null);
  const warmer = { value: 4, unit: "degC", label: "coldest hour" };
  assertEquals(doubt({ ...warmer, value: 2 }, warmer).share, null);
});

Deno.test("compareResults() names a price by what it is of, not by its line", () => {
  // Property: a row moved in the list of prices changes nothing; a price changed is one input
  const [run] = fc.sample(RESULTS, { numRuns: 1, seed: 1 });
  const priced = (prices: unknown) => ({ ...run!, inputs: { worth: { prices } } });
  const tube = { id: "tube", price: 2, line: 1 };
  const fan = { id: "fan", price: 3, line: 2 };
  const moved = compareResults(priced([tube, fan]), priced([{ ...fan, line: 9 }, tube]));
  assertEquals(moved.inputs, []);
  const dearer = compareResults(priced([tube, fan]), priced([tube, { ...fan, price: 4 }]));
  assertEquals(dearer.inputs, [{ key: "worth.prices.fan.price", first: 3, second: 4 }]);
  assert(compareResults(priced([1, 2]), priced([2, 1])).inputs.length === 1);
});
