/**
 * `deno task check`: everything that can be checked without the tests.
 *
 * @module
 */
import type { CommandLine, CommandSpec } from "./command_line.ts";
import {
  formulaFaults,
  layoutFaults,
  type OpenNotebook,
  openNotebooks,
  rerunFaults,
  ruleFaults,
  typeFaults,
} from "./check_notebooks.ts";
import { importFaults, longFiles, unnamedUnits } from "./check_library.ts";
import { listNotebooks } from "./notebook_files.ts";
import { pictureFaults } from "./pictures.ts";
import { publicModules } from "./public_modules.ts";
import { referenceFaults } from "./reference/write_pages.ts";
import { runDeno } from "./run_deno.ts";
import { complain, runCommand, say } from "./terminal.ts";

const SPEC: CommandSpec = {
  name: "check",
  summary: "Checks formatting, lint, types, documentation and notebooks.",
  args: "",
  minArgs: 0,
  maxArgs: 0,
  options: [
    {
      name: "rerun",
      meaning: "also run the notebooks and compare them with the committed outputs",
    },
  ],
};

/** What the formatter's own check covers: all but notebooks, for which it raises false alarms. */
const FORMATTED = ["lib", "tests", "docs", "deno.json", "README.md", "DEVELOPERS.md"];

/** A check: gives the faults it finds as text. */
type Check = () => string[] | Promise<string[]>;

function denoCheck(args: readonly string[], signal: AbortSignal): Check {
  return async () => {
    const run = await runDeno(args, signal);
    return run.success ? [] : [run.text.trimEnd()];
  };
}

function checks(
  notebooks: readonly OpenNotebook[],
  rerun: boolean,
  signal: AbortSignal,
): readonly (readonly [string, Check])[] {
  return [
    ["format of files", denoCheck(["fmt", "--check", ...FORMATTED], signal)],
    ["format of notebooks", () => layoutFaults(notebooks)],
    ["style", denoCheck(["lint"], signal)],
    ["types", denoCheck(["check", "--quiet", "lib", "tests"], signal)],
    ["rules of notebooks", () => ruleFaults(notebooks)],
    ["formulas of notebooks", () => formulaFaults(notebooks)],
    ["types of notebooks", () => typeFaults(notebooks, signal)],
    ["pictures in the documents", () => pictureFaults(notebooks)],
    ["documentation", denoCheck(["doc", "--quiet", "--lint", ...publicModules()], signal)],
    ["sources, symbols, reference pages", () => referenceFaults(signal)],
    ["units in documentation", () => unnamedUnits(signal)],
    ["arrows and circles of imports", importFaults],
    ["length of files", longFiles],
    ["examples in documentation", denoCheck(["test", "--quiet", "--doc", "-A", "lib"], signal)],
    ...rerun ? [["outputs of notebooks", () => rerunFaults(notebooks, signal)] as const] : [],
  ];
}

async function runChecks(line: CommandLine, signal: AbortSignal): Promise<number> {
  const notebooks = await openNotebooks(await listNotebooks());
  let failed = 0;
  for (const [name, check] of checks(notebooks, line.switches.has("rerun"), signal)) {
    signal.throwIfAborted();
    const faults = await check();
    say(`${faults.length === 0 ? "ok    " : "FAULTY"} ${name}`);
    for (const fault of faults) complain(fault);
    if (faults.length > 0) failed++;
  }
  say(failed === 0 ? "all checks passed" : `${failed} checks failed`);
  return failed === 0 ? 0 : 1;
}

if (import.meta.main) await runCommand(SPEC, runChecks);
