import { assert, assertAlmostEquals, assertLess } from "@std/assert";
import { penetrationDepth, PRODUCTION_MESH, sliceMesh } from "../../lib/store/ground/mesh.ts";
import { type ConductionOperator, sliceOperator } from "../../lib/store/ground/operator.ts";
import { freezingZones } from "../../lib/store/ground/zones.ts";
import { adiEngine, uniformState } from "../../lib/store/solver/full/engine.ts";
import type { SoilEngine } from "../../lib/store/solver/engine.ts";
import { reducedEngine } from "../../lib/store/solver/reduced/engine.ts";
import { reducedState } from "../../lib/store/solver/reduced/fields.ts";
import { reduceSlice } from "../../lib/store/solver/reduced/reduction.ts";
import { neumannFront, neumannRoot, type Phase } from "../support/neumann.ts";

const DAYS = 30;
const WATER = 1.002e8;

/** A soil whose water freezes between 0 and −0.25 °C, with its exact front after the days. */
function soilCase(name: string, unfrozen: Phase, frozen: Phase) {
  const given = { frozen, unfrozen, latentHeat: WATER, surface: -10, start: 5 };
  return {
    name,
    ...given,
    soil: {
      ...unfrozen,
      freezing: {
        latentHeat: WATER,
        freezingRange: 0.25,
        frozenHeatCapacity: frozen.heatCapacity,
        frozenConductivity: frozen.conductivity,
      },
    },
    exact: neumannFront(given, DAYS * 86400),
  };
}

const ALIKE = { conductivity: 1.8, heatCapacity: 2.2e6 };
const SOILS = [
  soilCase("the same frozen and unfrozen", ALIKE, ALIKE),
  soilCase(
    "2.0 W/(m K) frozen, 1.5 unfrozen",
    { conductivity: 1.5, heatCapacity: 2.6e6 },
    { conductivity: 2, heatCapacity: 1.9e6 },
  ),
];
type SoilCase = (typeof SOILS)[number];

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
  penetration: penetrationDepth(ALIKE),
  faces: [],
});
const HALF_WIDTH = 4;

const operatorOf = ({ soil }: SoilCase) =>
  sliceOperator(mesh, {
    ...soil,
    zones: [],
    boards: [],
    floorFilm: Infinity,
    outdoorFilm: 0,
    deepHeld: false,
    tubeRadius: 0.055,
  });

const startOf = (cells: number, { start }: SoilCase) => new Float64Array(cells).fill(start);

/** Freezes from the floor for the days of the case; returns what went in through the floor, J/m. */
function freeze({ surface }: SoilCase, engine: SoilEngine, seconds: number): number {
  const none = new Float64Array(engine.lanes);
  const driving = new Float64Array(engine.lanes).fill(surface);
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

for (const given of SOILS) {
  for (const seconds of [900, 3600]) {
    Deno.test(`the full model freezes as Neumann says, ${given.name}, steps of ${seconds} s`, () => {
      // Source: Carslaw & Jaeger 1959 [carslaw-jaeger-1959] §11.2 (xi), two phases
      const operator = operatorOf(given);
      const engine = adiEngine(operator, 1, [seconds], true);
      engine.load(uniformState(1, startOf(operator.capacity.length, given)));
      const taken = freeze(given, engine, seconds);
      assertAlmostEquals(-taken / HALF_WIDTH / given.exact.taken, 1, 0.02, "heat taken");
      const field = engine.save();
      const column = (row: number) => field[4 * row * mesh.columns]!;
      let row = 0;
      while (column(row) < -given.soil.freezing.freezingRange / 2) row++;
      const reached = mesh.depths[row]! - mesh.heights[row]! / 2;
      assertAlmostEquals(reached, given.exact.front, mesh.heights[row]!, "front");
      const partly = (k: number) => column(k) < 0 && column(k) > -given.soil.freezing.freezingRange;
      assert(mesh.depths.filter((_, k) => partly(k)).length <= 1, "cells that are partly frozen");
      mesh.depths.forEach((depth, k) => {
        // the cell with the front in it is at 0 °C until all of it is frozen: half a kelvin
        if (k === row || partly(k) || depth > 4) return;
        assertAlmostEquals(column(k), given.exact.temperature(depth), 0.5, `${depth} m`);
      });
    });

    Deno.test(`the fast engine freezes as Neumann says, in lumps, ${given.name}, steps of ${seconds} s`, () => {
      // Source: the same; the ice lies in bands, so heat and amount of ice are compared, not the front
      const operator = operatorOf(given);
      const slice = reduceSlice(operator, undefined, freezingZones(mesh, operator));
      const engine = reducedEngine(slice, 1, [seconds]);
      engine.load(reducedState(slice, 1, startOf(operator.capacity.length, given)));
      const taken = freeze(given, engine, seconds);
      assertAlmostEquals(-taken / HALF_WIDTH / given.exact.taken, 1, 0.05, "heat taken");
      const frozen = engine.ice()[0]! / HALF_WIDTH / given.latentHeat;
      assertAlmostEquals(frozen, given.exact.front, 0.06, "front");
    });
  }

  Deno.test(`the full model's column of equal cells finds front and temperatures of Neumann, ${given.name}`, () => {
    // Source: Carslaw & Jaeger 1959 [carslaw-jaeger-1959] §11.2 (xi); a fixed mesh should find the front within one cell and
    // temperatures within 0.15 K
    const [cells, height] = [160, 0.05];
    const { soil, exact } = given;
    const none = { cells: new Int32Array(), conductances: new Float64Array() };
    const fill = (value: number) => new Float64Array(cells).fill(value);
    const column: ConductionOperator = {
      columns: 1,
      rows: cells,
      capacity: fill(soil.heatCapacity * height),
      sideways: fill(0),
      downwards: fill(soil.conductivity / height).map((value, k) => k + 1 < cells ? value : 0),
      tubes: [],
      floor: {
        cells: Int32Array.of(0),
        conductances: Float64Array.of(2 * soil.conductivity / height),
      },
      outdoor: none,
      deep: none,
      store: { cells: Int32Array.of(0), weights: Float64Array.of(1) },
      freezing: {
        latent: fill(soil.freezing.latentHeat * height),
        range: fill(soil.freezing.freezingRange),
        frozenCapacity: fill(soil.freezing.frozenHeatCapacity * height),
        ratio: fill(soil.freezing.frozenConductivity / soil.conductivity),
      },
    };
    const engine = adiEngine(column, 1, [1800], true);
    engine.load(uniformState(1, startOf(cells, given)));
    const taken = freeze(given, engine, 1800);
    assertAlmostEquals(-taken / exact.taken, 1, 0.01, "heat taken");
    const temperature = (k: number) => engine.save()[4 * k]!;
    let frozen = 0;
    while (temperature(frozen) < -soil.freezing.freezingRange / 2) frozen++;
    assertAlmostEquals(frozen * height, exact.front, height, "front");
    for (const x of [0.275, 0.525, 1.525, 2.525]) {
      const found = temperature(Math.round(x / height - 0.5));
      assertAlmostEquals(found, exact.temperature(x), 0.15, `${x} m`);
    }
  });
}
