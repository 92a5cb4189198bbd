import { assert, assertAlmostEquals, assertEquals, assertLess, assertThrows } from "@std/assert";
import { InputError } from "../../../lib/basics/mod.ts";
import { undisturbedTemperature } from "../../../lib/soil/mod.ts";
import { adiEngine, uniformState } from "../../../lib/store/solver/full/engine.ts";
import { adiFactors, adiStep } from "../../../lib/store/solver/full/factors.ts";
import { adiKernel } from "../../../lib/store/solver/full/kernel.ts";
import { factorShifted, solveBanded } from "../../../lib/store/solver/reduced/banded_cholesky.ts";
import { equivalentRadius } from "../../../lib/store/ground/equivalent_radius.ts";
import { fillGap } from "../../../lib/store/ground/graded.ts";
import { penetrationDepth, PRODUCTION_MESH, sliceMesh } from "../../../lib/store/ground/mesh.ts";
import { type ConductionOperator, sliceOperator } from "../../../lib/store/ground/operator.ts";
import { reducedEngine } from "../../../lib/store/solver/reduced/engine.ts";
import { reducedState } from "../../../lib/store/solver/reduced/fields.ts";
import { reduceSlice } from "../../../lib/store/solver/reduced/reduction.ts";

function slice(change: { half?: boolean; tubes?: { x: number; depth: number }[] } = {}) {
  const mesh = sliceMesh({
    ...PRODUCTION_MESH,
    penetration: penetrationDepth({ conductivity: 1.4, heatCapacity: 2.1e6 }),
    floorWidth: 4,
    outsideSoil: 6,
    depth: 8,
    tubes: change.tubes ?? [{ x: -0.6, depth: 0.7 }, { x: 0, depth: 0.7 }, { x: 0.6, depth: 0.7 }],
    tubeRadius: 0.055,
    half: change.half ?? false,
    faces: [0.6],
  });
  const operator = sliceOperator(mesh, {
    conductivity: 1.4,
    heatCapacity: 2.1e6,
    zones: [],
    boards: [{ kind: "edge", depth: 0.6, resistance: 1.5 }],
    floorFilm: 8,
    outdoorFilm: Infinity,
    deepHeld: false,
    tubeRadius: 0.055,
  });
  return { mesh, operator };
}

Deno.test("fillGap() fills the gap exactly and keeps to the growth", () => {
  // Property: sizes sum to the gap; neighbours differ by no more than the ratio
  for (const [gap, first, last] of [[0.4, 0.05, 0.05], [10, 0.1, Infinity], [0.13, 0.06, 0.05]]) {
    const sizes = fillGap(gap!, first!, last!, { ratio: 1.4, largest: 1.6 });
    assertAlmostEquals(sizes.reduce((sum, size) => sum + size, 0), gap!, 1e-12);
    sizes.slice(1).forEach((size, k) => {
      const ratio = size / sizes[k]!;
      assert(ratio < 1.4 * 1.4 + 1e-9 && ratio > 1 / (1.4 * 1.4) - 1e-9, `ratio ${ratio}`);
    });
  }
});

Deno.test("sliceMesh() gives every tube a block and refuses tubes that overlap", () => {
  // Property: one block of sixteen cells a tube, area of the square
  const { mesh } = slice();
  assertEquals(mesh.blocks.map((block) => block.cells.length), [16, 16, 16]);
  const area = mesh.blocks[0]!.cells.reduce(
    (sum, cell) =>
      sum + mesh.widths[cell % mesh.columns]! * mesh.heights[Math.floor(cell / mesh.columns)]!,
    0,
  );
  assertAlmostEquals(area, (2 * 0.055) ** 2, 1e-12);
  assertThrows(
    () => slice({ tubes: [{ x: 0, depth: 0.7 }, { x: 0.09, depth: 0.7 }] }),
    InputError,
    "overlap",
  );
  assertThrows(
    () => slice({ tubes: [{ x: 0, depth: 0.03 }] }),
    InputError,
    "too close to the floor",
  );
});

Deno.test("sliceMesh() keeps the place of tubes that lie partly over those of the next layer", () => {
  // Property: each block is as wide as its tube, with its middle where the tube is
  for (const x of [0.07, 0.085, 0.1, 0.1099, 0.1101]) {
    const { mesh } = slice({ tubes: [{ x: 0, depth: 0.5 }, { x, depth: 0.9 }] });
    const edges = [0];
    for (const width of mesh.widths) edges.push(edges.at(-1)! + width);
    const middle = mesh.edge + (edges.at(-1)! - 2 * mesh.edge) / 2;
    for (const [index, place] of [0, x].entries()) {
      const columns = Array.from(mesh.blocks[index]!.cells, (cell) => cell % mesh.columns);
      const [left, right] = [edges[Math.min(...columns)]!, edges[Math.max(...columns) + 1]!];
      assertAlmostEquals(right - left, 0.11, 1e-9);
      assertAlmostEquals((left + right) / 2 - middle, place, 1e-9);
    }
  }
});

Deno.test("equivalentRadius() of one square cell in an even mesh is 0.2 of its side, Peaceman 1978", () => {
  // Source: Peaceman 1978 [peaceman-1978]: r₀ ≈ 0.2 Δx, 0.1982 from the exact sum (from memory)
  const cells = new Array<number>(21).fill(0.1);
  const radius = equivalentRadius({
    widths: cells,
    heights: cells,
    blockColumns: [10, 11],
    blockRows: [10, 11],
    radius: 0,
  });
  assertAlmostEquals(radius, 0.01985, 0.0002);
});

Deno.test("adiKernel() steps four slices as adiStep() steps one", () => {
  // Property: the fast kernel and the plain step are the same arithmetic
  const { operator } = slice();
  const count = operator.capacity.length;
  const factors = adiFactors(operator, 900);
  const start = Float64Array.from({ length: 4 * count }, (_, k) => 10 + 3 * Math.sin(0.37 * k));
  const field = start.slice();
  adiKernel(operator, factors, field, 0, new Float64Array(4 * count));
  for (let lane = 0; lane < 4; lane++) {
    const one = Float64Array.from({ length: count }, (_, c) => start[4 * c + lane]!);
    const end = adiStep(operator, factors, one, new Float64Array(count));
    end.forEach((value, c) => assertAlmostEquals(field[4 * c + lane]!, value, 1e-10));
  }
});

Deno.test("solveBanded() inverts K + σM", () => {
  // Property: A·A⁻¹·b = b, checked with the conductances cell by cell
  const { operator } = slice();
  const { columns, capacity, sideways, downwards, floor, outdoor } = operator;
  const shift = 1e-6;
  const right = capacity.map((_, c) => Math.cos(c));
  const x = solveBanded(factorShifted(operator, shift), right);
  const left = x.map((value, c) => shift * capacity[c]! * value);
  floor.cells.forEach((c, k) => left[c]! += floor.conductances[k]! * x[c]!);
  outdoor.cells.forEach((c, k) => left[c]! += outdoor.conductances[k]! * x[c]!);
  for (let c = 0; c < x.length; c++) {
    const pairs: [number, number][] = [[c + 1, sideways[c]!], [c + columns, downwards[c]!]];
    for (const [other, conductance] of pairs) {
      if (conductance === 0) continue;
      left[c]! += conductance * (x[c]! - x[other]!);
      left[other]! += conductance * (x[other]! - x[c]!);
    }
  }
  left.forEach((value, c) => assertAlmostEquals(value, right[c]!, 1e-9));
});

/** Drives an engine with the same floor, weather and tube heat; returns what it answered. */
function drive(
  operator: ConductionOperator,
  kind: "full" | "reduced",
  seconds: number,
  hours: number,
) {
  const start = operator.capacity.map(() => 8);
  const lanes = 1;
  const engine = kind === "full"
    ? adiEngine(operator, lanes, [seconds])
    : reducedEngine(reduceSlice(operator), lanes, [seconds]);
  const reduced = kind === "reduced" ? reduceSlice(operator) : null;
  engine.load(reduced ? reducedState(reduced, lanes, start) : uniformState(lanes, start));
  const tubes = engine.tubes;
  const heat = new Float64Array(tubes);
  const outdoor = new Float64Array(1);
  const driving = new Float64Array(1);
  const blocks: number[] = [];
  let floor = 0;
  const content = engine.content()[0]!;
  let put = 0;
  for (let step = 0; step < hours * 3600 / seconds; step++) {
    const hour = Math.floor(step * seconds / 900 + 1e-9) / 4;
    outdoor[0] = 4 - 12 * Math.cos(2 * Math.PI * hour / 8760);
    driving[0] = 12 + 9 * Math.sin(2 * Math.PI * hour / 24);
    const q = hour % 24 >= 10 && hour % 24 < 16 ? 25 : hour % 24 < 6 ? -12 : 0;
    heat.forEach((_, k) => heat[k] = q * operator.tubes[k]!.part);
    engine.predict(0, outdoor, outdoor, true);
    let mean = 0;
    for (let k = 0; k < tubes; k++) {
      let block = engine.blockTemperature[k]! + engine.tubeResponse[0]![k]! * heat[k]!;
      const cross = engine.tubeCross[0]!;
      for (let j = 0; cross && j < tubes; j++) block += cross[k * tubes + j]! * heat[j]!;
      mean += block / tubes;
    }
    blocks.push(mean);
    engine.finish(0, heat, driving, true);
    floor += engine.floorHeat[0]! * seconds;
    put += (engine.floorHeat[0]! + engine.outdoorHeat[0]! + engine.deepHeat[0]!) * seconds +
      heat.reduce((sum, value) => sum + value, 0) * seconds;
  }
  return { blocks, floor, gained: engine.content()[0]! - content, put };
}

Deno.test("adiEngine() and reducedEngine() close the heat ledger", () => {
  // Property: energy is conserved by both engines
  const { operator } = slice();
  for (const kind of ["full", "reduced"] as const) {
    const run = drive(operator, kind, 900, 240);
    assertLess(Math.abs(run.put - run.gained) / Math.abs(run.floor), 1e-9, kind);
  }
});

Deno.test("reducedEngine() follows the full model within 0.03 K", () => {
  // Property: two solvers of one equation agree; the full one in steps of 100 s
  const { operator } = slice();
  const full = drive(operator, "full", 100, 480);
  const reduced = drive(operator, "reduced", 900, 480);
  let sum = 0;
  reduced.blocks.forEach((value, k) => {
    const mean = full.blocks.slice(9 * k, 9 * k + 9).reduce((total, t) => total + t, 0) / 9;
    sum += (value - mean) ** 2;
  });
  assertLess(Math.sqrt(sum / reduced.blocks.length), 0.03);
  assertAlmostEquals(reduced.floor, full.floor, 0.005 * Math.abs(full.floor));
});

Deno.test("sliceMesh() in halves gives the same answer as whole", () => {
  // Property: symmetry about the middle of the house, tube on the mirror plane included
  const whole = drive(slice().operator, "full", 900, 96);
  const half = drive(slice({ half: true }).operator, "full", 900, 96);
  assertAlmostEquals(2 * half.floor, whole.floor, 1e-6 * Math.abs(whole.floor));
  assertAlmostEquals(2 * half.gained, whole.gained, 1e-6 * Math.abs(whole.gained));
});

Deno.test("without flow and sun the soil relaxes to the undisturbed profile of Kusuda & Achenbach", () => {
  // Source: Kusuda & Achenbach 1965 [kusuda-achenbach-1965] for the profile; a mesh without house
  // must find it from any start
  const wave = { mean: 5, amplitude: 14, minimumDay: 20, diffusivity: 1.4 / 2.1e6 };
  const mesh = sliceMesh({
    ...PRODUCTION_MESH,
    penetration: penetrationDepth({ conductivity: 1.4, heatCapacity: 2.1e6 }),
    floorWidth: 0.2,
    outsideSoil: 2,
    depth: 12,
    tubes: [{ x: 0, depth: 0.7 }],
    tubeRadius: 0.05,
    half: true,
    faces: [],
  });
  const operator = sliceOperator(mesh, {
    conductivity: 1.4,
    heatCapacity: 2.1e6,
    zones: [],
    boards: [],
    floorFilm: 1e6,
    outdoorFilm: Infinity,
    deepHeld: false,
    tubeRadius: 0.05,
  });
  const reduced = reduceSlice(operator);
  const engine = reducedEngine(reduced, 1, [86400]);
  engine.load(reducedState(reduced, 1, operator.capacity.map(() => 9)));
  const surface = new Float64Array(1);
  const none = new Float64Array(1);
  for (let year = 0; year < 4; year++) {
    const before = engine.save();
    for (let day = 0; day < 365; day++) {
      surface[0] = undisturbedTemperature(wave, 0, day + 0.5);
      engine.predict(0, surface, surface, false);
      engine.finish(0, none, surface, false);
    }
    engine.jump(before, 365 * 86400);
  }
  const cells = engine.cells(0);
  for (const depth of [0.5, 1, 2, 4]) {
    const row = mesh.depths.findIndex((value) => value >= depth);
    const at = mesh.depths[row]!;
    const found = cells[row * mesh.columns + mesh.columns - 1]!;
    assertAlmostEquals(found, undisturbedTemperature(wave, at, 365), 0.15, `${at} m`);
  }
});

Deno.test("with no flow the tubes leave plain conduction alone", () => {
  // Property: zero tube heat is the same as not asking the tubes at all
  const { operator } = slice();
  const [asked, unasked] = [adiEngine(operator, 1, [900]), adiEngine(operator, 1, [900])];
  const none = new Float64Array(3);
  const surface = Float64Array.of(-5);
  for (let step = 0; step < 50; step++) {
    asked.predict(0, surface, surface, true);
    asked.finish(0, none, Float64Array.of(15), true);
    unasked.predict(0, surface, surface, false);
    unasked.finish(0, none, Float64Array.of(15), false);
  }
  assertEquals(asked.save(), unasked.save());
});
