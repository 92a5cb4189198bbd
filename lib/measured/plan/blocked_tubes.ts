/** Shut and flooded tubes in the logs of a study. @module */
import { type ResultTable, resultTable } from "../../basics/mod.ts";
import { logsAlone, type LogTexts, type MeasuredInputs } from "../fields.ts";
import { NO_LOGS } from "../reasons.ts";
import { readStudyLog } from "../study_log.ts";
import type { BlockedLimits } from "./blocked.ts";
import { type BlockedCheck, findBlocked } from "./find_blocked.ts";

/** What is looked for where. */
export interface BlockedRequest {
  /** map and logs; null where the study names none */
  readonly texts: LogTexts | null;
  /** hours east of UTC, and s of the step */
  readonly setting: { readonly timeZone: number; readonly step: number };
  /** limits of the study's own field; null without logs */
  readonly limits: BlockedLimits | null;
}

/** Shut tubes in the logs, with the limit they are told by. */
export interface BlockedTubes extends BlockedCheck {
  /** ratio of the resistance to that of the first days from which on a day is told; null without logs */
  readonly limit: number | null;
}

/** Without logs nothing of the plan is taken. */
export function blockedTakes(
  { measured, climate }: {
    readonly measured: MeasuredInputs;
    readonly climate: { readonly place: { readonly timeZone: number } };
  },
  { monitoringPlan }: { readonly monitoringPlan: { readonly blocked: BlockedLimits } },
): BlockedRequest {
  const { texts, step } = measured;
  return {
    texts: texts === null ? null : logsAlone(texts),
    setting: { timeZone: climate.place.timeZone, step },
    limits: texts === null ? null : monitoringPlan.blocked,
  };
}

/**
 * Looks for shut tubes in the logs of a study.
 *
 * @param request logs and limits
 * @throws {InputError} where a log cannot be read
 */
export function blockedTubes({ texts, setting, limits }: BlockedRequest): BlockedTubes {
  if (texts === null || limits === null) {
    return { days: [], findings: [], untested: `Shut tubes: ${NO_LOGS}`, limit: null };
  }
  return { ...findBlocked(readStudyLog(texts, setting), limits), limit: limits.limit };
}

/** Resistance of the field day by day; none where it was not logged. */
export function blockedTables({ days }: BlockedTubes): readonly ResultTable[] {
  if (days.length === 0) return [];
  return [resultTable("measured-blocked-days", days, [
    ["day, UTC", "", (row) => new Date(1000 * row.start).toISOString().slice(0, 10)],
    ["resistance over the first days", "1", (row) => row.resistance],
    ["tubes shut, about", "", (row) => row.shut],
  ])];
}
