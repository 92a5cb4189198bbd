/** The joint fit: parameters of the store's model held to the days of a log together. @module */
import { Matrix, QrDecomposition } from "ml-matrix";
import type { Estimate } from "../calibration/estimate.ts";
import { jointFit, type JointParameter, type JointStage } from "../calibration/joint.ts";
import { type DayData, type DayMisses, dayMisses } from "./joint_days.ts";
import { type Whiten, whitener } from "./joint_weights.ts";
import type { Replay } from "./replay.ts";

/** A parameter that was moved to either side in two replays, the others at their start. */
export interface MovedParameter extends JointParameter {
  /** ratio of the higher value to its start, and of its start to the lower; above 1 */
  readonly by: number;
  /** the replay with it higher */
  readonly higher: Replay;
  /** the replay with it lower */
  readonly lower: Replay;
}

/** What else than the days says something of a parameter, such as tracer decays of the leakage. */
export interface StageWord {
  /** place of the parameter, from 0 */
  readonly parameter: number;
  /** value, in the parameter's unit */
  readonly value: number;
  /** standard uncertainty of it over the value, 0 to 1 */
  readonly share: number;
}

/**
 * An instrument's lasting error that moves the days like a parameter moved by a share of its value: no day
 * can tell the two apart.
 */
export interface LastingShare {
  /** place of the parameter, from 0 */
  readonly parameter: number;
  /** standard uncertainty as that share, 0 to 1 */
  readonly share: number;
}

/** How the days follow the logarithm of a parameter over its start. */
interface Curve<Values> {
  /** slope of each residual at the start */
  readonly slope: Values;
  /** what the square of the logarithm adds to each */
  readonly bend: Values;
}

/** The days of a log, and how the parameters move what a replay says of them. */
export interface FollowedDays {
  /** of the log */
  readonly data: DayData;
  /** what was moved */
  readonly parameters: readonly JointParameter[];
  /** residuals of the whole store with all parameters at their start */
  readonly start: DayMisses;
  /** residuals of any replay of the store in few slices, as those of the whole store would be */
  readonly asWhole: (replay: Replay) => DayMisses;
  /** by parameter */
  readonly curves: readonly Curve<DayMisses>[];
}

/** A joint fit and the weights it ended with. */
export interface FittedDays {
  /** result */
  readonly stage: JointStage;
  /** residuals of a replay in few slices, each in units of its own uncertainty, lasting errors taken out */
  readonly residuals: (replay: Replay) => number[];
  /** what was moved */
  readonly parameters: readonly JointParameter[];
  /** by parameter, of those residuals */
  readonly curves: readonly Curve<readonly number[]>[];
}

/** Replays with all parameters at their start. */
export interface StartReplays {
  /** in few slices, as those with a parameter moved */
  readonly coarse: Replay;
  /** of the whole store */
  readonly whole: Replay;
}

/**
 * Takes the model as a parabola in the logarithm of each parameter, through the replays at its start and to
 * either side. What few slices are off by is taken as the same wherever the parameters stand.
 *
 * @param data days of the log
 * @param start replays with all parameters at their start
 * @param moved parameters with their replays in few slices
 */
export function followedDays(
  data: DayData,
  { coarse, whole }: StartReplays,
  moved: readonly MovedParameter[],
): FollowedDays {
  const here = dayMisses(data, coarse);
  const start = dayMisses(data, whole);
  const curves = moved.map(({ by, higher, lower }) => {
    const [up, down] = [dayMisses(data, higher), dayMisses(data, lower)];
    const step = Math.log(by);
    const each = (value: (up: number, down: number, here: number) => number) =>
      here.map((kind, k) => kind.map((one, day) => value(up[k]![day]!, down[k]![day]!, one)));
    return {
      slope: each((above, below) => (above - below) / (2 * step)),
      bend: each((above, below, middle) => (above + below - 2 * middle) / (2 * step ** 2)),
    };
  });
  const asWhole = (replay: Replay) =>
    dayMisses(data, replay).map((kind, k) =>
      kind.map((one, day) => one + start[k]![day]! - here[k]![day]!)
    );
  return { data, parameters: moved, start, asWhole, curves };
}

/** Rounds in which the days are weighed anew by how they scatter about the fit. */
const ROUNDS = 2;

/**
 * Fits parameters together to the days of a log. Residuals go by their scatter about the fit and by the
 * lasting errors of the sensors ({@link whitener}). The caller checks with a replay at the result.
 *
 * @param days with what moves them
 * @param words what else says something of the parameters
 */
export function jointReplay(
  days: FollowedDays,
  words: readonly StageWord[] = [],
): FittedDays {
  const { data, parameters, curves } = days;
  let fitted = fitWeighed(days, whitener(data, days.start), words);
  for (let round = 0; round < ROUNDS; round++) {
    const steps = parameters.map(({ name, start }) =>
      Math.log((fitted.stage.estimates.find((one) => one.name === name)?.value ?? start) / start)
    );
    const about = days.start.map((kind, k) =>
      followed(
        kind,
        curves.map(({ slope, bend }) => ({ slope: slope[k]!, bend: bend[k]! })),
        steps,
      )
    );
    fitted = fitWeighed(days, whitener(data, about), words);
  }
  return fitted;
}

/** Residuals along the curves, so many steps of each parameter from their start. */
function followed(
  start: readonly number[],
  curves: readonly Curve<readonly number[]>[],
  steps: readonly number[],
): number[] {
  return start.map((one, i) =>
    curves.reduce(
      (sum, { slope, bend }, j) => sum + (slope[i]! + bend[i]! * steps[j]!) * steps[j]!,
      one,
    )
  );
}

function fitWeighed(
  { parameters, start, asWhole, curves }: FollowedDays,
  whiten: Whiten,
  words: readonly StageWord[],
): FittedDays {
  const here = whiten(start);
  const weighed = curves.map(({ slope, bend }) => ({ slope: whiten(slope), bend: whiten(bend) }));
  const stage = jointFit(
    parameters,
    (values) => {
      const steps = values.map((value, j) => Math.log(value / parameters[j]!.start));
      return [
        ...followed(here, weighed, steps),
        ...words.map((word) => wordMiss(word, values[word.parameter]!)),
      ];
    },
    undefined,
    { known: true },
  );
  return {
    stage,
    parameters,
    residuals: (replay) => whiten(asWhole(replay)),
    curves: weighed,
  };
}

const wordMiss = ({ value, share }: StageWord, found: number) => Math.log(found / value) / share;

/** Half width of a 95 % interval over the standard uncertainty. */
const COVER = 1.96;
/** Standard uncertainty of what lies anywhere within a bound, over the bound: the GUM [gum-2008], 4.3.7. */
const WITHIN = 1 / Math.sqrt(3);

/**
 * Adds to a joint fit what its curves are off by. The residuals of a replay at the result say by how
 * much another round along the same curves would move each value. It is not moved: single days jump where
 * a fan starts an hour earlier, and a second round follows the jumps. The error is taken to lie anywhere
 * within that move.
 *
 * @param fitted the fit
 * @param replay with all parameters at its result
 * @param words what else says something of the parameters
 */
export function withCurveDoubt(
  { stage, parameters, residuals, curves }: FittedDays,
  replay: Replay,
  words: readonly StageWord[] = [],
): JointStage {
  const kept = stage.estimates.map(({ name }) => parameters.findIndex((one) => one.name === name));
  if (kept.length === 0) return stage;
  const told = words.filter(({ parameter }) => kept.includes(parameter));
  const left = [
    ...residuals(replay),
    ...told.map((word) => wordMiss(word, stage.estimates[kept.indexOf(word.parameter)]!.value)),
  ];
  const slopes = new Matrix(left.length, kept.length);
  kept.forEach((j, k) => {
    const { slope, bend } = curves[j]!;
    const step = Math.log(stage.estimates[k]!.value / parameters[j]!.start);
    slope.forEach((one, i) => slopes.set(i, k, one + 2 * bend[i]! * step));
    told.forEach(({ parameter, share }, i) =>
      slopes.set(slope.length + i, k, parameter === j ? 1 / share : 0)
    );
  });
  const doubts = new QrDecomposition(slopes).solve(Matrix.columnVector(left)).to1DArray()
    .map((move) => move * WITHIN);
  return {
    ...stage,
    estimates: stage.estimates.map((one, k) => widenedBy(one, doubts[k]!)),
  };
}

/**
 * Adds to a joint fit what instruments of the weather are off by all through the log.
 *
 * @param stage the fit
 * @param parameters that were moved
 * @param lasting errors of instruments that are not among the sensors of the days
 */
export function withLastingDoubt(
  stage: JointStage,
  parameters: readonly JointParameter[],
  lasting: readonly LastingShare[],
): JointStage {
  return {
    ...stage,
    estimates: stage.estimates.map((one) =>
      lasting.filter(({ parameter }) => parameters[parameter]!.name === one.name)
        .reduce((wide, { share }) => widenedBy(wide, share), one)
    ),
  };
}

/** An estimate with a further standard uncertainty of its logarithm. */
function widenedBy(one: Estimate, share: number): Estimate {
  const half = Math.hypot(Math.log(one.high / one.value), COVER * share);
  return {
    ...one,
    standardUncertainty: Math.hypot(one.standardUncertainty, one.value * share),
    low: one.value * Math.exp(-half),
    high: one.value * Math.exp(half),
  };
}
