/** Pictures of the house through the year: temperature, moisture, heat. @module */
import { sum } from "d3-array";
import * as Plot from "@observablehq/plot";
import { MONTH_DAYS } from "../../basics/mod.ts";
import type { ClimateYear } from "../../climate/types.ts";
import type { HouseResult, HouseYear } from "../../house/types.ts";
import { dailyMeans, monthlySums } from "../../basics/mod.ts";
import { axisDate, MONTHS, monthTicks } from "../kit/calendar.ts";
import { dataTable } from "../kit/data_table.ts";
import { showNumber, showSi } from "../../units/mod.ts";
import { type DisplayItem, figure } from "../kit/figure.ts";
import { PALETTE } from "../kit/palette.ts";

/** Lowest, mean and highest value of each day. */
export interface DayRange {
  /** middle of the day on the time axis */
  readonly date: Date;
  /** lowest value of the day */
  readonly low: number;
  /** mean of the day */
  readonly mean: number;
  /** highest value of the day */
  readonly high: number;
}

/** Lowest, mean and highest value of each day of an hourly year. */
export function dayRanges(series: Float64Array): DayRange[] {
  return Array.from(dailyMeans(series), (mean, day) => {
    let [low, high] = [Infinity, -Infinity];
    for (let hour = day * 24; hour < day * 24 + 24; hour++) {
      low = Math.min(low, series[hour]!);
      high = Math.max(high, series[hour]!);
    }
    return { date: axisDate(day * 24 + 12), low, mean, high };
  });
}

const YEAR_AXIS: Plot.ScaleOptions = {
  type: "utc",
  label: null,
  grid: true,
  ticks: monthTicks(),
  tickFormat: "%b",
};

/** Each day's span of the free-running house over the outdoors' coldest hour, with the limits. */
export function freeRunningYearChart(
  result: HouseResult,
  climate: ClimateYear,
  crop: { readonly name: string; readonly killingLimit: number },
): DisplayItem {
  const inside = dayRanges(result.freeRunning.airTemperature);
  const outside = dayRanges(climate.dryBulb);
  const monthly = (days: readonly DayRange[], month: number) =>
    days.filter((day) => day.date.getUTCMonth() === month);
  const least = (days: readonly DayRange[]) => Math.min(...days.map((day) => day.low));
  const limit = showSi(crop.killingLimit, "temperature");
  return figure({
    x: YEAR_AXIS,
    y: { label: "air temperature, degC", grid: true },
    marks: [
      Plot.areaY(inside, {
        x: "date",
        y1: "low",
        y2: "high",
        fill: PALETTE.warm,
        fillOpacity: 0.3,
      }),
      Plot.lineY(outside, { x: "date", y: "low", stroke: PALETTE.cold, strokeDasharray: "4 3" }),
      Plot.lineY(inside, { x: "date", y: "low", stroke: PALETTE.warm, strokeWidth: 1.6 }),
      Plot.ruleY([0], { stroke: PALETTE.ink }),
      Plot.ruleY([crop.killingLimit], { stroke: PALETTE.latent, strokeWidth: 1.5 }),
    ],
  }, {
    title: "The house on its own, day by day",
    alt: `Coldest hour of each day inside and outdoors, and each day's range inside; the house ` +
      `falls to ${showSi(result.coldestHourNoStore, "temperature")}.`,
    legend: [
      { label: "house, coldest hour of the day", colour: PALETTE.warm, sign: "line" },
      { label: "house, coldest to warmest hour", colour: "#f4d2bb" },
      { label: "outdoors, coldest hour", colour: PALETTE.cold, sign: "dash" },
      { label: `below ${limit} kills ${crop.name}`, colour: PALETTE.latent, sign: "line" },
    ],
    table: dataTable(MONTHS, [
      { head: "month", value: (month) => month },
      {
        head: "outdoors lowest",
        value: (_, month) => least(monthly(outside, month)),
        kind: "temperature",
      },
      {
        head: "house lowest",
        value: (_, month) => least(monthly(inside, month)),
        kind: "temperature",
      },
      {
        head: "house highest",
        value: (_, month) => Math.max(...monthly(inside, month).map((day) => day.high)),
        kind: "temperature",
      },
    ]),
  });
}

/**
 * Humidity of the free-running house and the water that condenses on its cover.
 *
 * @param result result of the house chapter
 * @param purgeHumidity relative humidity above which the vents open, 0 to 1
 */
export function humidityChart(result: HouseResult, purgeHumidity: number): DisplayItem {
  const year = result.freeRunning;
  const days = dayRanges(year.relativeHumidity.map((humidity) => humidity * 100));
  const drops = dayRanges(year.condensed).map(({ date, mean }) => ({ date, water: mean * 86400 }));
  const water = sum(result.condensateByMonth);
  return figure([{
    height: 240,
    x: YEAR_AXIS,
    y: { label: "relative humidity, %", domain: [0, 105], grid: true },
    marks: [
      Plot.areaY(days, {
        x: "date",
        y1: "low",
        y2: "high",
        fill: PALETTE.latent,
        fillOpacity: 0.2,
      }),
      Plot.lineY(days, { x: "date", y: "mean", stroke: PALETTE.latent, strokeWidth: 1.6 }),
      Plot.ruleY([purgeHumidity * 100], { stroke: PALETTE.ink, strokeDasharray: "5 3" }),
    ],
  }, {
    height: 180,
    x: YEAR_AXIS,
    y: { label: "condensed on the cover, kg a day", grid: true },
    marks: [
      Plot.areaY(drops, { x: "date", y: "water", fill: PALETTE.cold }),
      Plot.ruleY([0], { stroke: PALETTE.ink }),
    ],
  }], {
    title: "Humidity and condensation on the cover",
    alt: `Humidity in the house without heating or store, and water condensing on the cover: ${
      showSi(water, "mass")
    } a year, ${showSi(hoursAtLeast(year.relativeHumidity, 0.9), "hours")} at or above 90 %.`,
    legend: [
      { label: "daily mean", colour: PALETTE.latent, sign: "line" },
      { label: "driest to dampest hour", colour: "#e2c6e0" },
      { label: "purge above this", colour: PALETTE.ink, sign: "dash" },
      { label: "water condensed", colour: PALETTE.cold },
    ],
    table: humidityTable(result),
  });
}

function hoursAtLeast(series: ArrayLike<number>, limit: number): number {
  let hours = 0;
  for (let hour = 0; hour < series.length; hour++) if (series[hour]! >= limit) hours++;
  return hours;
}

function humidityTable({ freeRunning, condensateByMonth }: HouseResult) {
  const { relativeHumidity, evaporated } = freeRunning;
  const mean = monthlySums(relativeHumidity);
  const damp = monthlySums(relativeHumidity.map((humidity) => humidity >= 0.9 ? 1 : 0));
  const water = monthlySums(evaporated);
  return dataTable(MONTHS, [
    { head: "month", value: (month) => month },
    {
      head: "mean humidity",
      value: (_, month) => mean[month]! / (MONTH_DAYS[month]! * 24),
      kind: "share",
    },
    { head: "at or above 90 %", value: (_, month) => damp[month]!, kind: "hours" },
    {
      head: "evaporated by crop and soil",
      value: (_, month) => water[month]! * 3600,
      kind: "mass",
    },
    {
      head: "condensed on the cover",
      value: (_, month) => condensateByMonth[month]!,
      kind: "mass",
    },
  ]);
}

type FlowName =
  | "solar"
  | "heater"
  | "floor"
  | "glazing"
  | "opaque"
  | "leakage"
  | "vent"
  | "evaporation";

const FLOWS: readonly (readonly [FlowName, string, string])[] = [
  ["solar", "sun", PALETTE.warm],
  ["heater", "heater", PALETTE.latent],
  ["floor", "floor soil", PALETTE.soil],
  ["glazing", "glazing", PALETTE.cold],
  ["opaque", "solid walls and roof", PALETTE.ink],
  ["leakage", "leakage", PALETTE.air],
  ["vent", "vents", "#8fb0f5"],
  ["evaporation", "used in evaporation", "#c9cdd3"],
];

/** kWh of each flow in each month, gains above zero; the floor takes or gives. */
export function heatFlowsByMonth(year: HouseYear): { name: string; month: string; heat: number }[] {
  return FLOWS.flatMap(([key, name]) =>
    monthlySums(year[key]).map((sum, month) => ({
      name,
      month: MONTHS[month]!,
      heat: sum / 1000,
    }))
  );
}

/** Heat of each month into and out of the house held at its set point. */
export function heatFlowsChart(result: HouseResult): DisplayItem {
  const rows = heatFlowsByMonth(result.heated);
  const names = FLOWS.map(([, name]) => name);
  const of = (name: string, month: string) =>
    rows.find((row) => row.name === name && row.month === month)!.heat;
  return figure({
    height: 340,
    x: { domain: MONTHS as string[], label: null, padding: 0.2 },
    y: { label: "heat into the house (up) and out of it (down), kWh", grid: true },
    color: { domain: names, range: FLOWS.map(([, , colour]) => colour) },
    marks: [
      Plot.barY(rows, { x: "month", y: "heat", fill: "name", order: names }),
      Plot.ruleY([0], { stroke: PALETTE.ink }),
    ],
  }, {
    title: "Heat in and out, month by month, held at the set point",
    alt: `Stacked bars of gains and losses in each month; the heater supplies ${
      showSi(result.heatDemand, "energy")
    } a year.`,
    note:
      "Heat stored in barrels and air from one month to the next is left out: bars up and down may " +
      "differ by that amount.",
    legend: FLOWS.map(([, label, colour]) => ({ label, colour })),
    table: dataTable(MONTHS, [
      { head: "month", value: (month) => month },
      ...names.map((head) => ({
        head,
        value: (month: string) => of(head, month),
        kind: "energy" as const,
        us: false,
      })),
    ]),
  });
}

/** Heat demand of each month. */
export function heatDemandChart(result: HouseResult): DisplayItem {
  const rows = result.heatDemandByMonth.map((heat, month) => ({ month: MONTHS[month]!, heat }));
  const worst = rows.reduce((a, b) => a.heat > b.heat ? a : b);
  const peak = result.heated.heater.reduce((most, heat) => Math.max(most, heat), 0);
  return figure({
    height: 250,
    x: { domain: MONTHS as string[], label: null, padding: 0.25 },
    y: { label: "heat demand, kWh", domain: [0, Math.max(1, worst.heat) * 1.12], grid: true },
    marks: [
      Plot.barY(rows, { x: "month", y: "heat", fill: PALETTE.latent }),
      Plot.text(rows.filter((row) => row.heat >= 0.5), {
        x: "month",
        y: "heat",
        text: (row: { heat: number }) => showNumber(row.heat, 0),
        dy: -8,
      }),
      Plot.ruleY([0], { stroke: PALETTE.ink }),
    ],
  }, {
    title: "Heat demand by month",
    alt: peak <= 0
      ? "The house needs no heat to hold the set point in any hour of the year."
      : `Heat to hold the set point: ${
        showSi(result.heatDemand, "energy")
      } a year, most in ${worst.month} with ${
        showSi(worst.heat, "energy")
      }; the largest hour takes ${showSi(peak, "heatFlow")}.`,
    ...(peak <= 0 ? { note: "No heat is needed to hold the set point in this climate." } : {}),
    table: dataTable(rows, [
      { head: "month", value: (row) => row.month },
      { head: "heat demand", value: (row) => row.heat, kind: "energy" },
    ]),
  });
}
