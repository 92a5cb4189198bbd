/** What differs between two finished runs: inputs, figures, notices, where the numbers come from. @module */
import type { Notice } from "../../basics/mod.ts";
import type { ResultsFile } from "../results/write_results.ts";
import type { Figure, Figures } from "../types.ts";

/** An input or a fact of the run that is not the same. */
export interface ChangedValue {
  /** path, such as "tubes.length" */
  readonly key: string;
  /** in the first run; undefined where it has none */
  readonly first: unknown;
  /** in the second */
  readonly second: unknown;
}

/** A figure that is not the same. */
export interface ChangedFigure {
  /** such as "store.savedHeat" */
  readonly key: string;
  /** in the first run; undefined where it has none */
  readonly first: Figure | undefined;
  /** in the second */
  readonly second: Figure | undefined;
  /** second less first, in the unit of the figure; null where one of them is no number */
  readonly change: number | null;
  /** the change over the size of the first; null where that is 0, degC or no number */
  readonly share: number | null;
  /**
   * true where the change is more than the ranges of both explain, false where not, null where neither
   * has a range
   */
  readonly beyondDoubt: boolean | null;
}

/** Two runs side by side. */
export interface Differences {
  /** inputs in the order of the study file, SI */
  readonly inputs: readonly ChangedValue[];
  /** in the order of results.json */
  readonly figures: readonly ChangedFigure[];
  /** figures that are the same in both */
  readonly same: number;
  /** notices of the second run that the first has not */
  readonly gained: readonly Notice[];
  /** notices of the first run that the second has not */
  readonly lost: readonly Notice[];
  /** library, version of Deno and hashes; not the moment of the run */
  readonly provenance: readonly ChangedValue[];
}

/** What the entries of a list are called by, and where a line stands in a file, which matters to no result. */
const NAMES = ["id", "key"] as const;
const LINE = "line";

/** The entries of a list by name; null where they have none. */
function named(list: readonly unknown[]): Record<string, unknown> | null {
  const entries = list.map((entry) => {
    if (typeof entry !== "object" || entry === null) return null;
    const name = NAMES.find((key) => key in entry);
    if (name === undefined) return null;
    const { [name]: id, [LINE]: _, ...rest } = entry as Record<string, unknown>;
    return [String(id), rest] as const;
  });
  const found = entries.filter((entry) => entry !== null);
  return list.length > 0 && found.length === list.length ? Object.fromEntries(found) : null;
}

/** Values by path; a list whose entries have no names is one value. */
function flat(value: unknown, path = ""): Map<string, unknown> {
  const parts = Array.isArray(value) ? named(value) : value;
  if (typeof parts !== "object" || parts === null) return new Map([[path, value]]);
  return new Map(
    Object.entries(parts).flatMap(([key, part]) => [
      ...flat(part, path === "" ? key : `${path}.${key}`),
    ]),
  );
}

function changedValues(first: unknown, second: unknown): ChangedValue[] {
  const [a, b] = [flat(first), flat(second)];
  return [...new Set([...a.keys(), ...b.keys()])]
    .map((key) => ({ key, first: a.get(key), second: b.get(key) }))
    .filter(({ first, second }) => JSON.stringify(first) !== JSON.stringify(second));
}

/** Half of a range on the side towards another value; 0 where there is none. */
function doubtTowards(figure: Figure, other: number): number {
  const { value, low, high } = figure;
  if (typeof value !== "number" || low === undefined || high === undefined) return 0;
  return Math.max(0, other > value ? high - value : value - low);
}

/** Whether a change is more than both ranges explain, taken as independent of each other. */
function beyondDoubt(first: Figure, second: Figure, change: number): boolean | null {
  if (first.low === undefined && second.low === undefined) return null;
  const doubt = Math.hypot(
    doubtTowards(first, second.value as number),
    doubtTowards(second, first.value as number),
  );
  return Math.abs(change) > doubt;
}

function changedFigure(
  key: string,
  first: Figure | undefined,
  second: Figure | undefined,
): ChangedFigure {
  const none = { key, first, second, change: null, share: null, beyondDoubt: null };
  const [a, b] = [first?.value, second?.value];
  if (typeof a !== "number" || typeof b !== "number" || first!.unit !== second!.unit) return none;
  const change = b - a;
  return {
    ...none,
    change,
    // the nought of a temperature in degC is a convention: no share can be taken of it
    share: a === 0 || first!.unit === "degC" ? null : change / Math.abs(a),
    beyondDoubt: beyondDoubt(first!, second!, change),
  };
}

function missingFrom(others: readonly Notice[]): (notice: Notice) => boolean {
  const known = new Set(others.map(({ chapter, text }) => `${chapter} ${text}`));
  return ({ chapter, text }) => !known.has(`${chapter} ${text}`);
}

/** Where the numbers come from, without the moment of the run, its words, and files that have a hash already. */
function madeWith({ provenance }: ResultsFile): unknown {
  const { time: _, command: __, files: ___, ...rest } = provenance;
  return rest;
}

/**
 * Figures of two runs that differ, those of the first in front, and the count of those that do not.
 *
 * @param first figures compared with
 * @param second figures compared
 */
export function compareFigures(
  first: Figures,
  second: Figures,
): Pick<Differences, "figures" | "same"> {
  const keys = [...new Set([...Object.keys(first), ...Object.keys(second)])];
  const figures = keys
    .filter((key) => first[key]?.value !== second[key]?.value)
    .map((key) => changedFigure(key, first[key], second[key]));
  return { figures, same: keys.length - figures.length };
}

/**
 * Sets two runs side by side. Of a run and itself nothing differs; with the runs the other way round
 * every change has the other sign.
 *
 * @param first run compared with
 * @param second run compared
 */
export function compareResults(first: ResultsFile, second: ResultsFile): Differences {
  const [before, after] = [first, second].map(madeWith);
  // what is taken by default stands among the inputs
  const { defaults: _, ...given } = first.inputs;
  const { defaults: __, ...givenThen } = second.inputs;
  return {
    inputs: changedValues(given, givenThen),
    ...compareFigures(first.figures, second.figures),
    gained: second.notices.filter(missingFrom(first.notices)),
    lost: first.notices.filter(missingFrom(second.notices)),
    provenance: changedValues(before, after),
  };
}
