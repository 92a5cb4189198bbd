/**
 * Rules for the code of notebooks that can be seen without running it. The code is taken as the
 * formatter leaves it: a statement of the cell starts in the first column.
 *
 * @module
 */
import { blankTexts, type CodeCell, countShows, type Notebook } from "../press/mod.ts";

/** A broken rule. */
export interface RuleFault {
  /** number of the cell among all cells, from 1 */
  readonly cell: number;
  /** what is wrong and what to do */
  readonly text: string;
}

/** Lines a cell may have, imports left aside: the formatter gives each name a line. */
const MOST_LINES = 20;
/** Code cells a notebook may have. */
const MOST_CELLS = 25;

/** Checks the code of every cell. */
export function codeFaults(notebook: Notebook): RuleFault[] {
  const faults: RuleFault[] = [];
  let codeCells = 0;
  for (const [index, cell] of notebook.cells.entries()) {
    if (cell.cell_type !== "code") continue;
    codeCells++;
    faults.push(...cellFaults(cell.source).map((text) => ({ cell: index + 1, text })));
  }
  if (codeCells > MOST_CELLS) {
    const text = `notebook has ${codeCells} code cells; at most ${MOST_CELLS}`;
    faults.push({ cell: notebook.cells.length, text });
  }
  return faults;
}

function cellFaults(source: string): string[] {
  const code = blankTexts(source);
  const faults: string[] = [];
  const lines = source.replace(/^import\b[^;]*;\n*/gm, "").split("\n").length;
  if (code.trim() === "") return ["cell is empty"];
  if (lines > MOST_LINES) faults.push(`cell has ${lines} lines; at most ${MOST_LINES}`);
  if (/\bconsole\s*\./.test(code)) faults.push("use await show(...), not console");
  if (/\b(?:function|class)\b/.test(code)) {
    faults.push("functions and classes belong in lib, where they are tested");
  }
  if (/(?<!\bawait\s+)(?<![.\w])show\s*\(/.test(code)) faults.push("show(...) needs await");
  const start = lastStatement(code);
  const last = source.slice(start);
  if (!/^(?:import|export|const|let|type|interface|declare)\b|^await show\(/.test(last)) {
    faults.push(
      `last statement must be an import, a declaration or await show(...): "${
        last.split("\n")[0]
      }"`,
    );
  }
  return faults;
}

/** Start of the last statement: the last line that starts in the first column and closes nothing. */
function lastStatement(code: string): number {
  return [...code.matchAll(/^[^\s)\]}`]/gm)].at(-1)?.index ?? 0;
}

/** Checks the outputs of a notebook that is committed: executed once, in order, nothing missing. */
export function outputFaults(notebook: Notebook): RuleFault[] {
  const faults: RuleFault[] = [];
  let expected = 0;
  for (const [index, cell] of notebook.cells.entries()) {
    if (cell.cell_type !== "code") continue;
    expected++;
    faults.push(...executionFaults(cell, expected).map((text) => ({ cell: index + 1, text })));
  }
  return faults;
}

function executionFaults(cell: CodeCell, expected: number): string[] {
  if (cell.execution_count !== expected) {
    const found = cell.execution_count ?? "none";
    return [`execution number is ${found}, not ${expected}: run deno task refresh`];
  }
  const shows = countShows(cell.source);
  const shown = cell.outputs.filter((output) => output.output_type === "display_data").length;
  if (shown < shows || (shows === 0 && shown > 0)) {
    return [`${shown} outputs for ${shows} calls of await show(...): run deno task refresh`];
  }
  const others = cell.outputs.filter((output) => output.output_type !== "display_data");
  return others.map((output) => `unexpected output of type "${output.output_type}"`);
}

/** The code of a notebook as one module, and from which cell each of its lines comes. */
export interface JoinedCode {
  /** the module */
  readonly code: string;
  /** number of the cell, from 1, for each line */
  readonly cells: readonly number[];
}

/** Joins the code cells into one module, so that types and names can be checked. */
export function joinCells(notebook: Notebook): JoinedCode {
  const lines: string[] = [];
  const cells: number[] = [];
  for (const [index, cell] of notebook.cells.entries()) {
    if (cell.cell_type !== "code") continue;
    for (const line of [...cell.source.split("\n"), ""]) {
      lines.push(line);
      cells.push(index + 1);
    }
  }
  return { code: `${lines.join("\n")}\nexport {};\n`, cells };
}

/**
 * What differs between two runs of one notebook, cell by cell; metadata is left aside.
 */
export function outputDifferences(committed: Notebook, fresh: Notebook): RuleFault[] {
  return committed.cells.flatMap((cell, index) => {
    const other = fresh.cells[index];
    if (cell.cell_type !== "code" || other?.cell_type !== "code") return [];
    const [before, after] = [cell.outputs, other.outputs].map(outputText);
    if (before === after) return [];
    const at = firstDifference(before!, after!);
    const excerpt = (text: string): string =>
      JSON.stringify(text.slice(Math.max(0, at - 30), at + 50));
    const text = `a fresh run differs: committed ${excerpt(before!)}, now ${excerpt(after!)}`;
    return [{ cell: index + 1, text }];
  });
}

/** Outputs as text; plain text first, because that is what a reader of the message understands. */
function outputText(outputs: CodeCell["outputs"]): string {
  return outputs.map((output) => {
    if (output.output_type === "display_data" || output.output_type === "execute_result") {
      const { "text/plain": plain, ...others } = output.data;
      return `${plain}\n${JSON.stringify(others)}`;
    }
    return JSON.stringify(output);
  }).join("\n");
}

function firstDifference(a: string, b: string): number {
  const shorter = Math.min(a.length, b.length);
  for (let index = 0; index < shorter; index++) if (a[index] !== b[index]) return index;
  return shorter;
}
