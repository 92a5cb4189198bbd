/**
 * Times the demo study as a person runs it: commands from start to end, time to the first figure,
 * reading the library, the parts of the store, variants with one and with two workers, and winters.
 * Wall time on this machine: compare
 * within one run only, and on a machine that does nothing else.
 */
import { join } from "node:path";
import { alone, each, shared } from "../../lib/basics/mod.ts";
import {
  baselineTask,
  firstYearsTask,
  mainYearTask,
  reducedBaselines,
  reducedStores,
  reduceTask,
  settledTask,
} from "../../lib/store/runs.ts";
import { ownSite, sliceQuestion } from "../../lib/store/seasons/soil_model.ts";
import { defaultStudyPath, openStudy, type Study, workPool } from "../../lib/study/mod.ts";
import type { StoreRequest } from "../../lib/store/site.ts";
import { winterSteps } from "../../lib/store/winters/mod.ts";
import { say } from "../../lib/commands/terminal.ts";
import { requestOf } from "./store_request.ts";

const PROGRAM = new URL("../../lib/commands/study.ts", import.meta.url).pathname;
const LONGER = ["length: 72 ft", "length: 74 ft"] as const;
/** Slices along the tubes in comparisons. */
const SLICES = 3;
const VARIANTS = 8;
const WINTERS = 20;

const seconds = (from: number) => (performance.now() - from) / 1000;
const print = (what: string, value: string) => say(`${what.padEnd(58)}${value.padStart(12)}`);

/** Runs the command; s until its first figure and until its end. */
async function timeCommand(folder: string, args: readonly string[]) {
  const start = performance.now();
  const child = new Deno.Command(Deno.execPath(), {
    args: ["run", "-A", "--no-check", PROGRAM, ...args, "--out", join(folder, "out")],
    env: { WINTERGROUND_CACHE: join(folder, "cache"), NO_COLOR: "1" },
    stdin: "null",
    stdout: "piped",
    stderr: "null",
  }).spawn();
  let first = NaN;
  for await (const _chunk of child.stdout) if (Number.isNaN(first)) first = seconds(start);
  const { code } = await child.status;
  if (code !== 0) throw new Error(`study ${args.join(" ")} ended with status ${code}`);
  return { first, all: seconds(start) };
}

/** A copy of the demo with longer tubes. */
async function longerTubes(folder: string): Promise<string> {
  const source = defaultStudyPath();
  const text = await Deno.readTextFile(source);
  if (!text.includes(LONGER[0])) throw new Error(`the demo has no line "${LONGER[0]}"`);
  const path = join(folder, "longer.yaml");
  const data = new URL("../../data/", import.meta.url).pathname;
  const changed = text.replace(...LONGER).replaceAll("../../", data);
  await Deno.writeTextFile(path, changed);
  return path;
}

async function commands(folder: string): Promise<void> {
  const changed = await longerTubes(folder);
  const cases: readonly (readonly [string, readonly string[]])[] = [
    ["--chapters 1, nothing kept", ["--chapters", "1"]],
    ["whole study, next to nothing kept", []],
    ["whole study again, nothing changed", []],
    ["one tube length changed, --quick", [changed, "--quick"]],
    ["the same, then the whole study", [changed]],
  ];
  for (const [what, args] of cases) {
    const { first, all } = await timeCommand(folder, args);
    print(what, `${all.toFixed(1)} s`);
    print("  until its first figure", `${first.toFixed(1)} s`);
  }
}

/** What a process takes to read the library, and what a worker needs of it. */
async function starts(): Promise<void> {
  const modules = [["the library", "lib/mod.ts"], ["a worker", "lib/study/run/tasks.ts"]] as const;
  for (const [what, path] of modules) {
    const module = new URL(`../../${path}`, import.meta.url).href;
    const spent: number[] = [];
    for (let time = 0; time < 4; time++) {
      const start = performance.now();
      const { success } = await new Deno.Command(Deno.execPath(), {
        args: ["run", "-A", "--no-check", module],
        stdin: "null",
      }).output();
      if (!success) throw new Error(`${path} cannot be read`);
      spent.push(seconds(start));
    }
    print(`start of ${what}`, `${Math.min(...spent).toFixed(2)} s`);
  }
}

/** What each part of the store takes alone; the whole is their sum on one core. */
function parts(request: StoreRequest): void {
  const question = sliceQuestion(ownSite(request));
  const time = (what: string, work: () => unknown): number => {
    const start = performance.now();
    work();
    const spent = seconds(start);
    spentBy.push([what, spent]);
    return spent;
  };
  const spentBy: [string, number][] = [];
  time("reduction of the slice", () => reduceTask.run(question));
  const [store] = alone(reducedStores([request]));
  time("the year with all that is recorded, and the cold spell", () => mainYearTask.run(store!));
  time("years after building", () => firstYearsTask.run(store!));
  time("heated year, fan on", () => settledTask.run({ ...store!, heated: true }));
  const [bare] = alone(reducedBaselines([request]));
  for (const heated of [false, true]) {
    const what = `${heated ? "heated" : "free"} year, fan always off`;
    time(what, () => baselineTask.run({ ...bare!, heated }));
  }
  const whole = spentBy.reduce((sum, [, spent]) => sum + spent, 0);
  for (const [what, spent] of spentBy) {
    print(`store: ${what}`, `${spent.toFixed(2)} s, ${Math.round(100 * spent / whole)} %`);
  }
}

/** Variants a minute on one and on two workers, free and heated years from the plan's soil. */
async function variants(request: StoreRequest): Promise<void> {
  const [store] = alone(reducedStores([request]));
  const { field } = settledTask.run({ ...store!, heated: false, keepField: true });
  const questions = Array.from({ length: 2 * VARIANTS }, (_, k) => {
    const tubes = { ...request.tubes, length: request.tubes.length * (1 + 0.01 * (k >> 1)) };
    const changed = { ...store!, request: { ...request, tubes } };
    return { ...changed, heated: k % 2 === 1, from: field! };
  });
  const rates: number[] = [];
  for (const size of [1, 2]) {
    const pool = workPool({ size });
    const run = (count: number) =>
      shared(each(settledTask, questions.slice(0, count)), (piece) => pool.do(piece));
    await run(2 * size); // the compiler settles
    const start = performance.now();
    await run(questions.length);
    rates.push(60 * VARIANTS / seconds(start));
    pool.close();
    print(`variants a minute, ${size} worker${size > 1 ? "s" : ""}`, rates.at(-1)!.toFixed(0));
  }
  print("two workers over one", `${(rates[1]! / rates[0]!).toFixed(2)}`);
}

/** Winters a minute on two workers: with the store and without, free and held, their starts included. */
async function winters(request: StoreRequest, { climate }: Study): Promise<void> {
  if (climate.normals === undefined) throw new Error("the demo has monthly normals no more");
  const set = { normals: climate.normals, place: climate.place, seed: 1 };
  const pool = workPool({ size: 2 });
  const start = performance.now();
  const found = await shared(winterSteps(request, set, WINTERS), (piece) => pool.do(piece));
  print("winters a minute, 2 workers", (60 * found.length / seconds(start)).toFixed(0));
  pool.close();
}

const folder = await Deno.makeTempDir({ prefix: "winterground-bench-" });
try {
  await starts();
  await commands(folder);
  const demo = await openStudy(defaultStudyPath());
  parts(await requestOf(demo));
  const rough = { ...await requestOf(demo, SLICES), rough: true };
  await variants(rough);
  await winters(rough, demo);
} finally {
  await Deno.remove(folder, { recursive: true });
}
