/**
 * Runs notebooks one after the other and writes each as soon as it is done.
 *
 * @module
 */
import { join, relative } from "node:path";
import {
  type CellFailure,
  formatNotebook,
  type Notebook,
  parseNotebook,
  runNotebook,
  writeAtomically,
} from "../press/mod.ts";
import type { NotebookFile } from "./notebook_files.ts";
import { showProgress } from "./progress.ts";
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
 * Runs the notebooks in order.
 *
 * @throws {NotebookFailure} when a cell fails; the notebook is written as far as it ran
 */
export async function pressNotebooks(options: PressOptions): Promise<Pressed[]> {
  const { files, target, environment, cellLimit, signal } = options;
  const progress = showProgress(files.length);
  const pressed: Pressed[] = [];
  try {
    for (const file of files) {
      const source = parseNotebook(await Deno.readTextFile(file.path), file.path);
      const cells = source.cells.filter((cell) => cell.cell_type === "code").length;
      progress.start(file.name, cells);
      const run = await runNotebook(source, {
        path: file.path,
        environment,
        cellLimit,
        signal,
        onProgress: ({ done }) => progress.cell(done),
      });
      await writeAtomically(join(target, `${file.name}.ipynb`), formatNotebook(run.notebook));
      if (run.failure !== undefined) {
        throw new NotebookFailure(describeFailure(file.path, run.failure));
      }
      pressed.push({ name: file.name, notebook: run.notebook });
      progress.done();
    }
  } finally {
    progress.stop();
  }
  return pressed;
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
