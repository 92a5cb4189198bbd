/** Pictures of the light on and through the glazing. @module */
import * as Plot from "@observablehq/plot";
import type { GlazedPlanes, GlazingAngles, PlaneLight } from "../../house/mod.ts";
import { MONTHS } from "../kit/calendar.ts";
import { dataTable } from "../kit/data_table.ts";
import { showNumber } from "../../units/mod.ts";
import { shown } from "../kit/reader.ts";
import { type DisplayItem, figure } from "../kit/figure.ts";
import type { LegendEntry } from "../kit/picture.ts";
import { PALETTE } from "../kit/palette.ts";

/** Line colours of planes and glazings in the order they come; the ink is kept for the study's own. */
const COLOURS = [PALETTE.warm, PALETTE.cold, PALETTE.latent, PALETTE.air, PALETTE.soil] as const;
const MOST_PLANES = COLOURS.length;

/** Radiation on the glazed planes by month: the model used, and an uniform sky beside it. */
export function planeMonthsChart(light: GlazedPlanes): DisplayItem {
  const { planes, all } = light;
  const largest = [...planes].sort((a, b) => b.area - a.area).slice(0, MOST_PLANES);
  const drawn = planes.filter((plane) => largest.includes(plane));
  const colour = (plane: PlaneLight) => COLOURS[drawn.indexOf(plane)]!;
  const lines = (kind: "hayDavies" | "isotropic", dash: string) =>
    drawn.map((plane) =>
      Plot.line(plane.months, {
        x: (_: unknown, month: number) => MONTHS[month],
        y: kind,
        stroke: colour(plane),
        strokeWidth: kind === "hayDavies" ? 2.5 : 1.5,
        ...(dash === "" ? {} : { strokeDasharray: dash }),
      })
    );
  const legend: LegendEntry[] = drawn.map((plane) => ({
    label: planeLabel(plane),
    colour: colour(plane),
    sign: "line",
  }));
  const masked = planes.some(({ months }) => months.some((one) => one.open > one.hayDavies + 0.05));
  return figure({
    height: 300,
    x: { domain: MONTHS, label: null },
    y: {
      label: "radiation on the plane, kWh/m² per month",
      grid: true,
      domain: [0, highest(planes)],
    },
    marks: [...lines("isotropic", "2 3"), ...lines("hayDavies", "")],
  }, {
    title: "Radiation on the glazed planes, month by month",
    alt: planesAlt(drawn),
    note: (planes.length > drawn.length ? "The largest planes are shown and listed. " : "") +
      (masked
        ? `Lines allow for the study's skyline, which blocks ${
          percent(light.winterTaken)
        } of the light on ` +
          "all glazing from December to February; the table also gives the open site."
        : "The study has no skyline, or none that blocks light: lines are for an open site."),
    legend: [...legend, {
      label: "dotted: uniformly bright sky",
      colour: PALETTE.ink,
      sign: "dash",
    }],
    table: planeMonthsTable(drawn, all, masked),
  });
}

function highest(planes: readonly PlaneLight[]): number {
  return 20 *
    Math.ceil(
      Math.max(...planes.flatMap((plane) => plane.months.map((one) => one.hayDavies))) / 20,
    );
}

function planeLabel({ name, plane }: PlaneLight): string {
  return `${name} (tilt ${showNumber(plane.tilt, 0)}°, facing ${showNumber(plane.azimuth, 0)}°)`;
}

function planesAlt(planes: readonly PlaneLight[]): string {
  const winter = planes.map(({ name, winter }) =>
    `${name} ${shown(winter.hayDavies, "radiation", 0)}`
  );
  return `Radiation on the glazed planes by month; December to February: ${winter.join(", ")}.`;
}

function planeMonthsTable(
  planes: readonly PlaneLight[],
  all: PlaneLight,
  masked: boolean,
): ReturnType<typeof dataTable> {
  const kinds = [
    ["hayDavies", "bright around the sun"],
    ["isotropic", "uniform sky"],
    ...(masked ? [["open", "open site"] as const] : []),
  ] as const;
  const named = [
    ...planes.map((plane) => [planeLabel(plane), plane] as const),
    [all.name, all] as const,
  ];
  return dataTable([...MONTHS, "year"], [
    { head: "month", value: (name) => name },
    ...named.flatMap(([label, plane]) =>
      kinds.map(([kind, words]) => ({
        head: `${label}, ${words}, kWh/m²`,
        value: (_: string, row: number) => (plane.months[row] ?? plane.year)[kind],
        digits: 0,
      }))
    ),
  ]);
}

const DRAWN_ANGLES = Array.from({ length: 46 }, (_, index) => index * 2);
const TABLE_ANGLES = [0, 20, 40, 50, 60, 70, 75, 80, 85];

/** Share of the beam that glazings let through at each angle, the study's own glazing first. */
export function glazingAngleChart(all: readonly GlazingAngles[]): DisplayItem {
  const own = all[0]!;
  const style = (index: number) => ({
    stroke: index === 0 ? PALETTE.ink : COLOURS[(index - 1) % COLOURS.length]!,
    strokeWidth: index === 0 ? 3 : 2,
    ...(index === 0 ? {} : { strokeDasharray: ["7 3", "2 3", "9 3 2 3"][(index - 1) % 3]! }),
  });
  return figure({
    height: 300,
    x: {
      label: "angle between the sun and the normal of the glazing, degrees",
      domain: [0, 90],
      grid: true,
    },
    y: { label: "transmittance, –", domain: [0, 1], grid: true },
    marks: all.map(({ beam }, index) =>
      Plot.line(DRAWN_ANGLES.map((angle) => [angle, beam[angle]!] as const), style(index))
    ),
  }, {
    title: "What clear glazing transmits at each angle",
    alt: `The study's glazing, ${own.glazing.name}, transmits ${percent(own.beam[0]!)} at normal ` +
      `incidence, ${percent(own.beam[60]!)} at 60 degrees and ${
        percent(own.beam[80]!)
      } at 80 degrees.`,
    note: "Clean sheets only; frame, dirt and ageing take more (the light factor in the last row).",
    legend: all.map(({ glazing }, index) => ({
      label: index === 0 ? `${glazing.name} (the study's)` : glazing.name,
      colour: style(index).stroke,
      sign: index === 0 ? "line" as const : "dash" as const,
    })),
    table: glazingTable(all),
  });
}

function glazingTable(all: readonly GlazingAngles[]): ReturnType<typeof dataTable> {
  const rows: readonly (readonly [string, (one: GlazingAngles) => number])[] = [
    ...TABLE_ANGLES.map((angle) =>
      [`beam at ${angle} degrees`, (one: GlazingAngles) => one.beam[angle]!] as const
    ),
    ["uniform diffuse light", ({ diffuse }) => diffuse],
    ["light factor: frame, dirt, ageing", ({ glazing }) => glazing.lightFactor],
  ];
  return dataTable(rows, [
    { head: "light", value: ([name]) => name },
    ...all.map((one) => ({
      head: `${one.glazing.name}, –`,
      value: ([, of]: (typeof rows)[number]) => of(one),
      digits: 2,
    })),
  ]);
}

function percent(share: number): string {
  return `${showNumber(share * 100, 0)} %`;
}
