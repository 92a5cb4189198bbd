/** Pictures of the light on and through the glazing. @module */
import * as Plot from "@observablehq/plot";
import { type Glazing, glazingOptics, type PlaneMonths } from "../../house/mod.ts";
import { beamTransmittance, diffuseTransmittance } from "../../sun/mod.ts";
import { MONTHS } from "../kit/calendar.ts";
import { dataTable } from "../kit/data_table.ts";
import { showNumber, showSi } from "../../units/mod.ts";
import { type DisplayItem, figure } from "../kit/figure.ts";
import type { LegendEntry } from "../kit/picture.ts";
import { PALETTE } from "../kit/palette.ts";

/** Line colours of planes and glazings in the order they come; the ink is kept for the study's own. */
const COLOURS = [PALETTE.warm, PALETTE.cold, PALETTE.latent, PALETTE.air, PALETTE.soil] as const;
const MOST_PLANES = COLOURS.length;
const WINTER = [11, 0, 1];
const ALL_GLAZING = "area-weighted mean of all glazing";

/** Radiation on the glazed planes by month: the model used, and an uniform sky beside it. */
export function planeMonthsChart(planes: readonly PlaneMonths[]): DisplayItem {
  const largest = [...planes].sort((a, b) => b.area - a.area).slice(0, MOST_PLANES);
  const drawn = planes.filter((plane) => largest.includes(plane));
  const colour = (plane: PlaneMonths) => COLOURS[drawn.indexOf(plane)]!;
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
          winterTaken(planes)
        } of the light on ` +
          "all glazing from December to February; the table also gives the open site."
        : "The study has no skyline, or none that blocks light: lines are for an open site."),
    legend: [...legend, {
      label: "dotted: uniformly bright sky",
      colour: PALETTE.ink,
      sign: "dash",
    }],
    table: planeMonthsTable([...drawn, allGlazing(planes)], masked),
  });
}

function highest(planes: readonly PlaneMonths[]): number {
  return 20 *
    Math.ceil(
      Math.max(...planes.flatMap((plane) => plane.months.map((one) => one.hayDavies))) / 20,
    );
}

/** Mean over all glazing by area; its plane means nothing. */
function allGlazing(planes: readonly PlaneMonths[]): PlaneMonths {
  const area = planes.reduce((sum, plane) => sum + plane.area, 0);
  const mean = (month: number, kind: keyof PlaneMonths["months"][number]) =>
    planes.reduce((sum, plane) => sum + plane.area * plane.months[month]![kind], 0) / area;
  return {
    name: ALL_GLAZING,
    plane: { tilt: 0, azimuth: 0 },
    area,
    months: MONTHS.map((_, month) => ({
      hayDavies: mean(month, "hayDavies"),
      isotropic: mean(month, "isotropic"),
      open: mean(month, "open"),
    })),
  };
}

/** Share of the winter light on all glazing that the skyline takes. */
function winterTaken(planes: readonly PlaneMonths[]): string {
  const { months } = allGlazing(planes);
  const winter = (kind: "hayDavies" | "open") =>
    WINTER.reduce((all, month) => all + months[month]![kind], 0);
  return percent(1 - winter("hayDavies") / winter("open"));
}

function planeLabel({ name, plane }: PlaneMonths): string {
  if (name === ALL_GLAZING) return name;
  return `${name} (tilt ${showNumber(plane.tilt, 0)}°, facing ${showNumber(plane.azimuth, 0)}°)`;
}

function planesAlt(planes: readonly PlaneMonths[]): string {
  const winter = planes.map((plane) => {
    const sum = WINTER.reduce((all, month) => all + plane.months[month]!.hayDavies, 0);
    return `${plane.name} ${showSi(sum, "radiation", 0)}`;
  });
  return `Radiation on the glazed planes by month; December to February: ${winter.join(", ")}.`;
}

function planeMonthsTable(
  planes: readonly PlaneMonths[],
  masked: boolean,
): ReturnType<typeof dataTable> {
  const kinds = [
    ["hayDavies", "bright around the sun"],
    ["isotropic", "uniform sky"],
    ...(masked ? [["open", "open site"] as const] : []),
  ] as const;
  const sums = (plane: PlaneMonths, kind: "hayDavies" | "isotropic" | "open", row: number) =>
    row < 12 ? plane.months[row]![kind] : plane.months.reduce((all, month) => all + month[kind], 0);
  return dataTable([...MONTHS, "year"], [
    { head: "month", value: (name) => name },
    ...planes.flatMap((plane) =>
      kinds.map(([kind, words]) => ({
        head: `${planeLabel(plane)}, ${words}, kWh/m²`,
        value: (_: string, row: number) => sums(plane, kind, row),
        digits: 0,
      }))
    ),
  ]);
}

const ANGLES = Array.from({ length: 46 }, (_, index) => index * 2);
const TABLE_ANGLES = [0, 20, 40, 50, 60, 70, 75, 80, 85];

/**
 * Share of the beam that glazings let through at each angle.
 *
 * @param own glazing of the study
 * @param others glazings beside it
 */
export function glazingAngleChart(own: Glazing, others: readonly Glazing[]): DisplayItem {
  const all = [own, ...others.filter(({ id }) => id !== own.id)];
  const through = (glazing: Glazing, angle: number) =>
    beamTransmittance(glazingOptics(glazing), angle);
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
    marks: all.map((glazing, index) =>
      Plot.line(ANGLES.map((angle) => [angle, through(glazing, angle)] as const), style(index))
    ),
  }, {
    title: "What clear glazing transmits at each angle",
    alt: `The study's glazing, ${own.name}, transmits ${percent(through(own, 0))} at normal ` +
      `incidence, ${percent(through(own, 60))} at 60 degrees and ${
        percent(through(own, 80))
      } at 80 degrees.`,
    note: "Clean sheets only; frame, dirt and ageing take more (the light factor in the last row).",
    legend: all.map((glazing, index) => ({
      label: index === 0 ? `${glazing.name} (the study's)` : glazing.name,
      colour: style(index).stroke,
      sign: index === 0 ? "line" as const : "dash" as const,
    })),
    table: glazingTable(all, through),
  });
}

function glazingTable(
  all: readonly Glazing[],
  through: (glazing: Glazing, angle: number) => number,
): ReturnType<typeof dataTable> {
  const rows: readonly (readonly [string, (glazing: Glazing) => number])[] = [
    ...TABLE_ANGLES.map((angle) =>
      [`beam at ${angle} degrees`, (glazing: Glazing) => through(glazing, angle)] as const
    ),
    ["uniform diffuse light", (glazing) => diffuseTransmittance(glazingOptics(glazing))],
    ["light factor: frame, dirt, ageing", (glazing) => glazing.lightFactor],
  ];
  return dataTable(rows, [
    { head: "light", value: ([name]) => name },
    ...all.map((glazing) => ({
      head: `${glazing.name}, –`,
      value: ([, of]: (typeof rows)[number]) => of(glazing),
      digits: 2,
    })),
  ]);
}

function percent(share: number): string {
  return `${showNumber(share * 100, 0)} %`;
}
