import { assert, assertEquals } from "@std/assert";
import { storeSite } from "../../../lib/store/site.ts";
import { reducedEngine } from "../../../lib/store/solver/reduced/engine.ts";
import { reducedState } from "../../../lib/store/solver/reduced/fields.ts";
import { reduceSlice } from "../../../lib/store/solver/reduced/reduction.ts";
import { freezingZones } from "../../../lib/store/ground/zones.ts";
import type { ReducedEngine } from "../../../lib/store/solver/reduced/slice.ts";
import { standInRequest } from "../stand_in.ts";

const LANES = 3;

function march(engine: ReducedEngine, from: number, steps: number): unknown {
  const series = () => new Float64Array(LANES);
  const [outdoor, deep, driving] = [series(), series(), series()];
  const heat = new Float64Array(LANES * engine.tubes);
  const seen: number[] = [];
  for (let step = from; step < from + steps; step++) {
    const running = step % 7 < 3;
    outdoor.fill(-6 + 9 * Math.sin(step / 300));
    deep.fill(6);
    driving.fill(-4 + 8 * Math.sin(step / 40));
    engine.predict(0, outdoor, deep, running);
    seen.push(...engine.floorPull, ...running ? engine.blockTemperature : []);
    heat.fill(running ? 20 * Math.sin(step / 25) : 0);
    engine.finish(0, heat, driving, running);
    seen.push(...engine.floorHeat, ...engine.outdoorHeat, ...engine.storeTemperature);
  }
  return [seen, engine.content()];
}

Deno.test("an engine goes on from a saved state as if it had never stopped, whatever ran in between", () => {
  // Property: a saved state holds everything the next step depends on, to the bit
  const site = storeSite(standInRequest({ store: { slices: LANES } }), 8, 72);
  const slice = reduceSlice(site.operator, undefined, freezingZones(site.mesh, site.operator));
  const field = new Float64Array(site.operator.capacity.length).fill(4);
  const fresh = () => reducedEngine(slice, LANES, [1800]);
  const engine = fresh();
  engine.load(reducedState(slice, LANES, field));
  march(engine, 0, 4001);
  assert(engine.ice().some((ice) => ice > 0), "nothing froze");
  const saved = engine.save();
  const expected = march(engine, 4001, 60);
  engine.load(saved);
  assertEquals(march(engine, 4001, 60), expected);
  march(engine, 500, 300);
  engine.load(saved);
  assertEquals(march(engine, 4001, 60), expected);
  const other = fresh();
  other.load(saved);
  assertEquals(march(other, 4001, 60), expected);
});

Deno.test("an engine that starts from a field starts from rest, whatever it did before", () => {
  // Property: nothing of an earlier run is left in it
  const site = storeSite(standInRequest({ store: { slices: LANES } }), 8, 72);
  const slice = reduceSlice(site.operator, undefined, freezingZones(site.mesh, site.operator));
  const start = reducedState(slice, LANES, new Float64Array(site.operator.capacity.length).fill(4));
  const engine = reducedEngine(slice, LANES, [1800]);
  engine.load(start);
  const expected = march(engine, 0, 60);
  march(engine, 60, 3000);
  engine.load(start);
  assertEquals(march(engine, 0, 60), expected);
});
