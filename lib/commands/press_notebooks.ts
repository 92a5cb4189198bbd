/**
 * Runs notebooks, one after the other or side by side, and writes each as soon as it is done.
 *
 * @module
 */
import { dirname, join, relative, resolve } from "node:path";
import {
  type CellFailure,
  formatNotebook,
  type Notebook,
  parseNotebook,
  runNotebook,
  writeAtomically,
} from "../press/mod.ts";
import type { NotebookFile } from "./notebook_files.ts";
import { type Progress, showProgress } from "./progress.ts";
import { CommandFailure } from "./terminal.ts";

/** What to run and how. */
export interface PressOptions {
  /** the notebooks in order */
  readonly files: readonly NotebookFile[];
  /** folder the executed notebooks are written to */
  readonly target: string;
  /** additions to the kernels' environment */
  readonly environment: Readonly<Record<string, string | undefined>>;
  /** s each cell may take */
  readonly cellLimit: number;
  /** stops everything when aborted */
  readonly signal: AbortSignal;
  /** notebooks run side by side; one unless given */
  readonly lanes?: number | undefined;
  /** settles when what a notebook asks for is there; a notebook starts at once unless given */
  readonly ready?: ((file: NotebookFile) => Promise<unknown>) | undefined;
  /** where progress is shown; shown here unless given */
  readonly progress?: Progress | undefined;
}

/** An executed notebook. */
export interface Pressed {
  /** name without ending */
  readonly name: string;
  /** the notebook with its outputs */
  readonly notebook: Notebook;
}

/** A cell that stopped the run. */
export class NotebookFailure extends CommandFailure {
  override name = "NotebookFailure";
}

/**
 * Runs the notebooks, in order where one at a time runs.
 *
 * @throws {NotebookFailure} when a cell fails; the notebook is written as far as it ran
 */
export async function pressNotebooks(options: PressOptions): Promise<Pressed[]> {
  const { files } = options;
  const progress = options.progress ?? showProgress(files.map(({ name }) => name));
  const stop = new AbortController();
  const signal = AbortSignal.any([options.signal, stop.signal]);
  const lane = lanes(options.lanes ?? 1);
  const runs = files.map(async (file): Promise<Pressed> => {
    await options.ready?.(file).catch((fault) => {
      stop.abort(fault);
      throw fault;
    });
    return await lane(async () => {
      signal.throwIfAborted();
      try {
        const pressed = await pressOne(file, { ...options, signal });
        progress.done(file.name);
        return pressed;
      } catch (fault) {
        stop.abort(fault); // before the next gets the lane: the first fault stops the others
        throw fault;
      }
    });
  });
  try {
    return await Promise.all(runs);
  } finally {
    await Promise.allSettled(runs);
    if (options.progress === undefined) progress.stop();
  }
}

/** Lets so many pieces of work run at once; the others wait their turn. */
function lanes(count: number): <T>(work: () => Promise<T>) => Promise<T> {
  const waiting: (() => void)[] = [];
  let free = count;
  return async (work) => {
    if (free > 0) free--;
    else await new Promise<void>((go) => waiting.push(go));
    try {
      return await work();
    } finally {
      const next = waiting.shift();
      if (next === undefined) free++;
      else next();
    }
  };
}

async function pressOne(file: NotebookFile, options: PressOptions): Promise<Pressed> {
  const { target, environment, cellLimit, signal } = options;
  const source = parseNotebook(await Deno.readTextFile(file.path), file.path);
  const run = await runNotebook(source, {
    path: file.path,
    folder: file.kernelFolder,
    environment: file.kernelFolder === undefined
      ? environment
      : { ...environment, WINTERGROUND_LESSONS: dirname(resolve(file.path)) },
    cellLimit,
    signal,
  });
  await writeAtomically(join(target, `${file.name}.ipynb`), formatNotebook(run.notebook));
  if (run.failure !== undefined) throw new NotebookFailure(describeFailure(file.path, run.failure));
  return { name: file.name, notebook: run.notebook };
}

/** Notebook, cell number, error, code and stack, for the terminal. */
function describeFailure(path: string, failure: CellFailure): string {
  const shown = relative(Deno.cwd(), path);
  const code = failure.code.split("\n").map((line, index) => `  ${index + 1} | ${line}`);
  const stack = failure.traceback.filter((line) => /^\s+at /.test(line));
  return [
    `${shown}: cell ${failure.cell} [${failure.codeCell}]: ${failure.message}`,
    ...code,
    ...stack,
  ].join("\n");
}
