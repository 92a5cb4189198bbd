import { assert, assertAlmostEquals } from "@std/assert";
import { houseModel, initialHouseState, stepHouse, withHeater } from "../../../lib/house/mod.ts";
import { undisturbedTemperature } from "../../../lib/soil/mod.ts";
import { freshEngine, soilModel } from "../../../lib/store/seasons/soil_model.ts";
import { periodicYear } from "../../../lib/store/seasons/spin_up.ts";
import { startState } from "../../../lib/store/seasons/year.ts";
import { standInRequest } from "../stand_in.ts";

Deno.test("far from the house the store's soil is the undisturbed ground, in every season", () => {
  // Property: limit: 12 m beside a house without fan the year that repeats is the annual wave of the
  // ground. A strip 6 m wide and 10 K warmer still adds 10 K·(angle it is seen under)/π, twice with the mirror at
  // the mesh's end: 0.5 K at 2.5 m (0.52 K claimed); deeper more, so only the ground above is compared
  const request = standInRequest({
    store: { slices: 1 },
    soil: { frozenConductivity: "as unfrozen" },
  });
  const house = withHeater(houseModel(request.houseInputs, request.climate), 0);
  const model = soilModel(request, house);
  const engine = freshEngine(model);
  const { wave } = request.soil;
  const { mesh } = model.site;
  const column = mesh.columns - 1;
  const differences: number[] = [];
  periodicYear({
    setting: {
      site: model.site,
      inputs: request.inputs,
      climate: request.climate,
      wave,
      house,
      stepHouse,
      fan: false,
    },
    state: startState(model.site, engine, initialHouseState(house)),
    engine,
    jumps: 3,
    listen: ({ hour }) => {
      if (hour % 2190 !== 12) return;
      const cells = engine.cells(0);
      mesh.depths.forEach((depth, row) => {
        if (depth > 2.5) return;
        const wanted = undisturbedTemperature(wave, depth, (hour + 1) / 24);
        differences.push(cells[row * mesh.columns + column]! - wanted);
      });
    },
  });
  assert(differences.length > 20 && wave.amplitude > 5, `${differences.length}`);
  for (const difference of differences) assertAlmostEquals(difference, 0, 0.52);
  assert(mesh.x[column]! > 14, `${mesh.x[column]} m from the middle`);
});
