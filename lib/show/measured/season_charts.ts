/** Pictures of what a log says. @module */
import * as Plot from "@observablehq/plot";
import type { LoggedDay, LoggedNight, MeasuredResult } from "../../measured/mod.ts";
import { shown } from "../kit/reader.ts";
import { dataTable } from "../kit/data_table.ts";
import { type DisplayItem, figure } from "../kit/figure.ts";
import { GREY, PALETTE } from "../kit/palette.ts";
import { nothing } from "./tables.ts";

const date = (day: string) => new Date(`${day}T12:00Z`);

/** Heat put in and given back day by day with its range, and what was planned. */
export function heatChart(result: MeasuredResult): DisplayItem {
  const { season, plan } = result;
  if (season === null) return nothing(result);
  const days = season.days.filter(({ hours }) => hours > 0);
  const planned = new Map((plan?.days ?? []).map((one) => [one.day, one]));
  const bar = (y: (day: LoggedDay) => number, fill: string) =>
    Plot.rectY(days, { x: ({ day }: LoggedDay) => date(day), y, fill, interval: "day" });
  const band = (
    of: (day: LoggedDay) => { readonly low: number; readonly high: number },
    sign: 1 | -1,
  ) =>
    Plot.ruleX(days, {
      x: ({ day }: LoggedDay) => date(day),
      y1: (day: LoggedDay) => sign * of(day).low,
      y2: (day: LoggedDay) => sign * of(day).high,
      stroke: PALETTE.ink,
      strokeWidth: 1,
    });
  const line = (y: (day: LoggedDay) => number) =>
    Plot.lineY(days.filter(({ day }) => planned.has(day)), {
      x: ({ day }: LoggedDay) => date(day),
      y,
      stroke: PALETTE.latent,
      strokeWidth: 1.6,
      strokeDasharray: "5 3",
      curve: "step",
    });
  const { heatIn, heatOut } = season.sums;
  return figure({
    height: 340,
    marginLeft: 55,
    x: { type: "utc", label: null },
    y: { label: "heat by day, put in above, given back below, kWh", grid: true },
    marks: [
      bar(({ heatIn }) => heatIn.value, PALETTE.warm),
      bar(({ heatOut }) => -heatOut.value, PALETTE.cold),
      band(({ heatIn }) => heatIn, 1),
      band(({ heatOut }) => heatOut, -1),
      line(({ day }) => planned.get(day)!.heatIn),
      line(({ day }) => -planned.get(day)!.heatOut),
      Plot.ruleY([0], { stroke: PALETTE.ink }),
    ],
  }, {
    title: "What the air left in the store and took back",
    alt: `Over ${days.length} days ${shown(heatIn.value, "energy")} was put in and ${
      shown(heatOut.value, "energy")
    } given back.`,
    note: "Thin lines: 95 of 100 cases by the sensors' accuracies. Days with gaps show less.",
    legend: [
      { label: "put in", colour: PALETTE.warm },
      { label: "given back", colour: PALETTE.cold },
      ...(plan === null
        ? []
        : [{ label: "planned", colour: PALETTE.latent, sign: "dash" as const }]),
    ],
    table: dataTable(days, [
      { head: "day", value: (row) => row.day },
      { head: "hours logged", value: (row) => row.hours, kind: "hours" },
      { head: "put in", value: (row) => row.heatIn.value, kind: "energy" },
      { head: "low", value: (row) => row.heatIn.low, kind: "energy", us: false },
      { head: "high", value: (row) => row.heatIn.high, kind: "energy", us: false },
      { head: "given back", value: (row) => row.heatOut.value, kind: "energy" },
      { head: "low", value: (row) => row.heatOut.low, kind: "energy", us: false },
      { head: "high", value: (row) => row.heatOut.high, kind: "energy", us: false },
      { head: "fans", value: (row) => row.fanEnergy.value, kind: "electricity" },
    ]),
  });
}

/** The nights: inside, the control house and outdoors. */
export function nightChart(result: MeasuredResult): DisplayItem {
  const { season } = result;
  if (season === null) return nothing(result);
  const nights = season.nights;
  const line = (of: (night: LoggedNight) => number, stroke: string, dashed = false) =>
    Plot.lineY(nights, {
      x: ({ day }: LoggedNight) => date(day),
      y: of,
      stroke,
      strokeWidth: 1.8,
      ...(dashed ? { strokeDasharray: "5 3" } : {}),
    });
  const control = nights.some((night) => Number.isFinite(night.control));
  const { lift } = season;
  const cell = (value: number) => Number.isFinite(value) ? value : null;
  return figure({
    height: 300,
    x: { type: "utc", label: null, grid: true },
    y: { label: "mean of the night, degC", grid: true },
    marks: [
      Plot.ruleX(nights.filter(({ fan }) => !fan), {
        x: ({ day }: LoggedNight) => date(day),
        stroke: GREY,
        strokeWidth: 4,
      }),
      Plot.ruleY([0], { stroke: PALETTE.ink, strokeWidth: 1 }),
      line(({ outside }) => outside, PALETTE.cold),
      ...(control ? [line((night) => night.control, PALETTE.latent, true)] : []),
      line(({ inside }) => inside, PALETTE.warm),
    ],
  }, {
    title: "Nights with the store, without, and outdoors",
    alt: lift.control === null
      ? `Means of ${nights.length} nights inside and outdoors; there is no control house.`
      : `Over ${lift.control.count} nights the house with the store is ${
        shown(lift.control.value, "temperatureDifference")
      } warmer than the control house on the mean.`,
    legend: [
      { label: "house with the store", colour: PALETTE.warm, sign: "line" },
      ...(control
        ? [{ label: "control house", colour: PALETTE.latent, sign: "dash" as const }]
        : []),
      { label: "outdoors", colour: PALETTE.cold, sign: "line" },
    ],
    table: dataTable(nights, [
      { head: "night that begins on", value: (row) => row.day },
      { head: "inside", value: (row) => cell(row.inside), kind: "temperature" },
      { head: "control house", value: (row) => cell(row.control), kind: "temperature" },
      { head: "outdoors", value: (row) => cell(row.outside), kind: "temperature" },
    ]),
  });
}

/** House and soil between the tubes, day by day. */
export function storeChart(result: MeasuredResult): DisplayItem {
  const { season } = result;
  if (season === null) return nothing(result);
  const days = season.days.filter(({ store, inside }) => store !== null && inside !== null);
  const line = (of: (day: LoggedDay) => number, stroke: string, dashed = false) =>
    Plot.lineY(days, {
      x: ({ day }: LoggedDay) => date(day),
      y: of,
      stroke,
      strokeWidth: 1.8,
      ...(dashed ? { strokeDasharray: "5 3" } : {}),
    });
  return figure({
    height: 280,
    x: { type: "utc", label: null, grid: true },
    y: { label: "mean of the day, degC", grid: true },
    marks: [
      line(({ inside }) => inside!, PALETTE.warm, true),
      line(({ store }) => store!, PALETTE.soil),
    ],
  }, {
    title: "The soil between the tubes follows the house",
    alt: `Daily means over ${days.length} days of the house and of the probes between the tubes.`,
    legend: [
      { label: "between the tubes", colour: PALETTE.soil, sign: "line" },
      { label: "house", colour: PALETTE.warm, sign: "dash" },
    ],
    table: dataTable(days, [
      { head: "day", value: (row) => row.day },
      { head: "between the tubes", value: (row) => row.store, kind: "temperature" },
      { head: "house", value: (row) => row.inside, kind: "temperature" },
    ]),
  });
}
