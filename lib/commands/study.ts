/**
 * `deno task study`: runs a whole study.
 *
 * @module
 */
import { join, resolve } from "node:path";
import { InputError } from "../basics/mod.ts";
import { DEFAULT_CELL_LIMIT, writeAtomically } from "../press/mod.ts";
import { defaultStudyPath, openStudy } from "../study/mod.ts";
import type { CommandLine, CommandSpec } from "./command_line.ts";
import { computeOutputs } from "./compute_outputs.ts";
import { listNotebooks, type NotebookFile, selectNotebooks } from "./notebook_files.ts";
import { openStage, type Stage } from "./output_folder.ts";
import { NotebookFailure, type Pressed, pressNotebooks } from "./press_notebooks.ts";
import { studyReport } from "./study_report.ts";
import { CommandFailure, complain, runCommand, say } from "./terminal.ts";

const SPEC: CommandSpec = {
  name: "study",
  summary:
    "Runs a study: all notebooks on a real kernel, the figures, the drawings and one report.",
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
    { name: "out", value: "DIR", meaning: "folder for the results (default: out/<study name>)" },
    {
      name: "chapters",
      value: "LIST",
      meaning: "notebooks to run, such as 1-7 or 0,3 (default: all)",
    },
    {
      name: "cell-limit",
      value: "SECONDS",
      meaning: `time limit for one cell (default: ${DEFAULT_CELL_LIMIT})`,
    },
  ],
  notes: [
    "Without a study file, the demo study is run.",
    "Exit status: 0 done, 1 the study could not be computed, 2 wrong usage or bad input.",
  ],
};

async function runStudy(line: CommandLine, signal: AbortSignal): Promise<void> {
  const path = line.args[0] ?? defaultStudyPath();
  const { climate, columns } = line.values;
  const cellLimit = readCellLimit(line.values["cell-limit"]);
  const files = chooseNotebooks(await listNotebooks(), line.values.chapters);
  const study = await openStudy(path, { climate, columns });
  const target = line.values.out ?? join("out", study.heading.name);
  const stage = await openStage(target);
  try {
    const pressed = await press(files, stage, { path, climate, columns }, cellLimit, signal);
    complain("computing figures, hourly series and drawings");
    const request = { path, climate, columns, folder: stage.folder };
    const results = await computeOutputs(request, signal);
    const report = studyReport(study, results, pressed);
    await writeAtomically(join(stage.folder, "report.html"), report);
    signal.throwIfAborted();
    say(`done: ${join(await stage.publish(), "report.html")}`);
  } finally {
    await stage.discard();
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

async function press(
  files: readonly NotebookFile[],
  stage: Stage,
  study: StudyFiles,
  cellLimit: number,
  signal: AbortSignal,
): Promise<Pressed[]> {
  const environment = {
    WINTERGROUND_STUDY: resolve(study.path),
    WINTERGROUND_CLIMATE: study.climate && resolve(study.climate),
    WINTERGROUND_COLUMNS: study.columns && resolve(study.columns),
  };
  const target = join(stage.folder, "notebooks");
  try {
    return await pressNotebooks({ files, target, environment, cellLimit, signal });
  } catch (error) {
    if (!(error instanceof NotebookFailure)) throw error;
    const kept = await stage.keepNotebooks(error.message);
    throw new CommandFailure(`${error.message}\npartial notebooks are in: ${kept}`);
  }
}

if (import.meta.main) await runCommand(SPEC, runStudy);
