/**
 * Races the soil engines against the same slice in scipy (tests/outside/store_reference.py): same
 * mesh, same hours, same tubes. Prints microseconds for a slice and an hour, ratios, and how far each
 * is from the full model in short steps. Needs a Python with numpy and scipy: PYTHON names it.
 */
import { adiEngine, uniformState } from "../../lib/store/adi_engine.ts";
import type { SoilEngine } from "../../lib/store/engine.ts";
import { reducedEngine, reducedState } from "../../lib/store/reduced_engine.ts";
import { PRODUCTION_STATES, reduceSlice } from "../../lib/store/reduction.ts";
import { benchSite, hourInputs, rootMeanSquare, runHours, SLICES } from "./store_case.ts";

const HOURS = 480;
const GLOBAL_HOURS = 72;
const START = 8;
const SKIP = 24;
const ROUNDS = 3;

const site = benchSite();
const { operator, field } = site;
const start = operator.capacity.map(() => START);

function caseForPython() {
  const joins: [number, number, number][] = [];
  for (let c = 0; c < operator.capacity.length; c++) {
    if (operator.sideways[c]! > 0) joins.push([c, c + 1, operator.sideways[c]!]);
    if (operator.downwards[c]! > 0) joins.push([c, c + operator.columns, operator.downwards[c]!]);
  }
  return {
    capacity: Array.from(operator.capacity),
    from: joins.map(([from]) => from),
    to: joins.map(([, to]) => to),
    conductance: joins.map(([, , conductance]) => conductance),
    floorCells: Array.from(operator.floor.cells),
    floorConductances: Array.from(operator.floor.conductances),
    outdoorCells: Array.from(operator.outdoor.cells),
    outdoorConductances: Array.from(operator.outdoor.conductances),
    tubes: operator.tubes.map((tube) => ({
      cells: Array.from(tube.cells),
      weights: Array.from(tube.weights),
    })),
    soilSide: Array.from(field.soilSide),
    sensible: Array.from(field.sensible),
    heatRate: Array.from(field.heatRate),
    segment: field.segment,
    slices: SLICES,
    start: START,
    globalHours: GLOBAL_HOURS,
    series: Array.from({ length: HOURS }, (_, hour) => hourInputs(hour)),
  };
}

const slice = reduceSlice(operator);
const engines: Record<string, () => SoilEngine> = {
  "full model, hourly": () => {
    const engine = adiEngine(operator, SLICES, [3600]);
    engine.load(uniformState(SLICES, start));
    return engine;
  },
  [`reduced model, ${PRODUCTION_STATES} states, hourly`]: () => {
    const engine = reducedEngine(slice, SLICES, [3600]);
    engine.load(reducedState(slice, SLICES, start));
    return engine;
  },
};

function fastest(
  make: () => SoilEngine,
): { readonly time: number; readonly outlets: Float64Array } {
  let time = Infinity;
  let outlets: Float64Array = new Float64Array();
  for (let round = 0; round < ROUNDS; round++) {
    const engine = make();
    const begin = performance.now();
    outlets = runHours(site, engine, HOURS);
    time = Math.min(time, (performance.now() - begin) / 1000 / HOURS / SLICES);
  }
  return { time, outlets };
}

async function runPython() {
  const folder = await Deno.makeTempDir();
  try {
    await Deno.writeTextFile(`${folder}/case.json`, JSON.stringify(caseForPython()));
    const script = new URL("../outside/store_reference.py", import.meta.url).pathname;
    const { code, stderr } = await new Deno.Command(Deno.env.get("PYTHON") ?? "python3", {
      args: [script, `${folder}/case.json`, `${folder}/result.json`],
      env: { OMP_NUM_THREADS: "1", OPENBLAS_NUM_THREADS: "1" },
    }).output();
    if (code !== 0) throw new Error(new TextDecoder().decode(stderr));
    return JSON.parse(await Deno.readTextFile(`${folder}/result.json`));
  } finally {
    await Deno.remove(folder, { recursive: true });
  }
}

const fine = adiEngine(operator, SLICES, [100]);
fine.load(uniformState(SLICES, start));
const truth = runHours(site, fine, HOURS);
const python = await runPython();
const numbers = (values: (number | null)[]) => values.map((value) => value ?? NaN);
const rows = [
  {
    name: "scipy, one factor of a slice",
    time: python.perSlice,
    outlets: numbers(python.outlets),
  },
  {
    name: "scipy, one global matrix",
    time: python.oneGlobal,
    outlets: numbers(python.globalOutlets),
  },
  ...Object.entries(engines).map(([name, make]) => ({ name, ...fastest(make) })),
];
console.table(rows.map(({ name, time, outlets }) => ({
  model: name,
  "us a slice and hour": +(time * 1e6).toFixed(2),
  "times scipy per slice": +(python.perSlice / time).toFixed(2),
  "times scipy global": +(python.oneGlobal / time).toFixed(2),
  "outlet RMS K": +rootMeanSquare(outlets, truth, SKIP).toFixed(4),
})));
console.info(`${operator.capacity.length} cells, ${field.tubes} tubes, ${SLICES} slices`);
