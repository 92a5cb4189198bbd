import { assertEquals } from "@std/assert";
import { type AnyComputation, each, type Steps } from "../../../lib/basics/mod.ts";
import { startRun, type Study } from "../../../lib/study/mod.ts";

const square = { name: "square", run: (value: number) => value * value };

/** Squares of 1 and 2, then the squares of as many numbers as those add up to. */
function* squares(): Steps<number> {
  const first = yield* each(square, [1, 2]);
  const count = first.reduce((sum, value) => sum + value, 0);
  const more = yield* each(square, Array.from({ length: count }, (_, k) => k));
  return more.reduce((sum, value) => sum + value, 0);
}

Deno.test("a run says how many pieces of a result are done, of how many asked for so far", async () => {
  // Property: each piece is told once, and all that were asked for are done at the end
  const climate: AnyComputation = {
    after: [],
    takes: () => null,
    compute: () => 0,
    steps: squares,
  };
  const heard: [string, number, number][] = [];
  const run = startRun({} as Study, {
    cacheFolder: null,
    computations: new Map([["climate", climate]]),
    onPart: (name, done, asked) => heard.push([name, done, asked]),
  });
  assertEquals(await run.climate() as unknown, 30);
  assertEquals(heard, [
    ["climate", 1, 2],
    ["climate", 2, 2],
    ...[3, 4, 5, 6, 7].map((done): [string, number, number] => ["climate", done, 7]),
  ]);
});
