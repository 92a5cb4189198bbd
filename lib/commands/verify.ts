/**
 * `deno task study --verify DIR`: is a finished run what its own inputs give? It is run again by the
 * task itself, from the inputs kept with it, in a folder of its own and without results kept earlier.
 *
 * @module
 */
import { join, resolve } from "node:path";
import { InputError } from "../basics/mod.ts";
import { readResults, readTextFile, type ResultsFile } from "../study/mod.ts";
import { compareRuns, comparisonLines, readRun } from "./comparison.ts";
import type { Hashes } from "./output/manifest.ts";
import { readSums, SUMS, sumsOf } from "./output/sums.ts";
import { taskWords } from "./task_words.ts";
import { CommandFailure, PROJECT_FOLDER, say } from "./terminal.ts";

/** Exit status where something differs. */
export const DIFFERS = 3;

/** A finished run that can be run again. */
interface Capsule {
  readonly folder: string;
  readonly results: ResultsFile;
  /** hashes of its files as the run wrote them */
  readonly sums: Hashes;
  readonly command: readonly string[];
}

/**
 * Runs a finished run again and says whether anything differs.
 *
 * @param folder of the run
 * @returns exit status: 0 identical, 3 something differs
 * @throws {InputError} where the folder holds no run with its inputs
 * @throws {CommandFailure} where the study cannot be computed again
 */
export async function verifyRun(folder: string, signal: AbortSignal): Promise<number> {
  const capsule = await readCapsule(folder);
  const now = await sumsOf(folder);
  const touched = touchedFiles(capsule, now);
  for (const line of touched) say(line);
  if (touched.some((line) => line.startsWith("inputs/"))) {
    say("differs: an input is not what was run; nothing was run again");
    return DIFFERS;
  }
  const temporary = await Deno.makeTempDir({ prefix: "winterground-verify-" });
  try {
    const again = join(temporary, "again");
    await runAgain(capsule, { again, cache: join(temporary, "cache"), signal });
    const { lines, sameResults } = await differingLines(folder, again, now);
    for (const line of lines) say(line);
    if (lines.length + touched.length === 0) {
      say(`identical: ${now.size} files of ${folder}, to the byte`);
      return 0;
    }
    say(`differs: ${folder}${sameResults ? "; its figures, inputs and notices are the same" : ""}`);
    return DIFFERS;
  } finally {
    await Deno.remove(temporary, { recursive: true }).catch(() => {});
  }
}

async function readCapsule(folder: string): Promise<Capsule> {
  const path = join(folder, "results.json");
  const limits = { settings: 20e6, table: 200e6 };
  const text = await readTextFile(path, "results.json of a finished run", "settings", limits);
  const results = readResults(text, path);
  const sums = await readSums(folder);
  const { command, files } = results.provenance;
  if (command?.[0] === undefined || files === undefined) {
    throw new InputError(
      "Cannot run this again: it was written by an earlier version, which kept no inputs; run the " +
        "study again",
      { file: path },
    );
  }
  if (sums === null) {
    throw new InputError("Cannot read the list of hashes: expected one that a run wrote", {
      file: join(folder, SUMS),
    });
  }
  return { folder, results, sums, command };
}

/** What is no longer as the run wrote it, a line for each file; inputs by the hash in results.json too. */
function touchedFiles({ sums, results }: Capsule, now: Hashes): string[] {
  const wanted = new Map([...sums, ...Object.entries(results.provenance.files!)]);
  return [...wanted].flatMap(([path, hash]) => {
    const found = now.get(path);
    if (found === undefined) return [`${path}: missing`];
    return found === hash && (sums.get(path) ?? hash) === hash
      ? []
      : [`${path}: changed since the run wrote it`];
  });
}

async function runAgain(
  { folder, results, command }: Capsule,
  { again, cache, signal }: {
    readonly again: string;
    readonly cache: string;
    readonly signal: AbortSignal;
  },
): Promise<void> {
  say(`running again: deno task study ${command.join(" ")}`);
  const seconds = Math.floor(Date.parse(results.provenance.time) / 1000);
  const child = new Deno.Command(Deno.execPath(), {
    args: [...taskWords("study"), ...command, "--out", again],
    cwd: PROJECT_FOLDER,
    env: {
      INIT_CWD: resolve(folder),
      SOURCE_DATE_EPOCH: String(seconds),
      WINTERGROUND_CACHE: cache,
    },
    stdin: "null",
    stdout: "null",
    stderr: "inherit",
    signal,
  });
  const { code } = await child.output();
  signal.throwIfAborted();
  if (code !== 0) throw new CommandFailure("the run could not be run again", 1);
}

/** What a run and the same run once more differ in. */
interface Differing {
  /** figures first, then files; none where all is identical */
  readonly lines: readonly string[];
  /** true where no figure, input or notice differs */
  readonly sameResults: boolean;
}

/** Compares a run and the same run once more. */
async function differingLines(folder: string, again: string, kept: Hashes): Promise<Differing> {
  const [before, after] = [await readRun(folder), await readRun(again)];
  const comparison = compareRuns(before, after, ["kept", "again"]);
  const { figures, inputs, gained, lost, provenance } = comparison.differences;
  const sameResults = [figures, inputs, gained, lost].every(({ length }) => length === 0);
  const changes = !sameResults || provenance.length > 0;
  const sums = await sumsOf(again);
  const paths = [...new Set([...(await readSums(folder) ?? kept).keys(), ...sums.keys()])].sort();
  const lines = [
    ...(changes ? [...comparisonLines(comparison), ""] : []),
    ...paths.flatMap((path) => {
      const [was, is] = [kept.get(path), sums.get(path)];
      if (was === is) return [];
      const what = was === undefined
        ? "not in the run"
        : is === undefined
        ? "not written again"
        : "other bytes";
      return [`${path}: ${what}`];
    }),
  ];
  return { lines, sameResults };
}
