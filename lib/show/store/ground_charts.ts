/** Pictures of the store chapter: the soil across the tubes. @module */
import * as Plot from "@observablehq/plot";
import type { SummarisedStore } from "../../store/mod.ts";
import type { SoilSection, StoreResult } from "../../store/types.ts";
import type { TubesResult } from "../../tubes/types.ts";
import { dayName } from "../kit/calendar.ts";
import { classLegend, classOf, type ColourClasses } from "../kit/carpet.ts";
import { type Block, blocksMark } from "../kit/blocks.ts";
import { dataTable } from "../kit/data_table.ts";
import { groundClasses } from "../kit/field_classes.ts";
import { shown } from "../kit/reader.ts";
import { cellLimits } from "../kit/cell_limits.ts";
import { type DisplayItem, figure } from "../kit/figure.ts";
import { PALETTE } from "../kit/palette.ts";

/** Cells of one picture, neighbours of the same class in a row joined. */
function sectionCells(
  section: SoilSection,
  picture: number,
  classes: ColourClasses,
): Block[] {
  const across = cellLimits(section.x);
  const down = cellLimits(section.depths).map((depth) => Math.max(0, depth));
  const columns = section.x.length;
  const colour = (row: number, column: number) => {
    const value = section.temperatures[picture]![row * columns + column]!;
    return classes.colours[classOf(value, classes.thresholds)]!;
  };
  const cells: Block[] = [];
  for (let row = 0; row < section.depths.length; row++) {
    let from = 0;
    for (let column = 1; column <= columns; column++) {
      if (column < columns && colour(row, column) === colour(row, from)) continue;
      cells.push({
        left: across[from]!,
        right: across[column]!,
        top: down[row]!,
        bottom: down[row + 1]!,
        colour: colour(row, from),
      });
      from = column;
    }
  }
  return cells;
}

// middle of January, April, July and October
const SHOWN_DAYS = [14, 104, 195, 287];

/** Index of the picture nearest to each of the shown days, each once. */
function shownPictures(section: SoilSection): number[] {
  const nearest = SHOWN_DAYS.map((day) =>
    section.days.reduce(
      (best, own, index) =>
        Math.abs(own - day) < Math.abs(section.days[best]! - day) ? index : best,
      0,
    )
  );
  return [...new Set(nearest)];
}

/** The soil across the middle of the tubes in the four seasons. */
export function soilSectionChart(result: StoreResult, tubes: TubesResult): DisplayItem {
  const section = result.sections;
  const across = cellLimits(section.x);
  const deepest = cellLimits(section.depths).at(-1)!;
  const pictures = shownPictures(section);
  const classes = groundClasses(pictures.map((picture) => section.temperatures[picture]!));
  const inside = tubes.positions.filter((tube) => tube.x >= across[0]! - 0.01);
  return figure(
    pictures.map((picture) => ({
      height: 210,
      x: {
        label: "distance from the middle of the house, m",
        domain: [across[0]!, across.at(-1)!],
      },
      y: {
        label: `${dayName(section.days[picture]!)}: depth, m`,
        reverse: true,
        domain: [0, deepest],
      },
      marks: [
        blocksMark(sectionCells(section, picture, classes)),
        Plot.dot(inside, {
          x: "x",
          y: "depth",
          r: 3,
          fill: "white",
          stroke: PALETTE.ink,
        }),
      ],
    })),
    {
      title: "The soil across the tubes in four seasons",
      alt: `Soil temperature across the middle of the tubes on four days of the year. The soil ` +
        `around the tubes falls to ${shown(result.coldestSoil, "temperature")} at the lowest.`,
      legend: [
        ...classLegend(classes, "degC"),
        { label: "tubes", colour: "white" },
      ],
    },
  );
}

/** m between the small maps, and their columns. */
const BETWEEN = 1.5;
const MAPS_ACROSS = 4;

/**
 * The same section as small maps through the year.
 *
 * @param result result of the store chapter
 * @param every number of weeks between the maps; 1 shows every picture there is
 */
export function soilWeeksChart(result: SummarisedStore, every = 4): DisplayItem {
  const section = result.sections;
  const across = cellLimits(section.x);
  const deepest = cellLimits(section.depths).at(-1)!;
  const width = across.at(-1)! - across[0]! + BETWEEN;
  const label = deepest * 0.25;
  const height = deepest + label + BETWEEN * 0.3;
  const pictures = section.days.flatMap((_, index) => index % every === 0 ? [index] : []);
  const classes = groundClasses(pictures.map((picture) => section.temperatures[picture]!));
  const rows = Math.ceil(pictures.length / MAPS_ACROSS);
  const places = pictures.map((picture, index) => ({
    picture,
    x: (index % MAPS_ACROSS) * width - across[0]!,
    y: Math.floor(index / MAPS_ACROSS) * height + label,
  }));
  const blocks = places.flatMap(({ picture, x, y }) =>
    sectionCells(section, picture, classes).map((block) => ({
      ...block,
      left: block.left + x,
      right: block.right + x,
      top: block.top + y,
      bottom: block.bottom + y,
    }))
  );
  const right = MAPS_ACROSS * width - BETWEEN;
  return figure({
    height: 12 + 96 * rows,
    marginLeft: 8,
    marginRight: 8,
    marginTop: 4,
    marginBottom: 8,
    x: { domain: [0, right], axis: null },
    y: { domain: [0, rows * height], reverse: true, axis: null },
    marks: [
      blocksMark(blocks),
      Plot.text(places, {
        x: (place: typeof places[number]) => place.x + across[0]!,
        y: (place: typeof places[number]) => place.y - label * 0.45,
        text: (place: typeof places[number]) => dayName(section.days[place.picture]!),
        textAnchor: "start",
      }),
    ],
  }, {
    title: "The soil across the tubes through the year",
    alt: `Soil temperature across the middle of the tubes, ${pictures.length} maps from ${
      dayName(section.days[pictures[0]!]!)
    } to ${dayName(section.days[pictures.at(-1)!]!)}.`,
    note: `Each map is ${shown(across.at(-1)! - across[0]!, "length")} wide and ${
      shown(deepest, "length")
    } deep, with the house floor in the middle of its upper edge; the depth scale is stretched.`,
    legend: classLegend(classes, "degC"),
    table: dataTable(pictures, [
      { head: "day", value: (picture) => dayName(section.days[picture]!) },
      {
        head: "coldest in the map",
        value: (picture) => result.summary.sectionEnds[picture]![0],
        kind: "temperature",
      },
      {
        head: "warmest in the map",
        value: (picture) => result.summary.sectionEnds[picture]![1],
        kind: "temperature",
      },
    ]),
  });
}
