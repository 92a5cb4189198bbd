import { assert, assertAlmostEquals, assertLess, assertThrows } from "@std/assert";
import { penetrationDepth, PRODUCTION_MESH, sliceMesh } from "../../../lib/store/ground/mesh.ts";
import { type ConductionOperator, sliceOperator } from "../../../lib/store/ground/operator.ts";
import { factorShifted, solveBanded } from "../../../lib/store/solver/reduced/banded_cholesky.ts";
import { planStep } from "../../../lib/store/solver/reduced/plan.ts";
import { type ReducedSlice, reduceSlice } from "../../../lib/store/solver/reduced/reduction.ts";

const SOIL = { conductivity: 1.4, heatCapacity: 2.1e6 };

/** A slice with rows of tubes; its floor's film, W/(m² K), and whether the ground outside is there. */
function slice(given: { perLayer: number; floorFilm?: number; outside?: boolean }) {
  const { perLayer, floorFilm = 8, outside = true } = given;
  const tubes = [0.6, 1.1].flatMap((depth) =>
    Array.from({ length: perLayer }, (_, k) => ({ x: 0.45 * (k + 0.5), depth }))
  );
  const mesh = sliceMesh({
    ...PRODUCTION_MESH,
    penetration: penetrationDepth(SOIL),
    floorWidth: 0.9 * perLayer + 1,
    outsideSoil: outside ? 6 : 0,
    depth: 8,
    tubes,
    tubeRadius: 0.055,
    half: true,
    faces: [],
  });
  return sliceOperator(mesh, {
    ...SOIL,
    zones: [],
    boards: [],
    floorFilm,
    outdoorFilm: outside ? Infinity : 0,
    deepHeld: false,
    tubeRadius: 0.055,
  });
}

/** What a port sees of the exact answer to W/m of each tube that fade by e^(σt), K. */
function exactAnswer(operator: ConductionOperator, heat: readonly number[], shift: number) {
  const right = new Float64Array(operator.capacity.length);
  operator.tubes.forEach((tube, t) =>
    tube.cells.forEach((cell, k) => right[cell]! += heat[t]! * tube.weights[k]!)
  );
  const field = solveBanded(factorShifted(operator, shift), right);
  return operator.tubes.map((tube) =>
    tube.cells.reduce((sum, cell, k) => sum + tube.weights[k]! * field[cell]!, 0)
  );
}

/** The same from the reduced slice. */
function reducedAnswer(reduced: ReducedSlice, heat: readonly number[], shift: number): number[] {
  const { states, ports, rates, gains, direct } = reduced;
  return heat.map((_, p) =>
    heat.reduce((sum, value, q) => {
      let answer = direct[p * ports + q]!;
      for (let k = 0; k < states; k++) {
        answer += gains[p * states + k]! * gains[q * states + k]! / (rates[k]! + shift);
      }
      return sum + value * answer;
    }, 0)
  );
}

function furthest(a: readonly number[], b: readonly number[]): number {
  return Math.max(...a.map((value, k) => Math.abs(value - b[k]!)));
}

Deno.test("reduceSlice() answers steady heat exactly and swings of a year to minutes within 0.05 K", () => {
  // Property: H(σ) = Bᵀ(K + σM)⁻¹B of the full mesh, at shifts between those of the basis; 36 W/m in
  // each of 48 tubes, and a wave across them, as with tubes that share patterns
  const operator = slice({ perLayer: 24 });
  const reduced = reduceSlice(operator);
  const common = operator.tubes.map(() => 36);
  const wave = operator.tubes.map((_, t) => 36 + 7 * Math.cos(Math.PI * ((t % 24) + 0.5) / 24));
  const own = operator.tubes.map((_, t) => t === 0 || t === 47 ? 36 : 0);
  for (const heat of [common, wave, own]) {
    const steady = exactAnswer(operator, heat, 0);
    assertLess(furthest(reducedAnswer(reduced, heat, 0), steady), 1e-8 * Math.max(...steady));
  }
  for (const shift of [3e-8, 3e-7, 2e-6, 2e-5, 1e-4, 1e-3]) {
    for (const heat of [common, wave]) {
      const apart = furthest(
        reducedAnswer(reduced, heat, shift),
        exactAnswer(operator, heat, shift),
      );
      assertLess(apart, 0.05, `at ${shift} 1/s`);
    }
  }
});

Deno.test("reduceSlice() keeps its accuracy where hardly any heat leaves the slice", () => {
  // Property: the answer of a sealed slice hardly depends on how well it is sealed
  for (const floorFilm of [1e-3, 1e-5, 1e-7]) {
    const operator = slice({ perLayer: 3, floorFilm, outside: false });
    const reduced = reduceSlice(operator);
    assert(reduced.rates.every((rate) => rate > 0));
    const heat = [50, 40, 30, 20, 10, 0];
    for (const shift of [3e-7, 3e-6, 1e-4]) {
      const apart = furthest(
        reducedAnswer(reduced, heat, shift),
        exactAnswer(operator, heat, shift),
      );
      assertLess(apart, 0.02, `film ${floorFilm}, at ${shift} 1/s`);
    }
    const { response } = planStep(reduced, 900);
    assertAlmostEquals(
      response[0]!,
      planStep(
        reduceSlice(
          slice({ perLayer: 3, floorFilm: 1e-3, outside: false }),
        ),
        900,
      ).response[0]!,
      2e-4,
      `film ${floorFilm}`,
    );
  }
});

Deno.test("reduceSlice() refuses a slice that no heat leaves, or too little to be told from rounding", () => {
  // Property: without a way out there is no steady answer
  for (const floorFilm of [0, 1e-9]) {
    const operator = slice({ perLayer: 2, floorFilm, outside: false });
    assertThrows(() => reduceSlice(operator), RangeError, "sealed");
  }
});
