/**
 * The checks of notebooks: layout, rules, types, formulas, committed outputs, fresh run.
 *
 * @module
 */
import { basename, join, relative } from "node:path";
import { formatNotebook, type Notebook, parseNotebook, renderWorkbook } from "../press/mod.ts";
import { defaultStudyPath, openStudy, startRun, workPool } from "../study/mod.ts";
import { gettersOf } from "./compute_study.ts";
import { NOTEBOOK_FOLDER, type NotebookFile } from "./notebook_files.ts";
import {
  codeFaults,
  joinCells,
  outputDifferences,
  outputFaults,
  type RuleFault,
} from "./notebook_rules.ts";
import { NotebookFailure, type Pressed, pressNotebooks } from "./press_notebooks.ts";
import { runDeno } from "./run_deno.ts";
import { notebookNeeds } from "./study_needs.ts";
import { PROJECT_FOLDER } from "./terminal.ts";

/** A notebook file and what is in it. */
export interface OpenNotebook extends NotebookFile {
  /** text of the file */
  readonly text: string;
  /** the notebook */
  readonly notebook: Notebook;
}

/** Reads notebooks. */
export async function openNotebooks(files: readonly NotebookFile[]): Promise<OpenNotebook[]> {
  return await Promise.all(files.map(async (file) => {
    const text = await Deno.readTextFile(file.path);
    return { ...file, text, notebook: parseNotebook(text, shownName(file)) };
  }));
}

function shownName(file: NotebookFile): string {
  return relative(PROJECT_FOLDER, file.path);
}

function describe(file: NotebookFile, faults: readonly RuleFault[]): string[] {
  return faults.map((fault) => `${shownName(file)}: cell ${fault.cell}: ${fault.text}`);
}

/** Compares each file with what the formatter makes of a copy; its own check raises false alarms. */
export async function layoutFaults(notebooks: readonly OpenNotebook[]): Promise<string[]> {
  if (notebooks.length === 0) return [];
  const folder = await Deno.makeTempDir({ prefix: "winterground-format-" });
  try {
    const copies = notebooks.map((file) => join(folder, basename(file.path)));
    for (const [index, file] of notebooks.entries()) {
      await Deno.writeTextFile(copies[index]!, file.text);
    }
    const settings = join(PROJECT_FOLDER, "deno.json");
    const run = await runDeno(["fmt", "--quiet", "--config", settings, ...copies]);
    if (!run.success) return [run.text];
    const faults: string[] = [];
    for (const [index, file] of notebooks.entries()) {
      const formatted = await Deno.readTextFile(copies[index]!);
      if (formatted !== file.text || formatNotebook(file.notebook) !== file.text) {
        faults.push(`${shownName(file)}: not formatted; run deno task refresh`);
      }
    }
    return faults;
  } finally {
    await Deno.remove(folder, { recursive: true });
  }
}

/** Rules for code and committed outputs. */
export function ruleFaults(notebooks: readonly OpenNotebook[]): string[] {
  return notebooks.flatMap((file) =>
    describe(file, [...codeFaults(file.notebook), ...outputFaults(file.notebook)])
  );
}

/** Formulas and headings: the report can be made of every notebook. */
export function formulaFaults(notebooks: readonly OpenNotebook[]): string[] {
  return notebooks.flatMap((file) => {
    const { name, notebook } = file;
    try {
      const sections = [{ name, notebook }];
      renderWorkbook({ title: "", facts: [], notices: [], provenance: [], sections });
      return [];
    } catch (error) {
      return [`${shownName(file)}: ${(error as Error).message.split("\n")[0]}`];
    }
  });
}

/** Checks types and names with the cells of each notebook joined into one module beside it. */
export async function typeFaults(
  notebooks: readonly OpenNotebook[],
  signal: AbortSignal,
): Promise<string[]> {
  if (notebooks.length === 0) return [];
  const modules = notebooks.map((file) => join(NOTEBOOK_FOLDER, `.${file.name}.check.ts`));
  const joined = notebooks.map((file) => joinCells(file.notebook));
  try {
    for (const [index, path] of modules.entries()) {
      await Deno.writeTextFile(path, joined[index]!.code);
    }
    const checks = [
      await runDeno(["check", "--quiet", ...modules], signal),
      await runDeno(["lint", "--compact", ...modules], signal),
    ];
    return checks.filter((run) => !run.success).map((run) => {
      return run.text.replace(
        /[^\s]*\.([^/\s]+)\.check\.ts:(?: line )?(\d+)/g,
        (place, name: string, line: string) => {
          const index = notebooks.findIndex((file) => file.name === name);
          const cell = joined[index]?.cells[Number(line) - 1];
          return cell === undefined ? place : `notebooks/${name}.ipynb: cell ${cell}`;
        },
      );
    });
  } finally {
    for (const path of modules) await Deno.remove(path).catch(() => {});
  }
}

/** Runs the notebooks and compares with the committed outputs. */
export async function rerunFaults(
  notebooks: readonly OpenNotebook[],
  signal: AbortSignal,
): Promise<string[]> {
  const target = await Deno.makeTempDir({ prefix: "winterground-rerun-" });
  try {
    const fresh = await pressDemo(notebooks, target, signal);
    return notebooks.flatMap((file, index) =>
      describe(file, outputDifferences(file.notebook, fresh[index]!.notebook))
    );
  } catch (error) {
    if (error instanceof NotebookFailure) return [error.message];
    throw error;
  } finally {
    await Deno.remove(target, { recursive: true });
  }
}

/**
 * Runs notebooks on the demo study, whatever study the surroundings name: side by side, each as soon as
 * what it asks for is on disk, which the workers see to.
 */
export async function pressDemo(
  files: readonly NotebookFile[],
  target: string,
  signal: AbortSignal,
): Promise<Pressed[]> {
  const environment = {
    WINTERGROUND_STUDY: undefined,
    WINTERGROUND_CLIMATE: undefined,
    WINTERGROUND_COLUMNS: undefined,
    WINTERGROUND_FIGURES: undefined,
  };
  const needs = new Map(
    (await openNotebooks(files)).map(({ name, notebook }) => [name, notebookNeeds(notebook)]),
  );
  const pool = workPool();
  const close = () => pool.close();
  signal.addEventListener("abort", close);
  try {
    const getters = gettersOf(startRun(await openStudy(defaultStudyPath()), { pool }));
    // what cannot be computed its notebook says better, with the cell
    const ready = ({ name }: NotebookFile) =>
      Promise.allSettled([...needs.get(name) ?? []].map((need) => getters[need]!()));
    const lanes = navigator.hardwareConcurrency;
    return await pressNotebooks({
      files,
      target,
      environment,
      cellLimit: 300,
      signal,
      lanes,
      ready,
    });
  } finally {
    signal.removeEventListener("abort", close);
    close();
  }
}
