/** Pictures of the soil chapter. @module */
import * as Plot from "@observablehq/plot";
import type { GroundField, SoilResult } from "../../soil/types.ts";
import { MONTH_MIDDLES, MONTHS } from "../kit/calendar.ts";
import { classLegend, classOf, type ColourClasses } from "../kit/carpet.ts";
import { type Block, blocksMark } from "../kit/blocks.ts";
import { groundClasses } from "../kit/field_classes.ts";
import { dataTable } from "../kit/data_table.ts";
import { shown } from "../kit/reader.ts";
import { type DisplayItem, figure } from "../kit/figure.ts";
import { PALETTE } from "../kit/palette.ts";

// January cold, April air, July warm, October soil: one sign a season
const SHOWN = [
  { month: 0, colour: PALETTE.cold, dash: "" },
  { month: 3, colour: PALETTE.air, dash: "7 3" },
  { month: 6, colour: PALETTE.warm, dash: "" },
  { month: 9, colour: PALETTE.soil, dash: "2 3" },
] as const;

/** A point of a temperature profile. */
interface ProfilePoint {
  readonly depth: number;
  readonly temperature: number;
}

/** Ground temperature over depth, all months, four of them named. */
export function profileChart(result: SoilResult): DisplayItem {
  const profile = (month: number): ProfilePoint[] =>
    result.depths.map((depth, index) => ({
      depth,
      temperature: result.monthly[month]![index]!,
    }));
  const line = (month: number, stroke: string, strokeWidth: number, dash: string) =>
    Plot.line(profile(month), {
      x: "temperature",
      y: "depth",
      stroke,
      strokeWidth,
      ...(dash === "" ? {} : { strokeDasharray: dash }),
    });
  return figure({
    height: 380,
    x: { label: "ground temperature, degC", grid: true },
    y: { label: "depth, m", reverse: true, grid: true },
    marks: [
      ...MONTHS.map((_, month) => line(month, "#c9cdd3", 1, "")),
      Plot.ruleX([0], { stroke: PALETTE.ink }),
      Plot.ruleY([result.tubeDepth], { stroke: PALETTE.latent, strokeDasharray: "4 3" }),
      ...SHOWN.map((shown) => line(shown.month, shown.colour, 2.5, shown.dash)),
    ],
  }, {
    title: "Undisturbed ground: temperature against depth, month by month",
    alt: `Ground temperature profiles for the twelve months. At the tube depth of ${
      shown(result.tubeDepth, "depth")
    } the ground varies between ${shown(result.temperatureAtTubeDepthMin, "temperature")} and ${
      shown(result.temperatureAtTubeDepthMax, "temperature")
    }.`,
    legend: [
      ...SHOWN.map((shown) => ({
        label: MONTHS[shown.month]!,
        colour: shown.colour,
        sign: shown.dash === "" ? "line" as const : "dash" as const,
      })),
      { label: "other months", colour: "#c9cdd3", sign: "line" },
      { label: "tube depth", colour: PALETTE.latent, sign: "dash" },
    ],
    table: dataTable(result.depths, [
      { head: "depth", value: (depth) => depth, kind: "depth" },
      ...MONTHS.map((name, month) => ({
        head: name,
        value: (_: number, index: number) => result.monthly[month]![index]!,
        kind: "temperature" as const,
        us: false,
      })),
    ]),
  });
}

const BLOCK_DAYS = 5;

/** Blocks of the map: each depth of the field reaches halfway to its neighbours. */
function groundBlocks(field: GroundField, classes: ColourClasses): Block[] {
  const depths = field.depths;
  const edge = (index: number) => (depths[index]! + depths[index + 1]!) / 2;
  return depths.flatMap((depth, index) => {
    const top = index === 0 ? depth : edge(index - 1);
    const bottom = index === depths.length - 1 ? depth : edge(index);
    return Array.from({ length: 365 / BLOCK_DAYS }, (_, block) => {
      const day = block * BLOCK_DAYS;
      const value = field.temperature[index]![day + 2]!;
      const colour = classes.colours[classOf(value, classes.thresholds)]!;
      return { left: day, right: day + BLOCK_DAYS, bottom, top, colour };
    });
  });
}

/** Depth and day as a field of colour classes. */
export function fieldChart(result: SoilResult): DisplayItem {
  const deepest = Math.max(...result.field.depths);
  const classes = groundClasses(result.field.temperature);
  return figure({
    height: 300,
    x: {
      label: null,
      domain: [0, 365],
      ticks: [...MONTH_MIDDLES],
      tickFormat: (day: number) => MONTHS[Math.floor(day / 30.5)]!,
      tickSize: 0,
    },
    y: { label: "depth, m", reverse: true, domain: [0, deepest] },
    marks: [
      blocksMark(groundBlocks(result.field, classes)),
      Plot.ruleY([result.tubeDepth], {
        stroke: PALETTE.latent,
        strokeWidth: 2,
        strokeDasharray: "4 3",
      }),
    ],
  }, {
    title: "The ground through the year: the season arrives later and weaker with depth",
    alt: "Map of ground temperature by day of the year and depth. The cold reaches the tube " +
      "depth weeks after the coldest day at the surface.",
    legend: [
      ...classLegend(classes, "degC"),
      { label: "tube depth", colour: PALETTE.latent, sign: "dash" },
    ],
  });
}
