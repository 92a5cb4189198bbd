/** Writes what a run leaves behind: results.json and hourly.csv. @module */
import { join } from "node:path";
import { checkout } from "../run/checkout.ts";
import { hashOf } from "../run/hash.ts";
import { hourlyCsv } from "./hourly.ts";
import { inputHashes } from "./inputs.ts";
import { momentOfRun } from "./moment.ts";
import { toldLogs } from "./told_logs.ts";
import { writeWhole } from "./write_whole.ts";
import { type LibraryVersion, libraryVersion } from "../run/library_version.ts";
import { CHAPTERS } from "../chapters.ts";
import type { StudyRun } from "../run/run.ts";
import type { Figures, Study, StudyHeading } from "../types.ts";
import { type ChapterName, type Notice, readable } from "../../basics/mod.ts";

/** Names of all chapters. */
const ALL: readonly ChapterName[] = CHAPTERS.map(({ name }) => name);

/** Where the numbers of a run come from. */
export interface Provenance {
  /** SHA-256, hex, of what the study says besides its weather, and of fans, prices and logs of its own */
  readonly studyHash: string;
  /** SHA-256 of the weather, hex */
  readonly climateHash: string;
  /** version of the library */
  readonly library: LibraryVersion;
  /** commit of the library, hex; null where git keeps none; left out in runs of earlier versions */
  readonly commit?: string | null;
  /** SHA-256, hex, of the list of packages, deno.lock; null where there is none */
  readonly lockHash?: string | null;
  /** version of Deno */
  readonly deno: string;
  /** moment of the run, ISO 8601, UTC, whole seconds; that of SOURCE_DATE_EPOCH where it is set */
  readonly time: string;
  /** SHA-256, hex, of each input file as given, by its place in the folder of the run */
  readonly files?: Readonly<Record<string, string>>;
  /** words that give this run again in its folder, behind `deno task study` */
  readonly command?: readonly string[];
}

/** Content of results.json. */
export interface ResultsFile {
  /** heading of the study */
  readonly study: StudyHeading;
  /** every input in SI, the climate as its source, place and layout, logs by name, hash and rows */
  readonly inputs: Readonly<Record<string, unknown>>;
  /** where the numbers come from */
  readonly provenance: Provenance;
  /** the chapters whose figures these are, where not all were run */
  readonly chapters?: readonly ChapterName[];
  /** every figure by key */
  readonly figures: Figures;
  /** messages for the reader */
  readonly notices: readonly Notice[];
}

function inputsOf(study: Study): Readonly<Record<string, unknown>> {
  const { place, climate: { source, layout }, defaults, files } = study;
  const sections = CHAPTERS.map(({ name }) => [name, study[name]]);
  const measured = { ...study.measured, texts: toldLogs(study.measured.texts, files) };
  return {
    place,
    ...Object.fromEntries(sections),
    measured,
    climate: { source, layout },
    defaults,
  };
}

/**
 * Collects results.json.
 *
 * @param run what was computed already is not computed again
 * @param now moment of the run
 * @param names chapters whose figures are wanted; all unless given
 * @param command words that give this run again
 */
export async function resultsOf(
  run: StudyRun,
  now: Date = momentOfRun(),
  names: readonly ChapterName[] = ALL,
  command?: readonly string[],
): Promise<ResultsFile> {
  const { study } = run;
  const part = run.only(names);
  return {
    study: study.heading,
    inputs: inputsOf(study),
    provenance: {
      studyHash: study.studyHash,
      climateHash: hashOf({ ...study.climate, source: null, notices: null }),
      library: await libraryVersion(),
      ...await checkout(),
      deno: Deno.version.deno,
      time: now.toISOString(),
      files: inputHashes(study.files),
      ...(command === undefined ? {} : { command }),
    },
    ...(part.chapters.length < ALL.length ? { chapters: part.chapters } : {}),
    figures: await part.figures(),
    notices: await part.notices(),
  };
}

async function hoursOf(run: StudyRun): Promise<string> {
  const [soil, house, store] = await Promise.all([run.soil(), run.house(), run.store()]);
  return hourlyCsv(run.study, { soil, house, store });
}

/** JSON in which signs that a terminal obeys, or that nobody sees, stand as their codes. */
function jsonText(value: unknown): string {
  return `${readable(JSON.stringify(value, null, 2))}\n`;
}

/**
 * Writes `results.json`, and `hourly.csv` where the store is wanted; both are complete or not
 * there.
 *
 * @param run everything is computed before anything is written
 * @param folder made where it does not exist
 * @param names chapters whose figures are wanted; all unless given
 * @param command words that give this run again
 * @returns what stands in results.json
 */
export async function writeResults(
  run: StudyRun,
  folder: string,
  names: readonly ChapterName[] = ALL,
  command?: readonly string[],
): Promise<ResultsFile> {
  const results = await resultsOf(run, momentOfRun(), names, command);
  const hourly = names.includes("store") ? await hoursOf(run) : undefined;
  await Deno.mkdir(folder, { recursive: true });
  if (hourly !== undefined) await writeWhole(join(folder, "hourly.csv"), hourly);
  await writeWhole(join(folder, "results.json"), jsonText(results));
  return results;
}
