/** The appendix of the house: a real, logged house against its prediction. @module */
import { join } from "node:path";
import recordedText from "../../../data/logs/greenhouse_scores.csv" with { type: "text" };
import { InputError, readDataTable } from "../../basics/mod.ts";
import type { DisplayItem } from "../kit/figure.ts";
import { logChart } from "./charts.ts";
import { showNumber } from "../../units/mod.ts";
import { checkLog, type LogHalves, type LogScore, readGreenhouseLog } from "../../measured/mod.ts";
import { paragraph, table } from "../kit/table.ts";

/** Names the folder of the log. */
export const LOG_VARIABLE = "WINTERGROUND_GREENHOUSE_LOG";

/** One line of scores. */
export interface ScoreRow extends LogScore {
  /** what was predicted */
  readonly predicted: string;
  /** what the parameters were fitted on, or what stood in for the prediction */
  readonly fittedOn: string;
}

/** Scores found when the log was at hand, from `data/logs/greenhouse_scores.csv`. */
export const RECORDED_SCORES: readonly ScoreRow[] = readDataTable(
  recordedText,
  "data/logs/greenhouse_scores.csv",
  ["predicted", "fitted_on"],
).map((row) => ({
  predicted: row.text("predicted"),
  fittedOn: row.text("fitted_on"),
  temperatureError: row.number("temperature_error (K)"),
  temperatureBias: row.number("temperature_bias (K)"),
  humidityError: row.number("humidity_error (1)"),
  humidityBias: row.number("humidity_bias (1)"),
}));

/**
 * Fits and predicts the log in the folder that `WINTERGROUND_GREENHOUSE_LOG` names (`weather.csv`
 * and `reference_climate.csv`), some seconds of work.
 *
 * @returns null where the variable is not set
 * @throws {InputError} where the folder lacks the files or they cannot be read
 */
export async function greenhouseLog(): Promise<LogHalves | null> {
  const folder = Deno.env.get(LOG_VARIABLE);
  if (folder === undefined || folder === "") return null;
  const read = async (name: string) => {
    try {
      return await Deno.readTextFile(join(folder, name));
    } catch {
      throw new InputError(`Cannot read ${name} in ${folder}, the folder ${LOG_VARIABLE} names`);
    }
  };
  return checkLog(
    readGreenhouseLog(await read("weather.csv"), await read("reference_climate.csv")),
  );
}

/** Scores in the rows of the recorded ones, so far as the two halves give them. */
export function scoreRows({ forward, backward }: LogHalves): ScoreRow[] {
  const half = (name: string, known: string, check: LogHalves["forward"]): ScoreRow[] => [
    { predicted: known, fittedOn: `the ${known} itself`, ...check.fitted },
    { predicted: name, fittedOn: `the ${known}`, ...check.unseen },
    {
      predicted: name,
      fittedOn: `nothing: constant at the mean of the ${known}`,
      ...check.baseline,
    },
  ];
  return [
    ...half("second half", "first half", forward),
    ...half("first half", "second half", backward),
  ];
}

/** Charts and scores of the log; without it the recorded scores and where the log comes from. */
export function greenhouseLogItems(halves: LogHalves | null): DisplayItem[] {
  if (halves === null) {
    return [
      scoreTable(RECORDED_SCORES, "Recorded scores, not computed in this run"),
      paragraph(
        `The log may not be copied into this project. To plot it here, put weather.csv and ` +
          `reference_climate.csv of the autonomous-greenhouse experiment of 2022 (open data, ` +
          `five-minute log of a glass compartment) in a folder and set the variable ` +
          `${LOG_VARIABLE} to that folder before the run.`,
      ),
    ];
  }
  return [
    logChart(halves.forward, "second half"),
    logChart(halves.backward, "first half"),
    scoreTable(scoreRows(halves), "Computed in this run"),
  ];
}

function scoreTable(rows: readonly ScoreRow[], title: string): DisplayItem {
  const percent = (value: number) => showNumber(value * 100, 1);
  return table(rows, [
    { head: "predicted", value: (row) => row.predicted },
    { head: "fitted on", value: (row) => row.fittedOn },
    { head: "temperature error, K", value: (row) => row.temperatureError, digits: 2 },
    { head: "mean error, K", value: (row) => row.temperatureBias, digits: 2 },
    { head: "humidity error, %", value: (row) => percent(row.humidityError), right: true },
    { head: "mean error, %", value: (row) => percent(row.humidityBias), right: true },
  ], title);
}
