/** Pictures of the tubes chapter. @module */
import * as Plot from "@observablehq/plot";
import { type HeatByLength, INLET_SWING, type SummarisedTubes } from "../../tubes/mod.ts";
import type { TubesResult } from "../../tubes/types.ts";
import { dataTable } from "../kit/data_table.ts";
import { shown } from "../kit/reader.ts";
import { type DisplayItem, figure } from "../kit/figure.ts";
import { PALETTE } from "../kit/palette.ts";

/** Effectiveness and pressure over the tube's length: the knee. */
export function lengthChart(result: SummarisedTubes): DisplayItem {
  const rows = result.summary.byLength;
  const here = Plot.ruleX([result.length], { stroke: PALETTE.latent, strokeDasharray: "4 3" });
  const x = { label: "tube length, m", grid: true } as const;
  return figure([
    {
      height: 250,
      x,
      y: { label: "effectiveness, –", grid: true, domain: [0, 1] },
      marks: [
        here,
        Plot.lineY(rows, {
          x: "length",
          y: "effectiveness",
          stroke: PALETTE.warm,
          strokeWidth: 2.5,
        }),
        Plot.dot([result], { x: "length", y: "effectiveness", fill: PALETTE.ink, r: 4 }),
      ],
    },
    {
      height: 210,
      x,
      y: { label: "pressure drop of one tube, Pa", grid: true, zero: true },
      marks: [
        here,
        Plot.lineY(rows, {
          x: "length",
          y: "pressureDrop",
          stroke: PALETTE.cold,
          strokeWidth: 2.5,
        }),
        Plot.dot([result], { x: "length", y: "pressureDrop", fill: PALETTE.ink, r: 4 }),
      ],
    },
  ], {
    title: "What one more metre of tube gives, and what it costs",
    alt: `Effectiveness rises ever more slowly with length, pressure linearly. At the ` +
      `study's ${shown(result.length, "length")} they are ${
        shown(result.effectiveness, "share")
      } and ${shown(result.pressureDrop, "pressure")}.`,
    legend: [
      { label: "effectiveness", colour: PALETTE.warm, sign: "line" },
      { label: "pressure drop", colour: PALETTE.cold, sign: "line" },
      { label: "this study", colour: PALETTE.latent, sign: "dash" },
    ],
    note: "Dry air, wall at uniform temperature, same flow per tube.",
    table: dataTable(rows.filter((_, index) => index % 4 === 0), [
      { head: "length", value: (row) => row.length, kind: "length" },
      { head: "effectiveness", value: (row) => row.effectiveness, kind: "share" },
      { head: "gain of one more metre", value: (row) => row.gainPerMetre, kind: "sharePrecise" },
      { head: "pressure drop", value: (row) => row.pressureDrop, kind: "pressure" },
    ]),
  });
}

/** Pressure and effectiveness at several air flows; the rows come from the tubes chapter itself. */
export function speedChart(rows: readonly TubesResult[], study: TubesResult): DisplayItem {
  const x = { label: "air speed in the tubes, m/s", grid: true, zero: true } as const;
  const here = Plot.ruleX([study.airSpeed], { stroke: PALETTE.latent, strokeDasharray: "4 3" });
  const line = (y: string, stroke: string) => [
    here,
    Plot.lineY(rows, { x: "airSpeed", y, stroke, strokeWidth: 2.5 }),
    Plot.dot(rows, { x: "airSpeed", y, fill: stroke, r: 3 }),
  ];
  return figure([
    {
      height: 230,
      x,
      y: { label: "pressure drop of one tube, Pa", grid: true, zero: true },
      marks: line("pressureDrop", PALETTE.cold),
    },
    {
      height: 210,
      x,
      y: { label: "effectiveness, –", grid: true, domain: [0, 1] },
      marks: line("effectiveness", PALETTE.warm),
    },
  ], {
    title: "Faster air: pressure rises fast, effectiveness falls slowly",
    note: "Wall at uniform temperature: in the ground the soil beside the tube warms too, and " +
      "faster air loses more than this shows.",
    alt: `Pressure drop grows nearly with the square of the air speed while effectiveness falls. ` +
      `The study runs at ${shown(study.airSpeed, "speed")}.`,
    legend: [
      { label: "pressure drop", colour: PALETTE.cold, sign: "line" },
      { label: "effectiveness", colour: PALETTE.warm, sign: "line" },
      { label: "this study", colour: PALETTE.latent, sign: "dash" },
    ],
    table: dataTable(rows, [
      { head: "air speed", value: (row) => row.airSpeed, kind: "speed" },
      { head: "flow of one tube", value: (row) => row.flowPerTube, kind: "tubeFlow" },
      { head: "pressure drop", value: (row) => row.pressureDrop, kind: "pressure" },
      { head: "effectiveness", value: (row) => row.effectiveness, kind: "share" },
    ]),
  });
}

/**
 * What the next metre of tube brings, for waves of several lengths in time.
 *
 * @param studies heat by length of tube, one for each wave
 * @param tubes result of the tubes chapter
 * @param swing amplitude of the air at the inlet, K
 */
export function marginalHeatChart(
  studies: readonly HeatByLength[],
  tubes: TubesResult,
  swing: number = INLET_SWING,
): DisplayItem {
  const colours = [PALETTE.warm, PALETTE.cold, PALETTE.latent];
  const label = (days: number) => days === 1 ? "daily wave" : `${days}-day wave`;
  return figure({
    height: 280,
    x: { label: "tube length, m", grid: true, zero: true },
    y: { label: "heat from the next metre, kWh a day", grid: true, zero: true },
    marks: [
      Plot.ruleX([tubes.length], { stroke: PALETTE.latent, strokeDasharray: "4 3" }),
      ...studies.map((study, index) =>
        Plot.lineY(study.rows, {
          x: "length",
          y: "marginalHeatPerDay",
          stroke: colours[index]!,
          strokeWidth: 2.5,
          ...(index === 0 ? {} : { strokeDasharray: "7 3" }),
        })
      ),
    ],
  }, {
    title: "What the next metre adds",
    alt: `Heat stored by one more metre of tube, by length, for inlet air that swings by ±${
      shown(swing, "temperatureDifference", 0)
    } about the soil temperature. It falls with length: the air arrives ever closer to soil temperature.`,
    note: `One tube with its share of the soil; inlet air swings by ±${
      shown(swing, "temperatureDifference", 0)
    } about the soil temperature (common practice, no source).`,
    legend: [
      ...studies.map((study, index) => ({
        label: label(study.days),
        colour: colours[index]!,
        sign: index === 0 ? "line" as const : "dash" as const,
      })),
      { label: "this study", colour: PALETTE.latent, sign: "dash" },
    ],
    table: dataTable(studies[0]!.rows.filter((_, index) => index % 3 === 2), [
      { head: "length", value: (row) => row.length, kind: "length" },
      { head: "heat of one tube, kWh a day", value: (row) => row.heat, digits: 2 },
      { head: "next metre, kWh a day", value: (row) => row.marginalHeatPerDay, digits: 4 },
      { head: "pressure drop", value: (row) => row.pressureDrop, kind: "pressure" },
    ]),
  });
}
