/** What drives a figure: each number of the study a little lower and a little higher, one at a time. @module */
import {
  type AnyComputation,
  type ChapterName,
  type FigureRow,
  isUserFault,
  samePlain,
} from "../../basics/mod.ts";
import { type Kind, parseQuantity } from "../../units/mod.ts";
import { CHAPTERS } from "../chapters.ts";
import { type FieldRow, FIELDS, valueAt } from "../file/fields.ts";
import type { StudyRun } from "../run/run.ts";
import type { Figure, Study } from "../types.ts";

/** Chapters that are computed in an instant, with the sections whose numbers are tried. */
const TRIED = {
  tubes: ["tubes"],
  headers: ["tubes", "headers"],
  fan: ["tubes", "headers", "fan"],
} as const;

/** A chapter whose figures can be driven. */
export type DrivenChapter = keyof typeof TRIED;

/** A number of the study on one side of its plan, and the figure there. */
export interface DrivenEnd {
  /** value of the key, SI */
  readonly input: number;
  /** value of the figure, in its unit */
  readonly figure: number;
}

/** A number of the study that moves the figure. */
export interface Driver {
  /** dotted, as the study file writes it */
  readonly key: string;
  /** its kind of quantity */
  readonly kind: Kind;
  /** value in the plan, SI */
  readonly planned: number;
  /** a step lower and a step higher; null where the study does not allow it */
  readonly lower: DrivenEnd | null;
  readonly higher: DrivenEnd | null;
  /** the larger move of the two, in the unit of the figure, 0 or more */
  readonly reach: number;
}

/** What drives one figure. */
export interface FigureDrivers {
  /** key in results.json */
  readonly key: string;
  /** the figure as planned; its value is a number */
  readonly figure: Figure & { readonly value: number };
  /** what moves it, the strongest first */
  readonly drivers: readonly Driver[];
  /** keys that were tried and do not move it */
  readonly still: readonly string[];
}

/** Share by which a number is moved. */
export const DRIVER_STEP = 0.1;
/** Counts go by one. */
const COUNTS: ReadonlySet<string> = new Set([
  "tubes.count",
  "tubes.layers",
  "headers.groups",
  "fan.count",
]);
/** Share of the figure below which it counts as still. */
const STILL = 1e-6;

const chapterOf = (name: string) =>
  CHAPTERS.find((one) => one.name === name) as unknown as AnyComputation & {
    readonly figures: (result: unknown) => readonly FigureRow[];
  };

/** What a chapter took, and what came of it. */
interface Computed {
  readonly taken: unknown;
  readonly result: unknown;
}

/**
 * A chapter's result, those before it first, each once.
 *
 * @param name of the chapter
 * @param study whose inputs are taken
 * @param found results so far, by chapter
 * @param resultOf gives a result from what the chapter takes
 */
async function computed(
  name: ChapterName,
  study: Study,
  found: Map<string, Computed>,
  resultOf: (name: ChapterName, taken: unknown) => unknown,
): Promise<unknown> {
  const there = found.get(name);
  if (there !== undefined) return there.result;
  const { after, takes } = chapterOf(name);
  const earlier: Record<string, unknown> = {};
  for (const other of after) {
    earlier[other] = await computed(other as ChapterName, study, found, resultOf);
  }
  const taken: unknown = takes(study, earlier);
  const result = await resultOf(name, taken);
  found.set(name, { taken, result });
  return result;
}

function numberAt(study: Study, key: string): number | null {
  const value = valueAt(study, key);
  return typeof value === "number" && Number.isFinite(value) && value !== 0 ? value : null;
}

function withNumber(study: Study, key: string, value: number): Study {
  const [section, ...parts] = key.split(".") as [keyof Study, ...string[]];
  const put = (old: unknown, [part, ...rest]: readonly string[]): unknown => ({
    ...old as Record<string, unknown>,
    [part!]: rest.length === 0 ? value : put((old as Record<string, unknown>)[part!], rest),
  });
  return { ...study, [section]: put(study[section], parts) };
}

/** A step to one side, within what the study file allows; null where there is no room. */
function stepped(row: FieldRow, value: number, sign: 1 | -1): number | null {
  const wanted = COUNTS.has(row.key) ? value + sign : value * (1 + sign * DRIVER_STEP);
  const limit = sign > 0 ? row.most : row.least;
  const bound = limit === "" ? sign * Infinity : parseQuantity(limit, row.kind as Kind);
  return sign * wanted > sign * bound ? null : wanted;
}

/**
 * What drives a figure of the tubes, the headers or the fan: every number of those sections is moved by a
 * tenth to either side, counts by one, all else held, and the chapters are computed again. What the
 * study leaves open and a chapter has filled stays as it was filled.
 *
 * @param run of the study
 * @param key of a figure with a number, such as "fan.airFlow"
 * @throws {RangeError} for a key that is no figure with a number of these chapters
 */
export async function figureDrivers(run: StudyRun, key: string): Promise<FigureDrivers> {
  const [chapter] = key.split(".") as [DrivenChapter];
  if (!Object.hasOwn(TRIED, chapter)) {
    throw new RangeError(
      `Cannot say what drives "${key}": expected a figure of ${Object.keys(TRIED).join(", ")}`,
    );
  }
  const plan = new Map<string, Computed>();
  const planned = await computed(chapter, run.study, plan, (name) => run[name]());
  // a chapter that sees nothing of the change keeps its result
  const tried = (study: Study) =>
    computed(chapter, study, new Map(), (name, taken) => {
      const before = plan.get(name)!;
      return samePlain(before.taken, taken) ? before.result : chapterOf(name).compute(taken);
    });
  const figureOf = (result: unknown) =>
    chapterOf(chapter).figures(result).find(([name]) => name === key)?.[1];
  const figure = figureOf(planned);
  if (typeof figure?.value !== "number") {
    throw new RangeError(
      `Cannot say what drives "${key}": this study has ${
        figure === undefined ? "no figure of that name" : "no number for it"
      }`,
    );
  }
  const now = figure.value;
  const endAt = async (row: FieldRow, input: number | null): Promise<DrivenEnd | null> => {
    if (input === null) return null;
    try {
      const study = withNumber(run.study, row.key, input);
      const value = figureOf(await tried(study))?.value;
      return typeof value === "number" ? { input, figure: value } : null;
    } catch (error) {
      if (isUserFault(error)) return null;
      throw error;
    }
  };
  const sections: readonly string[] = TRIED[chapter];
  const drivers: Driver[] = [];
  for (const row of FIELDS.values()) {
    if (row.kind === "text" || !sections.includes(row.key.split(".")[0]!)) continue;
    const planned = numberAt(run.study, row.key);
    if (planned === null) continue;
    const lower = await endAt(row, stepped(row, planned, -1));
    const higher = await endAt(row, stepped(row, planned, 1));
    const reach = Math.max(
      ...[lower, higher].map((end) => Math.abs((end?.figure ?? now) - now)),
    );
    drivers.push({ key: row.key, kind: row.kind, planned, lower, higher, reach });
  }
  const moves = ({ reach }: Driver) => reach > STILL * Math.max(Math.abs(now), STILL);
  return {
    key,
    figure: { ...figure, value: now },
    drivers: drivers.filter(moves).sort((a, b) => b.reach - a.reach),
    still: drivers.filter((one) => !moves(one)).map((one) => one.key),
  };
}
