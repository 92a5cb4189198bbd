import { assertAlmostEquals, assertLess } from "@std/assert";
import { penetrationDepth, PRODUCTION_MESH, sliceMesh } from "../../lib/store/ground/mesh.ts";
import { type ConductionOperator, sliceOperator } from "../../lib/store/ground/operator.ts";
import { freezingZones } from "../../lib/store/ground/zones.ts";
import { adiEngine, uniformState } from "../../lib/store/solver/full/engine.ts";
import type { SoilEngine } from "../../lib/store/solver/engine.ts";
import { reducedEngine } from "../../lib/store/solver/reduced/engine.ts";
import { reducedState } from "../../lib/store/solver/reduced/fields.ts";
import { reduceSlice } from "../../lib/store/solver/reduced/reduction.ts";
import { neumannFront, neumannRoot } from "../support/neumann.ts";

const phase = { conductivity: 1.8, heatCapacity: 2.2e6 };
const soil = {
  ...phase,
  freezing: { latentHeat: 1.002e8, freezingRange: 0.25, frozenHeatCapacity: 2.2e6 },
};
const CASE = {
  frozen: phase,
  unfrozen: phase,
  latentHeat: soil.freezing.latentHeat,
  surface: -10,
  start: 5,
};
const DAYS = 30;
const exact = neumannFront(CASE, DAYS * 86400);

Deno.test("neumannRoot() is that of the worked two-phase case, Carslaw & Jaeger 1959 [carslaw-jaeger-1959] §11.2", () => {
  // Source: transcendental equation of Carslaw & Jaeger 1959 [carslaw-jaeger-1959] §11.2 (xi), root worked out apart from the
  // project with a general root finder: frozen 2.0 W/(m K), 1.9 MJ/(m³ K), unfrozen 1.5 and 2.6,
  // 334 kJ/kg × 300 kg/m³, +5 and −10 °C
  const worked = {
    frozen: { conductivity: 2, heatCapacity: 1.9e6 },
    unfrozen: { conductivity: 1.5, heatCapacity: 2.6e6 },
    latentHeat: 1.002e8,
    surface: -10,
    start: 5,
  };
  assertAlmostEquals(neumannRoot(worked), 0.2644131757, 1e-9);
  const { front, temperature } = neumannFront(worked, 30 * 86400);
  assertAlmostEquals(front, 0.87351182, 1e-7);
  assertAlmostEquals(temperature(0.25), -7.0767226, 1e-6);
  assertAlmostEquals(temperature(2), 2.9829747, 1e-6);
});

/** Half a house's soil on the production mesh, floor held, one tube below the frost. */
const mesh = sliceMesh({
  floorWidth: 8,
  outsideSoil: 0,
  depth: 8,
  tubes: [{ x: 0, depth: 1.4 }],
  tubeRadius: 0.055,
  half: true,
  ...PRODUCTION_MESH,
  penetration: penetrationDepth(phase),
  faces: [],
});
const operator = sliceOperator(mesh, {
  ...soil,
  zones: [],
  boards: [],
  floorFilm: Infinity,
  outdoorFilm: 0,
  deepHeld: false,
  tubeRadius: 0.055,
});
const HALF_WIDTH = 4;

/** Freezes from the floor for the days of the case; returns what went in through the floor, J/m. */
function freeze(engine: SoilEngine, seconds: number): number {
  const none = new Float64Array(engine.lanes);
  const driving = new Float64Array(engine.lanes).fill(CASE.surface);
  const heat = new Float64Array(engine.lanes * engine.tubes);
  const before = engine.content()[0]!;
  let taken = 0;
  for (let step = 0; step < DAYS * 86400 / seconds; step++) {
    engine.predict(0, none, none, false);
    engine.finish(0, heat, driving, false);
    taken += engine.floorHeat[0]! * seconds;
  }
  const gained = engine.content()[0]! - before;
  assertLess(Math.abs(gained - taken) / Math.abs(gained), 1e-9, "ledger");
  return taken;
}

const start = new Float64Array(operator.capacity.length).fill(CASE.start);

for (const seconds of [900, 3600]) {
  Deno.test(`the full model freezes as Neumann says, production mesh, steps of ${seconds} s`, () => {
    // Source: Carslaw & Jaeger 1959 [carslaw-jaeger-1959] §11.2 (xi), two phases, equal properties
    const engine = adiEngine(operator, 1, [seconds], true);
    engine.load(uniformState(1, start));
    const taken = freeze(engine, seconds);
    assertAlmostEquals(-taken / HALF_WIDTH / exact.taken, 1, 0.02, "heat taken");
    const field = engine.save();
    const column = (row: number) => field[4 * row * mesh.columns]!;
    let row = 0;
    while (column(row) < -soil.freezing.freezingRange / 2) row++;
    const reached = mesh.depths[row]! - mesh.heights[row]! / 2;
    assertAlmostEquals(reached, exact.front, mesh.heights[row]!, "front");
    mesh.depths.forEach((depth, k) => {
      // the cell with the front in it (0.2 m here) is at 0 °C until all of it is frozen: half a kelvin
      if (k === row || depth > 4) return;
      assertAlmostEquals(column(k), exact.temperature(depth), 0.5, `${depth} m`);
    });
  });

  Deno.test(`the fast engine freezes as Neumann says, in lumps, steps of ${seconds} s`, () => {
    // Source: the same; the ice lies in bands, so heat and amount of ice are compared, not the front
    const slice = reduceSlice(operator, undefined, freezingZones(mesh, operator));
    const engine = reducedEngine(slice, 1, [seconds]);
    engine.load(reducedState(slice, 1, start));
    const taken = freeze(engine, seconds);
    assertAlmostEquals(-taken / HALF_WIDTH / exact.taken, 1, 0.05, "heat taken");
    const frozen = engine.ice()[0]! / HALF_WIDTH / CASE.latentHeat;
    assertAlmostEquals(frozen, exact.front, 0.06, "front");
  });
}

Deno.test("the full model's column of equal cells finds front and temperatures of Neumann", () => {
  // Source: Carslaw & Jaeger 1959 [carslaw-jaeger-1959] §11.2 (xi); a fixed mesh should find the front within one cell and
  // temperatures within 0.15 K
  const [cells, height] = [100, 0.05];
  const none = { cells: new Int32Array(), conductances: new Float64Array() };
  const fill = (value: number) => new Float64Array(cells).fill(value);
  const column: ConductionOperator = {
    columns: 1,
    rows: cells,
    capacity: fill(phase.heatCapacity * height),
    sideways: fill(0),
    downwards: fill(phase.conductivity / height).map((value, k) => k + 1 < cells ? value : 0),
    tubes: [],
    floor: {
      cells: Int32Array.of(0),
      conductances: Float64Array.of(2 * phase.conductivity / height),
    },
    outdoor: none,
    deep: none,
    store: { cells: Int32Array.of(0), weights: Float64Array.of(1) },
    freezing: {
      latent: fill(soil.freezing.latentHeat * height),
      range: fill(soil.freezing.freezingRange),
      frozenCapacity: fill(phase.heatCapacity * height),
    },
  };
  const engine = adiEngine(column, 1, [1800], true);
  engine.load(uniformState(1, fill(CASE.start)));
  freeze(engine, 1800);
  const temperature = (k: number) => engine.save()[4 * k]!;
  let frozen = 0;
  while (temperature(frozen) < -soil.freezing.freezingRange / 2) frozen++;
  assertAlmostEquals(frozen * height, exact.front, height, "front");
  for (const x of [0.275, 0.525, 1.525, 2.525]) {
    const found = temperature(Math.round(x / height - 0.5));
    assertAlmostEquals(found, exact.temperature(x), 0.15, `${x} m`);
  }
});
