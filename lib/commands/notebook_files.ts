/**
 * The notebooks of the project and a choice among them by number.
 *
 * @module
 */
import { basename, join } from "node:path";
import { InputError } from "../basics/mod.ts";
import { PROJECT_FOLDER } from "./terminal.ts";

/** One notebook file. */
export interface NotebookFile {
  /** file name without ending, such as "03-house" */
  readonly name: string;
  /** number at the start of the name */
  readonly number: number;
  /** full path */
  readonly path: string;
  /** folder its kernel runs in, where that is not its own */
  readonly kernelFolder?: string;
}

/** Folder of the notebooks. */
export const NOTEBOOK_FOLDER: string = join(PROJECT_FOLDER, "notebooks");

/** The numbered notebooks of a folder, by number. */
export async function listNotebooks(folder: string = NOTEBOOK_FOLDER): Promise<NotebookFile[]> {
  const found: NotebookFile[] = [];
  for await (const entry of Deno.readDir(folder)) {
    const number = /^(\d+)-.*\.ipynb$/.exec(entry.name)?.[1];
    if (!entry.isFile || number === undefined) continue;
    const name = entry.name.slice(0, -".ipynb".length);
    found.push({ name, number: Number(number), path: join(folder, entry.name) });
  }
  return found.sort((a, b) => a.number - b.number || (a.name < b.name ? -1 : 1));
}

/**
 * The notebooks of a folder of lessons, by name. Their kernels run beside the project's own notebooks,
 * where the library is found.
 *
 * @throws {InputError} where there is no such folder or no notebook in it
 */
export async function listLessons(folder: string): Promise<NotebookFile[]> {
  const entries = await Array.fromAsync(Deno.readDir(folder)).catch(() => null);
  if (entries === null) throw new InputError(`Cannot read the lessons: no folder ${folder}`);
  const found = entries
    .filter(({ isFile, name }) => isFile && name.endsWith(".ipynb"))
    .map(({ name }) => lessonFile(join(folder, name)))
    .sort((a, b) => a.name < b.name ? -1 : 1);
  if (found.length > 0) return found;
  throw new InputError(`There is no lesson in ${folder}: expected notebooks, such as fans.ipynb`);
}

/** Before the names of lessons in a run, so that none has the name of a notebook or chapter. */
const LESSON = "lesson-";

/** One lesson as a notebook file; its number is that of lessons that have none. */
export function lessonFile(path: string): NotebookFile {
  const name = `${LESSON}${basename(path).replace(/\.ipynb$/, "")}`;
  return { name, number: NaN, path, kernelFolder: NOTEBOOK_FOLDER };
}

/**
 * Picks notebooks by number.
 *
 * @example
 * ```ts
 * import { assertEquals } from "@std/assert";
 * import { selectNotebooks } from "./notebook_files.ts";
 *
 * const files = [0, 1, 2, 3].map((number) => ({ name: `0${number}-x`, number, path: "" }));
 * assertEquals(selectNotebooks(files, "1-2").map((file) => file.number), [1, 2]);
 * ```
 *
 * @param choice numbers and ranges with commas between, such as "1-3,7"
 * @throws {InputError} when the choice cannot be read or a number has no notebook
 */
export function selectNotebooks(files: readonly NotebookFile[], choice: string): NotebookFile[] {
  const wanted = new Set<number>();
  const known = files.map((file) => file.number).join(", ");
  for (const part of choice.split(",")) {
    const range = /^\s*(\d{1,2})\s*(?:-\s*(\d{1,2})\s*)?$/.exec(part);
    if (range === null) {
      throw new InputError(
        `Cannot read --chapters "${choice}": expected numbers such as 1-8 or 1,3`,
      );
    }
    const from = Number(range[1]);
    const to = Number(range[2] ?? range[1]);
    if (from > to) {
      throw new InputError(`Cannot read --chapters "${choice}": ${from} is after ${to}`);
    }
    for (let number = from; number <= to; number++) wanted.add(number);
  }
  for (const number of wanted) {
    if (files.some((file) => file.number === number)) continue;
    throw new InputError(`There is no notebook ${number}: the notebooks are ${known}`);
  }
  return files.filter((file) => wanted.has(file.number));
}
