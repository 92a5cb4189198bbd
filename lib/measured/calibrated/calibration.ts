/** The calibration of a study from its logs: stages, joint fit, weeks that no fit has seen. @module */
import { alone, InputError, piece, type Steps, type Task, together } from "../../basics/mod.ts";
import type { HouseInputs } from "../../house/types.ts";
import type { StoreRequest } from "../../store/mod.ts";
import type { LogTexts } from "../fields.ts";
import { readStudyLog } from "../study_log.ts";
import { fromFullHour } from "../logged_season.ts";
import { NO_LOGS } from "../reasons.ts";
import { chosenEstimates } from "./chosen.ts";
import { type DayData, dayData } from "./joint_days.ts";
import { jointSteps } from "./joint_steps.ts";
import { type LoggedHouse, loggedHouse } from "./logged_house.ts";
import { believedOf, modelParameters } from "./parameters.ts";
import { AS_PLANNED, loggedWeather, type Replay } from "./replay.ts";
import { heldOutScore, nightResiduals, replayedDays } from "./score.ts";
import { calibrationStages } from "./stages.ts";
import type { Calibration, CalibrationRequest, StageRow, StageSetting } from "./types.ts";

interface StagesAsked {
  readonly texts: LogTexts;
  readonly setting: StageSetting;
  readonly inputs: HouseInputs;
  readonly plan: StoreRequest;
}

/** Reads the logs and does the stages. */
export const stagesTask: Task<StagesAsked, { house: LoggedHouse; stages: StageRow[] }> = {
  name: "measured.stages",
  run: ({ texts, setting, inputs, plan }) => {
    const log = fromFullHour(readStudyLog(texts, setting));
    const house = loggedHouse(log, setting, setting.holdOut);
    return { house, stages: calibrationStages({ house, setting, inputs, plan }) };
  },
};

function nothing(reason: string): Calibration {
  return {
    reason,
    stages: [],
    believed: [],
    joint: null,
    chosen: [],
    heldWords: null,
    scores: [],
    days: [],
    nightResiduals: [],
    factors: AS_PLANNED,
    weatherLogged: 0,
  };
}

/** days of the log from which on the model is held to it */
const FEWEST_DAYS = 28;

/** Why the model of house and store cannot be held to a log; null where it can. */
function notReplayed(house: LoggedHouse, data: DayData | null): string | null {
  if (house.series.outside === null) return "the logs hold no outdoor temperature";
  if (house.heat === null) return "the logs do not tell the heat of the store";
  if (data !== null && data.kinds.every(({ logged }) => logged.length < FEWEST_DAYS)) {
    return `fewer than ${FEWEST_DAYS} days of the log can be set beside the model`;
  }
  return null;
}

/**
 * The calibration in pieces. Replays are independent of each other, so workers share them.
 *
 * @param request logs and study
 */
export function* calibrationSteps(request: CalibrationRequest): Steps<Calibration> {
  const { texts, setting, plan, whole, house: inputs } = request;
  if (
    texts === null || setting === null || plan === null || whole === null || inputs === null
  ) {
    return nothing(NO_LOGS);
  }
  const [{ house, stages }] = yield* together(piece(stagesTask, { texts, setting, inputs, plan }));
  const believed = believedOf({ setting, inputs });
  const without = { ...nothing(""), reason: null, stages, believed, heldWords: house.heldWords };
  const early = notReplayed(house, null);
  const alonely = (reason: string): Calibration => ({
    ...without,
    stages: [...stages, { name: JOINT, stage: null, reason }],
    chosen: chosenEstimates(stages, null),
  });
  if (early !== null) return alonely(early);
  const weather = loggedWeather(house, plan.climate);
  const data = dayData(house, weather.there);
  const late = notReplayed(house, data);
  if (late !== null) return alonely(late);
  const parameters = modelParameters({ setting, inputs, plan, stages });
  const { joint, factors, planned, fitted } = yield* jointSteps({
    house,
    inputs,
    plan,
    whole,
    stages,
    parameters,
    span: weather.span,
    data,
  });
  const { there } = weather;
  const score = (name: string, replay: Replay, count: number) =>
    heldOutScore(name, { house, there, replay, parameters: count });
  return {
    ...without,
    stages: [...stages, { name: JOINT, stage: joint, reason: null }],
    joint,
    chosen: chosenEstimates(stages, joint),
    scores: scored(() => [
      score("the plan on the logged weather", planned, 0),
      score("fitted, on the logged weather", fitted, joint.estimates.length),
    ]),
    days: replayedDays(house, there, {
      planned,
      fitted,
      timeZone: setting.timeZone,
    }),
    nightResiduals: nightResiduals(house, there, fitted),
    factors,
    weatherLogged: there.reduce((sum, one) => sum + one, 0) / Math.max(1, there.length),
  };
}

/** Name of the joint fit among the stages. */
const JOINT = "all together on the model of house and store";

/** No scores where too few hours are there. */
function scored(give: () => Calibration["scores"]): Calibration["scores"] {
  try {
    return give();
  } catch (error) {
    if (error instanceof InputError) return [];
    throw error;
  }
}

/**
 * Calibrates a study from its logs.
 *
 * @param request logs and study
 * @throws {InputError} where a log cannot be read
 */
export function calibrate(request: CalibrationRequest): Calibration {
  return alone(calibrationSteps(request));
}
