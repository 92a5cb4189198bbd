/** A run of the same study with some keys changed: what a reader tries out beside the plan. @module */
import { openStudyText } from "../file/open.ts";
import { workPool } from "../run/pool.ts";
import { startRun, type StudyRun } from "../run/run.ts";
import type { SweptValue } from "../sweep/types.ts";
import { variantText } from "../sweep/variant.ts";
import type { Study } from "../types.ts";

/** Values by dotted key, as a study file writes them: `{ "tubes.length": "24 m", "tubes.count": 20 }`. */
export type Changes = Readonly<Record<string, SweptValue>>;

/**
 * Starts a run of a study with other values for some keys; the study file itself stays as it is.
 *
 * @param study as it was opened
 * @param changes values by dotted key
 * @throws {InputErrors} where a key does not exist or a value cannot be
 */
export async function trialRun(study: Study, changes: Changes): Promise<StudyRun> {
  const keys = Object.keys(changes).map((key) => ({
    key,
    path: key.split(".").map((part) => /^\d+$/.test(part) ? Number(part) : part),
  }));
  const text = variantText(study.text, keys, Object.values(changes));
  const given = (by: string) => study.files.find((file) => file.by === by)?.path;
  const [climate, columns] = [given("--climate"), given("--columns")];
  const changed = await openStudyText(text, study.path, {
    ...(climate === undefined ? {} : { climate }),
    ...(columns === undefined ? {} : { columns }),
  });
  return startRun(changed, { pool: workPool() });
}
