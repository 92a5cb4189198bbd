/** A logged compartment beside its prediction. @module */
import * as Plot from "@observablehq/plot";
import type { LogCheck, LogMean } from "../../measured/mod.ts";
import { dataTable } from "../kit/data_table.ts";
import { showNumber } from "../../units/mod.ts";
import { shown } from "../kit/reader.ts";
import { type DisplayItem, figure } from "../kit/figure.ts";
import { PALETTE } from "../kit/palette.ts";

function pair(
  hours: readonly LogMean[],
  of: {
    readonly measured: (hour: LogMean) => number;
    readonly predicted: (hour: LogMean) => number;
  },
  { axis, height }: { readonly axis: string; readonly height: number },
): Plot.PlotOptions {
  const line = (y: (hour: LogMean) => number, stroke: string, strokeWidth: number) =>
    Plot.lineY(hours, { x: "day", y, stroke, strokeWidth });
  return {
    height,
    x: { label: "days since the start of this half", grid: true },
    y: { label: axis, grid: true },
    marks: [line(of.measured, PALETTE.ink, 1.8), line(of.predicted, PALETTE.warm, 1.4)],
  };
}

/**
 * Measured and predicted air of the half that the fit has not seen, as hourly means.
 *
 * @param check one half of the log
 * @param name which half is shown, such as "second half"
 */
export function logChart(check: LogCheck, name: string): DisplayItem {
  const { unseen, means: { hours, days } } = check;
  return figure([
    pair(hours, {
      measured: (hour) => hour.temperature,
      predicted: (hour) => hour.predictedTemperature,
    }, { axis: "air temperature, degC", height: 240 }),
    pair(hours, {
      measured: (hour) => hour.humidity * 100,
      predicted: (hour) => hour.predictedHumidity * 100,
    }, { axis: "relative humidity, %", height: 220 }),
  ], {
    title: `Measured and predicted, ${name}`,
    alt: `Air in a logged glass compartment, measured and predicted: root mean square error ${
      shown(unseen.temperatureError, "temperatureDifference", 2)
    } and ${showNumber(unseen.humidityError * 100, 1)} % humidity.`,
    legend: [
      { label: "measured", colour: PALETTE.ink, sign: "line" },
      { label: "predicted, fitted on the other half", colour: PALETTE.warm, sign: "line" },
    ],
    table: dataTable(days, [
      { head: "day", value: (_, index) => index + 1, digits: 0 },
      { head: "measured", value: (row) => row.temperature, kind: "temperature" },
      { head: "predicted", value: (row) => row.predictedTemperature, kind: "temperature" },
      { head: "humidity measured", value: (row) => row.humidity, kind: "share" },
      { head: "humidity predicted", value: (row) => row.predictedHumidity, kind: "share" },
    ]),
  });
}
