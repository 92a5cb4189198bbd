/**
 * Races the soil engines against the same slice in scipy (tests/outside/store_reference.py): same
 * mesh, same hours, same tubes. Prints microseconds for a slice and an hour, ratios, and how far each
 * is from the full model in short steps. Times and ratios are medians of rounds in which everybody has a turn. PYTHON names a Python with numpy and scipy; without one, recorded times stand in.
 */
import { HOURS_PER_YEAR } from "../../lib/basics/mod.ts";
import { adiEngine, uniformState } from "../../lib/store/solver/full/engine.ts";
import { adiFactors } from "../../lib/store/solver/full/factors.ts";
import { plainAdi, simdAdi } from "../../lib/store/solver/full/adi_kernel.ts";
import { LANES } from "../../lib/store/solver/full/kernel.ts";
import type { SoilEngine } from "../../lib/store/solver/engine.ts";
import { reducedEngine } from "../../lib/store/solver/reduced/engine.ts";
import { reducedState } from "../../lib/store/solver/reduced/fields.ts";
import { productionStates, reduceSlice } from "../../lib/store/solver/reduced/reduction.ts";
import { freezingZones } from "../../lib/store/ground/zones.ts";
import {
  benchSite,
  freezingInputs,
  hourInputs,
  rootMeanSquare,
  runHours,
  SLICES,
} from "./store_case.ts";

/** s for a slice and hour, and hourly outlets, degC, null while the fan is off. */
interface PythonTimes {
  readonly perSlice: number;
  readonly oneGlobal: number;
  readonly outlets: (number | null)[];
  readonly globalOutlets: (number | null)[];
}

/** s for a slice and hour of scipy 1.17 on a shared two-core machine, for where it is not at hand. */
const RECORDED: PythonTimes = {
  perSlice: 66.58e-6,
  oneGlobal: 398.51e-6,
  outlets: [],
  globalOutlets: [],
};
const HOURS = 480;
const GLOBAL_HOURS = 72;
const START = 8;
const SKIP = 24;
const ROUNDS = 3;
const TIMED_HOURS = 1440;
const WARM_RUNS = 8;

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

function reduced(states: number): () => SoilEngine {
  const slice = reduceSlice(operator, states);
  return () => {
    const engine = reducedEngine(slice, SLICES, [3600]);
    engine.load(reducedState(slice, SLICES, start));
    return engine;
  };
}

/** As production reduces it, freezing in its zones. */
const freezingSlice = reduceSlice(operator, undefined, freezingZones(site.mesh, operator));

function freezing(): SoilEngine {
  const engine = reducedEngine(freezingSlice, SLICES, [3600]);
  engine.load(reducedState(freezingSlice, SLICES, start));
  return engine;
}

function full(seconds: number, freezes = false): () => SoilEngine {
  return () => {
    const engine = adiEngine(operator, SLICES, [seconds], freezes);
    engine.load(uniformState(SLICES, start));
    return engine;
  };
}

const FREEZES = `reduced model that freezes, ${freezingSlice.states} states, hourly`;
const engines: Record<string, () => SoilEngine> = {
  [`reduced model, ${productionStates(field.tubes)} states, hourly`]: reduced(
    productionStates(field.tubes),
  ),
  "reduced model, 32 states, hourly": reduced(32),
  [FREEZES]: freezing,
  "full model, hourly": full(3600),
  "full model, quarter-hourly": full(900),
};

/** A year for what freezes, so that winter has its share. */
const timedHours = (name: string) => name === FREEZES ? HOURS_PER_YEAR : TIMED_HOURS;
const inputsOf = (name: string) => name === FREEZES ? freezingInputs : hourInputs;

/** Time of a slice and hour, once several runs have let the compiler settle. */
function timeOf(name: string): number {
  const engine = engines[name]!();
  for (let run = 0; run < WARM_RUNS; run++) runHours(site, engine, HOURS, inputsOf(name));
  const begin = performance.now();
  const hours = timedHours(name);
  runHours(site, engine, hours, inputsOf(name));
  return (performance.now() - begin) / 1000 / hours / SLICES;
}

function median(values: readonly number[]): number {
  return values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)]!;
}

/** Times of scipy here and now; null without a Python that has it. */
async function runPython(): Promise<PythonTimes | null> {
  const folder = await Deno.makeTempDir();
  try {
    await Deno.writeTextFile(`${folder}/case.json`, JSON.stringify(caseForPython()));
    const script = new URL("../outside/store_reference.py", import.meta.url).pathname;
    const python = new Deno.Command(Deno.env.get("PYTHON") ?? "python3", {
      args: [script, `${folder}/case.json`, `${folder}/result.json`],
      env: { OMP_NUM_THREADS: "1", OPENBLAS_NUM_THREADS: "1" },
    });
    const ran = await python.output().catch((error) => {
      if (error instanceof Deno.errors.NotFound) return null;
      throw error;
    });
    const failure = ran === null ? "" : new TextDecoder().decode(ran.stderr);
    if (ran === null || failure.includes("ModuleNotFoundError")) return null;
    if (ran.code !== 0) throw new Error(failure);
    return JSON.parse(await Deno.readTextFile(`${folder}/result.json`));
  } finally {
    await Deno.remove(folder, { recursive: true });
  }
}

const [limit, kernel] = Deno.args.length > 0 ? [0, 0] : [scalarLimit(), kernelRate()];
const alone = Deno.args[0];
if (alone !== undefined) {
  await Deno.stdout.write(new TextEncoder().encode(String(timeOf(alone))));
  Deno.exit(0);
}

/** Times an engine in a process of its own, as Python is, so that no other blurs its compiled code. */
async function timeAlone(name: string): Promise<number> {
  const { code, stdout, stderr } = await new Deno.Command(Deno.execPath(), {
    args: ["run", "-A", "--no-check", new URL(import.meta.url).pathname, name],
  }).output();
  if (code !== 0) throw new Error(new TextDecoder().decode(stderr));
  return Number(new TextDecoder().decode(stdout));
}

const truth = runHours(site, full(100)(), HOURS);
const freezingTruth = runHours(site, full(100, true)(), HOURS, freezingInputs);
const numbers = (values: (number | null)[]) => values.map((value) => value ?? NaN);
const perSlice: number[] = [];
const oneGlobal: number[] = [];
const times = Object.values(engines).map((): number[] => []);
let here = true;
let python: PythonTimes = RECORDED;
for (let round = 0; round < ROUNDS; round++) {
  const found: PythonTimes | null = here ? await runPython() : null;
  here = found !== null;
  python = found ?? RECORDED;
  perSlice.push(python.perSlice);
  oneGlobal.push(python.oneGlobal);
  for (const [k, name] of Object.keys(engines).entries()) times[k]!.push(await timeAlone(name));
}
const whence = here ? "" : ", recorded";
const rows = [
  {
    name: `scipy, one factor of a slice${whence}`,
    time: perSlice,
    outlets: numbers(python.outlets),
    truth,
  },
  {
    name: `scipy, one global matrix${whence}`,
    time: oneGlobal,
    outlets: numbers(python.globalOutlets),
    truth,
  },
  ...Object.entries(engines).map(([name, make], k) => ({
    name,
    time: times[k]!,
    outlets: runHours(site, make(), HOURS, inputsOf(name)),
    truth: name === FREEZES ? freezingTruth : truth,
  })),
];
const ratio = (reference: readonly number[], time: readonly number[]) =>
  median(reference.map((value, round) => value / time[round]!)).toFixed(2);
const lines = [
  "| model | µs for a slice and hour | × scipy per slice | × scipy global | outlet RMS, K |",
  "| --- | --- | --- | --- | --- |",
  ...rows.map(({ name, time, outlets, truth }) =>
    `| ${name} | ${(median(time) * 1e6).toFixed(2)} | ${ratio(perSlice, time)} | ${
      ratio(oneGlobal, time)
    } | ${rootMeanSquare(outlets, truth, SKIP).toFixed(4)} |`
  ),
];

/** What eight independent multiply-add sums reach in this language on this machine just now, flop/s. */
function scalarLimit(): number {
  const chains = (count: number): number => {
    let [a, b, c, d, e, f, g, h] = [1, 1, 1, 1, 1, 1, 1, 1];
    for (let k = 0; k < count; k++) {
      a = a * 1.0000001 + 1e-9;
      b = b * 1.0000001 + 1e-9;
      c = c * 1.0000001 + 1e-9;
      d = d * 1.0000001 + 1e-9;
      e = e * 1.0000001 + 1e-9;
      f = f * 1.0000001 + 1e-9;
      g = g * 1.0000001 + 1e-9;
      h = h * 1.0000001 + 1e-9;
    }
    return a + b + c + d + e + f + g + h;
  };
  let best = 0;
  for (let round = 0; round < 8; round++) {
    const begin = performance.now();
    if (chains(5e6) === 0) return 0;
    best = Math.max(best, 16 * 5e6 / ((performance.now() - begin) / 1000));
  }
  return best;
}

/** The kernel of the full model alone: flop/s at 17 flops a cell and slice. */
function kernelRate(): number {
  const cells = operator.capacity.length;
  const kernel = simdAdi() ?? plainAdi();
  const factors = adiFactors(operator, 3600);
  const { across, along, columnNext } = factors;
  const placed = kernel.place({
    across,
    along,
    columnNext,
    states: new Float64Array(LANES * cells).fill(START),
    work: new Float64Array(LANES * cells),
  });
  const step = () =>
    kernel.step(operator, { ...factors, ...placed }, placed.states, 0, placed.work);
  let best = 0;
  for (let round = 0; round < 8; round++) {
    const begin = performance.now();
    for (let k = 0; k < 100; k++) step();
    best = Math.max(best, 100 * 17 * LANES * cells / ((performance.now() - begin) / 1000));
  }
  return best;
}

if (!here) {
  lines.push(
    "",
    "No Python with numpy and scipy here (PYTHON names one): its times are recorded on another machine.",
  );
}
lines.push(
  "",
  `Full model's kernel ${(kernel / 1e9).toFixed(1)} of ${(limit / 1e9).toFixed(1)} GF/s; ` +
    `${operator.capacity.length} cells, ${field.tubes} tubes, ${SLICES} slices.`,
);
await Deno.stdout.write(new TextEncoder().encode(`${lines.join("\n")}\n`));
