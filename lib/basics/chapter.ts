/**
 * What a chapter is: its section of the study file, what it takes, what it computes, what it tells.
 * The one list of chapters (lib/study/chapters.ts) makes schema, defaults, run, cache, results and
 * tests from these.
 *
 * @module
 */
import type { Fields, Monthly } from "./fields.ts";
import type { FigureRow } from "./figures.ts";
import type { ChapterName, Notice } from "./notices.ts";
import type { ResultTable } from "./result_table.ts";
import type { Steps } from "./work.ts";

/** Notes a value that the study file leaves open, as a default taken, and returns it. */
export type NoteDefault = <T extends Monthly | string>(
  key: string,
  given: T | undefined,
  otherwise: () => T,
  shownKey?: string,
) => T;

/** The section of the study file that belongs to a chapter. */
export interface Section<Given, Before, Inputs> {
  /** every key, in the order of the table of fields */
  readonly fields: Fields<Given>;
  /** true where the section must be there, because some of its keys have no default */
  readonly required?: boolean;
  /**
   * Fills what the file may leave open, from this section and those of earlier chapters; not there
   * where every key has a fixed default.
   */
  readonly complete?: (given: Given, before: Before, note: NoteDefault) => Inputs;
}

/** A result with a key of its own in the cache. */
export interface Computation<Study, Earlier, Taken, Result> {
  /** names of the results it is computed from: earlier chapters, and for an extra also its own */
  readonly after: readonly (keyof Earlier & string)[];
  /**
   * Picks all that `compute` may see, out of the study and the results named in `after`. Exactly
   * this is hashed for the cache, so it must hold no more than the result hangs on.
   */
  readonly takes: (study: Study, earlier: Earlier) => Taken;
  /** The result; plain data that can be kept on disk. Sees only what `takes` returned. */
  readonly compute: (taken: Taken) => Result;
  /** the same in pieces that can be done side by side; not there where it is one piece */
  readonly steps?: (taken: Taken) => Steps<Awaited<Result>>;
  /** its tables for the files of a run; not there where the figures say it all */
  readonly tables?: (result: Result) => readonly ResultTable[];
}

/** A result computed only when somebody asks for it. */
export interface Extra<Study, Earlier, Taken, Result>
  extends Computation<Study, Earlier, Taken, Result> {
  /**
   * Its figures in results.json, behind those of its chapter; of `undefined` where it was not
   * computed, which the labels then say. Not there where it has none.
   */
  readonly figures?: (result: Awaited<Result> | undefined) => readonly FigureRow[];
  /** true where a whole study leaves it out: it is for those who ask for it by its name */
  readonly onlyAsked?: true;
}

/**
 * Anything with a key in the cache, whatever it takes and gives.
 *
 * @internal
 */
// deno-lint-ignore no-explicit-any
export type AnyComputation = Computation<any, any, any, any>;

/** A chapter of the job. */
export interface Chapter<
  Name extends ChapterName,
  Given,
  Before,
  Inputs,
  Study,
  Earlier,
  Taken,
  Result extends { readonly notices: readonly Notice[] },
  Extras extends Readonly<Record<string, AnyComputation>>,
> extends Computation<Study, Earlier, Taken, Result> {
  /** the chapter's word: folder, notebook, docs page, section of the study file */
  readonly name: Name;
  /** its section of the study file */
  readonly section: Section<Given, Before, Inputs>;
  /** its figures in results.json, in order */
  readonly figures: (result: Result) => readonly FigureRow[];
  /**
   * Figures that a later chapter gives under the same keys, better founded; these stand where that
   * chapter is not run, and their labels say so.
   */
  readonly provisionalFigures?: (result: Result) => readonly FigureRow[];
  /** results computed only when somebody asks for them, kept like the others */
  readonly extras: Extras;
}

/** Declares a chapter; the types of its parts follow from what is given. */
export function chapter<
  const Name extends ChapterName,
  Given,
  Before,
  Inputs,
  Study,
  Earlier,
  Taken,
  Result extends { readonly notices: readonly Notice[] },
  Extras extends Readonly<Record<string, AnyComputation>>,
>(
  parts: Chapter<Name, Given, Before, Inputs, Study, Earlier, Taken, Result, Extras>,
): Chapter<Name, Given, Before, Inputs, Study, Earlier, Taken, Result, Extras> {
  return parts;
}

/** Declares an extra of a chapter. */
export function extra<Study, Earlier, Taken, Result>(
  parts: Extra<Study, Earlier, Taken, Result>,
): Extra<Study, Earlier, Taken, Result> {
  return parts;
}

/** A result without its notices: what another chapter computes with. */
export function withoutNotices<T extends { readonly notices: readonly Notice[] }>(result: T): T {
  return { ...result, notices: [] };
}
