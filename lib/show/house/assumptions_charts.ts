/** What the screening year hangs on: leaf area, floor, snow, as bars and in numbers. @module */
import * as Plot from "@observablehq/plot";
import type { AssumedYear } from "../../house/mod.ts";
import { shown } from "../kit/reader.ts";
import { type DisplayItem, figure } from "../kit/figure.ts";
import { PALETTE } from "../kit/palette.ts";
import { table } from "../kit/table.ts";

const COLOURS: Readonly<Record<AssumedYear["about"], string>> = {
  plan: PALETTE.ink,
  leaves: PALETTE.soil,
  floor: PALETTE.warm,
  snow: PALETTE.cold,
  light: PALETTE.air,
};

const LEGEND: readonly (readonly [AssumedYear["about"], string])[] = [
  ["plan", "as planned"],
  ["leaves", "leaf area"],
  ["floor", "what lies on the floor"],
  ["snow", "snow on the glazing"],
  ["light", "light inside"],
];

/** Frost hours of the unheated house under each assumption, with its coldest hour. */
export function assumptionsChart(years: readonly AssumedYear[]): DisplayItem {
  const sorted = years.toSorted((a, b) => a.hoursBelowFreezing - b.hoursBelowFreezing);
  const [fewest, most] = [sorted[0]!, sorted.at(-1)!];
  const hours = (year: AssumedYear) => shown(year.hoursBelowFreezing, "hours");
  return figure({
    height: 62 + years.length * 30,
    marginLeft: 190,
    marginTop: 10,
    x: {
      domain: [0, Math.max(1, most.hoursBelowFreezing) * 1.6],
      label: "below freezing in the screening year, h",
      grid: true,
    },
    y: { domain: years.map((year) => year.name), label: null, padding: 0.3 },
    marks: [
      Plot.barX(years, {
        x: "hoursBelowFreezing",
        y: "name",
        fill: (year: AssumedYear) => COLOURS[year.about],
      }),
      Plot.text(years, {
        x: "hoursBelowFreezing",
        y: "name",
        text: (year: AssumedYear) =>
          `${hours(year)}; coldest hour ${shown(year.coldestHour, "temperature")}`,
        textAnchor: "start",
        dx: 5,
      }),
      Plot.ruleX([0], { stroke: PALETTE.ink }),
    ],
  }, {
    title: "What is not known well, and what it does to the frost hours",
    legend: LEGEND.filter(([about]) => years.some((year) => year.about === about))
      .map(([about, label]) => ({ label, colour: COLOURS[about] })),
    alt: `Hours below freezing of the unheated house in its screening year: from ${
      hours(fewest)
    } with "${fewest.name}" to ${hours(most)} with "${most.name}"; as planned ${hours(years[0]!)}.`,
    note: "Each on its own, all else as planned; no store.",
  });
}

/** The same in numbers, with the heat to hold the set point. */
export function assumptionsTable(years: readonly AssumedYear[]): DisplayItem {
  return table(years, [
    { head: "assumed", value: (row) => row.name },
    { head: "coldest hour, screening year", value: (row) => row.coldestHour, kind: "temperature" },
    {
      head: "below freezing, screening year",
      value: (row) => row.hoursBelowFreezing,
      kind: "hours",
    },
    {
      head: "below the crop's killing limit, screening year",
      value: (row) => row.hoursBelowCropLimit,
      kind: "hours",
    },
    {
      head: "heat to hold the set point, screening year",
      value: (row) => row.heatDemand,
      kind: "energy",
      us: false,
    },
  ]);
}
