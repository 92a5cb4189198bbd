/**
 * `deno task lesson`: begins a lesson of an author's own, and checks one in seconds.
 *
 * @module
 */
import { basename, dirname, join } from "node:path";
import { InputError } from "../basics/mod.ts";
import { formatNotebook } from "../press/mod.ts";
import { EXERCISE_FILE } from "../show/lesson/lesson_file.ts";
import type { CommandLine, CommandSpec } from "./command_line.ts";
import { checkLesson } from "./lesson_check.ts";
import { lessonExercises, lessonNotebook } from "./lesson_template.ts";
import { complain, runCommand, say } from "./terminal.ts";

const SPEC: CommandSpec = {
  name: "lesson",
  summary: "Begins a lesson of your own, or checks one: cells, types, formulas, exercises.",
  args: "new NAME | check FILE.ipynb",
  minArgs: 2,
  maxArgs: 2,
  options: [{
    name: "in",
    value: "DIR",
    meaning: "folder for a new lesson (default: where you stand)",
  }],
  notes: [
    "A lesson is a notebook, NAME.ipynb, and its exercises, NAME.exercises.yaml.",
    "deno task study STUDY.yaml --lessons DIR runs all lessons of a folder on a study.",
    "Exit status: 0 done, 1 the lesson has faults, 2 wrong usage or bad input.",
  ],
};

/** Writes a new lesson; never over a file that is there. */
async function newLesson(name: string, folder: string): Promise<void> {
  if (!/^[a-z0-9][a-z0-9-]*$/i.test(name)) {
    throw new InputError(
      `Cannot name a lesson "${name}": expected letters, digits and hyphens, such as fan-curve`,
    );
  }
  const files: [string, string][] = [
    [join(folder, `${name}.ipynb`), formatNotebook(lessonNotebook(name))],
    [join(folder, `${name}${EXERCISE_FILE}`), lessonExercises()],
  ];
  for (const [path] of files) {
    const found = await Deno.lstat(path).catch(() => null);
    if (found !== null) {
      throw new InputError(
        "Cannot write the lesson: the file is there already; choose another name",
        {
          file: path,
        },
      );
    }
  }
  await Deno.mkdir(folder, { recursive: true });
  for (const [path, text] of files) {
    await Deno.writeTextFile(path, text, { createNew: true });
    say(`written: ${path}`);
  }
}

async function lesson({ args, values }: CommandLine, signal: AbortSignal): Promise<number> {
  const [word, what] = args as [string, string];
  if (word === "new") {
    await newLesson(what, values.in ?? ".");
    return 0;
  }
  if (word !== "check") {
    throw new InputError(`Cannot do "${word}": expected "new NAME" or "check FILE.ipynb"`);
  }
  if (values.in !== undefined) throw new InputError("--in belongs to new: name the file to check");
  const faults = await checkLesson(what, signal);
  for (const fault of faults) complain(fault);
  if (faults.length > 0) return 1;
  say(`sound: ${join(dirname(what), basename(what))}`);
  return 0;
}

if (import.meta.main) await runCommand(SPEC, lesson);
