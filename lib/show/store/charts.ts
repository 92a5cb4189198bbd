/** Pictures of the store chapter: temperatures. Heat is in store_heat.ts. @module */
import type { ClimateYear } from "../../climate/types.ts";
import type { StoreWeek, SummarisedStore } from "../../store/mod.ts";
import type { StoreResult } from "../../store/types.ts";
import { hourName } from "../kit/calendar.ts";
import { carpet } from "../kit/carpet.ts";
import { dataTable } from "../kit/data_table.ts";
import { shown } from "../kit/reader.ts";
import { durationFigure } from "../kit/duration.ts";
import { type DisplayItem, figure } from "../kit/figure.ts";
import { cropLimits, killingText } from "./crop_words.ts";
import { lineLegend, type TimeLine, timePlot } from "../kit/lines.ts";
import { PALETTE, TEMPERATURE_CLASSES } from "../kit/palette.ts";

/**
 * Seven days: temperatures above, heat from and to the tubes below.
 *
 * @param result result of the store chapter
 * @param climate the weather of the year
 * @param week from `storeWeek`; the week around the coldest hour with the fan always off unless given
 */
export function weekChart(
  result: SummarisedStore,
  climate: ClimateYear,
  week: StoreWeek = result.summary.worstWeek,
): DisplayItem {
  const { start } = week;
  const year = result.year;
  const temperatures: TimeLine[] = [
    { label: "outdoors", colour: PALETTE.cold, series: climate.dryBulb, dashed: true },
    { label: "house, fan always off", colour: PALETTE.ink, series: result.noFan.airTemperature },
    { label: "house with the store", colour: PALETTE.warm, series: year.house.airTemperature },
    { label: "soil between the tubes", colour: PALETTE.soil, series: year.storeTemperature },
  ];
  const kilowatts = (series: ArrayLike<number>) => Float64Array.from(series, (watt) => watt / 1000);
  const heat: TimeLine[] = [
    { label: "sensible heat into the soil", colour: PALETTE.air, series: kilowatts(year.sensible) },
    {
      label: "latent heat into the soil",
      colour: PALETTE.latent,
      series: kilowatts(year.latent),
      dashed: true,
    },
  ];
  const window = { start, hours: 168, limits: [0] };
  return figure([
    timePlot({ ...window, lines: temperatures, axis: "temperature, degC" }),
    timePlot({ ...window, lines: heat, axis: "heat into the soil, kW", height: 200 }),
  ], {
    title: `Seven days from ${hourName(start).slice(0, -6)}`,
    alt: `Temperatures outdoors, in the soil and in the house with and without the fan, and heat ` +
      `into the soil, hour by hour for seven days.`,
    note: "Heat below zero is discharged into the house.",
    legend: lineLegend([...temperatures, ...heat]),
    table: dataTable(week.days, [
      { head: "day", value: ({ hour }) => hourName(hour).slice(0, -6) },
      { head: "outdoors lowest", value: (day) => day.outdoorsLowest, kind: "temperature" },
      { head: "fan always off, lowest", value: (day) => day.noFanLowest, kind: "temperature" },
      { head: "with the store, lowest", value: (day) => day.storeLowest, kind: "temperature" },
      { head: "sensible into soil", value: (day) => day.sensible, kind: "energy", us: false },
      { head: "latent into soil", value: (day) => day.latent, kind: "energy", us: false },
    ]),
  });
}

/** Indoor temperature with the store, every hour of the year. */
export function temperatureCarpet(result: StoreResult): DisplayItem {
  return carpet({
    series: result.year.house.airTemperature,
    classes: TEMPERATURE_CLASSES,
    unit: "degC",
    title: "House with the store: every hour of the year",
    alt: `Carpet plot of indoor temperature with the store. Lowest ${
      shown(result.coldestHour, "temperature")
    }; ${shown(result.crop.freezing.hours, "hours")} below freezing.`,
  });
}

/** With the store against the same house and soil with the fan always off. */
export function durationChart(result: SummarisedStore): DisplayItem {
  const { hoursBelow } = result.summary;
  return durationFigure({
    curves: [
      {
        label: "fan always off",
        colour: PALETTE.ink,
        series: result.noFan.airTemperature,
        hoursBelow: hoursBelow.map(({ noFan }) => noFan),
        dashed: true,
      },
      {
        label: "with the store",
        colour: PALETTE.warm,
        series: result.year.house.airTemperature,
        hoursBelow: hoursBelow.map(({ store }) => store),
      },
    ],
    axis: "house air temperature, degC",
    kind: "temperature",
    limits: hoursBelow.map(({ limit }) => limit),
    coldEnd: result.summary.coldHours,
    marked: cropLimits(result.crop),
    title: "House with and without the store: hours at or below each temperature",
    alt: `Hours below freezing: ${result.cropNoFan.freezing.hours} with the fan always off, ` +
      `${result.crop.freezing.hours} with the store. ${killingText(result)}.`,
  });
}

/** Daily means through the year: house with and without, and the soil between the tubes. */
export function yearChart(result: SummarisedStore): DisplayItem {
  const means = result.summary.dailyMeans;
  const daily = (days: Float64Array) =>
    Float64Array.from({ length: days.length * 24 }, (_, hour) => days[Math.floor(hour / 24)]!);
  const lines: TimeLine[] = [
    { label: "outdoors", colour: PALETTE.cold, series: daily(means.outdoors), width: 1 },
    {
      label: "house, fan always off",
      colour: PALETTE.ink,
      series: daily(means.noFan),
      width: 1.2,
    },
    {
      label: "house with the store",
      colour: PALETTE.warm,
      series: daily(means.house),
      width: 1.5,
    },
    {
      label: "soil between the tubes",
      colour: PALETTE.soil,
      series: daily(means.store),
      width: 2.5,
    },
  ];
  return figure(
    timePlot({ lines, start: 0, hours: 8760, axis: "daily mean temperature, degC", limits: [0] }),
    {
      title: "The year, day by day",
      alt: "Daily means of outdoor, house and soil temperature through the year.",
      legend: lineLegend(lines),
    },
  );
}
