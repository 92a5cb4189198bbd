/** Pictures that compare fans, speeds and months. @module */
import * as Plot from "@observablehq/plot";
import type { FanTrial, SpeedTrial } from "../../fan/mod.ts";
import type { FanYear } from "../../store/mod.ts";
import { MONTHS } from "../kit/calendar.ts";
import { dataTable } from "../kit/data_table.ts";
import { shown } from "../kit/reader.ts";
import { type DisplayItem, figure } from "../kit/figure.ts";
import { PALETTE, SERIES_COLOURS } from "../kit/palette.ts";

const DASHES = ["", "8 3", "2 3", "9 3 2 3"];

/** Curves of one and more fans against the same field. */
export function countChart(trials: readonly FanTrial[]): DisplayItem {
  const met = trials.flatMap(({ name, result }) => result === null ? [] : [{ name, result }]);
  const missed = trials.filter(({ result }) => result === null);
  const points = met.map(({ name, result }) => ({
    name,
    airFlow: result.airFlow,
    pressure: result.pressure,
  }));
  const last = points.at(-1);
  const words = points.map(({ name, airFlow }) => `${name} ${shown(airFlow, "airFlow")}`).join(
    ", ",
  );
  const high = Math.max(1, ...points.map((point) => point.pressure)) * 2.4;
  return figure({
    height: 320,
    x: { label: "air flow of the whole field, m³/s", grid: true, zero: true },
    y: { label: "fan static pressure, Pa", grid: true, zero: true },
    marks: [
      ...met.flatMap(({ result }, index) => [
        Plot.lineY(result.summary.curve.filter((point) => point.pressure <= high), {
          x: "airFlow",
          y: "pressure",
          stroke: SERIES_COLOURS[index % SERIES_COLOURS.length]!,
          strokeWidth: 2.3,
          ...(index === 0 ? {} : { strokeDasharray: DASHES[index % DASHES.length]! }),
        }),
        Plot.lineY(
          result.systemCurve.filter((point) =>
            point.pressure <= high && point.airFlow <= 1.15 * (last?.airFlow ?? 1)
          ),
          { x: "airFlow", y: "pressure", stroke: PALETTE.ink, strokeWidth: 0.8 },
        ),
      ]),
      Plot.dot(points, { x: "airFlow", y: "pressure", fill: PALETTE.ink, r: 4.5 }),
      Plot.text(points, {
        x: "airFlow",
        y: "pressure",
        text: "name",
        dy: -12,
        textAnchor: "end",
        dx: -4,
        fill: PALETTE.ink,
        stroke: "white",
        strokeWidth: 4,
      }),
    ],
  }, {
    title: "More fans on the same field",
    alt:
      `Curves of one or more fans against the field: ${words}. Two fans never move twice the air ` +
      "of one, because the field needs more pressure at higher flow.",
    note: missed.map(({ name, reason }) => `${name}: ${reason}`).join(" ") ||
      "Thin lines: system curves, slightly lower with more risers in parallel.",
    legend: met.map(({ name }, index) => ({
      label: name,
      colour: SERIES_COLOURS[index % SERIES_COLOURS.length]!,
      sign: index === 0 ? "line" as const : "dash" as const,
    })),
    table: dataTable(trials, [
      { head: "fans", value: (row) => row.name },
      { head: "air flow", value: (row) => row.result?.airFlow ?? null, kind: "airFlow" },
      { head: "pressure", value: (row) => row.result?.pressure ?? null, kind: "pressure" },
      { head: "power", value: (row) => row.result?.power ?? null, kind: "power", us: false },
    ]),
  });
}

/**
 * Flow and power by speed.
 *
 * @param trials the fans at each speed
 * @param speed of the study, as a share of the rated speed
 */
export function speedChart(
  trials: readonly SpeedTrial[],
  speed: number,
): DisplayItem {
  const rows = trials.flatMap((trial) =>
    trial.result === null
      ? []
      : [{ speed: trial.speed, airFlow: trial.result.airFlow, power: trial.result.power }]
  );
  const x = { label: "speed over rated speed, –", grid: true, zero: true } as const;
  const here = Plot.ruleX([speed], { stroke: PALETTE.latent, strokeDasharray: "4 3" });
  const line = (y: string, stroke: string) => [
    here,
    Plot.lineY(rows, { x: "speed", y, stroke, strokeWidth: 2.5 }),
    Plot.dot(rows, { x: "speed", y, fill: stroke, r: 3 }),
  ];
  return figure([
    {
      height: 210,
      x,
      y: { label: "air flow, m³/s", grid: true, zero: true },
      marks: line("airFlow", PALETTE.air),
    },
    {
      height: 210,
      x,
      y: { label: "electric power, W", grid: true, zero: true },
      marks: line("power", PALETTE.warm),
    },
  ], {
    title: "Slower fans: a little less air, far less power",
    alt: "Air flow is proportional to speed; electric power varies with about its cube.",
    note:
      "By the fan laws; motors and drives lose more at low speed than these laws allow for: measure there.",
    legend: [
      { label: "air flow", colour: PALETTE.air, sign: "line" },
      { label: "power", colour: PALETTE.warm, sign: "line" },
      { label: "this study", colour: PALETTE.latent, sign: "dash" },
    ],
    table: dataTable(trials, [
      { head: "speed", value: (row) => row.speed, kind: "share" },
      { head: "air flow", value: (row) => row.result?.airFlow ?? null, kind: "airFlow" },
      { head: "pressure", value: (row) => row.result?.pressure ?? null, kind: "pressure" },
      { head: "power", value: (row) => row.result?.power ?? null, kind: "power", us: false },
      {
        head: "power per 1 m³/s",
        value: (row) => row.result?.specificPower ?? null,
        kind: "specificPower",
        us: false,
      },
    ]),
  });
}

/** Electricity of the fans by month. */
export function monthsChart({ months, energy, hours }: FanYear): DisplayItem {
  const rows = months.flatMap((row) => [
    { name: MONTHS[row.month]!, energy: row.charge, part: "charge" },
    { name: MONTHS[row.month]!, energy: row.discharge, part: "discharge" },
  ]);
  return figure({
    height: 260,
    x: { label: null, domain: months.map((row) => MONTHS[row.month]!) },
    y: { label: "electricity of the fans, kWh", grid: true },
    marks: [
      Plot.barY(rows, {
        x: "name",
        y: "energy",
        fill: (row: { part: string }) => row.part === "charge" ? PALETTE.warm : PALETTE.cold,
        order: ["charge", "discharge"],
      }),
      Plot.ruleY([0], { stroke: PALETTE.ink }),
    ],
    color: { type: "identity" },
  }, {
    title: "Electricity used by the fans over the year",
    alt: `Electricity of the fans by month, ${shown(energy, "electricity")} in ${
      shown(hours, "hours")
    } of the year.`,
    note: `${shown(energy, "electricity")} in ${shown(hours, "hours")} of running.`,
    legend: [
      { label: "heat charged", colour: PALETTE.warm },
      { label: "heat discharged", colour: PALETTE.cold },
    ],
    table: dataTable(months, [
      { head: "month", value: (row) => MONTHS[row.month]! },
      { head: "heat charged, kWh", value: (row) => row.charge, digits: 0 },
      { head: "heat discharged, kWh", value: (row) => row.discharge, digits: 0 },
      { head: "hours", value: (row) => row.hours, kind: "hours" },
    ]),
  });
}
