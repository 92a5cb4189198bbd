/** What makes the folder of a run complete: the words that give it again, and what it was compared with. @module */
import { join } from "node:path";
import { type GivenFile, INPUTS, keptAt } from "../study/mod.ts";
import { EXERCISE_FILE } from "../show/lesson/lesson_file.ts";
import type { CommandLine } from "./command_line.ts";

/** Where the earlier run that a run was compared with is kept, in the folder of the run. */
export const EARLIER_RUN = `${INPUTS}/elsewhere/earlier-run`;

/** Where the lessons are kept that were run with the study. */
export const KEPT_LESSONS = `${INPUTS}/elsewhere/lessons`;

/** Options that do not belong to what was run. */
const ASIDE = ["out", "verify"];

/**
 * The words that give a run again for one who stands in its folder, behind `deno task study`.
 *
 * @param line that the run was started with
 * @param files of its study
 */
export function commandAgain(line: CommandLine, files: readonly GivenFile[]): string[] {
  const values = Object.entries(line.values)
    .filter(([name]) => !ASIDE.includes(name))
    .flatMap(([name, value]) => [`--${name}`, placeOf(name, files) ?? value]);
  const switches = Array.from(line.switches, (name) => `--${name}`);
  return [keptAt(files, "study")!, ...values, ...switches];
}

/** Where the file that an option names is kept. */
function placeOf(name: string, files: readonly GivenFile[]): string | undefined {
  if (name === "against") return EARLIER_RUN;
  return name === "lessons" ? KEPT_LESSONS : keptAt(files, `--${name}`);
}

/** Copies lessons and their exercises. */
export async function keepLessons(from: string, to: string): Promise<void> {
  await Deno.mkdir(to, { recursive: true });
  for await (const { name, isFile } of Deno.readDir(from)) {
    if (!isFile || !(name.endsWith(".ipynb") || name.endsWith(EXERCISE_FILE))) continue;
    await Deno.copyFile(join(from, name), join(to, name));
  }
}

/** Copies what a comparison reads of an earlier run. */
export async function keepEarlierRun(from: string, to: string): Promise<void> {
  await Deno.mkdir(to, { recursive: true });
  for (const name of ["results.json", "hourly.csv"]) {
    await Deno.copyFile(join(from, name), join(to, name)).catch((error) => {
      if (!(error instanceof Deno.errors.NotFound)) throw error;
    });
  }
}
