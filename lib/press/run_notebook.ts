/**
 * Runs one notebook from its first cell to its last on a fresh kernel.
 *
 * @module
 */
import { dirname } from "node:path";
import { DEFAULT_CELL_LIMIT } from "./cell_limit.ts";
import { type Execution, type Kernel, startKernel, type StrayError } from "./kernel.ts";
import { type CodeCell, type Notebook, type Output, withLanguage } from "./notebook.ts";
import { collectOutputs, countShows, showNumbers } from "./outputs.ts";
import { MOST_IN_NOTEBOOK } from "./prelude.ts";
import { syntaxFault } from "./syntax.ts";

/** Why a run stopped. */
export type FailureKind =
  | "error"
  | "stray error"
  | "hung"
  | "died"
  | "lost output"
  | "too large"
  | "warning text";

/** The cell a run stopped at, and why. */
export interface CellFailure {
  /** why the run stopped */
  readonly kind: FailureKind;
  /** number of the cell among all cells of the notebook, from 1 */
  readonly cell: number;
  /** number of the cell among the code cells, from 1: the number Jupyter shows in brackets */
  readonly codeCell: number;
  /** code of the cell */
  readonly code: string;
  /** error with its name, or what went wrong otherwise */
  readonly message: string;
  /** stack, for errors */
  readonly traceback: readonly string[];
}

/** How to run a notebook. */
export interface RunOptions {
  /** file the notebook was read from; the kernel runs in its folder */
  readonly path: string;
  /** folder the kernel runs in; that of the notebook unless given */
  readonly folder?: string | undefined;
  /** s each cell may take (default 300) */
  readonly cellLimit?: number | undefined;
  /** additions to the kernel's environment */
  readonly environment?: Readonly<Record<string, string | undefined>> | undefined;
  /** stops the run and ends the kernel when aborted */
  readonly signal?: AbortSignal | undefined;
  /** runs in all when the kernel loses an output (default 2) */
  readonly attempts?: number | undefined;
}

/** A notebook as far as it ran. */
export interface NotebookRun {
  /** the notebook with the outputs of the cells that ran; cells after a failure are empty */
  readonly notebook: Notebook;
  /** the cell the run stopped at, if it did */
  readonly failure?: CellFailure | undefined;
}

/**
 * Runs a notebook. A cell that fails, hangs or loses an output stops the run; what the cells before
 * it put out is kept. A lost output is a fault of the kernel: the notebook is then run once more.
 *
 * @throws {Error} when no kernel starts, or when `signal` is aborted
 */
export async function runNotebook(notebook: Notebook, options: RunOptions): Promise<NotebookRun> {
  const attempts = options.attempts ?? 2;
  for (let attempt = 1;; attempt++) {
    const run = await runOnce(notebook, options);
    if (run.failure?.kind !== "lost output" || attempt >= attempts) return run;
  }
}

async function runOnce(source: Notebook, options: RunOptions): Promise<NotebookRun> {
  const kernel = await startKernel({
    folder: options.folder ?? dirname(options.path),
    environment: options.environment,
    signal: options.signal,
  });
  try {
    const notebook = emptied(source, kernel.info);
    const failure = await runCells(kernel, notebook, options);
    options.signal?.throwIfAborted();
    return { notebook, failure };
  } finally {
    await kernel.close();
  }
}

async function runCells(
  kernel: Kernel,
  notebook: Notebook,
  options: RunOptions,
): Promise<CellFailure | undefined> {
  let done = 0;
  let lastShown = 0;
  let size = 0;
  for (const [index, cell] of notebook.cells.entries()) {
    if (cell.cell_type !== "code") continue;
    const codeCell = done + 1;
    cell.execution_count = codeCell;
    const limit = options.cellLimit ?? DEFAULT_CELL_LIMIT;
    const execution = await kernel.execute(cell.source, {
      limit,
      cell: codeCell,
      expectedOutputs: countShows(cell.source),
    });
    // an interrupt from the keyboard may reach the kernel before it reaches us
    if (execution.status === "died") await new Promise((done) => setTimeout(done, 300));
    options.signal?.throwIfAborted();
    cell.outputs = collectOutputs(execution.messages, codeCell);
    const numbers = showNumbers(execution.messages);
    size += JSON.stringify(cell.outputs).length;
    const fault = judge(cell, execution, limit) ?? lostOutput(cell, numbers, lastShown) ??
      tooLarge(size);
    lastShown = numbers.at(-1) ?? lastShown;
    if (fault !== undefined) {
      if (execution.stray !== undefined) {
        addError(cell.outputs, execution.stray);
        return strayFailure(notebook, execution.stray, codeCell);
      }
      const traceback = fault.traceback ?? [];
      const where = { cell: index + 1, codeCell, code: cell.source };
      if (fault.message === "") {
        const found = await syntaxFault(cell.source);
        addError(cell.outputs, { ename: "SyntaxError", evalue: found });
        return { ...where, kind: "error", message: `SyntaxError: ${found}`, traceback };
      }
      return { ...where, kind: fault.kind, message: fault.message, traceback };
    }
    done++;
  }
  return undefined;
}

interface Fault {
  readonly kind: FailureKind;
  /** empty when the kernel gave no reason */
  readonly message: string;
  readonly traceback?: readonly string[] | undefined;
}

/** What is wrong with an executed cell, if anything. */
function judge(cell: CodeCell, execution: Execution, limit: number): Fault | undefined {
  if (execution.status === "hung") {
    return { kind: "hung", message: `Cell exceeded its limit of ${limit} s` };
  }
  if (execution.status === "died") {
    return { kind: "died", message: `The kernel ended in this cell: ${execution.lastWords}` };
  }
  if (execution.stray !== undefined) return { kind: "stray error", message: "stray" };
  if (execution.status === "error") {
    const { ename, evalue } = execution.reply;
    const traceback = (execution.reply.traceback as unknown[] ?? []).map(String);
    // the kernel's answer to code that does not parse carries neither reason nor stack
    if (traceback.length === 0) return { kind: "error", message: "" };
    const shown = cell.outputs.some((output) => output.output_type === "error");
    if (!shown) addError(cell.outputs, { ename: String(ename), evalue: String(evalue), traceback });
    return { kind: "error", message: `${ename}: ${evalue}`, traceback };
  }
  if (execution.faults.length > 0) {
    return {
      kind: "lost output",
      message: `The kernel garbled its outputs: ${execution.faults[0]}`,
    };
  }
  const warning = cell.outputs.find((output) =>
    output.output_type === "stream" && output.name === "stderr"
  );
  if (warning?.output_type === "stream") {
    return { kind: "warning text", message: `The cell wrote a warning: ${warning.text.trim()}` };
  }
  return undefined;
}

/** Compares outputs with the `await show(` calls and with the running numbers `show` gave them. */
function lostOutput(
  cell: CodeCell,
  numbers: readonly number[],
  lastShown: number,
): Fault | undefined {
  const shows = countShows(cell.source);
  const shown = cell.outputs.filter((output) => output.output_type === "display_data").length;
  const gap = numbers.some((number, index) => number !== lastShown + index + 1);
  if (shown >= shows && !gap) return undefined;
  const message = `The cell shows ${shown} outputs for ${shows} calls of "await show("` +
    (gap ? "; an output between them is missing" : "");
  return { kind: "lost output", message };
}

/** The cell that a stray error comes from, and the one that ran meanwhile. */
function strayFailure(notebook: Notebook, stray: StrayError, running: number): CellFailure {
  const codeCells = notebook.cells.flatMap((cell, index) =>
    cell.cell_type === "code" ? [{ number: index + 1, code: cell.source }] : []
  );
  const codeCell = codeCells[stray.cell - 1] === undefined ? running : stray.cell;
  const { number, code } = codeCells[codeCell - 1]!;
  const meanwhile = codeCell === running ? "" : `, while cell [${running}] ran`;
  return {
    kind: "stray error",
    cell: number,
    codeCell,
    code,
    message: `${stray.ename}: ${stray.evalue}\n  ` +
      `(thrown by a timer, an event or a promise without await${meanwhile})`,
    traceback: stray.traceback,
  };
}

/** More than a page can hold. */
function tooLarge(size: number): Fault | undefined {
  if (size <= MOST_IN_NOTEBOOK) return undefined;
  const message = `The outputs of this notebook have ${size} characters up to this cell: at most ` +
    `${MOST_IN_NOTEBOOK} are allowed; show fewer points or rows, or write them to a file`;
  return { kind: "too large", message };
}

function addError(
  outputs: Output[],
  { ename, evalue, traceback = [] }: {
    readonly ename: string;
    readonly evalue: string;
    readonly traceback?: readonly string[];
  },
): void {
  outputs.push({ output_type: "error", ename, evalue, traceback: [...traceback] });
}

/** A copy without outputs, with the metadata of the kernel it is about to run on. */
function emptied(source: Notebook, info: Readonly<Record<string, unknown>>): Notebook {
  const notebook = structuredClone(source);
  for (const cell of notebook.cells) {
    if (cell.cell_type !== "code") continue;
    cell.outputs = [];
    cell.execution_count = null;
  }
  return withLanguage(notebook, info.language_info as Record<string, unknown>);
}
