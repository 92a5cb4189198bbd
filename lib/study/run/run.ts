/** Runs the chapters of a study: each result computed once, and kept on disk. @module */
import { fileURLToPath } from "node:url";
import {
  type AnyComputation,
  type ChapterName,
  type Figures,
  type Notice,
  type Piece,
  shared,
  type Steps,
} from "../../basics/mod.ts";
import {
  type AllResults,
  type ChapterResults,
  CHAPTERS,
  COMPUTATIONS,
  extrasWithFigures,
} from "../chapters.ts";
import { studyFigures } from "../figures.ts";
import type { Study } from "../types.ts";
import { diskCache, NO_CACHE, type ResultCache } from "./cache.ts";
import { hashOf } from "./hash.ts";
import { libraryVersion } from "./library_version.ts";
import type { WorkPool } from "./pool.ts";
import { wholeTask } from "./tasks.ts";

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
  /**
   * Figures of results.json: those that some chapters give, which computes no more than they need; or
   * all. A later chapter may refine figures of an earlier one, as the store does the house's. Figures
   * of extras have values as far as this run has computed them by then, and wait for none but where
   * the run's options say so.
   */
  figures(...chapters: readonly ChapterName[]): Promise<Figures>;
  /** Notices of the study, its climate and all chapters, each once. */
  notices(): Promise<readonly Notice[]>;
  /** What there is of some chapters alone; nothing else is computed. */
  only(chapters: readonly ChapterName[]): PartOfRun;
};

/** Results, figures and notices of some chapters. */
export interface PartOfRun {
  /** the chapters, in the order of the job */
  readonly chapters: readonly ChapterName[];
  /** their results */
  results(): Promise<Partial<ChapterResults>>;
  /** their figures */
  figures(): Promise<Figures>;
  /** notices of the study, its climate and these chapters, each once */
  notices(): Promise<readonly Notice[]>;
}

/** Where results are kept. */
export interface RunOptions {
  /** folder of the cache; null for none; that of the variable WINTERGROUND_CACHE or `.cache/winterground` beside deno.json unless given */
  readonly cacheFolder?: string | null;
  /** where pieces worth keeping are kept, such as reduced soils; in the same folder unless given */
  readonly pieces?: ResultCache | undefined;
  /** workers that share the work; everything is done here unless given */
  readonly pool?: WorkPool | undefined;
  /** hears of each result that has come; `kept` where it was on disk already */
  readonly onResult?: ((name: string, kept: boolean) => void) | undefined;
  /** true where figures wait for the extras that give some; else for none */
  readonly figuresOfExtras?: boolean | undefined;
  /** hears how many pieces of a result are done, and of how many that have been asked for so far */
  readonly onPart?: ((name: string, done: number, asked: number) => void) | undefined;
  /** what is computed under each name; the chapters and their extras unless given */
  readonly computations?: ReadonlyMap<string, AnyComputation>;
}

/** Chapters, and the extras that a chapter needs, come before what is computed only when asked for. */
const NEEDED = new Set(CHAPTERS.flatMap(({ name, after }): string[] => [name, ...after]));
const RANKS: ReadonlyMap<string, number> = new Map(
  Array.from(COMPUTATIONS.keys(), (name) => [name, NEEDED.has(name) ? 0 : 1]),
);

/** The cache where no other is given; none where WINTERGROUND_CACHE is empty. */
export function defaultCache(): ResultCache {
  const folder = Deno.env.get("WINTERGROUND_CACHE") ??
    fileURLToPath(new URL("../../../.cache/winterground", import.meta.url));
  return folder === "" ? NO_CACHE : diskCache(folder);
}

/**
 * Starts a run. Nothing is computed before it is asked for.
 *
 * @param study from `openStudy`
 * @param options where results are kept
 */
export function startRun(study: Study, options: RunOptions = {}): StudyRun {
  const { cacheFolder } = options;
  const cache = cacheFolder === undefined
    ? defaultCache()
    : cacheFolder === null
    ? NO_CACHE
    : diskCache(cacheFolder);
  const computations = options.computations ?? COMPUTATIONS;
  const { pool, onResult, onPart, pieces = cache } = options;
  const there = new Map<string, unknown>();
  const getters = resultGetters(computations, {
    study,
    cache,
    pieces,
    pool,
    onResult,
    onPart,
    there,
  });
  const only = (names: readonly ChapterName[]): PartOfRun =>
    partOfRun(names, { study, getters, there, figuresOfExtras: options.figuresOfExtras === true });
  const all = only(CHAPTERS.map(({ name }) => name));
  return {
    ...getters,
    study,
    results: once(() => all.results() as Promise<ChapterResults>),
    figures: (...chapters) => (chapters.length === 0 ? all : only(chapters)).figures(),
    notices: once(() => all.notices()),
    only,
  };
}

function partOfRun(
  names: readonly ChapterName[],
  { study, getters, there, figuresOfExtras }: {
    readonly study: Study;
    readonly getters: ResultGetters;
    readonly there: ReadonlyMap<string, unknown>;
    readonly figuresOfExtras: boolean;
  },
): PartOfRun {
  const chapters = CHAPTERS.map(({ name }) => name).filter((name) => names.includes(name));
  const results = once(async () => {
    const found = await Promise.all(chapters.map(async (name) => [name, await getters[name]()]));
    return Object.fromEntries(found) as Partial<ChapterResults>;
  });
  return {
    chapters,
    results,
    figures: async () => {
      const waited = figuresOfExtras ? extrasWithFigures(chapters) : [];
      const [found] = await Promise.all([results(), ...waited.map((name) => getters[name]())]);
      return studyFigures(found, there);
    },
    notices: once(async () => allNotices(study, await results())),
  };
}

function resultGetters(
  computations: ReadonlyMap<string, AnyComputation>,
  around: Omit<Surroundings, "getters" | "kept">,
): ResultGetters {
  const getters: Record<string, () => Promise<unknown>> = {};
  const kept = new Map<string, Promise<unknown>>();
  for (const [name, computation] of computations) {
    getters[name] = once(() => resultOf(name, computation, { ...around, kept, getters }));
  }
  return getters as unknown as ResultGetters;
}

/** What a result is looked up and computed with. */
interface Surroundings {
  readonly study: Study;
  readonly cache: ResultCache;
  readonly pieces: ResultCache;
  readonly pool: WorkPool | undefined;
  readonly onResult: RunOptions["onResult"];
  readonly onPart: RunOptions["onPart"];
  /** results that have come, by name */
  readonly there: Map<string, unknown>;
  readonly getters: Readonly<Record<string, () => Promise<unknown>>>;
  /** pieces worth keeping that are there or being done, by key */
  readonly kept: Map<string, Promise<unknown>>;
}

/** From the cache, or computed: the key is the hash of all that the computation sees. */
async function resultOf(
  name: string,
  computation: AnyComputation,
  around: Surroundings,
): Promise<unknown> {
  const { after, takes } = computation;
  const earlier: Record<string, unknown> = {};
  await Promise.all(after.map(async (other) => earlier[other] = await around.getters[other]!()));
  const taken: unknown = takes(around.study, earlier);
  let kept = true;
  const result = await around.cache.get(await keyOf(name, taken), () => {
    kept = false;
    return computed(name, computation, { taken, around });
  });
  around.there.set(name, result);
  around.onResult?.(name, kept);
  return result;
}

async function keyOf(name: string, content: unknown): Promise<string> {
  const { hash } = await libraryVersion();
  return hashOf(name, hash, Deno.version.v8, content);
}

/** Computed piece by piece, by the workers where there are any. */
function computed(
  name: string,
  computation: AnyComputation,
  { taken, around }: { readonly taken: unknown; readonly around: Surroundings },
): unknown {
  const rank = RANKS.get(name) ?? 0;
  const { steps } = computation;
  if (steps !== undefined) {
    let [done, asked] = [0, 0];
    return shared(counted(steps(taken), (count) => asked += count), async (piece) => {
      const answer = await pieceDone(piece, rank, around);
      around.onPart?.(name, ++done, asked);
      return answer;
    });
  }
  if (around.pool === undefined) return computation.compute(taken);
  return around.pool.do({ task: wholeTask(name, computation), question: taken }, rank);
}

/** The same steps; says how many pieces are in each batch as it is asked for. */
function* counted<Result>(steps: Steps<Result>, tell: (count: number) => void): Steps<Result> {
  let turn = steps.next();
  while (turn.done !== true) {
    tell(turn.value.length);
    turn = steps.next(yield turn.value);
  }
  return turn.value;
}

/** A piece, from the cache where it is one to keep. */
async function pieceDone<Answer>(
  piece: Piece<Answer>,
  rank: number,
  { pieces, pool, kept }: Surroundings,
): Promise<Answer> {
  const { task, question } = piece;
  const work = () => pool?.do(piece, rank) ?? task.run(question as never);
  if (task.kept !== true) return await work();
  const key = await keyOf(task.name, question);
  const known = kept.get(key) as Promise<Answer> | undefined;
  if (known !== undefined) return await known;
  const answer = pieces.get(key, work);
  kept.set(key, answer);
  return await answer;
}

function once<T>(compute: () => Promise<T>): () => Promise<T> {
  let result: Promise<T> | undefined;
  return () => result ??= compute();
}

function allNotices(study: Study, results: Partial<ChapterResults>): readonly Notice[] {
  const all = [
    ...study.notices,
    ...study.climate.notices,
    ...CHAPTERS.flatMap(({ name }): readonly Notice[] => results[name]?.notices ?? []),
  ];
  const seen = new Set<string>();
  return all.filter(({ level, chapter, text }) => {
    const mark = `${level} ${chapter} ${text}`;
    return seen.has(mark) ? false : seen.add(mark) !== undefined;
  });
}
