/** Small notebooks in a folder of their own, removed after the test. @module */
import { join } from "node:path";
import process from "node:process";
import { formatNotebook, type Notebook } from "winterground/press/mod.ts";
import { NOTEBOOK_FOLDER } from "winterground/commands/notebook_files.ts";

/** First cell of every tiny notebook that shows something. */
export const IMPORT_SHOW = 'import { show } from "winterground/show/kit/show.ts";';

/** A notebook of code cells; texts that start with "#" become text cells. */
export function tinyNotebook(...sources: string[]): Notebook {
  return {
    nbformat: 4,
    nbformat_minor: 5,
    metadata: {},
    cells: sources.map((source, index) =>
      source.startsWith("#") ? { cell_type: "markdown", id: `t${index}`, metadata: {}, source } : {
        cell_type: "code",
        id: `t${index}`,
        metadata: {},
        source,
        execution_count: null,
        outputs: [],
      }
    ),
  };
}

/**
 * Runs `work` with a fresh hidden folder below notebooks/, from where deno.json is found. What tests
 * that were killed have left there goes.
 */
export async function withFolder<T>(work: (folder: string) => Promise<T>): Promise<T> {
  await Deno.mkdir(NOTEBOOK_FOLDER, { recursive: true });
  await removeLeft(NOTEBOOK_FOLDER);
  const folder = await Deno.makeTempDir({ dir: NOTEBOOK_FOLDER, prefix: `.test-${Deno.pid}-` });
  try {
    return await work(folder);
  } finally {
    await Deno.remove(folder, { recursive: true });
  }
}

/** Writes a notebook into a folder; gives its path. */
export async function writeNotebook(
  folder: string,
  name: string,
  notebook: Notebook,
): Promise<string> {
  const path = join(folder, name);
  await Deno.writeTextFile(path, formatNotebook(notebook));
  return path;
}

/**
 * Removes the folders of tests whose process has ended.
 *
 * @param home where they lie
 */
export async function removeLeft(home: string): Promise<void> {
  for await (const { name } of Deno.readDir(home)) {
    const owner = /^\.test-(\d+)-/.exec(name)?.[1];
    if (owner === undefined || isAlive(Number(owner))) continue;
    await Deno.remove(join(home, name), { recursive: true }).catch(() => {});
  }
}

function isAlive(id: number): boolean {
  try {
    process.kill(id, 0);
    return true;
  } catch (error) {
    return (error as { code?: string }).code === "EPERM";
  }
}

/** A kernel that is running. */
export interface RunningKernel {
  /** process id */
  readonly id: number;
  /** process id of its starter */
  readonly starter: number;
  /** its command line, with the path of the connection file */
  readonly command: string;
}

/** Every kernel that runs on this machine. */
export async function runningKernels(): Promise<RunningKernel[]> {
  const { stdout } = await new Deno.Command("ps", { args: ["-eo", "pid=,ppid=,args="] }).output();
  return new TextDecoder().decode(stdout).split("\n")
    .map((line) => /^\s*(\d+)\s+(\d+)\s+(.*)$/.exec(line))
    .filter((found) => found?.[3]?.includes("jupyter --kernel") ?? false)
    .map((found) => ({ id: Number(found![1]), starter: Number(found![2]), command: found![3]! }));
}
