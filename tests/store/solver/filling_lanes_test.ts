import { assertEquals } from "@std/assert";
import { storeSite } from "../../../lib/store/site.ts";
import { reducedEngine } from "../../../lib/store/solver/reduced/engine.ts";
import { reducedState } from "../../../lib/store/solver/reduced/fields.ts";
import { reduceSlice } from "../../../lib/store/solver/reduced/reduction.ts";
import { standInRequest } from "../stand_in.ts";

/** Least double the processor handles at full speed. */
const LEAST_NORMAL = 2 ** -1022;

Deno.test("reducedEngine() holds no state too small to be quick after two years, nine lanes", () => {
  // Property: lanes that only fill the last block of four hold 0, not a fading start
  const site = storeSite(standInRequest({ store: { slices: 9 } }), 8, 72);
  const slice = reduceSlice(site.operator);
  const engine = reducedEngine(slice, 9, [3600]);
  engine.load(reducedState(slice, 9, new Float64Array(site.operator.capacity.length).fill(6)));
  const [outdoor, deep, driving] = [0, 1, 2].map(() => new Float64Array(9)) as [
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  const heat = new Float64Array(9 * engine.tubes);
  for (let hour = 0; hour < 2 * 8760; hour++) {
    outdoor.fill(3 - 12 * Math.cos(2 * Math.PI * hour / 8760));
    driving.fill(8 + 6 * Math.sin(2 * Math.PI * hour / 24));
    engine.predict(0, outdoor, deep, false);
    engine.finish(0, heat, driving, false);
  }
  const small = engine.save().filter((x) => x !== 0 && Math.abs(x) < LEAST_NORMAL);
  assertEquals(small.length, 0);
});
