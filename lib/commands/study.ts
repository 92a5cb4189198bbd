/**
 * `deno task study`: runs a whole study; long because the order of its steps is what it is about.
 *
 * @module
 */
import { join, resolve } from "node:path";
import { InputError } from "../basics/mod.ts";
import { DEFAULT_CELL_LIMIT } from "../press/cell_limit.ts";
import {
  defaultStudyPath,
  momentOfRun,
  openStudy,
  type ResultsFile,
  startRun,
  type StudyRun,
  workPool,
} from "../study/mod.ts";
import { commandAgain, EARLIER_RUN, keepEarlierRun, keepLessons, KEPT_LESSONS } from "./capsule.ts";
import { readIn } from "../show/kit/reader.ts";
import { DOUBT_PAGE } from "./doubt_file.ts";
import type { CommandLine, CommandSpec } from "./command_line.ts";
import type { Comparison, FinishedRun } from "./comparison.ts";
import { cannotCompute, computeResults, gettersOf } from "./compute_study.ts";
import {
  listLessons,
  listNotebooks,
  type NotebookFile,
  selectNotebooks,
} from "./notebook_files.ts";
import { writeSums } from "./output/sums.ts";
import { openStage, type Stage } from "./output/stage.ts";
import { sayAside } from "./output/aside.ts";
import type { Pressed } from "./press_notebooks.ts";
import { type Progress, showProgress } from "./progress.ts";
import { ALL_NEEDS, needsOf, notebookNeeds, QUICK_NEEDS, type StudyNeeds } from "./study_needs.ts";
import { writeStudyOutputs } from "./study_outputs.ts";
import { CommandFailure, runCommand, say } from "./terminal.ts";

const SPEC: CommandSpec = {
  name: "study",
  summary:
    "Runs a study: all notebooks on a real kernel, the figures, the drawings and the report.",
  args: "[STUDY.yaml]",
  minArgs: 0,
  maxArgs: 1,
  options: [
    {
      name: "climate",
      value: "FILE",
      meaning: "hourly weather file to use instead of the study's own",
    },
    { name: "columns", value: "FILE", meaning: "columns file for that weather file" },
    {
      name: "out",
      value: "DIR",
      meaning: "folder for the results (default: out/<study name>, -quick added for a quick run)",
    },
    {
      name: "chapters",
      value: "LIST",
      meaning: "notebooks to run, such as 1-8 or 0,3, and no more than they need (default: all)",
    },
    {
      name: "lessons",
      value: "DIR",
      meaning: "folder of lessons of your own, run after the notebooks",
    },
    {
      name: "quick",
      meaning: "figures and hours alone: no notebooks, no comparisons, no drawings, no report",
    },
    {
      name: "doubt",
      meaning:
        `write ${DOUBT_PAGE} too: finer computations, ledger, sources and checks for a reviewer`,
    },
    {
      name: "against",
      value: "DIR",
      meaning: "folder of an earlier run: say what changed since, in the report and beside it",
    },
    {
      name: "verify",
      value: "DIR",
      meaning:
        "run a finished run again from the inputs kept in its folder: identical, or what differs",
    },
    {
      name: "exercises",
      meaning: "keep the exercises in the workbook, for learners",
    },
    {
      name: "pdf",
      meaning: "print report and contractor's pack as PDF too, where Chromium or Chrome is found",
    },
    {
      name: "cell-limit",
      value: "SECONDS",
      meaning: `time limit for one cell (default: ${DEFAULT_CELL_LIMIT})`,
    },
  ],
  notes: [
    "Without a study file, the demo study is run.",
    "Exit status: 0 done, 1 the study could not be computed, 2 wrong usage or bad input, 3 with",
    "--verify, something differs.",
  ],
};

async function runStudy(line: CommandLine, signal: AbortSignal): Promise<number | void> {
  const { verify } = line.values;
  if (verify !== undefined) {
    if (line.args.length + Object.keys(line.values).length + line.switches.size > 1) {
      throw new InputError("--verify takes everything from the folder it names: give it alone");
    }
    return await (await import("./verify.ts")).verifyRun(verify, signal);
  }
  momentOfRun(); // refuses a time that cannot be written before anything is computed
  const path = line.args[0] ?? defaultStudyPath();
  const { climate, columns, chapters } = line.values;
  const cellLimit = readCellLimit(line.values["cell-limit"]);
  const quick = line.switches.has("quick");
  if (quick && chapters !== undefined) {
    throw new InputError("--quick runs no notebooks: leave out --chapters, or --quick");
  }
  const doubt = line.switches.has("doubt");
  if (doubt && chapters !== undefined) {
    throw new InputError("--doubt looks at the whole study: leave out --chapters, or --doubt");
  }
  const pdf = line.switches.has("pdf");
  if (quick && pdf) {
    throw new InputError("--quick writes no pages: leave out --pdf, or --quick");
  }
  const { lessons } = line.values;
  if (quick && lessons !== undefined) {
    throw new InputError("--quick runs no notebooks: leave out --lessons, or --quick");
  }
  const files = [
    ...(quick ? [] : chooseNotebooks(await listNotebooks(), chapters)),
    ...(lessons === undefined ? [] : await listLessons(lessons)),
  ];
  const pool = workPool();
  signal.addEventListener("abort", () => pool.close());
  pool.warm(); // they read the library while the study is read here
  const study = await openStudy(path, { climate, columns });
  readIn(study.heading.units);
  const { against } = line.values;
  const before = against === undefined ? null : await earlierRun(against);
  const plan = await planOf(files, { quick, doubt, all: chapters === undefined });
  const target = line.values.out ?? join("out", study.heading.name + (quick ? "-quick" : ""));
  const command = commandAgain(line, study.files);
  const stage = await openStage(target);
  const pieces = [...plan.needs.results, ...files.map(({ name }) => name)];
  const progress = showProgress(pieces);
  try {
    const onResult = (name: string, kept: boolean) => {
      if (pieces.includes(name)) progress.done(name, kept);
    };
    const run = startRun(study, { pool, onResult, onPart: progress.part });
    const outputs = computeResults(run, plan.needs, progress).then(() => {
      signal.throwIfAborted();
      return writeStudyOutputs(run, { ...plan, command, folder: stage.folder });
    });
    const request = { path, climate, columns };
    const pressing = press(files, { ...plan, run, stage, progress, request, cellLimit, signal });
    pressing.catch(() => pool.close());
    const [written, pressed] = await Promise.allSettled([outputs, pressing]);
    signal.throwIfAborted();
    if (pressed.status === "rejected") {
      // only now: what is still being written would miss the list of what was
      const failure = await notebooksFailed(stage, pressed.reason);
      if (failure !== null) throw failure;
    }
    if (written.status === "rejected") throw cannotCompute(path, written.reason);
    if (pressed.status === "rejected") throw pressed.reason;
    if (quick) await Deno.remove(join(stage.folder, "notebooks")); // there are none
    const changes = before === null ? null : await changesSince(before, stage.folder);
    if (doubt) {
      const { doubtPage } = await import("./doubt_page.ts");
      await Deno.writeTextFile(join(stage.folder, DOUBT_PAGE), await doubtPage(run));
    }
    const page = quick ? "results.json" : await writePages(stage, run, written.value, {
      pressed: pressed.value,
      changes: changes?.comparison,
      exercises: line.switches.has("exercises"),
      doubt,
    });
    if (plan.whole) await writePack(stage, run);
    if (pdf) await printPages(stage, written.value.provenance.time, signal);
    if (before !== null) await keepEarlierRun(before.folder, join(stage.folder, EARLIER_RUN));
    if (lessons !== undefined) await keepLessons(lessons, join(stage.folder, KEPT_LESSONS));
    const hashes = await writeSums(stage.folder);
    signal.throwIfAborted();
    progress.stop();
    const { folder, aside } = await stage.publish(hashes);
    sayAside(folder, [...stage.aside, ...aside]);
    for (const text of changes?.lines ?? []) say(text);
    say(`done: ${join(folder, page)}`);
  } finally {
    progress.stop();
    pool.close();
    await stage.discard();
  }
}

/** What is computed, and what each notebook waits for. */
interface Plan {
  readonly needs: StudyNeeds;
  readonly drawings: boolean;
  /** true where everything is computed, so that figures of notebooks wait for extras too */
  readonly whole: boolean;
  readonly needsByNotebook: ReadonlyMap<string, ReadonlySet<string>>;
}

async function planOf(
  files: readonly NotebookFile[],
  { quick, doubt, all }: {
    readonly quick: boolean;
    readonly doubt: boolean;
    readonly all: boolean;
  },
): Promise<Plan> {
  if (quick) {
    const needs = doubt ? withDoubt(QUICK_NEEDS) : QUICK_NEEDS;
    return { needs, drawings: false, whole: false, needsByNotebook: new Map() };
  }
  const { parseNotebook } = await import("../press/notebook.ts");
  const notebooks = await Promise.all(files.map(async ({ name, path }) => ({
    name,
    notebook: parseNotebook(await Deno.readTextFile(path), path),
  })));
  const some = all ? ALL_NEEDS : needsOf(notebooks);
  const needs = doubt ? withDoubt(some) : some;
  return {
    needs,
    drawings: needs.results.includes("tubes"),
    whole: all,
    needsByNotebook: new Map(
      notebooks.map(({ name, notebook }) => [name, notebookNeeds(notebook, all)]),
    ),
  };
}

/** What the reviewer's page asks for besides. */
function withDoubt({ results, chapters }: StudyNeeds): StudyNeeds {
  return { results: [...results, "resolution"], chapters };
}

/** What changed since an earlier run: for the terminal and for the report. */
interface Changes {
  readonly comparison: Comparison;
  readonly lines: readonly string[];
}

async function earlierRun(folder: string): Promise<FinishedRun> {
  return await (await import("./comparison.ts")).readRun(folder);
}

/** What this run changed against an earlier one, written beside its results. */
async function changesSince(before: FinishedRun, folder: string): Promise<Changes> {
  const { compareRuns, comparisonLines, readRun, writeComparison } = await import(
    "./comparison.ts"
  );
  const comparison = compareRuns(before, await readRun(folder), ["before", "now"]);
  await writeComparison(comparison, folder);
  return { comparison, lines: [...comparisonLines(comparison), ""] };
}

/** What the pages are made of. */
interface Pages {
  readonly pressed: readonly Pressed[];
  readonly changes: Comparison | undefined;
  readonly exercises: boolean;
  readonly doubt: boolean;
}

/** Writes the workbook, and the report where its notebook was run; gives the page to open first. */
async function writePages(
  stage: Stage,
  run: StudyRun,
  results: ResultsFile,
  { pressed, ...extras }: Pages,
): Promise<string> {
  const { studyReport, studyWorkbook, WORKBOOK } = await import("./study_report.ts");
  const { writeAtomically } = await import("../press/files.ts");
  const workbook = studyWorkbook(run.study, results, pressed, extras);
  await writeAtomically(join(stage.folder, WORKBOOK), workbook);
  const report = studyReport(run.study, results, pressed, extras);
  if (report === null) return WORKBOOK;
  await writeAtomically(join(stage.folder, "report.html"), report);
  return "report.html";
}

async function writePack(stage: Stage, run: StudyRun): Promise<void> {
  const { contractorPack, CONTRACTOR_PACK } = await import("./contractor_pack.ts");
  const { writeAtomically } = await import("../press/files.ts");
  await writeAtomically(join(stage.folder, CONTRACTOR_PACK), await contractorPack(run));
}

/** Pages that are printed, where a run wrote them. */
const PRINTED = ["report.html", "contractor.html"];

/** Prints what there is to print; says so where no browser can, or fails to. */
async function printPages(stage: Stage, time: string, signal: AbortSignal): Promise<void> {
  const { findBrowser, PrintFailure, printPdf } = await import("../press/print_pdf.ts");
  const browser = await findBrowser(Deno.env.get("PATH") ?? "");
  if (browser === null) {
    say(
      "no PDF: neither Chromium nor Chrome is on the search path; print the pages from a browser",
    );
    return;
  }
  for (const name of PRINTED) {
    const page = join(stage.folder, name);
    if (await Deno.stat(page).catch(() => null) === null) continue;
    const pdf = page.replace(/html$/, "pdf");
    try {
      await printPdf({ browser, page: resolve(page), pdf: resolve(pdf), time, signal });
    } catch (error) {
      if (!(error instanceof PrintFailure)) throw error;
      say(`no PDF of ${name}: ${error.message}`);
    }
  }
}

function readCellLimit(text: string | undefined): number {
  if (text === undefined) return DEFAULT_CELL_LIMIT;
  const seconds = Number(text);
  if (!(seconds > 0 && seconds <= 86_400)) {
    throw new InputError(`Cannot use --cell-limit "${text}": expected seconds from 0 to 86400`);
  }
  return seconds;
}

function chooseNotebooks(files: readonly NotebookFile[], choice?: string): readonly NotebookFile[] {
  return choice === undefined ? files : selectNotebooks(files, choice);
}

/** What the kernels are told of the study. */
interface StudyFiles {
  readonly path: string;
  readonly climate: string | undefined;
  readonly columns: string | undefined;
}

/** What the notebooks are run with. */
interface PressRequest extends Plan {
  readonly run: StudyRun;
  readonly stage: Stage;
  readonly progress: Progress;
  readonly request: StudyFiles;
  readonly cellLimit: number;
  readonly signal: AbortSignal;
}

/** Runs each notebook once its results are on disk, as many side by side as there are cores. */
async function press(
  files: readonly NotebookFile[],
  { run, stage, progress, request, cellLimit, signal, whole, needsByNotebook }: PressRequest,
): Promise<Pressed[]> {
  if (files.length === 0) return [];
  const { pressNotebooks } = await import("./press_notebooks.ts");
  const environment = {
    WINTERGROUND_STUDY: resolve(request.path),
    WINTERGROUND_CLIMATE: request.climate && resolve(request.climate),
    WINTERGROUND_COLUMNS: request.columns && resolve(request.columns),
    WINTERGROUND_FIGURES: whole ? "all" : undefined,
  };
  const ready = ({ name }: NotebookFile) =>
    Promise.all([...needsByNotebook.get(name) ?? []].map((need) => gettersOf(run)[need]!()));
  const target = join(stage.folder, "notebooks");
  const lanes = navigator.hardwareConcurrency;
  return await pressNotebooks({
    files,
    target,
    environment,
    cellLimit,
    signal,
    lanes,
    ready,
    progress,
  });
}

/** What the user is told where a notebook failed; its outputs so far are kept. */
async function notebooksFailed(stage: Stage, reason: unknown): Promise<unknown> {
  const { NotebookFailure } = await import("./press_notebooks.ts");
  if (!(reason instanceof NotebookFailure)) return null;
  const kept = await stage.keepNotebooks(reason.message);
  return new CommandFailure(`${reason.message}\npartial notebooks are in: ${kept}`);
}

if (import.meta.main) await runCommand(SPEC, runStudy);
