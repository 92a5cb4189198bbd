/** Runs the chapters of a study: each result computed once, and kept on disk. @module */
import { fileURLToPath } from "node:url";
import type { AnyComputation, Figures, Notice } from "../../basics/mod.ts";
import { type AllResults, type ChapterResults, CHAPTERS, COMPUTATIONS } from "../chapters.ts";
import { studyFigures } from "../figures.ts";
import type { Study } from "../types.ts";
import { diskCache, NO_CACHE, type ResultCache } from "./cache.ts";
import { hashOf } from "./hash.ts";
import { libraryVersion } from "./library_version.ts";

/** A getter for each chapter and each extra, by its name. */
export type ResultGetters = {
  readonly [Name in keyof AllResults]: () => Promise<AllResults[Name]>;
};

/** One run of a study; every result is computed at most once. Extras are not part of `results`. */
export type StudyRun = ResultGetters & {
  /** the study that is run */
  readonly study: Study;
  /** All chapters. */
  results(): Promise<ChapterResults>;
  /** Every figure of results.json. */
  figures(): Promise<Figures>;
  /** Notices of the study, its climate and all chapters, each once. */
  notices(): Promise<readonly Notice[]>;
};

/** Where results are kept. */
export interface RunOptions {
  /** folder of the cache; null for none; `.cache/winterground` beside deno.json unless given */
  readonly cacheFolder?: string | null;
  /** what is computed under each name; the chapters and their extras unless given */
  readonly computations?: ReadonlyMap<string, AnyComputation>;
}

function defaultCacheFolder(): string {
  return fileURLToPath(new URL("../../../.cache/winterground", import.meta.url));
}

/**
 * Starts a run. Nothing is computed before it is asked for.
 *
 * @param study from `openStudy`
 * @param options where results are kept
 */
export function startRun(study: Study, options: RunOptions = {}): StudyRun {
  const folder = options.cacheFolder === undefined ? defaultCacheFolder() : options.cacheFolder;
  const cache = folder === null ? NO_CACHE : diskCache(folder);
  const getters = resultGetters(study, cache, options.computations ?? COMPUTATIONS);
  const results = once(async () => {
    const all: Record<string, unknown> = {};
    for (const { name } of CHAPTERS) all[name] = await getters[name]();
    return all as unknown as ChapterResults;
  });
  return {
    ...getters,
    study,
    results,
    figures: once(async () => studyFigures(await results())),
    notices: once(async () => allNotices(study, await results())),
  };
}

function resultGetters(
  study: Study,
  cache: ResultCache,
  computations: ReadonlyMap<string, AnyComputation>,
): ResultGetters {
  const getters: Record<string, () => Promise<unknown>> = {};
  for (const [name, computation] of computations) {
    getters[name] = once(() => resultOf(name, computation, { study, cache, getters }));
  }
  return getters as unknown as ResultGetters;
}

/** What a result is looked up with. */
interface Surroundings {
  readonly study: Study;
  readonly cache: ResultCache;
  readonly getters: Readonly<Record<string, () => Promise<unknown>>>;
}

/** From the cache, or computed: the key is the hash of all that the computation sees. */
async function resultOf(
  name: string,
  { after, takes, compute }: AnyComputation,
  { study, cache, getters }: Surroundings,
): Promise<unknown> {
  const earlier: Record<string, unknown> = {};
  for (const other of after) earlier[other] = await getters[other]!();
  const taken: unknown = takes(study, earlier);
  const { hash } = await libraryVersion();
  return await cache.get(hashOf(name, hash, Deno.version.v8, taken), () => compute(taken));
}

function once<T>(compute: () => Promise<T>): () => Promise<T> {
  let result: Promise<T> | undefined;
  return () => result ??= compute();
}

function allNotices(study: Study, results: ChapterResults): readonly Notice[] {
  const all = [
    ...study.notices,
    ...study.climate.notices,
    ...CHAPTERS.flatMap(({ name }): readonly Notice[] => results[name].notices),
  ];
  const seen = new Set<string>();
  return all.filter(({ level, chapter, text }) => {
    const mark = `${level} ${chapter} ${text}`;
    return seen.has(mark) ? false : seen.add(mark) !== undefined;
  });
}
