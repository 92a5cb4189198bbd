/** One buried pipe run with the store's own stepper and tube coupling, dry air. */
import { adiEngine } from "../../lib/store/solver/full/engine.ts";
import { marchAir } from "../../lib/store/air/air_march.ts";
import { marchOutput } from "../../lib/store/air/march_buffers.ts";
import { type TubeCoupling, tubeCouplings } from "../../lib/store/air/coupling.ts";
import type { SoilEngine } from "../../lib/store/solver/engine.ts";
import {
  type MeshSettings,
  penetrationDepth,
  PRODUCTION_MESH,
  sliceMesh,
} from "../../lib/store/ground/mesh.ts";
import { type ConductionOperator, sliceOperator } from "../../lib/store/ground/operator.ts";
import { saturationTable } from "../../lib/store/air/saturation.ts";
import { tubeField } from "../../lib/store/air/tube_field.ts";

/** A pipe case: radius m, film W/(m² K), air heat rate W/K, length m. */
export interface PipeCase {
  readonly radius: number;
  readonly film: number;
  readonly heatRate: number;
  readonly length: number;
}

/** Runs a pipe; `inlet(t)` at the middle of each step; calls `seen(t, outlet)` with the same t. */
export function runPipe(given: {
  readonly operator: ConductionOperator;
  readonly pipe: PipeCase;
  readonly slices: number;
  readonly seconds: number;
  readonly steps: number;
  readonly inlet: (time: number) => number;
  readonly seen: (time: number, outlet: number, engine: SoilEngine) => void;
  /** engine to use instead of the full model */
  readonly engine?: SoilEngine;
}): SoilEngine {
  const { operator, pipe, slices, seconds } = given;
  const engine = given.engine ?? adiEngine(operator, slices, [seconds]);
  const field = tubeField({
    operator,
    slices,
    length: pipe.length,
    half: operator.tubes[0]!.part < 1,
    perimeter: 2 * Math.PI * pipe.radius,
    filmWater: 0,
    pressure: 101325,
    tubes: [{
      heatRate: pipe.heatRate,
      airRate: pipe.heatRate / 1006,
      film: 2 * Math.PI * pipe.radius * pipe.film,
    }],
  });
  const output = marchOutput(field);
  const zero = new Float64Array(slices);
  const [coupling] = tubeCouplings(engine, field, 1) as [TubeCoupling];
  const saturation = saturationTable(101325);
  for (let step = 0; step < given.steps; step++) {
    const time = (step + 0.5) * seconds;
    engine.predict(0, zero, zero, true);
    marchAir({
      field,
      saturation,
      block: engine.blockTemperature,
      coupling,
      temperature: given.inlet(time),
      ratio: 0,
      reversed: false,
      water: zero,
      seconds,
    }, output);
    engine.finish(0, output.heat, zero, true);
    given.seen(time, output.outletTemperature, engine);
  }
  return engine;
}

/** Amplitude and lag (radian) of the outlet for a unit cosine at the inlet, once periodic. */
export function harmonicAnswer(given: {
  readonly operator: ConductionOperator;
  readonly pipe: PipeCase;
  readonly slices: number;
  readonly period: number;
  readonly stepsPerPeriod: number;
  readonly periods: number;
  /** engine to use instead of the full model */
  readonly engine?: SoilEngine;
}): { readonly amplitude: number; readonly lag: number } {
  const { period, stepsPerPeriod, periods } = given;
  const omega = 2 * Math.PI / period;
  const last = (periods - 1) * period;
  let cosine = 0;
  let sine = 0;
  runPipe({
    ...given,
    seconds: period / stepsPerPeriod,
    steps: periods * stepsPerPeriod,
    inlet: (time) => Math.cos(omega * time),
    seen: (time, outlet) => {
      if (time < last) return;
      cosine += 2 * outlet * Math.cos(omega * time) / stepsPerPeriod;
      sine += 2 * outlet * Math.sin(omega * time) / stepsPerPeriod;
    },
  });
  return { amplitude: Math.hypot(cosine, sine), lag: Math.atan2(sine, cosine) };
}

/** A square of soil round the pipe with the production mesh (or a refined one), nothing leaving it. */
export function squareOperator(given: {
  readonly side: number;
  readonly radius: number;
  readonly conductivity: number;
  readonly heatCapacity: number;
  readonly mesh?: MeshSettings;
  /** W/(m² K) through the upper face, to keep the steady field finite; none unless given */
  readonly leak?: number;
}): ConductionOperator {
  const mesh = sliceMesh({
    ...(given.mesh ?? PRODUCTION_MESH),
    penetration: penetrationDepth(given),
    floorWidth: given.side,
    outsideSoil: 0,
    depth: given.side,
    tubes: [{ x: 0, depth: given.side / 2 }],
    tubeRadius: given.radius,
    half: true,
    faces: [],
  });
  return sliceOperator(mesh, {
    conductivity: given.conductivity,
    heatCapacity: given.heatCapacity,
    zones: [],
    boards: [],
    floorFilm: given.leak ?? 0,
    outdoorFilm: 0,
    deepHeld: false,
    tubeRadius: given.radius,
  });
}
