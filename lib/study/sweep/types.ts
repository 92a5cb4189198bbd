/** What a sweep is made of. @module */
import type { ChapterName } from "../../basics/mod.ts";
import type { Kind } from "../../units/mod.ts";

/** A value as a study file holds it. */
export type SweptValue = string | number | boolean | null | object;

/** The values a key takes. */
export type Axis =
  | { readonly form: "list"; readonly values: readonly SweptValue[] }
  | {
    readonly form: "range";
    /** in the inside unit of the kind */
    readonly low: number;
    /** in the same unit */
    readonly high: number;
    /** count of values from low to high, both included; undefined where samples choose */
    readonly steps: number | undefined;
    readonly kind: Kind;
    /** true where only whole numbers will do */
    readonly whole: boolean;
  };

/** A key that is changed. */
export interface SweptKey {
  /** dotted, as the file writes it */
  readonly key: string;
  /** where its value stands in a study file */
  readonly path: readonly (string | number)[];
  /** kind of quantity; null where any of its values is a word */
  readonly kind: Kind | null;
  /** its values */
  readonly axis: Axis;
}

/** How values are put together: all with all, one after the other, or by chance. */
export type SweepForm = "grid" | "zip" | "sample";

/** A sweep file, checked. */
export interface SweepPlan {
  /** how values are put together */
  readonly form: SweepForm;
  /** count of rows */
  readonly rows: number;
  /** how samples are spread */
  readonly points: "sobol" | "latin";
  /** whole number; the same seed gives the same samples */
  readonly seed: number;
  /** chapters whose figures are wanted */
  readonly chapters: readonly ChapterName[];
  /** what is changed */
  readonly keys: readonly SweptKey[];
}

/** The values of one row, in the order of the keys. */
export type RowValues = readonly SweptValue[];

/** Part of a sweep that one process does: rows index, index + count, index + 2 count, … */
export interface Shard {
  /** from 1 */
  readonly index: number;
  /** count of parts */
  readonly count: number;
  /** what said so, for messages */
  readonly from: string;
}

/** A column of figures. */
export interface FigureColumn {
  /** key of the figure */
  readonly key: string;
  /** unit of its values */
  readonly unit: string;
  /** name shown */
  readonly label: string;
  /** value of the study as it is, in that unit; null where there is none */
  readonly unchanged: number | string | null;
}
