/** The beds through the year: what seeds and roots feel of the store. @module */
import * as Plot from "@observablehq/plot";
import type { BedYear, RootZone } from "../../store/mod.ts";
import { axisDate, dayName, monthTicks } from "../kit/calendar.ts";
import { dataTable } from "../kit/data_table.ts";
import { type DisplayItem, figure } from "../kit/figure.ts";
import { PALETTE } from "../kit/palette.ts";
import { shown, shownBoth, shownRange } from "../kit/reader.ts";
import { paragraph, table } from "../kit/table.ts";

const WHEN = "Mean across the house halfway along the tubes, once a week at midnight";

/**
 * Temperature of the beds at one depth, with the store and with the fan always off.
 *
 * @param zone of the extra `rootZone`
 * @param place index of the depth in it
 */
export function rootZoneChart(zone: RootZone, place = 0): DisplayItem {
  const { days, crop: { name, sprouting } } = zone;
  const { depth, withStore, noStore } = zone.depths[place]!;
  const line = (values: readonly number[], stroke: string, dashed: boolean) =>
    Plot.lineY(days.map((day, k) => ({ at: axisDate(day * 24), value: values[k]! })), {
      x: "at",
      y: "value",
      stroke,
      strokeWidth: 1.8,
      ...(dashed ? { strokeDasharray: "5 3" } : {}),
    });
  return figure({
    height: 280,
    x: { type: "utc", label: null, grid: true, ticks: monthTicks(), tickFormat: "%b" },
    y: { label: `soil ${shown(depth, "depth")} deep, degC`, grid: true },
    marks: [
      Plot.ruleY(sprouting === null ? [] : [sprouting.least, sprouting.low], {
        stroke: PALETTE.ink,
        strokeWidth: 1,
      }),
      line(withStore.temperatures, PALETTE.warm, false),
      line(noStore.temperatures, PALETTE.ink, true),
    ],
  }, {
    title: `The beds, ${shownBoth(depth, "depth")} deep`,
    alt: `Soil ${shown(depth, "depth")} below the beds by week: at lowest ${
      shown(withStore.coldest, "temperature")
    } with the store, ${shown(noStore.coldest, "temperature")} with the fan always off.`,
    note: sprouting === null
      ? `${WHEN}.`
      : `${WHEN}. Lines across: seeds of ${name} come up above ${
        shownBoth(sprouting.least, "temperature")
      }, well from ${shownBoth(sprouting.low, "temperature")}.`,
    legend: [
      { label: "with the store", colour: PALETTE.warm, sign: "line" },
      { label: "fan always off", colour: PALETTE.ink, sign: "dash" },
    ],
    table: dataTable(days.map((day, k) => ({ day, k })), [
      { head: "day", value: ({ day }) => dayName(day) },
      { head: "with the store", value: ({ k }) => withStore.temperatures[k]!, kind: "temperature" },
      { head: "fan always off", value: ({ k }) => noStore.temperatures[k]!, kind: "temperature" },
    ]),
  });
}

/** Both depths in numbers: the dark months, the coldest week, weeks too cold for seeds. */
export function rootZoneTable(zone: RootZone): DisplayItem {
  const { sprouting } = zone.crop;
  type Row = BedYear & { readonly depth: number; readonly way: string };
  const rows = zone.depths.flatMap(({ depth, withStore, noStore }): Row[] => [
    { depth, way: "with the store", ...withStore },
    { depth, way: "fan always off", ...noStore },
  ]);
  return table(rows, [
    { head: "depth", value: (row) => row.depth, kind: "depth" },
    { head: "", value: (row) => row.way },
    { head: "mean, November to February", value: (row) => row.winterMean, kind: "temperature" },
    { head: "coldest week", value: (row) => row.coldest, kind: "temperature" },
    ...(sprouting === null ? [] : [{
      head: `weeks below ${shown(sprouting.low, "temperature")}`,
      value: (row: Row) => row.weeksTooCold,
      digits: 0,
    }]),
  ], "Soil of the beds in the free-running house");
}

/** What the store does for roots, in words. */
export function rootZoneWords(zone: RootZone): DisplayItem {
  const { crop: { name, sprouting } } = zone;
  const bed = zone.depths.at(-1)!;
  const seeds = sprouting === null
    ? ""
    : ` Seeds of ${name} come up soon and evenly at ${
      shownRange(sprouting.low, sprouting.high, "temperature")
    } (tables of extension services after Harrington and Minges 1954).`;
  return paragraph(
    `From November to February the soil ${shownBoth(bed.depth, "depth")} deep is ${
      shownBoth(Math.abs(bed.winterGain), "temperatureDifference")
    } ${
      bed.winterGain >= 0 ? "warmer" : "colder"
    } with the store than with the fan always off.${seeds} Warm ` +
      "roots help a crop to take up water and to grow on after a cold night; they do not keep frost off " +
      "its leaves, which follow the air. Roots that are warm in a dark, cold house make soft growth " +
      "(common practice, no source).",
  );
}
