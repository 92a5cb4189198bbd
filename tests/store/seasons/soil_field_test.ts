import { assert, assertLess } from "@std/assert";
import { houseModel } from "../../../lib/house/mod.ts";
import { alone } from "../../../lib/basics/mod.ts";
import { reducedStores, settledTask } from "../../../lib/store/runs.ts";
import { soilField, stateFromField } from "../../../lib/store/seasons/soil_field.ts";
import { reducedState } from "../../../lib/store/solver/reduced/fields.ts";
import { freshEngine, soilModel } from "../../../lib/store/seasons/soil_model.ts";
import { standInRequest } from "../stand_in.ts";

const request = standInRequest({ store: { slices: 2 } });
const house = houseModel(request.houseInputs, request.climate);
const model = soilModel(request, house);

Deno.test("a soil's field carried over to its own mesh is itself, lane by lane", () => {
  // Property: nothing is lost on the way from states to cells and back
  const engine = freshEngine(model);
  const lanes = model.site.lengths.length;
  const cells = Array.from(
    { length: lanes },
    (_, lane) => model.undisturbed.map((value) => value + lane),
  );
  const state = stateFromField(model, soilField(model, cells));
  engine.load(state);
  const content = engine.content();
  const alike = freshEngine(model);
  for (let lane = 0; lane < lanes; lane++) {
    alike.load(reducedState(model.slice, lanes, cells[lane]!));
    assertLess(Math.abs(content[lane]! / alike.content()[lane]! - 1), 1e-9);
  }
  assert(content[1]! > content[0]!);
});

Deno.test("a field that rises with depth and across is the same on another mesh", () => {
  // Property: linear interpolation is exact for a linear field, inside the old mesh
  const deeper = standInRequest({ store: { slices: 2 } });
  const positions = deeper.tubes.positions.map(({ x, depth }) => ({ x, depth: depth + 0.3 }));
  const changed = { ...deeper, tubes: { ...deeper.tubes, positions } };
  const other = soilModel(changed, house);
  assert(
    other.site.mesh.depths.length !== model.site.mesh.depths.length ||
      other.site.mesh.depths.some((depth, row) => depth !== model.site.mesh.depths[row]),
  );
  const linear = ({ mesh }: { mesh: typeof model.site.mesh }) =>
    Float64Array.from(
      { length: mesh.rows * mesh.columns },
      (_, c) =>
        8 + 0.5 * mesh.depths[Math.floor(c / mesh.columns)]! + 0.1 * mesh.x[c % mesh.columns]!,
    );
  const cells = Array.from(model.site.lengths, () => linear(model.site));
  const engine = freshEngine(other);
  engine.load(stateFromField(other, soilField(model, cells)));
  const expected = linear(other.site);
  const { capacity } = other.site.operator;
  const held = capacity.reduce((sum, value, c) => sum + value * expected[c]!, 0);
  assertLess(Math.abs(engine.content()[0]! / held - 1), 2e-3);
});

Deno.test("a longer store settles from the plan's soil in one year with a jump as from afar in two", () => {
  // Property: where a year begins to settle decides next to nothing
  const tubes = { ...request.tubes, length: 1.25 * request.tubes.length };
  const [plan, longer] = alone(reducedStores([request, { ...request, tubes }]));
  const { field } = settledTask.run({ ...plan!, heated: false, keepField: true });
  const question = { ...longer!, heated: false };
  const afar = settledTask.run(question).ledger;
  const near = settledTask.run({ ...question, from: field! }).ledger;
  for (const key of ["heatIn", "heatOut"] as const) {
    assertLess(Math.abs(near[key] / afar[key] - 1), 1e-3, key);
  }
});
