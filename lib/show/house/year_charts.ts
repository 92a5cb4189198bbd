/** Pictures of the house through the year: temperature, moisture, heat. @module */
import * as Plot from "@observablehq/plot";
import type { HeatMonth, SummarisedHouse } from "../../house/mod.ts";
import { axisDate, MONTHS, monthTicks } from "../kit/calendar.ts";
import { dataTable } from "../kit/data_table.ts";
import { shown, shownNumber } from "../kit/reader.ts";
import { type DisplayItem, figure } from "../kit/figure.ts";
import { PALETTE } from "../kit/palette.ts";

/** Days as points of the time axis, at their noon. */
function atNoon<Day>(days: readonly Day[]): (Day & { readonly date: Date })[] {
  return days.map((day, index) => ({ ...day, date: axisDate(index * 24 + 12) }));
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
  result: SummarisedHouse,
  crop: { readonly name: string; readonly killingLimit: number },
): DisplayItem {
  const inside = atNoon(result.summary.insideDays);
  const outside = atNoon(result.summary.outdoorDays);
  const limit = shown(crop.killingLimit, "temperature");
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
    title: "The house on its own, day by day, screening year",
    alt:
      `Coldest hour of each day inside and outdoors, and each day's range inside in the screening year; the ` +
      `house falls to ${shown(result.coldestHour, "temperature")}.`,
    legend: [
      { label: "house, coldest hour of the day", colour: PALETTE.warm, sign: "line" },
      { label: "house, coldest to warmest hour", colour: "#f4d2bb" },
      { label: "outdoors, coldest hour", colour: PALETTE.cold, sign: "dash" },
      { label: `below ${limit} kills ${crop.name}`, colour: PALETTE.latent, sign: "line" },
    ],
    table: dataTable(result.summary.temperatureMonths, [
      { head: "month", value: ({ month }) => MONTHS[month]! },
      { head: "outdoors lowest", value: (row) => row.outdoorsLowest, kind: "temperature" },
      { head: "house lowest", value: (row) => row.insideLowest, kind: "temperature" },
      { head: "house highest", value: (row) => row.insideHighest, kind: "temperature" },
    ]),
  });
}

/**
 * Humidity of the free-running house and the water that condenses on its cover.
 *
 * @param result result of the house chapter
 * @param purgeHumidity relative humidity above which the vents open, 0 to 1
 */
export function humidityChart(result: SummarisedHouse, purgeHumidity: number): DisplayItem {
  const { humidityDays, condensedDays, condensed, dampHours } = result.summary;
  const percent = (share: number) => share * 100;
  const days = atNoon(humidityDays.map(({ low, mean, high }) => ({
    low: percent(low),
    mean: percent(mean),
    high: percent(high),
  })));
  const drops = atNoon(condensedDays.map((water) => ({ water })));
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
      Plot.ruleY([percent(purgeHumidity)], { stroke: PALETTE.ink, strokeDasharray: "5 3" }),
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
    title: "Humidity and condensation on the cover, screening year",
    alt:
      `Humidity in the house without heating, screening year, and water condensing on the cover: ${
        shown(condensed, "mass")
      } a year, ${shown(dampHours, "hours")} above 90 %.`,
    legend: [
      { label: "daily mean", colour: PALETTE.latent, sign: "line" },
      { label: "driest to dampest hour", colour: "#e2c6e0" },
      { label: "purge above this", colour: PALETTE.ink, sign: "dash" },
      { label: "water condensed", colour: PALETTE.cold },
    ],
    table: dataTable(result.summary.humidityMonths, [
      { head: "month", value: ({ month }) => MONTHS[month]! },
      { head: "mean humidity", value: (row) => row.meanHumidity, kind: "share" },
      { head: "above 90 %", value: (row) => row.dampHours, kind: "hours" },
      { head: "evaporated by crop and soil", value: (row) => row.evaporated, kind: "mass" },
      { head: "condensed on the cover", value: (row) => row.condensed, kind: "mass" },
    ]),
  });
}

const FLOWS: readonly (readonly [Exclude<keyof HeatMonth, "month">, string, string])[] = [
  ["solar", "sun", PALETTE.warm],
  ["heater", "heater", PALETTE.latent],
  ["floor", "floor soil", PALETTE.soil],
  ["glazing", "glazing", PALETTE.cold],
  ["opaque", "solid walls and roof", PALETTE.ink],
  ["leakage", "leakage", PALETTE.air],
  ["vent", "vents", "#8fb0f5"],
  ["evaporation", "used in evaporation", "#c9cdd3"],
];

/** Heat of each month into and out of the house held at its set point. */
export function heatFlowsChart(result: SummarisedHouse): DisplayItem {
  const { heatMonths } = result.summary;
  const rows = FLOWS.flatMap(([key, name]) =>
    heatMonths.map((row) => ({ name, month: MONTHS[row.month]!, heat: row[key] }))
  );
  const names = FLOWS.map(([, name]) => name);
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
    title: "Heat in and out, month by month, held at the set point, screening year",
    alt:
      `Stacked bars of gains and losses in each month of the screening year; the heater supplies ${
        shown(result.heatDemand, "energy")
      } a year.`,
    note:
      "Heat stored in barrels and air from one month to the next is left out: bars up and down may " +
      "differ by that amount.",
    legend: FLOWS.map(([, label, colour]) => ({ label, colour })),
    table: dataTable(heatMonths, [
      { head: "month", value: ({ month }) => MONTHS[month]! },
      ...FLOWS.map(([key, head]) => ({
        head,
        value: (row: HeatMonth) => row[key],
        kind: "energy" as const,
        us: false,
      })),
    ]),
  });
}

/** Heat demand of each month. */
export function heatDemandChart(result: SummarisedHouse): DisplayItem {
  const rows = result.heatDemandByMonth.map((heat, month) => ({ month: MONTHS[month]!, heat }));
  const worst = rows.reduce((a, b) => a.heat > b.heat ? a : b);
  const peak = result.summary.peakDemand;
  return figure({
    height: 250,
    x: { domain: MONTHS as string[], label: null, padding: 0.25 },
    y: { label: "heat demand, kWh", domain: [0, Math.max(1, worst.heat) * 1.12], grid: true },
    marks: [
      Plot.barY(rows, { x: "month", y: "heat", fill: PALETTE.latent }),
      Plot.text(rows.filter((row) => row.heat >= 0.5), {
        x: "month",
        y: "heat",
        text: (row: { heat: number }) => shownNumber(row.heat, "energy"),
        dy: -8,
      }),
      Plot.ruleY([0], { stroke: PALETTE.ink }),
    ],
  }, {
    title: "Heat demand by month, screening year",
    alt: peak <= 0
      ? "The house needs no heat to hold the set point in any hour of the year."
      : `Heat to hold the set point in the screening year: ${
        shown(result.heatDemand, "energy")
      } a year, most in ${worst.month} with ${
        shown(worst.heat, "energy")
      }; the largest hour takes ${shown(peak, "heatFlow")}.`,
    ...(peak <= 0 ? { note: "No heat is needed to hold the set point in this climate." } : {}),
    table: dataTable(rows, [
      { head: "month", value: (row) => row.month },
      { head: "heat demand", value: (row) => row.heat, kind: "energy" },
    ]),
  });
}
