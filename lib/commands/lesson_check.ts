/** Checks an author's lesson without running it: cells, types, formulas, exercises. @module */
import { basename, dirname, join } from "node:path";
import { type Notebook, parseNotebook } from "../press/mod.ts";
import { judge } from "../show/kit/exercise.ts";
import type { Exercise } from "../show/kit/exercise.ts";
import { EXERCISE_FILE, readLessonFile, type WrittenExercise } from "../show/lesson/lesson_file.ts";
import { exerciseFor } from "../show/lesson/numbers.ts";
import { readTextFile } from "../study/mod.ts";
import { displayUnit, KINDS, showSi, showUs } from "../units/mod.ts";
import { formulaFaults } from "./check_notebooks.ts";
import { lessonFile } from "./notebook_files.ts";
import { codeFaults, joinCells } from "./notebook_rules.ts";
import { runDeno } from "./run_deno.ts";
import { PROJECT_FOLDER } from "./terminal.ts";

/** Learners whose numbers are tried. */
const LEARNERS = Array.from({ length: 25 }, (_, k) => k === 0 ? "" : `learner ${k}`);
/** What the first cell of a lesson says. */
const HEAD = [/^# \S/m, /\bAims?:/, /\bYou should know:/, /\bTime:/];

/**
 * Checks a lesson.
 *
 * @param path of its notebook
 * @returns faults, each with file and place; none where it is sound
 * @throws {InputError} where a file is missing or cannot be read
 */
export async function checkLesson(path: string, signal?: AbortSignal): Promise<string[]> {
  const text = await readTextFile(path, "lesson", "settings", { settings: 20e6, table: 0 });
  const notebook = parseNotebook(text, path);
  const file = path.replace(/\.ipynb$/, "") + EXERCISE_FILE;
  const exercises = readLessonFile(await readTextFile(file, "exercises", "settings"), file);
  return [
    ...codeFaults(notebook).map(({ cell, text }) => `${path}: cell ${cell}: ${text}`),
    ...formulaFaults([{ ...lessonFile(path), text, notebook }]),
    ...structureFaults(notebook, exercises).map((fault) => `${path}: ${fault}`),
    ...exercises.flatMap((one) =>
      exerciseFaults(one).map((fault) => `${file}: exercise "${one.id}": ${fault}`)
    ),
    ...await typeFaults(notebook, path, signal),
  ];
}

/** A head, a formula before the first exercise, each exercise asked once. */
function structureFaults(notebook: Notebook, exercises: readonly WrittenExercise[]): string[] {
  const [first] = notebook.cells;
  const head = first?.cell_type === "markdown" ? first.source.replaceAll(/[*_]/g, "") : "";
  const faults = HEAD.every((part) => part.test(head))
    ? []
    : ["cell 1: expected a title, Aims:, You should know: and Time:"];
  const asked: string[] = [];
  let formulas = 0;
  for (const [k, cell] of notebook.cells.entries()) {
    if (cell.cell_type === "markdown") formulas += cell.source.split("$$").length - 1;
    if (cell.cell_type !== "code") continue;
    const calls = [...cell.source.matchAll(/\.exercise\(\s*"([^"]*)"\s*,\s*([^)]*)\)/g)];
    for (const [, id, given] of calls) {
      if (formulas < 2) faults.push(`cell ${k + 1}: an exercise comes after its formula ($$...$$)`);
      if (given!.trim().replace(/,$/, "") !== "null") {
        faults.push(`cell ${k + 1}: the exercise is answered; leave null for the learner`);
      }
      asked.push(id!);
    }
  }
  for (const { id } of exercises) {
    const times = asked.filter((one) => one === id).length;
    if (times !== 1) faults.push(`exercise "${id}" is asked ${times} times; expected once`);
  }
  for (const id of asked.filter((one) => !exercises.some((known) => known.id === one))) {
    faults.push(`exercise "${id}" is not in the file of exercises`);
  }
  return faults;
}

/** Faults of the exercise as the first of many learners meets it who meets any. */
function exerciseFaults(written: WrittenExercise): string[] {
  for (const learner of LEARNERS) {
    try {
      const faults = drawnFaults(exerciseFor(written, learner));
      if (faults.length > 0) return faults;
    } catch (error) {
      return [(error as Error).message];
    }
  }
  return [];
}

function drawnFaults(one: Exercise): string[] {
  const faults: string[] = [];
  for (const given of answersOf(one, one.answer)) {
    const { state, message } = judge(one, given);
    if (state !== "right") faults.push(`"${given}" is right and refused: ${message}`);
  }
  for (const { value, hint } of one.slips) {
    const [given] = answersOf(one, value);
    const { message } = judge(one, given!);
    if (message !== hint) {
      faults.push(`the slip "${given}" is told "${message}", not its own hint: too near another`);
    }
  }
  return faults;
}

/** A value as people write it: in SI and, where there is another, in US units, five figures. */
function answersOf({ kind }: Exercise, value: number | string): string[] {
  if (kind === "choice" || typeof value === "string") return [String(value)];
  const { si, us } = displayUnit(kind);
  const stored = kind === "time" ? value / KIND_HOUR : value;
  const shown = kind === "time" ? "hours" as const : kind;
  if (!(shown in KINDS)) return [String(value)];
  const digits = (factor: number) =>
    Math.max(0, 4 - Math.floor(Math.log10(Math.abs(stored * factor || 1))));
  return [
    showSi(stored, shown, digits(si.factor)),
    ...(us === null ? [] : [showUs(stored, shown, digits(us.factor))]),
  ];
}

/** s in the hour that times are shown in. */
const KIND_HOUR = 3600;

/** Types and names, the cells joined into one module in a folder of its own. */
async function typeFaults(
  notebook: Notebook,
  path: string,
  signal?: AbortSignal,
): Promise<string[]> {
  const folder = await Deno.makeTempDir({ prefix: "winterground-lesson-" });
  try {
    const { code, cells } = joinCells(notebook);
    const module = join(folder, `${basename(path, ".ipynb")}.check.ts`);
    await Deno.writeTextFile(module, code);
    const config = join(PROJECT_FOLDER, "deno.json");
    const run = await runDeno(["check", "--quiet", "--config", config, module], signal);
    if (run.success) return [];
    const shown = join(dirname(path), basename(path));
    return [
      run.text.trimEnd().replace(/\S*\.check\.ts:(\d+)/g, (place, line: string) => {
        const cell = cells[Number(line) - 1];
        return cell === undefined ? place : `${shown}: cell ${cell}`;
      }),
    ];
  } finally {
    await Deno.remove(folder, { recursive: true });
  }
}
