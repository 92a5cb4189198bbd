/** Fits the unknowns of a logged compartment and scores the prediction. @module */
import { Matrix, solve } from "ml-matrix";
import { CHOSEN_FORM, fittedNames, type LogForm } from "./log_form.ts";
import { type LogPrediction, replayLog } from "./log_replay.ts";
import type { LogParameters } from "./log_parameters.ts";
import type { GreenhouseLog } from "./log_table.ts";

/** Where the fit starts: common practice for a glass compartment, no source. */
export const LOG_START: LogParameters = {
  coverArea: 1.4,
  solarShare: 0.6,
  lampHeat: 0.4,
  gapExchange: 30,
  lightShare: 0.6,
  pipeFilm: 3,
  leakage: 0.5,
  leakageWind: 0.05,
  ventRate: 8,
  screenResistance: 0.15,
  leafArea: 1.5,
  airShare: 0.4,
  lampAirShare: 0.4,
  floorFilm: 5,
  growth: 0.05,
  benchCapacity: 20000,
  benchFilm: 5,
  benchShare: 0.3,
  wetFloor: 0.1,
  capacity: 50000,
  neighbourFilm: 6,
  neighbourTemperature: 17,
};

/** Root mean square error and mean error, predicted less measured. */
export interface LogScore {
  /** K */
  readonly temperatureError: number;
  /** K */
  readonly temperatureBias: number;
  /** 0 to 1 */
  readonly humidityError: number;
  /** 0 to 1 */
  readonly humidityBias: number;
}

/** Entries left out at the start while floor and air forget the guess: one day. */
const WARM_UP = 288;
/** every sixth entry counts in the fit: half an hour */
const STRIDE = 6;
/** K and share that weigh the same in the fit */
const TEMPERATURE_WEIGHT = 1;
const HUMIDITY_WEIGHT = 0.05;
const MOST_ROUNDS = 15;

/**
 * Scores a prediction against the log after a day of warm-up.
 *
 * @param log measured
 * @param prediction of the same length
 * @param from index of the first entry that counts
 */
export function scoreLog(
  log: GreenhouseLog,
  prediction: LogPrediction,
  from = WARM_UP,
): LogScore {
  let [t, tt, h, hh, count] = [0, 0, 0, 0, 0];
  for (let i = from; i < log.airTemperature.length; i++, count++) {
    const warm = prediction.airTemperature[i]! - log.airTemperature[i]!;
    const damp = prediction.relativeHumidity[i]! - log.airHumidity[i]!;
    t += warm;
    tt += warm * warm;
    h += damp;
    hh += damp * damp;
  }
  return {
    temperatureError: Math.sqrt(tt / count),
    temperatureBias: t / count,
    humidityError: Math.sqrt(hh / count),
    humidityBias: h / count,
  };
}

/** Entries of a log that a fit must not see. */
export interface HeldOut {
  /** index of the first entry */
  readonly from: number;
  /** index of the entry after the last */
  readonly to: number;
}

interface FitQuestion {
  readonly log: GreenhouseLog;
  readonly heldOut: HeldOut | undefined;
  readonly form: LogForm;
  readonly names: readonly (keyof LogParameters)[];
}

const ALL_NAMES = Object.keys(LOG_START) as (keyof LogParameters)[];

function fromLogs(question: FitQuestion, logs: readonly number[]): LogParameters {
  const fitted = Object.fromEntries(
    question.names.map((name, i) => [name, Math.exp(logs[i]!)]),
  );
  return { ...LOG_START, ...fitted };
}

function residuals(question: FitQuestion, logs: readonly number[]): number[] {
  const { log, heldOut, form, names } = question;
  const prediction = replayLog(log, fromLogs(question, logs), form);
  const result: number[] = [];
  for (let i = WARM_UP; i < log.airTemperature.length; i += STRIDE) {
    if (heldOut !== undefined && i >= heldOut.from && i < heldOut.to) continue;
    result.push((prediction.airTemperature[i]! - log.airTemperature[i]!) / TEMPERATURE_WEIGHT);
    result.push((prediction.relativeHumidity[i]! - log.airHumidity[i]!) / HUMIDITY_WEIGHT);
  }
  // a weak pull to the start keeps what the log cannot tell apart within reason
  const pull = 0.05 * Math.sqrt(result.length);
  names.forEach((name, i) => result.push(pull * (logs[i]! - Math.log(LOG_START[name]))));
  return result;
}

/**
 * Fits the parameters to a log by damped least squares on their logarithms (Levenberg 1944
 * [levenberg-1944], Marquardt 1963 [marquardt-1963]), temperature errors of 1 K and humidity errors
 * of 5 % alike.
 *
 * @param log the part to fit on
 * @param heldOut entries that do not count
 * @param form of the model
 * @returns fitted parameters
 */
export function fitLog(
  log: GreenhouseLog,
  heldOut?: HeldOut,
  form: LogForm = CHOSEN_FORM,
): LogParameters {
  const names = fittedNames(form, ALL_NAMES);
  const question = { log, heldOut, form, names };
  let at = names.map((name) => Math.log(LOG_START[name]));
  let here = residuals(question, at);
  let cost = sumOfSquares(here);
  let damping = 0.05;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const normal = Matrix.zeros(names.length, names.length);
    const gradient = Matrix.zeros(names.length, 1);
    const slopes = names.map((_, j) => slopeOf(question, at, here, j));
    for (let a = 0; a < names.length; a++) {
      gradient.set(a, 0, -dot(slopes[a]!, here));
      for (let b = 0; b < names.length; b++) normal.set(a, b, dot(slopes[a]!, slopes[b]!));
    }
    let improved = false;
    for (let attempt = 0; attempt < 8 && !improved; attempt++) {
      const damped = normal.clone();
      for (let a = 0; a < names.length; a++) damped.set(a, a, normal.get(a, a) * (1 + damping));
      const move = solve(damped, gradient).to1DArray();
      const next = at.map((value, i) => value + Math.max(-0.7, Math.min(0.7, move[i]!)));
      const there = residuals(question, next);
      const nextCost = sumOfSquares(there);
      improved = nextCost < cost;
      if (improved) {
        const gain = (cost - nextCost) / cost;
        [at, here, cost] = [next, there, nextCost];
        damping /= 3;
        if (gain < 2e-4) return fromLogs(question, at);
      } else damping *= 4;
    }
    if (!improved) break;
  }
  return fromLogs(question, at);
}

function slopeOf(
  question: FitQuestion,
  at: readonly number[],
  here: readonly number[],
  j: number,
): number[] {
  const nudge = 0.02;
  const moved = residuals(question, at.map((value, i) => i === j ? value + nudge : value));
  return moved.map((value, i) => (value - here[i]!) / nudge);
}

function sumOfSquares(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value * value, 0);
}

function dot(a: readonly number[], b: readonly number[]): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}
