import { assert, assertEquals } from "@std/assert";
import { storeSite } from "../../../lib/store/site.ts";
import { reducedEngine } from "../../../lib/store/solver/reduced/engine.ts";
import { reducedState } from "../../../lib/store/solver/reduced/fields.ts";
import { reduceSlice } from "../../../lib/store/solver/reduced/reduction.ts";
import { freezingZones } from "../../../lib/store/ground/zones.ts";
import { standInRequest } from "../stand_in.ts";

Deno.test("a lane alone, and the fifth after a block of four, do what a lane among others does, to the bit", () => {
  // Property: how many lanes share a block decides nothing, freezing and the tubes' heat included
  const site = storeSite(standInRequest({ store: { slices: 5 } }), 8, 72);
  const slice = reduceSlice(site.operator, undefined, freezingZones(site.mesh, site.operator));
  assert(slice.zones.length > 0, "nothing could freeze");
  const cells = site.operator.capacity.length;
  const run = (lanes: number) => {
    const engine = reducedEngine(slice, lanes, [1800, 100]);
    engine.load(reducedState(slice, lanes, new Float64Array(cells).fill(4)));
    const [outdoor, deep, driving] = [0, 1, 2].map(() => new Float64Array(lanes)) as [
      Float64Array,
      Float64Array,
      Float64Array,
    ];
    const heat = new Float64Array(lanes * engine.tubes);
    let most = 0;
    for (let step = 0; step < 6000; step++) {
      const running = step % 7 < 3;
      const length = step % 11 === 0 ? 1 : 0;
      outdoor.fill(-6 + 9 * Math.sin(step / 300));
      deep.fill(6);
      driving.fill(-4 + 8 * Math.sin(step / 40));
      heat.fill(running ? 20 * Math.sin(step / 25) : 0);
      engine.predict(length, outdoor, deep, running);
      engine.finish(length, heat, driving, running);
      most = Math.max(most, engine.ice()[0]!);
    }
    const last = lanes - 1;
    const lane = (values: Float64Array) => values[last]!;
    return {
      most,
      cells: engine.cells(last),
      surfaces: [engine.floorHeat, engine.outdoorHeat, engine.floorPull].map(lane),
      store: lane(engine.storeTemperature),
      content: lane(engine.content()),
      walls: engine.blockTemperature.slice(last * engine.tubes),
    };
  };
  const alone = run(1);
  assert(alone.most > 0, "nothing froze");
  assertEquals(run(3), alone);
  assertEquals(run(5), alone);
});
