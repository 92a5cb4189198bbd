/**
 * `deno task sweep`: many variants of a study, a row each.
 *
 * @module
 */
import { basename, join } from "node:path";
import { InputError } from "../basics/mod.ts";
import { libraryVersion, openStudyText, readTextFile, type Study, workPool } from "../study/mod.ts";
import { hashOf } from "../study/run/hash.ts";
import { defaultCache } from "../study/run/run.ts";
import { writeWhole } from "../study/results/write_whole.ts";
import { sharedPieces } from "../study/run/shared_pieces.ts";
import {
  doubtSweepText,
  figureColumns,
  findManifest,
  findShard,
  type KnownRows,
  openRows,
  orderedText,
  parquetOf,
  readRows,
  readSweep,
  rowLine,
  runRows,
  type Shard,
  shardRows,
  type SweepInputs,
  type SweepManifest,
  type SweepPlan,
  type SweepRun,
  sweptFigures,
  type TableColumn,
  tableColumns,
  writeManifest,
} from "../study/sweep/mod.ts";
import type { CommandLine, CommandSpec } from "./command_line.ts";
import { tryWriting } from "./output/disk_words.ts";
import { holdFolder } from "./output/lock.ts";
import { keepSweepFile, keepWeather, readRowCount, tellDoubt } from "./sweep_doubt.ts";
import { fieldsToTry, readFieldCount, tellFields } from "./sweep_fields.ts";
import { showRows } from "./sweep_progress.ts";
import { CommandFailure, complain, runCommand, say } from "./terminal.ts";

const SPEC: CommandSpec = {
  name: "sweep",
  summary: "Computes many variants of a study and writes a row of figures for each.",
  args: "STUDY.yaml [SWEEP.yaml]",
  minArgs: 1,
  maxArgs: 2,
  options: [
    {
      name: "out",
      value: "DIR",
      meaning: "folder for the rows (default: out/<study name>-<sweep file>)",
    },
    {
      name: "doubt",
      value: "n",
      meaning: "in place of a sweep file: n samples of what the study does not know",
    },
    {
      name: "fields",
      value: "n",
      meaning: "in place of a sweep file: the study's tube field and n others worth a try",
    },
    { name: "shard", value: "i/n", meaning: "compute part i of n" },
    {
      name: "shards",
      value: "n",
      meaning: "there are n parts; the batch engine's environment says which this is",
    },
    {
      name: "workers",
      value: "n",
      meaning: "workers to share the work (default: as many as cores)",
    },
    { name: "merge", meaning: "compute nothing: put the rows of all parts in DIR together" },
  ],
  notes: [
    "Called again, it goes on where it was cut off.",
    "Of tube fields, unbeaten.csv says which no other beats in first cost, heat and the crop's hours.",
    "Of samples, doubt.csv says between which values each figure lies and which key moves it most.",
    "Exit status: 0 done, 1 rows are missing or the study cannot be computed, 2 wrong usage or bad",
    "input. A row that cannot be computed says why in its last column; it is no failure.",
  ],
};

async function runSweep(line: CommandLine, signal: AbortSignal): Promise<void> {
  const [path, given] = line.args as readonly [string, string?];
  const wanted = [given, line.values.doubt, line.values.fields];
  if (wanted.filter((one) => one !== undefined).length !== 1) {
    throw new InputError("Cannot start: name a sweep file, or say --doubt n or --fields n");
  }
  const merge = line.switches.has("merge");
  const shard = merge ? WHOLE : findShard(line.values, (name) => Deno.env.get(name));
  const workers = readWorkers(line.values.workers);
  const text = await readTextFile(path, "study file", "settings");
  const study = await openStudyText(text, path);
  const form = line.values.fields === undefined ? "doubt" : "fields";
  const sweepName = basename(given ?? form).replace(/\.ya?ml$/i, "");
  const folder = line.values.out ?? join("out", `${study.heading.name}-${sweepName}`);
  const sweepPath = given ?? `${folder}.yaml`;
  if (given === undefined) await keepSweepFile(sweepPath, textOf(study, line.values));
  const plan = readSweep(await readTextFile(sweepPath, "sweep file", "settings"), sweepPath);
  const made = await inputsOf(study.inputHash, plan);
  if (merge) return await mergeRows({ folder, made, plan });
  const known = await findManifest(folder, made);
  await tryWriting(folder);
  const pool = workers === 0 ? undefined : workPool(workers === undefined ? {} : { size: workers });
  signal.addEventListener("abort", () => pool?.close());
  try {
    const sweep: SweepRun = {
      plan,
      text,
      path,
      pool,
      pieces: sharedPieces(defaultCache()),
      signal,
    };
    const manifest = known ?? await begin(sweep, folder, made);
    // one part is enough: all write to one folder, and the parts are put together later
    if (line.values.doubt !== undefined && shard.index === 1) {
      await keepWeather(folder, { study, plan, pool });
    }
    await computeRows(sweep, { folder, shard, manifest });
  } finally {
    pool?.close();
  }
  signal.throwIfAborted();
}

/** Text of the sweep file that the study itself gives. */
function textOf(study: Study, { doubt, fields }: CommandLine["values"]) {
  if (fields === undefined) {
    const rows = readRowCount(doubt!);
    return () => doubtSweepText(study, rows);
  }
  const count = readFieldCount(fields);
  return () => fieldsToTry(study, count);
}

const WHOLE: Shard = { index: 1, count: 1, from: "all rows" };

function readWorkers(text: string | undefined): number | undefined {
  if (text === undefined) return undefined;
  if (/^\d{1,3}$/.test(text)) return Number(text);
  throw new InputError(`Cannot use --workers "${text}": expected how many, 0 for none`);
}

async function inputsOf(study: string, plan: SweepPlan): Promise<SweepInputs> {
  return { study, sweep: hashOf(plan), library: (await libraryVersion()).hash };
}

/** The columns come from the study as it is, which is computed first. */
async function begin(sweep: SweepRun, folder: string, made: SweepInputs): Promise<SweepManifest> {
  complain("the study as it is: computing, to know the columns");
  const figures = await sweptFigures(sweep, sweep.text).catch((error) => {
    sweep.signal?.throwIfAborted();
    if (error instanceof InputError) throw error;
    throw new CommandFailure(
      `${sweep.path}: the study as it is cannot be computed: ${(error as Error).message}`,
    );
  });
  const manifest = { made, rows: sweep.plan.rows, figures: figureColumns(figures) };
  await writeManifest(folder, manifest);
  return manifest;
}

/** Name of a part's file without its ending. */
function partName({ index, count }: Shard): string {
  return count === 1 ? "rows" : `rows-${index}-of-${count}`;
}

async function computeRows(
  sweep: SweepRun,
  { folder, shard, manifest }: {
    readonly folder: string;
    readonly shard: Shard;
    readonly manifest: SweepManifest;
  },
): Promise<void> {
  const { plan } = sweep;
  const columns = tableColumns(plan.keys, manifest.figures);
  const name = partName(shard);
  const file = join(folder, `${name}.csv`);
  const hold = await holdFolder(join(folder, `.${name}.lock`), file);
  try {
    const rows = await openRows(file, columns);
    const own = shardRows(plan.rows, shard);
    const left = own.filter((row) => !rows.done.has(row));
    if (shard.count > 1) complain(`part ${shard.index} of ${shard.count}, by ${shard.from}`);
    const progress = showRows(own.length, own.length - left.length);
    try {
      await runRows(sweep, left, (row) => {
        rows.add(rowLine(row, plan.keys, manifest.figures));
        progress.done(row.row, row.fault);
      });
    } finally {
      progress.stop();
      rows.close();
    }
    if (sweep.signal?.aborted) return;
    const done = await putInOrder(folder, name, columns);
    if (shard.count > 1) return;
    await tellDoubt(folder, { plan, manifest, rows: done });
    await tellFields(folder, { plan, manifest, rows: done });
  } finally {
    await hold.release();
  }
}

/** Rows in order, and the same as Parquet. */
async function putInOrder(
  folder: string,
  name: string,
  columns: readonly TableColumn[],
): Promise<KnownRows> {
  const { rows } = await readRows(join(folder, `${name}.csv`), columns);
  await writeTable(folder, { name, csv: orderedText(rows, columns), columns });
  sayDone(join(folder, name), [...rows.values()]);
  return rows;
}

async function writeTable(
  folder: string,
  { name, csv, columns }: {
    readonly name: string;
    readonly csv: string;
    readonly columns: readonly TableColumn[];
  },
): Promise<void> {
  await writeWhole(join(folder, `${name}.csv`), csv);
  await writeWhole(join(folder, `${name}.parquet`), parquetOf(csv, columns));
}

function sayDone(path: string, lines: readonly string[]): void {
  const failed = lines.filter((line) => !line.endsWith(",")).length;
  const faults = failed === 0 ? "" : `, ${failed} of them with a fault, told in the last column`;
  say(`done: ${path}.csv and .parquet, ${lines.length} rows${faults}`);
}

/** One table of the rows of all parts. */
async function mergeRows(
  { folder, made, plan }: {
    readonly folder: string;
    readonly made: SweepInputs;
    readonly plan: SweepPlan;
  },
): Promise<void> {
  const manifest = await findManifest(folder, made);
  if (manifest === null) throw new InputError(`Cannot find rows of this sweep in ${folder}`);
  const columns = tableColumns(plan.keys, manifest.figures);
  const hold = await holdFolder(join(folder, ".rows.lock"), join(folder, "rows.csv"));
  try {
    const all = new Map<number, string>();
    for await (const { name } of Deno.readDir(folder)) {
      if (!/^rows(?:-\d+-of-\d+)?\.csv$/.test(name)) continue;
      const file = join(folder, name);
      for (const [row, line] of (await readRows(file, columns)).rows) {
        if ((all.get(row) ?? line) !== line) {
          throw new InputError(`Row ${row} stands in two files with other figures`, { file });
        }
        all.set(row, line);
      }
    }
    requireAll(all, plan.rows, folder);
    await writeTable(folder, { name: "rows", csv: orderedText(all, columns), columns });
    sayDone(join(folder, "rows"), [...all.values()]);
    await tellDoubt(folder, { plan, manifest, rows: all });
    await tellFields(folder, { plan, manifest, rows: all });
  } finally {
    await hold.release();
  }
}

function requireAll(all: ReadonlyMap<number, string>, rows: number, folder: string): void {
  const missing = shardRows(rows, WHOLE).filter((row) => !all.has(row));
  if (missing.length === 0) return;
  const some = missing.slice(0, 5).join(", ") + (missing.length > 5 ? ", …" : "");
  throw new CommandFailure(
    `Cannot put the rows of ${folder} together: ${missing.length} of ${rows} are missing (${some}); ` +
      "run the parts they belong to again, then merge",
  );
}

if (import.meta.main) await runCommand(SPEC, runSweep);
