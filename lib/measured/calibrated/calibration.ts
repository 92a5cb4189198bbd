/** The calibration of a study from its logs: stages, joint fit, weeks that no fit has seen. @module */
import {
  alone,
  each,
  InputError,
  piece,
  type Steps,
  type Task,
  together,
} from "../../basics/mod.ts";
import type { HouseInputs } from "../../house/types.ts";
import type { StoreRequest } from "../../store/mod.ts";
import type { Estimate } from "../calibration/estimate.ts";
import type { JointParameter } from "../calibration/joint.ts";
import type { LogTexts } from "../fields.ts";
import { leakageRate } from "../../house/skin/leakage.ts";
import type { WeatherSpan } from "../ahead/weather_span.ts";
import { readStudyLog } from "../study_log.ts";
import { fromFullHour } from "../logged_season.ts";
import { NO_LOGS } from "../reasons.ts";
import { chosenEstimates } from "./chosen.ts";
import {
  type DayData,
  dayData,
  jointReplay,
  type MovedParameter,
  type StageWord,
  type WeatherDoubt,
  weighDays,
  withLineDoubt,
} from "./joint_replay.ts";
import { type LoggedHouse, loggedHouse } from "./logged_house.ts";
import { believedOf, type ModelParameter, modelParameters } from "./parameters.ts";
import {
  AS_PLANNED,
  loggedWeather,
  type Replay,
  type ReplayQuestion,
  replayTask,
} from "./replay.ts";
import { heldOutScore, nightResiduals, replayedDays } from "./score.ts";
import { calibrationStages } from "./stages.ts";
import type {
  Calibration,
  CalibrationRequest,
  ModelFactors,
  StageRow,
  StageSetting,
} from "./types.ts";

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

/** share by which a parameter is moved for its slope */
const MOVE = 1.15;
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

/** The factors of the model with one parameter at a value, the others at their start. */
function factorsAt(
  parameters: readonly ModelParameter[],
  value: (parameter: ModelParameter) => number,
): ModelFactors {
  return parameters.reduce<ModelFactors>(
    (factors, one) => ({ ...factors, [one.factor]: value(one) / one.planned }),
    AS_PLANNED,
  );
}

/**
 * The calibration in pieces. Replays are independent of each other, so workers share them.
 *
 * @param request logs and study
 */
export function* calibrationSteps(request: CalibrationRequest): Steps<Calibration> {
  const { texts, setting, plan, house: inputs } = request;
  if (texts === null || setting === null || plan === null || inputs === null) {
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
  const ask = (factors: ModelFactors, span = weather.span): ReplayQuestion => ({
    plan,
    factors,
    weather: span,
  });
  const begin = factorsAt(parameters, ({ start }) => start);
  const sunnier = sunBy(weather.span, 1 + SUN_TIMES * sunDoubt(house));
  const [planned, start, sunny, ...moved] = yield* each(replayTask, [
    ask(AS_PLANNED),
    ask(begin),
    ask(begin, sunnier),
    ...parameters.map((one) =>
      ask(factorsAt(parameters, (other) => other === one ? one.start * MOVE : other.start))
    ),
  ]);
  const days = weighDays(
    data,
    start!,
    parameters.map((one, k): MovedParameter => ({
      ...one,
      movedTo: one.start * MOVE,
      replay: moved[k]!,
    })),
    [
      { replay: sunny!, times: SUN_TIMES },
      ...windDoubt(house, parameters, inputs),
    ],
  );
  const words = wordsOf(parameters, stages);
  const straight = jointReplay(days, words);
  const factors = factorsAt(
    parameters,
    (one) => straight.estimates.find(({ name }) => name === one.name)?.value ?? one.start,
  );
  const [fitted] = yield* each(replayTask, [ask(factors)]);
  const joint = withLineDoubt(straight, fitted!, days, words);
  const { there } = weather;
  const score = (name: string, replay: Replay, count: number) =>
    heldOutScore(name, { house, there, replay, parameters: count });
  return {
    ...without,
    stages: [...stages, { name: JOINT, stage: joint, reason: null }],
    joint,
    chosen: chosenEstimates(stages, joint),
    scores: scored(() => [
      score("the plan on the logged weather", planned!, 0),
      score("fitted, on the logged weather", fitted!, joint.estimates.length),
    ]),
    days: replayedDays(house, there, {
      planned: planned!,
      fitted: fitted!,
      timeZone: setting.timeZone,
    }),
    nightResiduals: nightResiduals(house, there, fitted!),
    factors,
    weatherLogged: there.reduce((sum, one) => sum + one, 0) / Math.max(1, there.length),
  };
}

/** standard uncertainties of the sun by which it is moved for its slope */
const SUN_TIMES = 2;
/** W/m² from which on the sun counts in its typical size, and doubt of the study's own weather */
const [BRIGHT, NOT_LOGGED] = [50, 0.05];

/** Standard uncertainty of the sun over its size. */
function sunDoubt({ series: { sun }, uncertainty }: LoggedHouse): number {
  const bright = sun?.filter((one) => one > BRIGHT) ?? new Float64Array(0);
  if (bright.length === 0) return NOT_LOGGED;
  return uncertainty.sun / (bright.reduce((sum, one) => sum + one, 0) / bright.length);
}

const sunBy = (span: WeatherSpan, ratio: number): WeatherSpan => ({
  ...span,
  globalHorizontal: span.globalHorizontal.map((one) => one * ratio),
});

/** What the anemometer is off by acts like a leakage that is off by its wind's part. */
function windDoubt(
  { series: { inside, outside, wind }, uncertainty }: LoggedHouse,
  parameters: readonly ModelParameter[],
  inputs: HouseInputs,
): WeatherDoubt[] {
  const parameter = parameters.findIndex(({ factor }) => factor === "leakage");
  if (wind === null || inside === null || outside === null || parameter < 0) return [];
  const rates = Array.from(
    wind,
    (speed, hour) => leakageRate(inputs, inside[hour]! - outside[hour]!, speed),
  ).filter(Number.isFinite);
  const mean = rates.reduce((sum, one) => sum + one, 0) / rates.length;
  return [{ parameter, share: inputs.leakageWind * uncertainty.wind / mean }];
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

/** What the stages on readings of their own say of the model's parameters. */
function wordsOf(parameters: readonly JointParameter[], stages: readonly StageRow[]): StageWord[] {
  const own: readonly Estimate[] = stages
    .filter(({ name }) => /tracer|soil/.test(name))
    .flatMap(({ stage }) => stage?.estimates ?? []);
  return parameters.flatMap(({ key, prior }, parameter) => {
    const found = own.find((one) => one.key !== null && one.key === key);
    if (found === undefined || !(found.low > 0) || !(found.high < Infinity)) return [];
    if (found.high / found.low > prior.high / prior.low) return [];
    return [{ parameter, value: found.value, share: Math.log(found.high / found.low) / 3.92 }];
  });
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
