/** The measured chapter: the log by itself, and the plan beside it. @module */
import { alone, piece, type Steps, type Task, together } from "../basics/mod.ts";
import { loggedBalance } from "./balance.ts";
import { logsAlone, type LogTexts } from "./fields.ts";
import { NO_LOGS } from "./reasons.ts";
import { readStudyLog } from "./study_log.ts";
import { loggedSeason, type SeasonOrReason, type SeasonSetting } from "./logged_season.ts";
import { measuredNotices } from "./notices.ts";
import { planBesideLog } from "./plan_beside_log.ts";
import type { MeasuredRequest } from "./request.ts";
import type { MeasuredResult } from "./types.ts";

/** What the reading of a log hangs on. */
export interface SeasonQuestion {
  /** the files */
  readonly texts: LogTexts;
  /** place and fan */
  readonly setting: SeasonSetting;
}

/** Reads the logs and sums them up: hangs on nothing of the plan, so it is kept. */
export const seasonTask: Task<SeasonQuestion, SeasonOrReason> = {
  name: "measured.season",
  kept: true,
  run: ({ texts, setting }) => loggedSeason(readStudyLog(texts, setting), setting),
};

function nothing(reason: string, request: MeasuredRequest): MeasuredResult {
  const result = { reason, season: null, plan: null, balance: null };
  return { ...result, notices: measuredNotices(result, request) };
}

/** The chapter in pieces. */
export function* measuredSteps(request: MeasuredRequest): Steps<MeasuredResult> {
  const { inputs: { texts }, setting, plan, body } = request;
  if (texts === null || plan === null || body === null) return nothing(NO_LOGS, request);
  const [season] = yield* together(piece(seasonTask, { texts: logsAlone(texts), setting }));
  if ("reason" in season) return nothing(season.reason, request);
  const result = {
    reason: null,
    season,
    plan: planBesideLog(season, plan),
    balance: loggedBalance(season, body),
  };
  return { ...result, notices: measuredNotices(result, request) };
}

/**
 * What the logs of a built store say, and how far the plan is from them.
 *
 * @param request texts of the logs, place, and the plan's own year
 * @throws {InputError} where a log cannot be read
 */
export function measuredChapter(request: MeasuredRequest): MeasuredResult {
  return alone(measuredSteps(request));
}
