/**
 * The joint fit: parameters of the store's model held to the days of a log together; long because the
 * weighing of the days serves the fit and the doubt of its lines alike.
 *
 * @module
 */
import { CholeskyDecomposition, Matrix, QrDecomposition } from "ml-matrix";
import { HOUR, kilowattHours } from "../../basics/mod.ts";
import { serialOf } from "../calibration/estimate.ts";
import { jointFit, type JointParameter, type JointStage } from "../calibration/joint.ts";
import { PROBES_STAND_FOR } from "../balance.ts";
import { HEAT_READINGS } from "../flows/readings.ts";
import type { LoggedHouse } from "./logged_house.ts";
import type { Replay } from "./replay.ts";

/** Means and sums of one kind by day, as logged, with how they hang on a replay. */
interface DayKind {
  /** of the days that count, logged */
  readonly logged: readonly number[];
  /** the same hours of a replay */
  readonly of: (replay: Replay) => number[];
  /** what each day moves by for one standard uncertainty of each lasting error of the sensors */
  readonly lasting: readonly (readonly number[])[];
}

const DAY_HOURS = 24;
/** least hours of a day that must be there */
const LEAST_HOURS = 18;

/** Hours of each day that count, at least 18 of it, for a series that is there and may be seen. */
function daysOf(
  house: LoggedHouse,
  there: Uint8Array,
  logged: Float64Array,
): number[][] {
  const days: number[][] = [];
  for (let from = 0; from + DAY_HOURS <= house.hours; from += DAY_HOURS) {
    const hours = Array.from({ length: DAY_HOURS }, (_, k) => from + k).filter((hour) =>
      there[hour] === 1 && house.held[hour] === 0 && Number.isFinite(logged[hour]!)
    );
    if (hours.length >= LEAST_HOURS) days.push(hours);
  }
  return days;
}

const mean = (hours: readonly number[], at: (hour: number) => number) =>
  hours.reduce((sum, hour) => sum + at(hour), 0) / hours.length;

function temperatureKind(
  house: LoggedHouse,
  there: Uint8Array,
  name: "inside" | "store",
): DayKind | null {
  const logged = house.series[name];
  if (logged === null) return null;
  const days = daysOf(house, there, logged);
  const own = house.uncertainty[name];
  // what outdoors is off by the house follows; a few probes are not the whole store
  const doubt = Math.hypot(own, name === "inside" ? house.uncertainty.outside : PROBES_STAND_FOR);
  return {
    logged: days.map((hours) => mean(hours, (hour) => logged[hour]!)),
    of: (replay) =>
      days.map((hours) => mean(hours, (hour) => replay[name][house.hourOfYear[hour]!]!)),
    lasting: [days.map(() => doubt)],
  };
}

/** kWh a day in one direction; the errors of the six readings by their own slopes. */
function heatKind(
  house: LoggedHouse,
  there: Uint8Array,
  name: "heatIn" | "heatOut",
): DayKind | null {
  const { heat, covariance } = house;
  if (heat === null) return null;
  const logged = heat.flows[name];
  const days = daysOf(house, there, logged);
  const energy = (hours: readonly number[], at: (hour: number) => number) =>
    kilowattHours(HOUR * DAY_HOURS * mean(hours, at));
  const roots = new CholeskyDecomposition(new Matrix(covariance.map((row) => [...row])));
  const lower = roots.lowerTriangularMatrix;
  return {
    logged: days.map((hours) => energy(hours, (hour) => logged[hour]!)),
    of: (replay) =>
      days.map((hours) => energy(hours, (hour) => replay[name][house.hourOfYear[hour]!]!)),
    lasting: HEAT_READINGS.map((_, error) =>
      days.map((hours) =>
        energy(hours, (hour) =>
          HEAT_READINGS.reduce(
            (sum, _, reading) =>
              sum + lower.get(reading, error) *
                heat.slopes[name][hour * HEAT_READINGS.length + reading]!,
            0,
          ))
      )
    ),
  };
}

/** Days of a log that a model is held to. */
export interface DayData {
  readonly kinds: readonly DayKind[];
}

/**
 * Means of house and store and the heat of each day that a fit may see.
 *
 * @param house log
 * @param there 1 in hours whose weather was logged
 */
export function dayData(house: LoggedHouse, there: Uint8Array): DayData {
  const kinds = [
    temperatureKind(house, there, "inside"),
    temperatureKind(house, there, "store"),
    heatKind(house, there, "heatIn"),
    heatKind(house, there, "heatOut"),
  ];
  return {
    kinds: kinds.filter((kind): kind is DayKind =>
      kind !== null && kind.logged.length > FEWEST_DAYS
    ),
  };
}

/** What an instrument of the weather is off by, all through the log. */
export type WeatherDoubt =
  /** a replay with the reading so many standard uncertainties higher */
  | { readonly replay: Replay; readonly times: number }
  /** it acts like a parameter moved by a share of its value */
  | { readonly parameter: number; readonly share: number };

/** days of a kind from which on it counts */
const FEWEST_DAYS = 14;

/** Computed less logged, kind after kind. */
function misses({ kinds }: DayData, replay: Replay): number[][] {
  return kinds.map((kind) => kind.of(replay).map((value, day) => value - kind.logged[day]!));
}

/** A parameter that was moved in a replay. */
export interface MovedParameter extends JointParameter {
  /** value it was moved to, in its unit; the others stood at their start */
  readonly movedTo: number;
  /** the replay with it */
  readonly replay: Replay;
}

/** What another stage, on readings of its own, says of a parameter. */
export interface StageWord {
  /** place of the parameter, from 0 */
  readonly parameter: number;
  /** value that the stage found, in the parameter's unit */
  readonly value: number;
  /** standard uncertainty of it over the value, 0 to 1 */
  readonly share: number;
}

/** The days of a log weighed, and how the parameters move them. */
export interface WeighedDays {
  /** what was moved */
  readonly parameters: readonly JointParameter[];
  /** residuals of a replay, each in units of its own uncertainty and independent of the others */
  readonly residuals: (replay: Replay) => number[];
  /** the same of the replay with all parameters at their start */
  readonly start: readonly number[];
  /** by parameter: slope of the residuals for its logarithm */
  readonly lines: readonly (readonly number[])[];
}

/**
 * Weighs the days of a log. Residuals go by their scatter and its ties in time, and by the lasting errors of
 * the sensors (generalised least squares): a probe that is off moves all its days together, and does not
 * average out. The model is taken as straight in the logarithms of its parameters about their start, from
 * one replay with each moved.
 *
 * @param data days of the log
 * @param start replay with all parameters at their start
 * @param moved parameters with their replays
 * @param weather what the instruments of the weather are off by
 */
export function weighDays(
  data: DayData,
  start: Replay,
  moved: readonly MovedParameter[],
  weather: readonly WeatherDoubt[] = [],
): WeighedDays {
  const here = misses(data, start);
  const slopes = moved.map(({ replay, start: from, movedTo }) => {
    const there = misses(data, replay);
    const step = Math.log(movedTo / from);
    return here.map((kind, k) => kind.map((one, day) => (there[k]![day]! - one) / step));
  });
  const doubts = weather.map((one) => {
    if ("parameter" in one) {
      return slopes[one.parameter]!.map((kind) => kind.map((slope) => slope * one.share));
    }
    const there = misses(data, one.replay);
    return here.map((kind, k) => kind.map((miss, day) => (there[k]![day]! - miss) / one.times));
  });
  const whiten = whitener(data, here, doubts);
  return {
    parameters: moved,
    residuals: (replay) => whiten(misses(data, replay)),
    start: whiten(here),
    lines: slopes.map(whiten),
  };
}

/**
 * Fits parameters together to the days of a log; the caller checks with a replay at the result.
 *
 * @param days weighed, with what moves them
 * @param words what stages on other readings say, such as tracer decays of the leakage
 */
export function jointReplay(
  { parameters, start, lines }: WeighedDays,
  words: readonly StageWord[] = [],
): JointStage {
  return jointFit(
    parameters,
    (values) => {
      const steps = values.map((value, j) => Math.log(value / parameters[j]!.start));
      return [
        ...start.map((one, i) => lines.reduce((sum, line, j) => sum + line[i]! * steps[j]!, one)),
        ...words.map((word) => wordMiss(word, values[word.parameter]!)),
      ];
    },
    undefined,
    { known: true },
  );
}

const wordMiss = ({ value, share }: StageWord, found: number) => Math.log(found / value) / share;

/** Half width of a 95 % interval over the standard uncertainty. */
const COVER = 1.96;
/** Standard uncertainty of what lies anywhere within a bound, over the bound: the GUM [gum-2008], 4.3.7. */
const WITHIN = 1 / Math.sqrt(3);

/**
 * Adds to a joint fit what its straight lines are off by. The residuals of a replay at the result say by how
 * much another round along the same lines would move each value. It is not moved: single days jump where
 * a fan starts an hour earlier, and a second round follows the jumps. The error is taken to lie anywhere
 * within that move.
 *
 * @param stage the fit
 * @param fitted replay at its result
 * @param days weighed, with what moves them
 * @param words what stages on other readings say
 */
export function withLineDoubt(
  stage: JointStage,
  fitted: Replay,
  { parameters, residuals, lines }: WeighedDays,
  words: readonly StageWord[] = [],
): JointStage {
  const kept = stage.estimates.map(({ name }) => parameters.findIndex((one) => one.name === name));
  if (kept.length === 0) return stage;
  const told = words.filter(({ parameter }) => kept.includes(parameter));
  const left = [
    ...residuals(fitted),
    ...told.map((word) => wordMiss(word, stage.estimates[kept.indexOf(word.parameter)]!.value)),
  ];
  const slopes = new Matrix(left.length, kept.length);
  kept.forEach((j, k) => {
    lines[j]!.forEach((slope, i) => slopes.set(i, k, slope));
    told.forEach(({ parameter, share }, i) =>
      slopes.set(lines[j]!.length + i, k, parameter === j ? 1 / share : 0)
    );
  });
  const doubts = new QrDecomposition(slopes).solve(Matrix.columnVector(left)).to1DArray()
    .map((move) => move * WITHIN);
  return {
    ...stage,
    estimates: stage.estimates.map((one, k) => {
      const half = Math.hypot(Math.log(one.high / one.value), COVER * doubts[k]!);
      return {
        ...one,
        standardUncertainty: Math.hypot(one.standardUncertainty, one.value * doubts[k]!),
        low: one.value * Math.exp(-half),
        high: one.value * Math.exp(half),
      };
    }),
  };
}

/** Puts residuals on a scale on which they would be independent and of one size. */
function whitener(
  { kinds }: DayData,
  here: readonly (readonly number[])[],
  doubts: readonly (readonly (readonly number[])[])[],
) {
  const sizes = here.map((kind) => {
    const middle = kind.reduce((sum, one) => sum + one, 0) / kind.length;
    const off = kind.map((one) => one - middle);
    const variance = off.reduce((sum, one) => sum + one * one, 0) / (kind.length - 1);
    return Math.sqrt(variance * serialOf(off).tied);
  });
  const counts = here.map(({ length }) => length);
  const total = counts.reduce((sum, one) => sum + one, 0);
  const firsts = counts.map((_, k) => counts.slice(0, k).reduce((sum, one) => sum + one, 0));
  const covariance = Matrix.eye(total, total);
  const columns = [
    ...lastingColumns(kinds, sizes, firsts, total),
    ...doubts.map((doubt) =>
      Float64Array.from(doubt.flatMap((kind, k) => kind.map((one) => one / sizes[k]!)))
    ),
  ];
  for (const column of columns) {
    for (let a = 0; a < total; a++) {
      if (column[a] === 0) continue;
      for (let b = 0; b < total; b++) {
        covariance.set(a, b, covariance.get(a, b) + column[a]! * column[b]!);
      }
    }
  }
  const lower = new CholeskyDecomposition(covariance).lowerTriangularMatrix;
  return (values: readonly (readonly number[])[]): number[] => {
    const scaled = values.flatMap((kind, k) => kind.map((one) => one / sizes[k]!));
    return forward(lower, scaled);
  };
}

/** Solves a lower triangle from the top. */
function forward(lower: Matrix, right: readonly number[]): number[] {
  const solved: number[] = [];
  right.forEach((value, i) => {
    const row = lower.getRow(i);
    const known = solved.reduce((sum, one, j) => sum + row[j]! * one, 0);
    solved.push((value - known) / row[i]!);
  });
  return solved;
}

/** One column for each lasting error: those of the heat move both directions at once. */
function lastingColumns(
  kinds: readonly DayKind[],
  sizes: readonly number[],
  firsts: readonly number[],
  total: number,
): Float64Array[] {
  const columns: Float64Array[] = [];
  const heat = HEAT_READINGS.map(() => new Float64Array(total));
  kinds.forEach(({ lasting }, k) => {
    const own = lasting.length === HEAT_READINGS.length
      ? heat
      : lasting.map(() => new Float64Array(total));
    lasting.forEach((days, error) =>
      days.forEach((one, day) => own[error]![firsts[k]! + day]! += one / sizes[k]!)
    );
    if (own !== heat) columns.push(...own);
  });
  return [...columns, ...heat];
}
