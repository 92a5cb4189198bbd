/** A logged compartment beside its prediction. @module */
import * as Plot from "@observablehq/plot";
import type { LogCheck } from "../../measured/mod.ts";
import { dataTable } from "../kit/data_table.ts";
import { showNumber, showSi } from "../../units/mod.ts";
import { type DisplayItem, figure } from "../kit/figure.ts";
import { PALETTE } from "../kit/palette.ts";
import type { Point } from "../kit/thin.ts";

/** Hourly means over the days since the start. */
export function hourlyMeansByDay(series: ArrayLike<number>, stepSeconds: number): Point[] {
  const steps = Math.round(3600 / stepSeconds);
  return Array.from({ length: Math.floor(series.length / steps) }, (_, hour) => {
    let sum = 0;
    for (let step = 0; step < steps; step++) sum += series[hour * steps + step]!;
    return { x: (hour + 0.5) / 24, y: sum / steps };
  });
}

function pair(
  measured: ArrayLike<number>,
  predicted: ArrayLike<number>,
  { step, axis, height }: { readonly step: number; readonly axis: string; readonly height: number },
): Plot.PlotOptions {
  const line = (series: ArrayLike<number>, stroke: string, strokeWidth: number) =>
    Plot.lineY(hourlyMeansByDay(series, step), { x: "x", y: "y", stroke, strokeWidth });
  return {
    height,
    x: { label: "days since the start of this half", grid: true },
    y: { label: axis, grid: true },
    marks: [line(measured, PALETTE.ink, 1.8), line(predicted, PALETTE.warm, 1.4)],
  };
}

/**
 * Measured and predicted air of the half that the fit has not seen, as hourly means.
 *
 * @param check one half of the log
 * @param name which half is shown, such as "second half"
 */
export function logChart(check: LogCheck, name: string): DisplayItem {
  const { log, prediction, unseen } = check;
  const step = log.stepSeconds;
  const percent = (series: Float64Array) => series.map((value) => value * 100);
  const perDay = Math.round(86400 / step);
  const days = Array.from({ length: Math.floor(log.airTemperature.length / perDay) }, (_, i) => i);
  const mean = (series: Float64Array, day: number) =>
    series.subarray(day * perDay, (day + 1) * perDay).reduce((sum, value) => sum + value, 0) /
    perDay;
  return figure([
    pair(log.airTemperature, prediction.airTemperature, {
      step,
      axis: "air temperature, degC",
      height: 240,
    }),
    pair(percent(log.airHumidity), percent(prediction.relativeHumidity), {
      step,
      axis: "relative humidity, %",
      height: 220,
    }),
  ], {
    title: `Measured and predicted, ${name}`,
    alt: `Air in a logged glass compartment, measured and predicted: root mean square error ${
      showSi(unseen.temperatureError, "temperatureDifference", 2)
    } and ${showNumber(unseen.humidityError * 100, 1)} % humidity.`,
    legend: [
      { label: "measured", colour: PALETTE.ink, sign: "line" },
      { label: "predicted, fitted on the other half", colour: PALETTE.warm, sign: "line" },
    ],
    table: dataTable(days, [
      { head: "day", value: (day) => day + 1, digits: 0 },
      { head: "measured", value: (day) => mean(log.airTemperature, day), kind: "temperature" },
      {
        head: "predicted",
        value: (day) => mean(prediction.airTemperature, day),
        kind: "temperature",
      },
      { head: "humidity measured", value: (day) => mean(log.airHumidity, day), kind: "share" },
      {
        head: "humidity predicted",
        value: (day) => mean(prediction.relativeHumidity, day),
        kind: "share",
      },
    ]),
  });
}
