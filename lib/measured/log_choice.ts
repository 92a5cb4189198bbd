/** Chooses the form of the model on a stretch of the log, by the rules of docs/house.md. @module */
import { mean } from "d3-array";
import { DAY } from "../basics/mod.ts";
import { fitLog, scoreLog } from "./log_fit.ts";
import { type LogForm, neighbourForms } from "./log_form.ts";
import { cutLog, replayLog } from "./log_replay.ts";
import type { GreenhouseLog } from "./log_table.ts";

/** Days on which a form is fitted, and the days after them that it predicts. */
export interface Stretch {
  /** days from the start, fitted */
  readonly fitted: number;
  /** day up to which is predicted */
  readonly predicted: number;
}

/** The stretches of the first rule. */
export const STRETCHES: readonly Stretch[] = [
  { fitted: 9, predicted: 13 },
  { fitted: 13, predicted: 17 },
  { fitted: 17, predicted: 21.5 },
];

/** K and share of humidity that weigh the same. */
const WEIGHT = { temperature: 1, humidity: 0.05 };
/** Share by which a change must lower the measure to be kept. */
const WORTH = 0.02;

/** How well a form predicts what it was not fitted on. */
export interface FormScore {
  /** the form */
  readonly form: LogForm;
  /** RMSE of all stretches together, K */
  readonly temperatureError: number;
  /** RMSE of all stretches together, 0 to 1 */
  readonly humidityError: number;
  /** squares of both over 1 K and 5 %, added; a ratio */
  readonly measure: number;
}

/**
 * Fits a form on the start of a log and predicts the days after it, stretch by stretch.
 *
 * @param log known part of the log
 * @param form to judge
 * @param stretches days fitted and predicted
 */
export function judgeForm(
  log: GreenhouseLog,
  form: LogForm,
  stretches: readonly Stretch[] = STRETCHES,
): FormScore {
  const at = (days: number) =>
    Math.min(log.airTemperature.length, Math.round(days * DAY / log.stepSeconds));
  let [warm, damp, count] = [0, 0, 0];
  for (const { fitted, predicted } of stretches) {
    const [known, end] = [at(fitted), at(predicted)];
    const whole = cutLog(log, 0, end);
    const prediction = replayLog(whole, fitLog(cutLog(log, 0, known), undefined, form), form);
    const score = scoreLog(whole, prediction, known);
    warm += score.temperatureError ** 2 * (end - known);
    damp += score.humidityError ** 2 * (end - known);
    count += end - known;
  }
  return formScore(form, warm / count, damp / count);
}

/** Score of a form by mean squares, K² and squares of a share. */
function formScore(form: LogForm, warm: number, damp: number): FormScore {
  return {
    form,
    temperatureError: Math.sqrt(warm),
    humidityError: Math.sqrt(damp),
    measure: warm / WEIGHT.temperature ** 2 + damp / WEIGHT.humidity ** 2,
  };
}

/**
 * Fits a form on either half of the known part and predicts the other half from it, so that it is
 * judged as far ahead as it was fitted, and on days of another kind.
 *
 * @param log known part of the log
 * @param form to judge
 */
export function judgeByHalves(log: GreenhouseLog, form: LogForm): FormScore {
  const count = log.airTemperature.length;
  const half = Math.floor(count / 2);
  const [early, late] = [cutLog(log, 0, half), cutLog(log, half, count)];
  const scores = [[early, late], [late, early]].map(([known, other]) =>
    scoreLog(other!, replayLog(other!, fitLog(known!, undefined, form), form))
  );
  const square = (error: "temperatureError" | "humidityError") =>
    mean(scores, (score) => score[error] ** 2)!;
  return formScore(form, square("temperatureError"), square("humidityError"));
}

/**
 * Starts from a form and takes the best change of one item while it is worth it.
 *
 * @param start form to start from
 * @param judgeOf judges a form
 * @param listen told of each form as it is judged
 * @returns the score of each form kept, the chosen one last
 */
export function chooseForm(
  start: LogForm,
  judgeOf: (form: LogForm) => FormScore,
  listen: (score: FormScore) => void = () => {},
): FormScore[] {
  const judge = (form: LogForm) => {
    const score = judgeOf(form);
    listen(score);
    return score;
  };
  const kept = [judge(start)];
  for (;;) {
    const here = kept[kept.length - 1]!;
    const best = neighbourForms(here.form).map(judge).reduce((least, score) =>
      score.measure < least.measure ? score : least
    );
    if (best.measure > (1 - WORTH) * here.measure) return kept;
    kept.push(best);
  }
}
