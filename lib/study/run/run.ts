/** Binds the chapters of a study: each result computed once, and kept on disk. @module */
import { fileURLToPath } from "node:url";
import type { Notice } from "../../basics/mod.ts";
import type { ClimateResult } from "../../climate/types.ts";
import type { FanResult } from "../../fan/types.ts";
import type { HeadersResult } from "../../headers/types.ts";
import type { RankedMeasure } from "../../house/mod.ts";
import type { HouseResult } from "../../house/types.ts";
import type { SoilResult } from "../../soil/types.ts";
import type { HouseWay, VariantRow } from "../../store/mod.ts";
import type { StoreResult } from "../../store/types.ts";
import type { TubesResult } from "../../tubes/types.ts";
import { diskCache, NO_CACHE, type ResultCache } from "./cache.ts";
import {
  climateOf,
  fanOf,
  headersOf,
  houseOf,
  rankingOf,
  soilOf,
  storeOf,
  tubesOf,
  variantsOf,
  waysOf,
} from "./chapters.ts";
import { studyFigures } from "../results/figures.ts";
import { hashOf } from "./hash.ts";
import { libraryVersion } from "./library_version.ts";
import type { Figures, Study } from "../types.ts";

/** Results of all chapters. */
export interface ChapterResults {
  /** result of the climate chapter */
  readonly climate: ClimateResult;
  /** result of the soil chapter */
  readonly soil: SoilResult;
  /** result of the house chapter */
  readonly house: HouseResult;
  /** result of the tubes chapter */
  readonly tubes: TubesResult;
  /** result of the headers chapter */
  readonly headers: HeadersResult;
  /** result of the fan chapter */
  readonly fan: FanResult;
  /** result of the store chapter */
  readonly store: StoreResult;
}

/** Results kept on disk: the chapters', and what is only computed when it is asked for. */
interface KeptResults extends ChapterResults {
  readonly ranking: readonly RankedMeasure[];
  readonly ways: readonly HouseWay[];
  readonly variants: readonly VariantRow[];
}

/** One run of a study; every result is computed at most once. */
export interface StudyRun {
  /** the study that is run */
  readonly study: Study;
  /** Climate chapter. */
  climate(): Promise<ClimateResult>;
  /** Soil chapter. */
  soil(): Promise<SoilResult>;
  /** House chapter. */
  house(): Promise<HouseResult>;
  /** What each improvement of the house brings before any store; not part of `results`. */
  ranking(): Promise<readonly RankedMeasure[]>;
  /** Tubes chapter. */
  tubes(): Promise<TubesResult>;
  /** Headers chapter. */
  headers(): Promise<HeadersResult>;
  /** Fan chapter. */
  fan(): Promise<FanResult>;
  /** Store chapter. */
  store(): Promise<StoreResult>;
  /** With and without store and curtain, on a coarser store; not part of `results`. */
  ways(): Promise<readonly HouseWay[]>;
  /** The store built or run otherwise, on a coarser store; not part of `results`. */
  variants(): Promise<readonly VariantRow[]>;
  /** All chapters. */
  results(): Promise<ChapterResults>;
  /** Every figure of results.json. */
  figures(): Promise<Figures>;
  /** Notices of the study, its climate and all chapters, each once. */
  notices(): Promise<readonly Notice[]>;
}

/** Where results are kept. */
export interface RunOptions {
  /** folder of the cache; null for none; `.cache/winterground` beside deno.json unless given */
  readonly cacheFolder?: string | null;
}

/** What the store and its comparisons take from other chapters. */
const STORE_UPSTREAM = ["soil", "house", "tubes", "headers", "fan"] as const;

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
  const chapter = chapterRunner(study, cache);
  const { climate, house, tubes: tubesInputs, headers: headersInputs, fan: fanInputs } = study;
  const storeInputs = [study.store];
  const run: StudyRun = {
    study,
    climate: chapter("climate", [climate], [], () => climateOf(study)),
    soil: chapter("soil", [climate, study.soil, tubesInputs], [], () => soilOf(study)),
    house: chapter("house", [climate, house], ["soil"], ({ soil }) => houseOf(study, soil)),
    ranking: chapter("ranking", [climate, house], ["soil"], ({ soil }) => rankingOf(study, soil)),
    tubes: chapter("tubes", [tubesInputs], ["house"], (up) => tubesOf(study, up.house)),
    headers: chapter("headers", [headersInputs], ["tubes"], (up) => headersOf(study, up.tubes)),
    fan: chapter(
      "fan",
      [fanInputs],
      ["tubes", "headers"],
      ({ tubes, headers }) => fanOf(study, tubes, headers),
    ),
    store: chapter(
      "store",
      storeInputs,
      STORE_UPSTREAM,
      (up) => storeOf(study, up),
    ),
    ways: chapter("ways", storeInputs, STORE_UPSTREAM, (up) => waysOf(study, up)),
    variants: chapter("variants", storeInputs, STORE_UPSTREAM, (up) => variantsOf(study, up)),
    results: once(async () => ({
      climate: await run.climate(),
      soil: await run.soil(),
      house: await run.house(),
      tubes: await run.tubes(),
      headers: await run.headers(),
      fan: await run.fan(),
      store: await run.store(),
    })),
    figures: once(async () => studyFigures(await run.results())),
    notices: once(async () => allNotices(study, await run.results())),
  };
  return run;
}

type ChapterName = keyof KeptResults;
type Getter<Name extends ChapterName> = () => Promise<KeptResults[Name]>;

/** Makes the getters: the key of a result is the hash of its inputs and of the keys upstream. */
function chapterRunner(study: Study, cache: ResultCache) {
  const keys = new Map<ChapterName, () => Promise<string>>();
  const getters = new Map<ChapterName, () => Promise<unknown>>();
  return function chapter<Name extends ChapterName, Up extends ChapterName = never>(
    name: Name,
    inputs: readonly unknown[],
    upstream: readonly Up[],
    compute: (
      results: Pick<KeptResults, Up>,
    ) => KeptResults[Name] | Promise<KeptResults[Name]>,
  ): Getter<Name> {
    const key = once(async () => {
      const { hash } = await libraryVersion();
      const above = await Promise.all(upstream.map((other) => keys.get(other)!()));
      const air = hashOf(study.climate.pressure);
      return hashOf(name, hash, Deno.version.v8, air, inputs, above);
    });
    const getter = once(async () =>
      await cache.get(await key(), async () => {
        const results: Partial<Record<ChapterName, unknown>> = {};
        for (const other of upstream) results[other] = await getters.get(other)!();
        return await compute(results as Pick<KeptResults, Up>);
      })
    );
    keys.set(name, key);
    getters.set(name, getter);
    return getter;
  };
}

function once<T>(compute: () => Promise<T>): () => Promise<T> {
  let result: Promise<T> | undefined;
  return () => result ??= compute();
}

function allNotices(study: Study, results: ChapterResults): readonly Notice[] {
  const all = [
    ...study.notices,
    ...study.climate.notices,
    ...Object.values(results).flatMap(({ notices }: { readonly notices: readonly Notice[] }) =>
      notices
    ),
  ];
  const seen = new Set<string>();
  return all.filter(({ level, chapter, text }) => {
    const mark = `${level} ${chapter} ${text}`;
    return seen.has(mark) ? false : seen.add(mark) !== undefined;
  });
}
