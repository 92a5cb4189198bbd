// Property: every fault of a sweep file is named with line and key; a sound one gives as many rows as its values make.
import { assert, assertEquals, assertThrows } from "@std/assert";
import fc from "fast-check";
import { InputErrors } from "winterground/basics/mod.ts";
import { readSweep, rowValues, shardRows } from "winterground/study/sweep/mod.ts";

function faultsOf(text: string): readonly string[] {
  const error = assertThrows(() => readSweep(text, "sweep.yaml"), InputErrors);
  return error.faults.map(({ message }) => message);
}

Deno.test("readSweep() names every fault with its line and the nearest word", () => {
  const faults = faultsOf(`form: gird
chapters: [tubse]
seed: 3
keyz: {}
keys:
  soil.moistur: [15 %]
  tubes.count: {from: 3, to: 10, steps: 4}
  tubes.length: {from: 3 m, to: 10 kg, steps: 4}
  house.shape: {from: 1, to: 2, steps: 2}
  fan.speed: 0.4
  store.slices: {from: 1}
  soil.quartz: []
  house.curtain: [none]
  house.curtain.coverage: [80 %]
`);
  const wanted: readonly [number, string][] = [
    [1, '"form" must be one of grid, zip, sample'],
    [2, 'did you mean "tubes"?'],
    [3, '"seed" belongs to the form sample'],
    [4, 'did you mean "keys"?'],
    [6, 'did you mean "soil.moisture"?'],
    [7, "takes whole numbers"],
    [8, "expected a length such as"],
    [9, "holds no quantity"],
    [10, "must be a list of values, or a range"],
    [11, 'lacks "to"'],
    [12, "has no values"],
    [14, 'lies within "house.curtain"'],
  ];
  assertEquals(faults.length, wanted.length, faults.join("\n"));
  wanted.forEach(([line, words], place) => {
    assert(faults[place]!.startsWith(`sweep.yaml:${line}:`), faults[place]!);
    assert(faults[place]!.includes(words), faults[place]!);
  });
});

Deno.test("readSweep() refuses values that the study would refuse, and forms that lack what they need", () => {
  assert(faultsOf("keys: {soil.moisture: [15 %, 150 %]}")[0]!.includes("must lie between"));
  assert(faultsOf("form: sample\nkeys: {soil.moisture: {from: 15 %, to: 20 %}}")[0]!
    .includes('Samples need "rows"'));
  assert(faultsOf("form: zip\nkeys: {tubes.count: [3, 4], tubes.length: [9 m]}")[0]!
    .includes('"tubes.length" has 1 values and "tubes.count" 2'));
  assert(
    faultsOf("rows: 3\nkeys: {tubes.count: [3, 4]}")[0]!.includes("belongs to the form sample"),
  );
  assert(faultsOf("keys: {}")[0]!.includes('"keys" must name keys'));
  assert(faultsOf("- a")[0]!.includes("expected keys such as"));
});

Deno.test("a grid has as many rows as the product of its lists, each combination once", () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 5 }),
      fc.integer({ min: 2, max: 5 }),
      fc.integer({ min: 1, max: 4 }),
      (counts, steps, words) => {
        const list = Array.from({ length: counts }, (_, k) => k + 1).join(", ");
        const lengths = Array.from({ length: words }, (_, k) => `${k + 8} m`).join(", ");
        const plan = readSweep(
          `keys:
  tubes.count: [${list}]
  soil.moisture: {from: 15 %, to: 35 %, steps: ${steps}}
  tubes.length: [${lengths}]`,
          "sweep.yaml",
        );
        assertEquals(plan.rows, counts * steps * words);
        const valuesOf = rowValues(plan);
        const rows = Array.from({ length: plan.rows }, (_, k) => JSON.stringify(valuesOf(k + 1)));
        assertEquals(new Set(rows).size, plan.rows);
      },
    ),
  );
});

Deno.test("a zip takes the values one after the other; a range has both its ends", () => {
  const plan = readSweep(
    "form: zip\nkeys: {tubes.count: [3, 4, 6], soil.moisture: {from: 30 %, to: 10 %, steps: 3}}",
    "sweep.yaml",
  );
  const valuesOf = rowValues(plan);
  assertEquals([1, 2, 3].map(valuesOf), [[3, "30 %"], [4, "20 %"], [6, "10 %"]]);
});

Deno.test("samples stay within their ranges, take each value of a list alike, and whole numbers whole", () => {
  for (const points of ["sobol", "latin"]) {
    const plan = readSweep(
      `form: sample
rows: 64
points: ${points}
seed: 5
keys:
  tubes.count: {from: 3, to: 6}
  house.glazing: [twin-wall-8mm, double-film]
  soil.moisture: {from: 15 %, to: 35 %}`,
      "sweep.yaml",
    );
    const rows = Array.from({ length: 64 }, (_, k) => rowValues(plan)(k + 1));
    const tally = (column: number) =>
      Object.values(Object.groupBy(rows, (row) => String(row[column]))).map((list) => list!.length);
    assertEquals(tally(0).toSorted(), [16, 16, 16, 16], points);
    assertEquals(tally(1), [32, 32], points);
    const moistures = rows.map((row) => parseFloat(row[2] as string));
    assert(Math.min(...moistures) >= 15 && Math.min(...moistures) < 15.4);
    assert(Math.max(...moistures) <= 35 && Math.max(...moistures) > 34.6);
  }
});

Deno.test("shards take every row once, as evenly as can be", () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 300 }),
      fc.integer({ min: 1, max: 40 }),
      (rows, count) => {
        const parts = Array.from(
          { length: count },
          (_, k) => shardRows(rows, { index: k + 1, count, from: "test" }),
        );
        assertEquals(
          parts.flat().toSorted((a, b) => a - b),
          Array.from({ length: rows }, (_, k) => k + 1),
        );
        const sizes = parts.map(({ length }) => length);
        assert(Math.max(...sizes) - Math.min(...sizes) <= 1);
      },
    ),
  );
});
