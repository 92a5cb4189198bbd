import { assertAlmostEquals, assertLess } from "@std/assert";
import { adiEngine } from "../../lib/store/solver/full/engine.ts";
import { annulusOperator } from "../support/annulus.ts";
import { penetrationDepth, PRODUCTION_MESH, sliceMesh } from "../../lib/store/ground/mesh.ts";
import { sliceOperator } from "../../lib/store/ground/operator.ts";
import { runPipe } from "../store/pipe_rig.ts";

const pipe = { radius: 0.05, film: 10, heatRate: 20, length: 20 };
const loam = { conductivity: 1.5, heatCapacity: 2e6 };

/** Outlet after hours for a unit step at the inlet of soil at 0, interpolated to the hour. */
function stepAnswer(outerRadius: number, hours: readonly number[], seconds: number): number[] {
  const operator = annulusOperator({
    innerRadius: 0.05,
    outerRadius,
    ...loam,
    rings: 40,
    outer: "insulated",
  });
  const seen = new Map<number, number>();
  let before = 0;
  runPipe({
    operator,
    pipe,
    slices: 40,
    seconds,
    steps: Math.round(hours.at(-1)! * 3600 / seconds) + 1,
    inlet: () => 1,
    seen: (time, outlet) => {
      for (const hour of hours) {
        if (Math.abs(time - seconds / 2 - hour * 3600) < 1) seen.set(hour, (before + outlet) / 2);
      }
      before = outlet;
    },
  });
  return hours.map((hour) => seen.get(hour)!);
}

const HOURS = [0.25, 1, 3, 6, 12, 24, 72, 240];
const ENDLESS = [
  0.0664699,
  0.0846763,
  0.1053229,
  0.1209776,
  0.1381959,
  0.1564568,
  0.1863340,
  0.2189239,
];
const INSULATED = [
  0.0664699,
  0.0846776,
  0.1065622,
  0.1315209,
  0.1815767,
  0.2828710,
  0.6318365,
  0.9861154,
];

Deno.test("runPipe() answers a step within 0.005 of the Laplace solution, endless soil", () => {
  // Source: T_out(s)/T_in = exp(−U(s)S/ṁc)/s with the harmonic admittance at s (Hollmuller 2003
  // [hollmuller-2003]), inverted numerically to 7 digits (Talbot); 0.005 is the accuracy claimed.
  const found = stepAnswer(4, HOURS, 150);
  HOURS.forEach((hour, k) => assertAlmostEquals(found[k]!, ENDLESS[k]!, 0.005, `${hour} h`));
});

Deno.test("runPipe() answers a step within 0.005 of the Laplace solution, insulated at 0.20 m", () => {
  // Source: as above.
  const found = stepAnswer(0.2, HOURS, 150);
  HOURS.forEach((hour, k) => assertAlmostEquals(found[k]!, INSULATED[k]!, 0.005, `${hour} h`));
});

Deno.test("runPipe() fills the insulated ring with exactly its heat capacity", () => {
  // Source: ∫(1 − T_out)dt = C·π(r₀² − R²)·L/ṁc = 235 619 s, energy balance of the same case.
  const operator = annulusOperator({
    innerRadius: 0.05,
    outerRadius: 0.2,
    ...loam,
    rings: 30,
    outer: "insulated",
  });
  let missing = 0;
  runPipe({
    operator,
    pipe,
    slices: 24,
    seconds: 600,
    steps: 144 * 60,
    inlet: () => 1,
    seen: (_, outlet) => missing += (1 - outlet) * 600,
  });
  assertAlmostEquals(missing, 235619, 24);
});

/** J(ξ,η) of the table below at η, by running a thin ring of almost perfect conductor. */
function packedBed(units: number, etas: readonly number[]): number[] {
  // N = h·S/ṁc = units; η = h·S·t/(capacity of the ring)
  const surface = 2 * Math.PI * 0.05 * 20;
  const film = units * 20 / surface;
  const operator = annulusOperator({
    innerRadius: 0.05,
    outerRadius: 0.06,
    conductivity: 1e5,
    heatCapacity: 2e6,
    rings: 1,
    outer: "insulated",
  });
  const capacity = operator.capacity[0]! * 20;
  const perEta = capacity / (film * surface);
  const seconds = perEta / 40;
  const outlets: number[] = [];
  runPipe({
    operator,
    pipe: { radius: 0.05, film, heatRate: 20, length: 20 },
    slices: 160,
    seconds,
    steps: Math.round(etas.at(-1)! * 40) + 1,
    inlet: () => 1,
    seen: (_, outlet) => outlets.push(outlet),
  });
  return etas.map((eta) => {
    const step = Math.round(eta * 40);
    return (outlets[step - 1]! + outlets[step]!) / 2;
  });
}

const ETAS = [0.5, 1, 2, 5, 10];
const PACKED: readonly (readonly [number, readonly number[]])[] = [
  [0.5, [0.732880, 0.819310, 0.918108, 0.992819, 0.999891]],
  [1, [0.530130, 0.654254, 0.817415, 0.976650, 0.999427]],
  [2, [0.269012, 0.394297, 0.603501, 0.913934, 0.995835]],
  [5, [0.029951, 0.065632, 0.168569, 0.563917, 0.925608]],
  [10, [0.000578, 0.002084, 0.010541, 0.119794, 0.544890]],
];

for (const [units, expected] of PACKED) {
  Deno.test(`runPipe() meets Anzelius 1926 and Schumann 1929 at ${units} transfer units`, () => {
    // Source: J(ξ,η) = 1 − e^(−η)∫₀^ξ e^(−u)·I₀(2√(ηu))du, evaluated to 6 digits; 0.005 is claimed.
    const found = packedBed(units, ETAS);
    ETAS.forEach((eta, k) => assertAlmostEquals(found[k]!, expected[k]!, 0.005, `η = ${eta}`));
  });
}

Deno.test("adiEngine() warms round a line source as Carslaw & Jaeger 1959 §10.4 say", () => {
  // Source: ΔT = q′/(4πλ)·E₁(r²/4at), q′ = 10 W/m, λ = 1.5, a = 7.5e-7: at 0.05 m 2.1611732,
  // 3.3781395 K after 1 and 10 days. 3 %: growth of the production mesh.
  const side = 6;
  const mesh = sliceMesh({
    ...PRODUCTION_MESH,
    penetration: penetrationDepth(loam),
    floorWidth: side,
    outsideSoil: 0,
    depth: side,
    tubes: [{ x: 0, depth: side / 2 }],
    tubeRadius: 0.05,
    half: true,
    faces: [],
  });
  const operator = sliceOperator(mesh, {
    ...loam,
    zones: [],
    boards: [],
    floorFilm: 0,
    outdoorFilm: 0,
    deepHeld: false,
    tubeRadius: 0.05,
  });
  const engine = adiEngine(operator, 1, [900]);
  const zero = new Float64Array(1);
  const wall: number[] = [];
  // half a tube takes half the heat
  const heat = Float64Array.of(5);
  for (let step = 0; step < 960; step++) {
    engine.predict(0, zero, zero, true);
    wall.push(
      engine.blockTemperature[0]! + engine.tubeResponse[0]![0]! * 5 +
        operator.tubes[0]!.resistance * 10,
    );
    engine.finish(0, heat, zero, true);
  }
  assertAlmostEquals((wall[94]! + wall[95]!) / 2, 2.1611732, 0.03 * 2.1611732, "1 day");
  assertAlmostEquals(wall[959]!, 3.3781395, 0.03 * 3.3781395, "10 days");
});

/** Error of the daily amplitude and lag against the exact value for a mesh or step. */
function stepError(rings: number, seconds: number): number {
  const hours = [6];
  const operator = annulusOperator({
    innerRadius: 0.05,
    outerRadius: 0.2,
    ...loam,
    rings,
    outer: "insulated",
  });
  let before = 0;
  let at = 0;
  runPipe({
    operator,
    pipe,
    slices: 120,
    seconds,
    steps: 6 * 3600 / seconds + 1,
    inlet: () => 1,
    seen: (time, outlet) => {
      if (Math.abs(time - seconds / 2 - hours[0]! * 3600) < 1) at = (before + outlet) / 2;
      before = outlet;
    },
  });
  return Math.abs(at - 0.1315209);
}

Deno.test("runPipe() converges at second order when the rings are halved", () => {
  // Property: refinement order; finite volumes claim second order
  const [coarse, fine] = [stepError(5, 60), stepError(10, 60)];
  assertLess(fine, coarse / 3, `${coarse} to ${fine}`);
});

Deno.test("adiEngine() converges at second order when the step is halved", () => {
  // Property: refinement order; the outlet six hours after a step against steps of 37.5 s
  const answers = [600, 300, 37.5].map((seconds) => stepAnswer(0.2, [6], seconds)[0]!);
  const [coarse, fine] = [answers[0]! - answers[2]!, answers[1]! - answers[2]!];
  assertLess(Math.abs(fine), Math.abs(coarse) / 3, `${coarse} to ${fine}`);
});
