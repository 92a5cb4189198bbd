/** Pictures of the store chapter: other houses and other stores beside the one planned. @module */
import * as Plot from "@observablehq/plot";
import type { ComparedVariant, HouseWay } from "../../store/mod.ts";
import { dataTable } from "../kit/data_table.ts";
import { shown, shownNumber } from "../kit/reader.ts";
import { durationCurve } from "../kit/duration.ts";
import { type DisplayItem, figure } from "../kit/figure.ts";
import { PALETTE } from "../kit/palette.ts";
import { type Point, thin } from "../kit/thin.ts";
import { freezeText, hoursBelow, LIMITS, VARIANT_COLUMNS, wayColumns } from "./ways_columns.ts";

/** One colour a house: cold blue without anything, warm with the store, broken without curtain. */
function wayStyle(way: HouseWay): { readonly colour: string; readonly dashed: boolean } {
  return { colour: way.store ? PALETTE.warm : PALETTE.cold, dashed: !way.curtain };
}

/** The four houses on one picture: how cold for how long, and the heat a heater must still give. */
export function waysChart(ways: readonly HouseWay[]): DisplayItem {
  const coldHours = Math.max(48, ...ways.map((way) => hoursBelow(way, 5)));
  const hoursShown = Math.min(8760, coldHours);
  const curves = ways.map((way) => ({
    ...wayStyle(way),
    label: way.name,
    points: thin(durationCurve(way.year.airTemperature).slice(0, hoursShown), 500),
  }));
  const most = Math.max(1, ...ways.map((way) => way.backupHeat));
  const words = (way: HouseWay) =>
    `${shown(way.backupHeat, "energy")}; coldest ${shown(way.coldestHour, "temperature")}; ${
      shown(way.hoursBelowFreezing, "hours")
    } of frost, from ${freezeText(way)}`;
  return figure([
    {
      height: 300,
      x: { label: "coldest hours of the year, h", domain: [0, hoursShown] },
      y: { label: "house air, unheated, degC", grid: true },
      marks: [
        Plot.ruleY(LIMITS, { stroke: PALETTE.ink, strokeWidth: 0.8, strokeDasharray: "2 3" }),
        ...curves.map((curve) =>
          Plot.lineY(curve.points, {
            x: "x",
            y: (point: Point) => point.y,
            stroke: curve.colour,
            strokeWidth: 2.2,
            ...(curve.dashed ? { strokeDasharray: "6 4" } : {}),
          })
        ),
      ],
    },
    {
      height: 66 + ways.length * 30,
      marginLeft: 140,
      x: {
        label: "back-up heat to hold the set point, kWh a year",
        domain: [0, most * 2.7],
        ticks: 4,
      },
      y: { domain: ways.map((way) => way.name), label: null, padding: 0.3 },
      marks: [
        Plot.barX(ways, {
          x: "backupHeat",
          y: "name",
          fill: (way: HouseWay) => wayStyle(way).colour,
          fillOpacity: (way: HouseWay) => way.curtain ? 1 : 0.6,
        }),
        Plot.text(ways, { x: "backupHeat", y: "name", text: words, textAnchor: "start", dx: 5 }),
        Plot.ruleX([0], { stroke: PALETTE.ink }),
      ],
    },
  ], {
    title: "Four houses: with and without store, with and without curtain",
    alt: `Coldest hour, first freeze, hours below limits and back-up heat of four houses. ${
      ways.map((way) => `${way.name}: ${words(way)}`).join(". ")
    }.`,
    note:
      "Each house on soil that has settled. A study without a curtain is given a typical one here.",
    legend: curves.map((curve) => ({
      label: curve.label,
      colour: curve.colour,
      sign: curve.dashed ? "dash" : "line",
    })),
    table: dataTable(ways, wayColumns()),
  });
}

/** What each change of the store does to the back-up heat and to the coldest hour. */
export function variantsChart(variants: readonly ComparedVariant[]): DisplayItem {
  const rows = variants.slice(1).map((row) => ({
    name: row.name,
    saved: row.saved,
    gain: row.coldestHourGain,
    resolved: { saved: row.savedResolved, gain: row.gainResolved },
  }));
  const names = rows.map((row) => row.name);
  const bars = (
    value: "saved" | "gain",
    label: string,
    kind: "energy" | "temperatureDifference",
  ) => {
    const least = Math.min(0, ...rows.map((row) => row[value]));
    const most = Math.max(0, ...rows.map((row) => row[value]));
    const span = Math.max(most - least, kind === "energy" ? 1 : 0.1);
    const signed = (row: typeof rows[number]) => {
      if (!row.resolved[value]) return "too small to tell";
      const text = shownNumber(row[value], kind, kind === "energy" ? 0 : 2);
      return row[value] > 0 && Number(text) !== 0 ? `+${text}` : text;
    };
    const side = (positive: boolean) =>
      Plot.text(rows.filter((row) => (row[value] >= 0) === positive), {
        x: (row: typeof rows[number]) => row.resolved[value] ? row[value] : 0,
        y: "name",
        text: signed,
        textAnchor: positive ? "start" : "end",
        dx: positive ? 4 : -4,
      });
    return {
      height: 62 + rows.length * 24,
      marginLeft: 250,
      marginTop: 10,
      x: { label, grid: true, domain: [least - 0.15 * span, most + 0.15 * span] },
      y: { domain: names, label: null, padding: 0.3 },
      marks: [
        Plot.barX(rows.filter((row) => row.resolved[value]), {
          x: value,
          y: "name",
          fill: (row: typeof rows[number]) => row[value] >= 0 ? PALETTE.warm : PALETTE.cold,
        }),
        side(true),
        side(false),
        Plot.ruleX([0], { stroke: PALETTE.ink }),
      ],
    };
  };
  return figure([
    bars("saved", "back-up heat saved compared with the plan, kWh a year", "energy"),
    bars("gain", "rise of the coldest hour compared with the plan, K", "temperatureDifference"),
  ], {
    title: "The same store built or run otherwise",
    alt: `Back-up heat saved and rise of the coldest hour compared with the store as planned. ${
      rows.map((row) =>
        `${row.name}: ${row.resolved.saved ? shown(row.saved, "energy") : "too small to tell"}, ${
          row.resolved.gain ? shown(row.gain, "temperatureDifference", 2) : "too small to tell"
        }`
      ).join(". ")
    }.`,
    note:
      "Air flow and fan power are as planned in every row. The differences come from years with fewer " +
      "slices along the tubes; what those slices cannot resolve is called too small to tell.",
    table: dataTable(variants, VARIANT_COLUMNS),
  });
}
