/** The joint fit in pieces: replays, what instruments and stages say besides, and the fit along them. @module */
import { each, type Steps } from "../../basics/mod.ts";
import { leakageRate } from "../../house/skin/leakage.ts";
import type { HouseInputs } from "../../house/types.ts";
import type { StoreRequest } from "../../store/mod.ts";
import type { WeatherSpan } from "../ahead/weather_span.ts";
import type { Estimate } from "../calibration/estimate.ts";
import type { JointParameter, JointStage } from "../calibration/joint.ts";
import type { DayData } from "./joint_days.ts";
import {
  followedDays,
  jointReplay,
  type LastingShare,
  type MovedParameter,
  type StageWord,
  withCurveDoubt,
  withLastingDoubt,
} from "./joint_replay.ts";
import type { LoggedHouse } from "./logged_house.ts";
import type { ModelParameter } from "./parameters.ts";
import { AS_PLANNED, type Replay, type ReplayQuestion, replayTask } from "./replay.ts";
import type { ModelFactors, StageRow } from "./types.ts";

/** What the joint fit is done with. */
export interface JointQuestion {
  /** the log */
  readonly house: LoggedHouse;
  /** house section of the study */
  readonly inputs: HouseInputs;
  /** the study's store on few slices */
  readonly plan: StoreRequest;
  /** the same whole */
  readonly whole: StoreRequest;
  /** what the stages before found */
  readonly stages: readonly StageRow[];
  /** what may be moved */
  readonly parameters: readonly ModelParameter[];
  /** the logged weather */
  readonly span: WeatherSpan;
  /** days that the model is held to */
  readonly data: DayData;
}

/** The joint fit, and plan and fitted model on the logged weather. */
export interface JointAnswer {
  /** the fit */
  readonly joint: JointStage;
  /** ratios to the plan at its result */
  readonly factors: ModelFactors;
  /** the plan on the logged weather, in few slices */
  readonly planned: Replay;
  /** the fitted model, the sun as it was fitted, in few slices */
  readonly fitted: Replay;
}

/** Replays with the parameters about their start, the fit along them, and a replay at its result. */
export function* jointSteps(question: JointQuestion): Steps<JointAnswer> {
  const { house, inputs, plan, whole, stages, parameters, span, data } = question;
  const ask = (factors: ModelFactors, weather = span): ReplayQuestion => ({
    plan,
    factors,
    weather,
  });
  const begin = factorsAt(parameters, ({ start }) => start);
  const sun = sunParameter(house);
  const [planned, coarse, exact, sunny, dull, ...moved] = yield* each(replayTask, [
    ask(AS_PLANNED),
    ask(begin),
    { ...ask(begin), plan: whole },
    ask(begin, sunBy(span, SUN_MOVE)),
    ask(begin, sunBy(span, 1 / SUN_MOVE)),
    ...parameters.flatMap((one) =>
      [one.by, 1 / one.by].map((by) =>
        ask(factorsAt(parameters, (other) => other === one ? one.start * by : other.start))
      )
    ),
  ]);
  const days = followedDays(data, { coarse: coarse!, whole: exact! }, [
    ...parameters.map((one, k): MovedParameter => ({
      ...one,
      higher: moved[2 * k]!,
      lower: moved[2 * k + 1]!,
    })),
    { ...sun, by: SUN_MOVE, higher: sunny!, lower: dull! },
  ]);
  const words = [
    ...wordsOf(parameters, stages),
    { parameter: parameters.length, value: sun.start, share: sunDoubt(house) },
  ];
  const fit = jointReplay(days, words);
  const valueOf = ({ name, start }: JointParameter) =>
    fit.stage.estimates.find((one) => one.name === name)?.value ?? start;
  const factors = factorsAt(parameters, valueOf);
  const [fitted] = yield* each(replayTask, [ask(factors, sunBy(span, valueOf(sun)))]);
  const joint = withLastingDoubt(
    withCurveDoubt(fit, fitted!, words),
    parameters,
    windDoubt(house, parameters, inputs),
  );
  return { joint, factors, planned: planned!, fitted: fitted! };
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

/** ratio by which the sun is moved to either side: about what its meter may be off by */
const SUN_MOVE = 1.05;
/** doubt of the study's own sun, as a share; common practice, no source */
const NOT_LOGGED = 0.05;
/** a meter of the sun that is off by this ratio is broken; common practice, no source */
const SUN_BELIEVED = 1.5;

/**
 * The sun over that of the weather: what its meter is off by is fitted along, since the fan starts and stops
 * by it, and a sun that reads too low moves the days otherwise than one that reads too high.
 */
function sunParameter({ series: { sun } }: LoggedHouse): JointParameter {
  return {
    name: sun === null ? "sun over the study's" : "sun over what its meter read",
    key: null,
    unit: "",
    start: 1,
    prior: { low: 1 / SUN_BELIEVED, high: SUN_BELIEVED },
  };
}

/** Standard uncertainty of the sun over its size. */
function sunDoubt({ series: { sun }, uncertainty }: LoggedHouse): number {
  // the same hours as those the meter's uncertainty is the mean of
  const up = sun?.filter((one) => one > 0) ?? new Float64Array(0);
  if (up.length === 0) return NOT_LOGGED;
  return uncertainty.sun / (up.reduce((sum, one) => sum + one, 0) / up.length);
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
): LastingShare[] {
  const parameter = parameters.findIndex(({ factor }) => factor === "leakage");
  if (wind === null || inside === null || outside === null || parameter < 0) return [];
  const rates = Array.from(
    wind,
    (speed, hour) => leakageRate(inputs, inside[hour]! - outside[hour]!, speed),
  ).filter(Number.isFinite);
  const mean = rates.reduce((sum, one) => sum + one, 0) / rates.length;
  return [{ parameter, share: inputs.leakageWind * uncertainty.wind / mean }];
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
