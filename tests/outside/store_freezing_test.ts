import { assertAlmostEquals, assertLess } from "@std/assert";
import type { SoilProperties } from "../../lib/soil/types.ts";
import { FreezingStepper } from "../../lib/store/seasons/freezing.ts";
import type { ConductionOperator } from "../../lib/store/ground/operator.ts";

const soil: SoilProperties = {
  conductivity: 1.8,
  frozenConductivity: 1.8,
  heatCapacity: 2.2e6,
  frozenHeatCapacity: 2.2e6,
  diffusivity: 1.8 / 2.2e6,
  latentHeat: 1.002e8,
  conductivityRange: [1.6, 2],
  porosity: 0.45,
  saturation: 0.7,
  freezingRange: 0.25,
};

/** A column of equal cells held at the top; four lanes alike. */
function column(cells: number, height: number): ConductionOperator {
  const none = { cells: new Int32Array(), conductances: new Float64Array() };
  return {
    columns: 1,
    rows: cells,
    capacity: new Float64Array(cells).fill(soil.heatCapacity * height),
    sideways: new Float64Array(cells),
    downwards: Float64Array.from(
      { length: cells },
      (_, k) => k + 1 < cells ? soil.conductivity / height : 0,
    ),
    tubes: [],
    floor: none,
    outdoor: {
      cells: Int32Array.of(0),
      conductances: Float64Array.of(2 * soil.conductivity / height),
    },
    deep: none,
    store: { cells: Int32Array.of(0), weights: Float64Array.of(1) },
    freezing: null,
  };
}

/** erf by its series, to rounding for |x| < 3. */
function erf(x: number): number {
  let term = x;
  let sum = x;
  for (let n = 1; n < 80; n++) {
    term *= -x * x / n;
    sum += term / (2 * n + 1);
  }
  return 2 * sum / Math.sqrt(Math.PI);
}

/** λ of the two-phase Neumann problem with equal properties: X = 2λ√(at). */
function neumannFront(surface: number, start: number): number {
  const left = (l: number) => {
    const e = Math.exp(-l * l);
    return e / erf(l) * -surface - e / (1 - erf(l)) * start -
      l * soil.latentHeat * Math.sqrt(Math.PI) / soil.heatCapacity;
  };
  let [low, high] = [1e-3, 2];
  while (high - low > 1e-10) {
    const middle = (low + high) / 2;
    if (left(middle) > 0) low = middle;
    else high = middle;
  }
  return low;
}

Deno.test("FreezingStepper() moves the frost front as Neumann says, Carslaw & Jaeger 1959 §11.2", () => {
  // Source: Carslaw & Jaeger 1959 [carslaw-jaeger-1959] §11.2 (xi), two phases, equal properties,
  // solved here; a fixed mesh should find the front within one cell and temperatures within 0.15 K.
  const height = 0.05;
  const operator = column(100, height);
  const stepper = new FreezingStepper(operator, soil, 1800);
  stepper.start(new Float64Array(400).fill(5));
  const surface = stepper.response(operator.outdoor.cells, operator.outdoor.conductances);
  const begin = stepper.content(0);
  let taken = 0;
  let top = stepper.field[0]!;
  for (let step = 0; step < 30 * 48; step++) {
    const before = top;
    stepper.step((field) => {
      for (let lane = 0; lane < 4; lane++) {
        surface.cells.forEach((cell, k) => field[4 * cell + lane]! += -10 * surface.values[k]!);
      }
      // the linear step's own flux: mean of old and unfrozen new
      top = field[0]!;
    });
    taken += 2 * soil.conductivity / height * (-10 - (before + top) / 2) * 1800;
    top = stepper.field[0]!;
  }
  const gained = stepper.content(0) - begin;
  assertLess(Math.abs(gained - taken) / Math.abs(gained), 1e-9, "ledger");
  const front = neumannFront(-10, 5);
  const spread = 2 * Math.sqrt(soil.diffusivity * 30 * 86400);
  const exact = (x: number) => {
    const eta = x / spread;
    return eta < front
      ? -10 + 10 * erf(eta) / erf(front)
      : 5 - 5 * (1 - erf(eta)) / (1 - erf(front));
  };
  const temperature = (k: number) => stepper.field[4 * k]!;
  let frozen = 0;
  while (temperature(frozen) < -soil.freezingRange / 2) frozen++;
  assertAlmostEquals(frozen * height, front * spread, height, "front");
  for (const x of [0.275, 0.525, 1.525, 2.525]) {
    assertAlmostEquals(temperature(Math.round(x / height - 0.5)), exact(x), 0.15, `${x} m`);
  }
});
