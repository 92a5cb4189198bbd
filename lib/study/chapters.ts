/**
 * The chapters of a study, in the order of the job: the one list from which schema, defaults, run,
 * cache, figures, documents and tests are made.
 *
 * @module
 */
import type { AnyComputation } from "../basics/mod.ts";
import { climate } from "../climate/chapter.ts";
import type { ClimateYear } from "../climate/types.ts";
import { fan } from "../fan/chapter.ts";
import { headers } from "../headers/chapter.ts";
import { house } from "../house/chapter.ts";
import { measured } from "../measured/chapter.ts";
import { soil } from "../soil/chapter.ts";
import { store } from "../store/chapter.ts";
import { worth } from "../worth/chapter.ts";
import { tubes } from "../tubes/chapter.ts";

/** Every chapter. */
export const CHAPTERS = [
  climate,
  soil,
  house,
  tubes,
  headers,
  fan,
  store,
  worth,
  measured,
] as const;

/**
 * One of the chapters.
 *
 * @internal
 */
export type AnyChapter = typeof CHAPTERS[number];

/**
 * Result of a chapter or an extra.
 *
 * @internal
 */
type ResultOf<C extends AnyComputation> = Awaited<ReturnType<C["compute"]>>;

/** Results of all chapters, by name. */
export type ChapterResults = {
  readonly [C in AnyChapter as C["name"]]: ResultOf<C>;
};

/** @internal */
type Extras<C> = C extends { readonly extras: infer E } ? E : never;
/** @internal */
type ExtraEntry<E> = E extends Readonly<Record<string, AnyComputation>>
  ? { readonly [K in keyof E]: readonly [K, ResultOf<E[K]>] }[keyof E]
  : never;

/** Results computed only when asked for, by name. */
export type ExtraResults = {
  readonly [E in ExtraEntry<Extras<AnyChapter>> as E[0] & string]: E[1];
};

/** Results of chapters and extras, by name. */
export type AllResults = ChapterResults & ExtraResults;

/**
 * The section of a chapter as the file gives it.
 *
 * @internal
 */
type GivenOf<C> = C extends { readonly section: { readonly fields: infer F } }
  ? { readonly [K in keyof F]: F[K] extends { readonly value?: infer V } ? V : never }
  : never;

/** Sections of all chapters as the file gives them: open defaults not yet filled. */
export type SectionsGiven = {
  readonly [C in AnyChapter as C["name"]]: GivenOf<C>;
};

/**
 * The section of a chapter with nothing left open.
 *
 * @internal
 */
type InputsOf<C extends AnyChapter> = NonNullable<C["section"]["complete"]> extends
  (given: never, before: never, note: never) => infer I ? unknown extends I ? GivenOf<C> : I
  : never;

/** Inputs of all chapters in SI, by name; for the climate the weather of the year. */
export type StudyInputs = {
  readonly [C in AnyChapter as C["name"]]: C["name"] extends "climate" ? ClimateYear : InputsOf<C>;
};

/** Every computation with its name: the chapters, each followed by its extras. */
export const COMPUTATIONS: ReadonlyMap<string, AnyComputation> = new Map(
  CHAPTERS.flatMap((one): [string, AnyComputation][] => [
    [one.name, one],
    ...Object.entries(one.extras),
  ]),
);

/** Names of the extras of some chapters that give figures. */
export function extrasWithFigures(names: readonly string[]): readonly (keyof ExtraResults)[] {
  return CHAPTERS.filter(({ name }) => names.includes(name)).flatMap(({ extras }) =>
    Object.entries(extras).filter(([, one]) => "figures" in one && one.figures !== undefined)
      .map(([name]) => name as keyof ExtraResults)
  );
}
