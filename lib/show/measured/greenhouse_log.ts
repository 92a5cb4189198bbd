/** The appendix of the house: a real, logged house against its prediction. @module */
import type { DisplayItem } from "../kit/figure.ts";
import { logChart } from "./charts.ts";
import { showNumber } from "../../units/mod.ts";
import { type LogHalves, RECORDED_SCORES, type ScoreRow } from "../../measured/mod.ts";
import { LOG_VARIABLE } from "../../study/mod.ts";
import { paragraph, table } from "../kit/table.ts";

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
    scoreTable(halves.scores, "Computed in this run"),
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
