/**
 * What a site is made of: the executed notebooks of the project or of a finished run, lessons of an
 * author's own, and the pages of docs.
 *
 * @module
 */
import { basename, join } from "node:path";
import { InputError } from "../../basics/mod.ts";
import { type Notebook, parseNotebook } from "../../press/mod.ts";
import { documentBody, lessonBody, type SiteDraft } from "../../press/site/mod.ts";
import { EXERCISES } from "../../show/exercises.ts";
import type { Exercise } from "../../show/kit/exercise.ts";
import { EXERCISE_FILE, readLessonFile } from "../../show/lesson/lesson_file.ts";
import { exerciseFor } from "../../show/lesson/numbers.ts";
import { CHAPTERS } from "../../study/chapters.ts";
import { KEPT_LESSONS } from "../capsule.ts";
import {
  listLessons,
  listNotebooks,
  NOTEBOOK_FOLDER,
  type NotebookFile,
} from "../notebook_files.ts";
import { PROJECT_FOLDER } from "../terminal.ts";
import { type Edition, exerciseCells, learnerOf } from "./editions.ts";

/** Where a site takes its pages from. */
export interface SiteSources {
  /** whom it is for */
  readonly edition: Edition;
  /** folder of a finished run; the project's own notebooks without it */
  readonly run?: string | undefined;
  /** folder of an author's lessons, executed */
  readonly lessons?: string | undefined;
}

/** Pages, and what a reader should know about them. */
export interface Gathered {
  readonly drafts: readonly SiteDraft[];
  /** lessons that have never been run */
  readonly notRun: readonly string[];
}

/** A lesson with its exercises. */
interface Lesson {
  readonly file: NotebookFile;
  readonly notebook: Notebook;
  readonly exercises: ReadonlyMap<string, Exercise>;
  readonly group: string;
}

/** Reads everything a site shows. */
export async function gatherSite({ edition, run, lessons }: SiteSources): Promise<Gathered> {
  const found = [...await ownNotebooks(run), ...await authorsLessons(run, lessons)];
  const notRun = found.filter(({ notebook }) => !wasRun(notebook)).map(({ file }) => file.path);
  return {
    drafts: [...found.map((lesson) => lessonDraft(lesson, edition)), ...await pages()],
    notRun,
  };
}

function lessonDraft({ file, notebook, exercises, group }: Lesson, edition: Edition): SiteDraft {
  return {
    file: `${file.name.startsWith("lesson-") ? "" : "lesson-"}${file.name}.html`,
    source: `notebooks/${file.name}.ipynb`,
    group,
    ...lessonBody(notebook, exerciseCells(edition, exercises)),
  };
}

const wasRun = ({ cells }: Notebook) =>
  cells.some((cell) => cell.cell_type === "code" && cell.outputs.length > 0);

/** The numbered notebooks, as committed or as a run left them. */
async function ownNotebooks(run: string | undefined): Promise<Lesson[]> {
  const folder = run === undefined ? NOTEBOOK_FOLDER : join(run, "notebooks");
  const files = await listNotebooks(folder).catch(() => []);
  if (files.length === 0) {
    throw new InputError(`There are no notebooks of a finished run in ${folder}`);
  }
  const exercises = new Map(EXERCISES.map((one) => [one.id, one]));
  return await Promise.all(files.map(async (file) => ({
    file,
    notebook: await readNotebook(file.path),
    exercises,
    group: "Lessons",
  })));
}

/** Lessons of a folder, or those that a run holds. */
async function authorsLessons(
  run: string | undefined,
  lessons: string | undefined,
): Promise<Lesson[]> {
  const group = "Lessons of the author";
  if (lessons !== undefined) {
    const files = await listLessons(lessons);
    return await Promise.all(files.map((file) => authorsLesson(file, lessons, group)));
  }
  if (run === undefined) return [];
  const folder = join(run, "notebooks");
  const names = (await Array.fromAsync(Deno.readDir(folder))).map(({ name }) => name)
    .filter((name) => /^lesson-.*\.ipynb$/.test(name)).sort();
  return await Promise.all(names.map((name) => {
    const path = join(folder, name);
    const file = { name: name.replace(/\.ipynb$/, ""), number: NaN, path };
    return authorsLesson(file, join(run, KEPT_LESSONS), group);
  }));
}

async function authorsLesson(file: NotebookFile, folder: string, group: string): Promise<Lesson> {
  const notebook = await readNotebook(file.path);
  const path = join(folder, `${file.name.replace(/^lesson-/, "")}${EXERCISE_FILE}`);
  const text = await Deno.readTextFile(path).catch((error) => {
    if (error instanceof Deno.errors.NotFound) return null; // a lesson may ask nothing
    throw error;
  });
  const written = text === null ? [] : readLessonFile(text, path);
  const learner = learnerOf(notebook);
  const own = written.map((one) => [one.id, exerciseFor(one, learner)] as const);
  const known = EXERCISES.map((one) => [one.id, one] as const);
  return { file, notebook, exercises: new Map([...known, ...own]), group };
}

async function readNotebook(path: string): Promise<Notebook> {
  return parseNotebook(await Deno.readTextFile(path), path);
}

/** Pages that list what is in the code or the tables. */
const REFERENCE = ["functions", "keys", "sources", "symbols", "changes"];

/** The pages of docs: those of the chapters in their order, guides, reference. */
async function pages(): Promise<SiteDraft[]> {
  const folder = join(PROJECT_FOLDER, "docs");
  const chapters: readonly string[] = CHAPTERS.map(({ name }) => name);
  const names = (await Array.fromAsync(Deno.readDir(folder))).map(({ name }) => name)
    .filter((name) => name.endsWith(".md")).map((name) => basename(name, ".md")).sort();
  const groups: readonly (readonly [string, readonly string[]])[] = [
    ["Chapters: equations, sources, limits", chapters.filter((name) => names.includes(name))],
    ["Guides", names.filter((name) => !chapters.includes(name) && !REFERENCE.includes(name))],
    ["Reference", REFERENCE.filter((name) => names.includes(name))],
  ];
  const drafts = groups.flatMap(([group, names]) =>
    names.map(async (name): Promise<SiteDraft> => ({
      file: `${name}.html`,
      source: `docs/${name}.md`,
      group,
      ...documentBody(await Deno.readTextFile(join(folder, `${name}.md`))),
    }))
  );
  return await Promise.all(drafts);
}
