/** Pictures of the climate chapter. @module */
import * as Plot from "@observablehq/plot";
import type { ClimateResult, ClimateYear, MonthSummary } from "../../climate/types.ts";
import { MONTHS } from "../kit/calendar.ts";
import { carpet } from "../kit/carpet.ts";
import { dataTable } from "../kit/data_table.ts";
import { shown } from "../kit/reader.ts";
import { durationFigure } from "../kit/duration.ts";
import { type DisplayItem, figure } from "../kit/figure.ts";
import { PALETTE, RADIATION_CLASSES, TEMPERATURE_CLASSES } from "../kit/palette.ts";

/** Month by month: span and mean of the temperature, and radiation with its diffuse part. */
export function monthlyChart(result: ClimateResult): DisplayItem {
  const months = result.months;
  const name = (month: MonthSummary) => MONTHS[month.month - 1]!;
  const x = { domain: MONTHS, label: null, padding: 0.25 } as const;
  const coldest = months.reduce((a, b) => a.meanTemperature < b.meanTemperature ? a : b);
  const warmest = months.reduce((a, b) => a.meanTemperature > b.meanTemperature ? a : b);
  return figure([
    {
      height: 250,
      x,
      y: { label: "air temperature, degC", grid: true },
      marks: [
        Plot.barY(months, {
          x: name,
          y1: "minTemperature",
          y2: "maxTemperature",
          fill: "#b7cff2",
        }),
        Plot.ruleY([0], { stroke: PALETTE.ink }),
        Plot.tickY(months, {
          x: name,
          y: "meanTemperature",
          stroke: PALETTE.ink,
          strokeWidth: 3,
        }),
      ],
    },
    {
      height: 230,
      x,
      y: { label: "horizontal radiation, kWh/m² per month", grid: true },
      marks: [
        Plot.barY(months, { x: name, y: "globalRadiation", fill: PALETTE.warm }),
        Plot.barY(months, { x: name, y: "diffuseRadiation", fill: PALETTE.cold }),
        Plot.ruleY([0], { stroke: PALETTE.ink }),
      ],
    },
  ], {
    title: "Temperature and radiation by month",
    alt: `Monthly mean temperature from ${shown(coldest.meanTemperature, "temperature")} in ` +
      `${name(coldest)} to ${shown(warmest.meanTemperature, "temperature")} in ${name(warmest)}; ` +
      `radiation ${shown(result.globalRadiation, "radiation", 0)} a year.`,
    legend: [
      { label: "lowest to highest hour", colour: "#b7cff2" },
      { label: "mean", colour: PALETTE.ink, sign: "line" },
      { label: "direct", colour: PALETTE.warm },
      { label: "diffuse", colour: PALETTE.cold },
    ],
    table: monthlyClimateTable(months),
  });
}

function monthlyClimateTable(months: readonly MonthSummary[]): ReturnType<typeof dataTable> {
  return dataTable(months, [
    { head: "month", value: (row) => MONTHS[row.month - 1]! },
    { head: "mean", value: (row) => row.meanTemperature, kind: "temperature" },
    { head: "lowest", value: (row) => row.minTemperature, kind: "temperature" },
    { head: "highest", value: (row) => row.maxTemperature, kind: "temperature" },
    { head: "radiation", value: (row) => row.globalRadiation, kind: "radiation" },
    { head: "diffuse", value: (row) => row.diffuseShare, kind: "share" },
    { head: "humidity", value: (row) => row.meanRelativeHumidity, kind: "share" },
    { head: "wind", value: (row) => row.meanWindSpeed, kind: "windSpeed" },
    {
      head: `degree-days below ${shown(18, "temperature", 0)}`,
      value: (row) => row.heatingDegreeDays18,
      kind: "degreeDays",
    },
  ]);
}

/** Outdoor temperature of every hour of the year. */
export function temperatureCarpet(climate: ClimateYear): DisplayItem {
  return carpet({
    series: climate.dryBulb,
    classes: TEMPERATURE_CLASSES,
    unit: "degC",
    title: "Outdoor temperature, every hour of the year",
    alt:
      "Carpet plot of outdoor temperature: day of the year along the bottom, hour of the day up the side. " +
      "Blue is below freezing, brown above.",
  });
}

/** Global radiation of every hour of the year. */
export function radiationCarpet(climate: ClimateYear): DisplayItem {
  return carpet({
    series: climate.globalHorizontal,
    classes: RADIATION_CLASSES,
    unit: "W/m²",
    title: "Horizontal radiation, every hour of the year",
    alt:
      "Carpet plot of global radiation: day of the year along the bottom, hour of the day up the side. " +
      "Dark is night or a dull sky, bright is full sun.",
  });
}

/** Hours of the year at or below each outdoor temperature. */
export function durationChart(climate: ClimateYear, result: ClimateResult): DisplayItem {
  return durationFigure({
    curves: [{
      label: "outdoors",
      colour: PALETTE.cold,
      series: climate.dryBulb,
      hoursBelow: result.hoursBelow.map(({ hours }) => hours),
    }],
    axis: "air temperature, degC",
    kind: "temperature",
    limits: result.hoursBelow.map(({ limit }) => limit),
    title: "Hours at or below each outdoor temperature",
    alt: `Sorted outdoor temperatures of the year, from ${
      shown(result.coldestHour, "temperature")
    } upwards; 99.6 % of the hours are above ${shown(result.design99_6, "temperature")}.`,
  });
}
