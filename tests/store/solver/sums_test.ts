import { assert, assertEquals } from "@std/assert";
import fc from "fast-check";
import { kernelModules } from "../../../lib/commands/kernels.ts";
import { plainAdi, simdAdi } from "../../../lib/store/solver/full/adi_kernel.ts";
import { adiEngine, uniformState } from "../../../lib/store/solver/full/engine.ts";
import { reducedEngine } from "../../../lib/store/solver/reduced/engine.ts";
import { reducedState } from "../../../lib/store/solver/reduced/fields.ts";
import { reduceSlice } from "../../../lib/store/solver/reduced/reduction.ts";
import { BLOCK, runOver, type Sums } from "../../../lib/store/solver/reduced/sums/mod.ts";
import { plainSums } from "../../../lib/store/solver/reduced/sums/plain_sums.ts";
import { simdSums } from "../../../lib/store/solver/reduced/sums/simd_sums.ts";
import { freezingZones } from "../../../lib/store/ground/zones.ts";
import { storeSite } from "../../../lib/store/site.ts";
import { standInRequest } from "../stand_in.ts";

function simd(): Sums {
  const sums = simdSums();
  assert(sums !== null, "WebAssembly is not to be had here");
  return sums;
}

Deno.test("the modules of WebAssembly are what their texts make", async () => {
  // Property: nobody has to trust bytes that he cannot read
  const modules = await kernelModules();
  assertEquals(modules.length, 2);
  for (const { path, text } of modules) {
    assertEquals(await Deno.readTextFile(new URL(`../../../${path}`, import.meta.url)), text);
  }
});

const value = fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e3, max: 1e3 });
const drawn = (count: number) => fc.array(value, { minLength: count, maxLength: count });

/** Some rows over some values of a vector, and states that move by them. */
const cases = fc.record({
  width: fc.integer({ min: 1, max: 9 }),
  height: fc.integer({ min: 1, max: 9 }),
}).chain(({ width, height }) =>
  fc.record({
    width: fc.constant(width),
    height: fc.constant(height),
    rows: fc.array(fc.nat({ max: height - 1 }), { maxLength: 9 }),
    ends: fc.tuple(fc.nat({ max: width }), fc.nat({ max: width })),
    listed: fc.array(fc.nat({ max: width - 1 }), { maxLength: 5 }),
    matrix: drawn(width * height),
    vector: drawn(2 * BLOCK * width),
    before: drawn(BLOCK * 10),
    decay: drawn(height),
    growth: drawn(height),
    x: drawn(BLOCK * (height + 1)),
    lanes: fc.constantFrom(1, 4),
  })
);
type Case = typeof cases extends fc.Arbitrary<infer Value> ? Value : never;

/** What the sums make of a case, from the second block of the vector into the second place. */
function answers(sums: Sums, given: Case) {
  const { width, height, ends, lanes } = given;
  const placed = sums.place({
    matrix: Float64Array.from(given.matrix),
    rows: Int32Array.from(given.rows),
    listed: Int32Array.from(given.listed),
    vector: Float64Array.from(given.vector),
    out: Float64Array.from(given.before),
    decay: Float64Array.from(given.decay),
    growth: Float64Array.from(given.growth),
    added: Float64Array.from(given.before),
    x: Float64Array.from(given.x),
  });
  const run = runOver(width, Math.min(...ends), Math.max(...ends), placed.listed);
  run.count = given.listed.length;
  const rows = { matrix: placed.matrix, listed: placed.rows, count: given.rows.length };
  sums.addRows(rows, run, placed.vector, BLOCK * width, placed.out, BLOCK, lanes);
  const move = { decay: placed.decay, growth: placed.growth };
  sums.advance(move, placed.added.subarray(0, BLOCK * height), placed.x, BLOCK, lanes);
  return { out: [...placed.out], x: [...placed.x] };
}

/** The same as the formulas say it, every lane that is there. */
function byFormula(given: Case) {
  const { width, ends, lanes } = given;
  const out = given.before.slice();
  const x = given.x.slice();
  const [from, to] = [Math.min(...ends), Math.max(...ends)];
  const places = [...Array.from({ length: to - from }, (_, q) => from + q), ...given.listed];
  for (let lane = 0; lane < lanes; lane++) {
    given.rows.forEach((row, i) => {
      const at = BLOCK * (1 + i) + lane;
      for (const q of places) {
        out[at]! += given.matrix[row * width + q]! * given.vector[BLOCK * (width + q) + lane]!;
      }
    });
    given.decay.forEach((decay, k) => {
      const at = BLOCK * (1 + k) + lane;
      x[at] = decay * x[at]! + given.growth[k]! * given.before[BLOCK * k + lane]!;
    });
  }
  return { out, x };
}

Deno.test("addRows() and advance() are their formulas to the bit, plain and in WebAssembly", () => {
  // Property: any rows, runs, lists and numbers of lanes; what belongs to no lane is left alone
  fc.assert(fc.property(cases, (given) => {
    const formula = byFormula(given);
    assertEquals(answers(plainSums(), given), formula);
    assertEquals(answers(simd(), given), formula);
  }));
});

Deno.test("arrays cannot be placed twice", () => {
  // Property: two memories for one module would give sums over the wrong one
  const sums = simd();
  sums.place({ x: new Float64Array(4) });
  let told = "";
  try {
    sums.place({ x: new Float64Array(4) });
  } catch (error) {
    told = String(error);
  }
  assert(told.includes("placed twice") || told.includes("place arrays twice"), told);
});

Deno.test("the engine does the same in plain code and in WebAssembly, to the bit", () => {
  // Property: a browser that forbids WebAssembly shows the figures of one that has it
  const site = storeSite(standInRequest({ store: { slices: 5 } }), 8, 72);
  const slice = reduceSlice(site.operator, undefined, freezingZones(site.mesh, site.operator));
  const cells = site.operator.capacity.length;
  const lanes = 5;
  const run = (sums: Sums) => {
    const engine = reducedEngine(slice, lanes, [1800, 100], true, sums);
    engine.load(reducedState(slice, lanes, new Float64Array(cells).fill(3)));
    const outdoor = new Float64Array(lanes);
    const deep = new Float64Array(lanes).fill(6);
    const driving = new Float64Array(lanes);
    const heat = new Float64Array(lanes * engine.tubes);
    for (let step = 0; step < 3000; step++) {
      const running = step % 7 < 3;
      outdoor.fill(-6 + 9 * Math.sin(step / 300));
      driving.forEach((_, lane) => driving[lane] = -4 + lane + 8 * Math.sin(step / 40));
      heat.forEach((_, k) => heat[k] = running ? (20 + k) * Math.sin(step / 25) : 0);
      engine.predict(step % 11 === 0 ? 1 : 0, outdoor, deep, running);
      engine.finish(step % 11 === 0 ? 1 : 0, heat, driving, running);
    }
    assert(engine.ice().some((ice) => ice > 0), "nothing froze");
    return { state: engine.save(), heat: engine.floorHeat, walls: engine.blockTemperature };
  };
  assertEquals(run(simd()), run(plainSums()));
});

Deno.test("the full model does the same in plain code and in WebAssembly, to the bit", () => {
  // Property: two step lengths, a group that is not full, freezing or not
  const site = storeSite(standInRequest({ store: { slices: 5 } }), 8, 72);
  const { operator } = site;
  const lanes = 5;
  for (const freezes of [false, true]) {
    const run = (kernel: ReturnType<typeof plainAdi>) => {
      const engine = adiEngine(operator, lanes, [1800, 300], freezes, kernel);
      engine.load(uniformState(lanes, operator.capacity.map((_, c) => 2 + c % 3)));
      const outdoor = new Float64Array(lanes).fill(-7);
      const deep = new Float64Array(lanes).fill(6);
      const driving = Float64Array.from({ length: lanes }, (_, lane) => -3 + lane);
      const heat = Float64Array.from({ length: lanes * engine.tubes }, (_, k) => 5 - k);
      for (let step = 0; step < 40; step++) {
        engine.predict(step % 2, outdoor, deep, step % 3 > 0);
        engine.finish(step % 2, heat, driving, step % 3 > 0);
      }
      return { state: engine.save(), floor: engine.floorHeat, walls: engine.blockTemperature };
    };
    const kernel = simdAdi();
    assert(kernel !== null, "WebAssembly is not to be had here");
    assertEquals(run(kernel), run(plainAdi()));
  }
});
