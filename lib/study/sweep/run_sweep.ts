/** Computes the rows of a sweep, several side by side. @module */
import {
  describeLocation,
  type Figures,
  type FileLocation,
  InputErrors,
} from "../../basics/mod.ts";
import { openStudyText } from "../file/open.ts";
import type { ResultCache } from "../run/cache.ts";
import type { WorkPool } from "../run/pool.ts";
import { startRun } from "../run/run.ts";
import { headerPrices } from "../../worth/mod.ts";
import type { Study } from "../types.ts";
import { rowValues } from "./rows.ts";
import type { FinishedRow } from "./table.ts";
import type { SweepPlan } from "./types.ts";
import { variantText } from "./variant.ts";

/** What rows are computed from and with. */
export interface SweepRun {
  /** checked sweep file */
  readonly plan: SweepPlan;
  /** text of the study file */
  readonly text: string;
  /** where the study file lies */
  readonly path: string;
  /** workers; everything is done here unless given */
  readonly pool?: WorkPool | undefined;
  /** where pieces that rows have in common are kept */
  readonly pieces: ResultCache;
  /** ends the sweep after the rows in hand */
  readonly signal?: AbortSignal | undefined;
}

/** A study whose price list was made for headers of another diameter, m: prices for its own. */
function pricedFor(study: Study, listed: number): Study {
  const { worth, headers: { diameter } } = study;
  if (worth.prices === null || diameter === listed) return study;
  return { ...study, worth: { ...worth, prices: headerPrices(worth.prices, diameter / listed) } };
}

/**
 * Figures of a study text by the chapters of the sweep; results of single rows are not kept.
 *
 * @param sweep what rows are computed from
 * @param text of the study with the values of a row
 * @param listed inside diameter of the supply header that the price list is for, m; that of the text
 * unless given
 * @throws {InputErrors} where the study is faulty
 */
export async function sweptFigures(
  { plan, path, pool, pieces }: SweepRun,
  text: string,
  listed?: number,
): Promise<Figures> {
  const opened = await openStudyText(text, path);
  const study = listed === undefined ? opened : pricedFor(opened, listed);
  const run = startRun(study, { cacheFolder: null, pieces, pool });
  return await run.only(plan.chapters).figures();
}

/**
 * Computes rows and gives each as soon as it is finished, in any order. A row that cannot be computed
 * says why and stops no other.
 *
 * @param sweep what rows are computed from
 * @param rows their numbers
 * @param finished takes each row
 */
export async function runRows(
  sweep: SweepRun,
  rows: readonly number[],
  finished: (row: FinishedRow) => void,
): Promise<void> {
  const valuesOf = rowValues(sweep.plan);
  const { headers } = await openStudyText(sweep.text, sweep.path);
  const open = rows[Symbol.iterator]();
  const lane = async () => {
    for (const row of open) {
      if (sweep.signal?.aborted) return;
      const values = valuesOf(row);
      const result = await attempt(() =>
        sweptFigures(sweep, variantText(sweep.text, sweep.plan.keys, values), headers.diameter)
      );
      if (sweep.signal?.aborted) return; // a row that an ended worker broke is no faulty row
      finished({ row, values, ...result });
    }
  };
  // one row more than workers, so that none waits while a row is opened
  await Promise.all(Array.from({ length: (sweep.pool?.size ?? 0) + 1 }, lane));
}

async function attempt(
  compute: () => Promise<Figures>,
): Promise<Pick<FinishedRow, "figures" | "fault">> {
  try {
    return { figures: await compute(), fault: "" };
  } catch (error) {
    return { figures: null, fault: reasonOf(error) };
  }
}

/** Without places in the file: the text of a row has other lines than the user's. */
function reasonOf(error: unknown): string {
  if (error instanceof InputErrors) return error.faults.map(reasonOf).join("; ");
  if (!(error instanceof Error)) return String(error);
  const { location } = error as { readonly location?: FileLocation };
  const place = location === undefined ? "" : `${describeLocation(location)}: `;
  return error.message.slice(error.message.startsWith(place) ? place.length : 0);
}
